// Lessons: beginning and ending one, and finding an earlier one by its date and class.

import { useEffect, useState } from "preact/hooks";
import { get } from "../live/ask";
import { TableFrame } from "../page/shared";
import { lessonText } from "../phrases/room";
import { languageOfDates, phrase } from "../words";
import type { Lesson, Lessons, Room } from "./contract";
import { OWN, PlanChoice, usePlanChoice, useTelling } from "./telling";

// Beginning and ending a lesson.

export function moment(iso: string): string {
  const at = new Date(iso);
  if (Number.isNaN(at.getTime())) return "";
  return new Intl.DateTimeFormat(languageOfDates(), { dateStyle: "medium", timeStyle: "short" }).format(at);
}

export function lessonInWords(lesson: Lesson | null): string {
  if (!lesson || lesson.ended) return phrase("page-room-no-lesson");
  return lessonText(lesson.label, moment(lesson.began));
}

export function LessonForm({ room }: { room: Room }) {
  const { told, send, busy } = useTelling();
  const [label, type] = useState(room.lesson?.label ?? "");
  const choice = usePlanChoice(OWN);
  const tiles = room.order.flatMap((bench) => room.tiles[bench] ?? []);
  const busyNow = tiles.filter(({ repeats }) => repeats.some(({ status }) => status === "running"));
  const fresh = tiles.filter((tile) => !busyNow.includes(tile));
  const submit = (event: Event) => {
    event.preventDefault();
    void send("/api/room/lessons", { label: label.trim(), ...choice.chosen });
  };
  return (
    <section>
      <h2>{phrase("page-room-lesson-title")}</h2>
      <p>{lessonInWords(room.lesson)}</p>
      <form onSubmit={submit}>
        <label>
          {phrase("page-room-label")}
          <input type="text" maxLength={24} autocomplete="off" value={label} onInput={(event) => type(event.currentTarget.value)} />
        </label>
        <PlanChoice choice={choice} own />
        <p class="remark">{phrase("page-room-begin-does", { count: fresh.length, own: choice.at === OWN ? "own" : "plan", plan: choice.name })}</p>
        {busyNow.length > 0 && <p class="remark">{phrase("page-room-begin-not", { benches: busyNow.map(({ name }) => name).join(", ") })}</p>}
        <button type="submit" class="strong" disabled={busy || (choice.at !== OWN && !choice.given)}>
          {phrase("page-room-begin")}
        </button>
      </form>
      {room.lesson && !room.lesson.ended && (
        <button type="button" class="plain" onClick={() => void send("/api/room/lessons/end", {})}>
          {phrase("page-room-end")}
        </button>
      )}
      <p class="told" role="status">
        {choice.wrong || told}
      </p>
    </section>
  );
}

// Every lesson, to be found again by its date and class.

export function LessonsPage() {
  const [known, know] = useState<Lessons | null>(null);
  const [label, choose] = useState("");
  useEffect(() => {
    const ask = () => get<Lessons>("/api/room/lessons").then(know, () => undefined);
    void ask();
    const timer = setInterval(() => void ask(), 10_000);
    return () => clearInterval(timer);
  }, []);
  if (!known) return <p class="connecting">{phrase("page-room-connecting")}</p>;
  const { lessons, forget_after_days: days, clock_known } = known;
  if (lessons.length === 0) return <p>{phrase("page-room-no-lessons")}</p>;
  const classes = [...new Set(lessons.map((each) => each.label).filter(Boolean))].sort((one, other) => one.localeCompare(other));
  const some = lessons.filter((each) => label === "" || each.label === label);
  return (
    <section class="readings lessons-table">
      {classes.length > 0 && (
        <label class="lessons-class">
          {phrase("page-room-lesson-head-label")}
          <select value={label} onChange={(event) => choose(event.currentTarget.value)}>
            <option value="">{phrase("page-room-lessons-all")}</option>
            {classes.map((each) => (
              <option key={each} value={each}>
                {each}
              </option>
            ))}
          </select>
        </label>
      )}
      <TableFrame name={phrase("page-room-lessons-title")}>
        <table>
          <caption>{phrase("page-room-lessons-title")}</caption>
          <thead>
            <tr>
              <th scope="col">{phrase("page-room-lesson-head-began")}</th>
              <th scope="col">{phrase("page-room-lesson-head-label")}</th>
              <th scope="col">{phrase("page-room-lesson-head-benches")}</th>
              <th scope="col">{phrase("page-room-lesson-head-result")}</th>
              <th scope="col">{phrase("page-frame-pages", { which: "sheets" })}</th>
            </tr>
          </thead>
          <tbody>
            {some.map((lesson) => (
              <LessonRow key={lesson.lesson} {...lesson} />
            ))}
          </tbody>
        </table>
      </TableFrame>
      <p class="remark">
        {days === 0 ? phrase("page-room-forget-never") : phrase("page-room-forget", { days })} {days > 0 && !clock_known && phrase("page-room-forget-clock")}
      </p>
    </section>
  );
}

function LessonRow({ lesson, began, label, benches, ended }: Lesson) {
  const named = `${moment(began)} ${label}`;
  return (
    <tr>
      <th scope="row">{moment(began)}</th>
      <td>{label || (ended ? "" : phrase("page-room-under-way"))}</td>
      <td>{benches}</td>
      <td>
        <a href={`/room/class?lesson=${lesson}`} aria-label={`${phrase("page-room-lesson-head-result")} ${named}`}>
          {phrase("page-room-to-result")}
        </a>
      </td>
      <td>
        <a href={`/room/sheets?lesson=${lesson}`} aria-label={`${phrase("page-frame-pages", { which: "sheets" })} ${named}`}>
          {phrase("page-room-to-sheets")}
        </a>
      </td>
    </tr>
  );
}
