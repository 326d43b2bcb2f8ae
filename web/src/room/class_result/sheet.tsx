// The class sheet: all of the class result on one side of A4, laid out out of sight so that its letters are as large
// as fits.

import { useEffect, useLayoutEffect, useRef } from "preact/hooks";
import { placesFor, rounded } from "../../format";
import { TableFrame } from "../../page/shared";
import { capital } from "../../phrases/quantities";
import { namedWithUnit, valueText } from "../../phrases/room";
import { phrase, said } from "../../words";
import type { ClassResult, Lesson, Quantity } from "../contract";
import { moment } from "../lessons";
import { CurveDrawing, PlotDrawing } from "./drawings";

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

/** What answers the question of the plan: the picture that stands first. */
export const answering = ({ quantities, asks }: ClassResult): Quantity | undefined =>
  quantities.find(({ quantity }) => quantity === asks) ?? quantities[0];

/** The benches whose repeats disagree: their intervals say nothing. */
export const clashing = ({ benches }: ClassResult): ReadonlySet<string> =>
  new Set(benches.filter(({ clash }) => clash).map(({ bench }) => bench));

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
  const first = answering(result);
  // The answer's picture stands first; one side of paper holds three.
  const drawn = [...(first ? [first] : []), ...result.quantities.filter((each) => each !== first)].slice(0, 3);
  const columns = Math.min(3, Math.max(2, drawn.length));
  const width = Math.floor(WIDTH_PX / columns) - GAP_PX;
  const many = result.benches.length > MANY;
  const letter = many ? 6.5 : 9;
  return (
    <div class="paper-room">
      <div class={`paper class-sheet${many ? " class-many" : ""}`} ref={paper}>
        <div>
          <h2>{phrase("page-room-class-title")}</h2>
          <p>{[lesson.label, moment(lesson.began)].filter(Boolean).join(" · ")}</p>
        </div>
        {result.answer !== null && <p class="class-answer">{said(result.answer)}</p>}
        <ul class="class-words">
          {[...result.plain, ...(result.answer === null ? result.words : [])].map((line) => (
            <li key={line}>{said(line)}</li>
          ))}
        </ul>
        <ClassTable result={result} />
        <div class="class-drawings" style={{ gridTemplateColumns: `repeat(${columns}, 1fr)` }}>
          {drawn.map((quantity) => (
            <div key={`${quantity.quantity} ${quantity.method}`}>
              <h3>{phrase("page-room-plot-title", { quantity: capital(said(quantity.name)), method: phrase("page-room-methods", { which: quantity.method }) })}</h3>
              <PlotDrawing quantity={quantity} names={names} odd={odd} unsure={clashing(result)} box={{ width, height: 0, letter }} {...(many ? { pitch: 1.3 } : {})} />
            </div>
          ))}
        </div>
        <div class="class-last">
          {result.curve.length > 1 && (
            <div>
              <h3>{phrase("page-room-curve-title")}</h3>
              <CurveDrawing curve={result.curve} box={{ width: WIDTH_PX / 2 - GAP_PX, height: many ? 125 : 170, letter: 8 }} />
            </div>
          )}
          <div>
            <h3>{phrase("page-room-odd-title")}</h3>
            {result.anomalies.length === 0 && <p>{phrase("page-room-no-odd")}</p>}
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

// All benches' results in a table, the class's last.

/** One whose repeats clash has its value, and no ±: that would be no usable one. */
function cell(quantity: Quantity, { bench, clash }: ClassResult["benches"][number]): string | null {
  const found = quantity.values.find((each) => each.bench === bench);
  if (!found) return null;
  return clash ? phrase("page-room-clash", { value: rounded(found.value, placesFor(found.u, quantity.places)) }) : valueText(quantity, found.value, found.u);
}

export function ClassTable({ result }: { result: ClassResult }) {
  const { benches, quantities } = result;
  return (
    <section class="readings class-table">
      <TableFrame name={phrase("page-room-table-title")}>
        <table>
          <caption>{phrase("page-room-table-title")}</caption>
          <thead>
            <tr>
              <th scope="col">{phrase("page-room-bench")}</th>
              <th scope="col">{phrase("page-room-repeats")}</th>
              {quantities.map((quantity) => (
                <th scope="col" key={`${quantity.quantity} ${quantity.method}`}>
                  {namedWithUnit(quantity)}
                  <br />
                  <small>{phrase("page-room-methods", { which: quantity.method })}</small>
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {benches.map((each) => (
              <tr key={each.bench}>
                <th scope="row">{each.name}</th>
                <td>{each.repeats}</td>
                {quantities.map((quantity) => (
                  <td key={`${quantity.quantity} ${quantity.method}`}>
                    {each.pooled ? (cell(quantity, each) ?? phrase("page-room-no-value")) : phrase("page-room-not-pooled")}
                  </td>
                ))}
              </tr>
            ))}
            <tr class="class-mean">
              <th scope="row">{phrase("page-room-class-mean")}</th>
              <td>{benches.reduce((sum, { repeats }) => sum + repeats, 0)}</td>
              {quantities.map((quantity) => (
                <td key={`${quantity.quantity} ${quantity.method}`}>
                  {quantity.pooled ? valueText(quantity, quantity.pooled.mean, quantity.pooled.u) : phrase("page-room-no-value")}
                </td>
              ))}
            </tr>
          </tbody>
        </table>
      </TableFrame>
    </section>
  );
}
