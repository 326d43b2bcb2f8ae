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
/** Width of the paper / CSS px, and of the room between two drawings. */
const WIDTH_PX = 700;
const GAP_PX = 12;
const MANY = 16;
const MOST_ODD = 5;

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
  const columns = Math.min(3, Math.max(2, result.quantities.length));
  const width = Math.floor(WIDTH_PX / columns) - GAP_PX;
  const many = result.benches.length > MANY;
  const letter = many ? 6.5 : 9;
  return (
    <div class="paper-room">
      <div class={`paper class-sheet${many ? " class-many" : ""}`} ref={paper}>
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
        <div class="class-drawings" style={{ gridTemplateColumns: `repeat(${columns}, 1fr)` }}>
          {result.quantities.map((quantity) => (
            <div key={`${quantity.quantity} ${quantity.method}`}>
              <h3>{words().plotTitle(words().quantities[quantity.quantity], words().methods[quantity.method])}</h3>
              <PlotDrawing quantity={quantity} names={names} odd={odd} box={{ width, height: 0, letter }} {...(many ? { pitch: 1.3 } : {})} />
            </div>
          ))}
        </div>
        <div class="class-last">
          {result.curve.length > 1 && (
            <div>
              <h3>{words().curveTitle}</h3>
              <CurveDrawing curve={result.curve} box={{ width: WIDTH_PX / 2 - GAP_PX, height: many ? 125 : 170, letter: 8 }} />
            </div>
          )}
          <div>
            <h3>{words().oddTitle}</h3>
            {result.anomalies.length === 0 && <p>{words().noOdd}</p>}
            {result.anomalies.slice(0, MOST_ODD).map((each) => (
              <p key={each.bench} class="class-odd">
                ▲ {said(each.text)} {each.reasons.slice(0, 1).map(said).join(" ")}
              </p>
            ))}
          </div>
        </div>
      </div>
    </div>
  );
}
