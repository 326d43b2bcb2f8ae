// The class sheet: all of the class result on one side of A4, laid out out of sight so that its letters are as large
// as fits.

import { useEffect, useLayoutEffect, useRef } from "preact/hooks";
import { said } from "../words";
import { roomWords as words } from "../words/room_topic";
import { ClassTable } from "./class_table";
import { CurveDrawing } from "./class_curve";
import { PlotDrawing } from "./class_plot";
import type { ClassResult, Lesson } from "./contract";
import { moment } from "./lesson";

const SIZES = 8;
const HALF_PX = 330;
const LETTER_PX = 9.5;

/** Take the largest letters with which all of it stands on one side. */
function fit(paper: HTMLElement): void {
  for (let size = 0; size < SIZES; size += 1) {
    paper.dataset.size = String(size);
    if (paper.scrollHeight <= paper.clientHeight) return;
  }
}

export const namesOf = ({ benches }: ClassResult): Record<string, string> =>
  Object.fromEntries(benches.map(({ bench, name }) => [bench, name]));

export const oddOf = ({ anomalies }: ClassResult): ReadonlySet<string> => new Set(anomalies.map(({ bench }) => bench));

export function ClassSheet({ lesson, result }: { lesson: Lesson; result: ClassResult }) {
  const paper = useRef<HTMLDivElement>(null);
  const [names, odd] = [namesOf(result), oddOf(result)];
  useLayoutEffect(() => {
    if (paper.current) fit(paper.current);
  });
  useEffect(() => {
    document.body.classList.add("prints-record");
    return () => document.body.classList.remove("prints-record");
  }, []);
  const box = (height: number) => ({ width: HALF_PX, height, letter: LETTER_PX });
  return (
    <div class="paper-room">
      <div class="paper class-sheet" ref={paper}>
        <div>
          <h2>{words().classTitle}</h2>
          <p>{[lesson.label, moment(lesson.began)].filter(Boolean).join(" · ")}</p>
        </div>
        <ul class="class-words">
          {result.words.map((line) => (
            <li key={line}>{said(line)}</li>
          ))}
        </ul>
        <ClassTable result={result} />
        <div class="class-drawings">
          {result.quantities.map((quantity) => (
            <div key={`${quantity.quantity} ${quantity.method}`}>
              <h3>{words().plotTitle(words().quantities[quantity.quantity], words().methods[quantity.method])}</h3>
              <PlotDrawing quantity={quantity} names={names} odd={odd} box={box(0)} />
            </div>
          ))}
          {result.curve.length > 1 && (
            <div>
              <h3>{words().curveTitle}</h3>
              <CurveDrawing curve={result.curve} box={box(200)} />
            </div>
          )}
        </div>
        {result.anomalies.map((each) => (
          <p key={each.bench} class="class-odd">
            ▲ {said(each.text)} {each.reasons.slice(0, 2).map(said).join(" ")}
          </p>
        ))}
      </div>
    </div>
  );
}
