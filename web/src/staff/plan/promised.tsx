// What the promises of every kind of practical are made of: numbers, a table, a curve.

import { Axes, Marks, repeatClass, repeatMark } from "../../chart/axes";
import { type Box, type Frame, type Point, through } from "../../chart/frame";
import { TableFrame } from "../../page/shared";
import { phrase } from "../../words";

export function Number({ name, value, more }: { name: string; value: string; more?: string }) {
  return (
    <div class="promised">
      <dt>{name}</dt>
      <dd>
        <b>{value}</b> {more && <small>{more}</small>}
      </dd>
    </div>
  );
}

export function Rows({ head, rows }: { head: readonly [string, string]; rows: readonly (readonly [string, string])[] }) {
  return (
    <details class="basis">
      <summary>{phrase("page-plan-table")}</summary>
      <TableFrame name={phrase("page-plan-table")}>
        <table>
          <thead>
            <tr>
              <th scope="col">{head[0]}</th>
              <th scope="col">{head[1]}</th>
            </tr>
          </thead>
          <tbody>
            {rows.map(([at, temperature]) => (
              <tr key={at}>
                <th scope="row">{at}</th>
                <td>{temperature}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableFrame>
    </details>
  );
}

// The curve that a plan promises, in the frame of the bench's own charts.

export const LEAST_SPAN_C = 4;
const MARK_LETTERS = 0.85;

interface DrawnProps {
  laid: Frame;
  box: Box;
  points: readonly Point[];
  across: string;
  text: string;
  /** A moment or volume to mark, with its words. */
  marked: readonly [at: number, text: string];
  marks: boolean;
}

export function Drawn({ laid, box, points, across, text, marked: [at, name], marks }: DrawnProps) {
  const { letter } = box;
  const x = laid.x(at);
  const toRight = x < (laid.left + laid.right) / 2;
  return (
    <svg viewBox={`0 0 ${box.width} ${box.height}`} width={box.width} height={box.height} role="img" aria-label={phrase("page-plan-curve")} aria-describedby="curve-text">
      <desc id="curve-text">{text}</desc>
      <Axes frame={laid} letter={letter} across={across} up={phrase("page-temperature-axis")} />
      <g class="crossing" font-size={1.25 * letter}>
        <path class="drop" d={`M${x.toFixed(1)},${laid.top}V${laid.bottom}`} />
        <text x={x + (toRight ? 0.6 : -0.6) * letter} y={laid.bottom - 0.6 * letter} text-anchor={toRight ? "start" : "end"}>
          {name}
        </text>
      </g>
      <path class="trace" d={through(points)} />
      {marks && <Marks points={points} path={repeatMark(1, MARK_LETTERS * letter)} class={repeatClass(1)} />}
    </svg>
  );
}
