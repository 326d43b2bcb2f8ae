// Temperature (up) against volume added (across): all repeats, their mean, both lines and their crossing.

import { useMemo } from "preact/hooks";
import { type CrossingMarks, type VolumeChart, drawnRepeats, volumeChart } from "../chart_volume";
import type { OwnReading, Repeat } from "../contract";
import type { Box, Frame, Point } from "../frame";
import type { PortionsView } from "../plan";
import { pointMarks, portionPoints } from "../points";
import type { Crossing, EndPoint } from "../results";
import { readingsTable } from "../table";
import { words } from "../words";
import { Axes } from "./axes";
import { Marks, Swatch, meanMark, repeatClass, repeatMark } from "./marks";
import { OwnDrawn } from "./own_drawn";
import { Reader } from "./reader";
import { Sized } from "./sized";

const MARK_LETTERS = 0.85;

function segment([from, to]: readonly [Point, Point]): string {
  return `M${from[0].toFixed(1)},${from[1].toFixed(1)}L${to[0].toFixed(1)},${to[1].toFixed(1)}`;
}

function CrossingDrawn({ marks, crossing, frame, letter, toRight }: {
  marks: CrossingMarks;
  crossing: Crossing;
  frame: Frame;
  letter: number;
  toRight: boolean;
}) {
  const [x, y] = marks.at;
  const [low, high] = marks.interval;
  const text = words.endPoint(crossing.end_point_cm3, crossing.u_end_point_cm3);
  return (
    <g class="crossing" font-size={1.25 * letter}>
      <rect class="band" x={low} width={Math.max(1, high - low)} y={frame.top} height={frame.bottom - frame.top} />
      <path class="fit fit-before" d={segment(marks.before)} />
      <path class="fit fit-after" d={segment(marks.after)} />
      <path class="drop" d={`M${x},${y}V${frame.bottom}`} />
      <circle cx={x} cy={y} r={0.5 * letter} />
      <text x={x + (toRight ? 0.6 : -0.6) * letter} y={frame.bottom - 0.6 * letter} text-anchor={toRight ? "start" : "end"}>
        {text}
      </text>
    </g>
  );
}

/** The heat balance's end-point on the volume axis. */
function HeatMark({ heat, frame, letter, toRight }: { heat: EndPoint; frame: Frame; letter: number; toRight: boolean }) {
  const x = frame.x(heat.end_point_cm3);
  return (
    <g class="heat-mark" font-size={1.25 * letter}>
      <path d={`M${x.toFixed(1)},${frame.top}V${frame.bottom}`} />
      <text x={x + (toRight ? 0.6 : -0.6) * letter} y={frame.bottom - 0.6 * letter} text-anchor={toRight ? "start" : "end"}>
        {words.endPoint(heat.end_point_cm3, heat.u_end_point_cm3)}
      </text>
    </g>
  );
}

interface DrawingProps {
  chart: VolumeChart;
  crossing: Crossing | null;
  heat: EndPoint | null;
  own: OwnReading | null;
  box: Box;
  /** Of what is inside: one page may hold two charts. */
  id: string;
}

function Drawing({ chart, crossing, heat, own, box, id }: DrawingProps) {
  const { letter } = box;
  const { frame } = chart;
  // Two names stand on the outer sides of their lines; a single one where there is more room.
  const crossingRight =
    crossing !== null && (heat ? crossing.end_point_cm3 > heat.end_point_cm3 : frame.x(crossing.end_point_cm3) < (frame.left + frame.right) / 2);
  const count = chart.series.reduce((sum, series) => sum + series.points.length, 0);
  return (
    <svg viewBox={`0 0 ${box.width} ${box.height}`} width={box.width} height={box.height} role="img" aria-label={words.volumeChart} aria-describedby={`${id}-text`}>
      <desc id={`${id}-text`}>{words.volumeChartText(count)}</desc>
      <Axes frame={frame} letter={letter} across={words.volumeAxis} up={words.temperatureAxis} />
      {chart.crossing && crossing && (
        <CrossingDrawn marks={chart.crossing} crossing={crossing} frame={frame} letter={letter} toRight={crossingRight} />
      )}
      {heat && frame.x(heat.end_point_cm3) <= frame.right && <HeatMark heat={heat} frame={frame} letter={letter} toRight={!crossingRight} />}
      {own?.before && own.after && <OwnDrawn before={own.before} after={own.after} frame={frame} id={`${id}-clip`} />}
      {chart.series.map(({ repeat, points }) => (
        <Marks key={repeat} points={points} path={repeatMark(repeat, MARK_LETTERS * letter)} class={repeatClass(repeat)} />
      ))}
      {/* The mean of one repeat is that repeat: nothing to show. */}
      {chart.series.length > 1 && <Marks points={chart.mean} path={meanMark(0.5 * letter)} class="series mean" />}
    </svg>
  );
}

function LineName({ name, kind }: { name: string; kind: string }) {
  return (
    <li>
      <Swatch path="M-10,0H10" class={kind} /> {name}
    </li>
  );
}

interface LegendProps {
  repeats: readonly Repeat[];
  crossing: boolean;
  heat: boolean;
  own: boolean;
}

function Legend({ repeats, crossing, heat, own }: LegendProps) {
  return (
    <ul class="legend">
      {repeats.map(({ repeat }) => (
        <li key={repeat}>
          <Swatch path={repeatMark(repeat, 12)} class={repeatClass(repeat)} /> {words.repeatName(repeat)}
        </li>
      ))}
      {repeats.length > 1 && (
        <li>
          <Swatch path={meanMark(7)} class="series mean" /> {words.mean}
        </li>
      )}
      {crossing && <LineName name={words.lineBefore} kind="fit fit-before" />}
      {crossing && <LineName name={words.lineAfter} kind="fit fit-after" />}
      {heat && (
        <li>
          <Swatch path="M0,-10V10" class="heat-swatch" /> {words.ownLines.heat}
        </li>
      )}
      {own && <LineName name={words.ownLines.legendBefore} kind="own own-before" />}
      {own && <LineName name={words.ownLines.legendAfter} kind="own own-after" />}
    </ul>
  );
}

/** What of a view is drawn; own lines once they are committed to. */
function drawn({ plan, repeats, mean, result, own_reading }: PortionsView) {
  const { straight_lines: crossing = null, heat_balance: heat = null } = result ?? {};
  return { plan, repeats, mean, crossing, heat, own: own_reading };
}

function Readable({ view, box }: { view: PortionsView; box: Box }) {
  const { own, heat, ...data } = drawn(view);
  const chart = volumeChart(data, box);
  const points = portionPoints(readingsTable(view.repeats, view.mean));
  const { frame } = chart;
  const one = (index: number) => points[index] ?? { portion: 0, volume_cm3: 0, values: [] };
  return (
    <Reader
      frame={frame}
      box={box}
      count={points.length}
      at={(index) => frame.x(one(index).volume_cm3)}
      marks={(index) => pointMarks(one(index), frame)}
      text={(index) => words.seeing.point(one(index))}
    >
      <Drawing chart={chart} crossing={data.crossing} heat={heat} own={own} box={box} id="volume" />
    </Reader>
  );
}

function ChartLegend({ view }: { view: PortionsView }) {
  const { repeats, crossing, heat, own } = drawn(view);
  return (
    <Legend
      repeats={drawnRepeats(repeats)}
      crossing={crossing !== null}
      heat={heat !== null}
      own={Boolean(own?.before && own.after)}
    />
  );
}

export function VolumeFigure({ view }: { view: PortionsView }) {
  const { plan, repeats, mean, result, own_reading } = view;
  // The same node is handed back while the readings stay the same: a sample a second must not redraw this.
  return useMemo(
    () => (
      <>
        <Sized class="drawing" shape={0.4}>
          {(box) => <Readable view={view} box={box} />}
        </Sized>
        <ChartLegend view={view} />
      </>
    ),
    [plan, repeats, mean, result, own_reading],
  );
}

const STILL_SHAPE = 0.5;
const STILL_LETTERS = 48;

/** The same chart without anything to touch, `width` CSS pixels wide: for paper. */
export function VolumeChartStill({ view, width }: { view: PortionsView; width: number }) {
  const { own, heat, ...data } = drawn(view);
  const box = { width, height: Math.round(STILL_SHAPE * width), letter: width / STILL_LETTERS };
  return (
    <>
      <Drawing chart={volumeChart(data, box)} crossing={data.crossing} heat={heat} own={own} box={box} id="still" />
      <ChartLegend view={view} />
    </>
  );
}
