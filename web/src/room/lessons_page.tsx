// Every lesson, to be found again by its date and class.

import { useEffect, useState } from "preact/hooks";
import { get } from "../get";
import { TableFrame } from "../parts/table_frame";
import { roomWords as words } from "../words/room_topic";
import type { Lesson } from "./contract";
import { moment } from "./lesson";

export function LessonsPage() {
  const [lessons, know] = useState<readonly Lesson[] | null>(null);
  useEffect(() => {
    const ask = () => get<{ lessons: Lesson[] }>("/api/room/lessons").then((answer) => know(answer.lessons), () => undefined);
    void ask();
    const timer = setInterval(() => void ask(), 10_000);
    return () => clearInterval(timer);
  }, []);
  if (!lessons) return <p class="connecting">{words().connecting}</p>;
  if (lessons.length === 0) return <p>{words().noLessons}</p>;
  const head = words().lessonHead;
  return (
    <section class="readings lessons-table">
      <TableFrame name={words().lessonsTitle}>
        <table>
          <caption>{words().lessonsTitle}</caption>
          <thead>
            <tr>
              <th scope="col">{head.began}</th>
              <th scope="col">{head.label}</th>
              <th scope="col">{head.benches}</th>
              <th scope="col">{head.result}</th>
            </tr>
          </thead>
          <tbody>
            {lessons.map(({ lesson, began, label, benches, ended }) => (
              <tr key={lesson}>
                <th scope="row">{moment(began)}</th>
                <td>{label || (ended ? "" : words().underWay)}</td>
                <td>{benches}</td>
                <td>
                  <a href={`/room/class?lesson=${lesson}`} aria-label={`${head.result} ${moment(began)} ${label}`}>
                    {words().toResult}
                  </a>
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableFrame>
    </section>
  );
}
