// Temperature (up) against volume added (across): all repeats, their mean, both lines and their crossing.

import { useMemo, useState } from "preact/hooks";
import { rounded } from "../format";
import type { OwnReading, PlacedLine, PortionsView, Repeat } from "../live/contract";
import type { EndPoint } from "../live/results";
import { cm3Places } from "../phrases/quantities";
import { pointText } from "../phrases/seeing";
import { phrase } from "../words";
import { Axes, Marks, Sized, Swatch, meanMark, repeatClass, repeatMark } from "./axes";
import { type Box, type Frame, type Point, through } from "./frame";
import { Reader, pointMarks, portionPoints } from "./reader";
import { type Crossed, type CrossingMarks, type VolumeChart, drawnRepeats, readingsTable, volumeChart } from "./volume";

const MARK_LETTERS = 0.85;
const LARGE_LETTERS = 24;

function segment([from, to]: readonly [Point, Point]): string {
  return `M${from[0].toFixed(1)},${from[1].toFixed(1)}L${to[0].toFixed(1)},${to[1].toFixed(1)}`;
}

function CrossingDrawn({ marks, crossing, frame, letter, toRight }: {
  marks: CrossingMarks;
  crossing: Crossed;
  frame: Frame;
  letter: number;
  toRight: boolean;
}) {
  const [x, y] = marks.at;
  const [low, high] = marks.interval;
  const text = phrase("page-end-point", { volume: rounded(crossing.end_point_cm3, cm3Places(crossing.u_end_point_cm3)) });
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
        {phrase("page-end-point", { volume: rounded(heat.end_point_cm3, cm3Places(heat.u_end_point_cm3)) })}
      </text>
    </g>
  );
}

const usualNames = () => ({ chart: phrase("page-volume-chart"), across: phrase("page-volume-axis"), up: phrase("page-temperature-axis") });

interface DrawingProps {
  chart: VolumeChart;
  crossing: Crossed | null;
  heat: EndPoint | null;
  own: OwnReading | null;
  box: Box;
  /** Of what is inside: one page may hold two charts. */
  id: string;
  /** The mean in place of the single repeats. */
  meanOnly?: boolean;
  /** A finer grid, to read a volume from. */
  fine?: boolean;
  /** What the axes and the chart are called where it is not temperature against volume added. */
  names?: { chart: string; across: string; up: string };
}

export function VolumeDrawing({ chart, crossing, heat, own, box, id, meanOnly = false, fine = false, names = usualNames() }: DrawingProps) {
  const { letter } = box;
  const { frame } = chart;
  // Two names stand on the outer sides of their lines; a single one where there is more room.
  const hasRoom = (volume_cm3: number) => frame.x(volume_cm3) < (frame.left + frame.right) / 2;
  const crossingRight = crossing !== null && (heat ? crossing.end_point_cm3 > heat.end_point_cm3 : hasRoom(crossing.end_point_cm3));
  const heatRight = heat !== null && (crossing ? !crossingRight : hasRoom(heat.end_point_cm3));
  const single = !meanOnly || chart.series.length < 2;
  const count = single ? chart.series.reduce((sum, series) => sum + series.points.length, 0) : chart.mean.length;
  return (
    <svg viewBox={`0 0 ${box.width} ${box.height}`} width={box.width} height={box.height} role="img" aria-label={names.chart} aria-describedby={`${id}-text`}>
      <desc id={`${id}-text`}>{phrase("page-volume-chart-text", { points: count })}</desc>
      <Axes frame={frame} letter={letter} across={names.across} up={names.up} both fine={fine} />
      {chart.sketch.length > 0 && <path class="sketch" d={through(chart.sketch)} />}
      {chart.crossing && crossing && (
        <CrossingDrawn marks={chart.crossing} crossing={crossing} frame={frame} letter={letter} toRight={crossingRight} />
      )}
      {heat && frame.x(heat.end_point_cm3) <= frame.right && <HeatMark heat={heat} frame={frame} letter={letter} toRight={heatRight} />}
      {own?.before && own.after && <OwnDrawn before={own.before} after={own.after} frame={frame} id={`${id}-clip`} />}
      {single &&
        chart.series.map(({ repeat, points }) => (
          <Marks key={repeat} points={points} path={repeatMark(repeat, MARK_LETTERS * letter)} class={repeatClass(repeat)} />
        ))}
      {/* The mean of one repeat is that repeat: nothing to show. */}
      {chart.series.length > 1 && <Marks points={chart.mean} path={meanMark(0.5 * letter)} class="series mean" />}
    </svg>
  );
}

export function LineName({ name, kind }: { name: string; kind: string }) {
  return (
    <li>
      <Swatch path="M-10,0H10" class={kind} /> {name}
    </li>
  );
}

interface LegendProps {
  repeats: readonly Repeat[];
  meanOnly: boolean;
  crossing: boolean;
  heat: boolean;
  own: boolean;
  sketch: boolean;
}

function Legend({ repeats, meanOnly, crossing, heat, own, sketch }: LegendProps) {
  return (
    <ul class="legend">
      {!meanOnly &&
        repeats.map(({ repeat }) => (
          <li key={repeat}>
            <Swatch path={repeatMark(repeat, 12)} class={repeatClass(repeat)} /> {phrase("page-repeat-name", { repeat })}
          </li>
        ))}
      {repeats.length > 1 && (
        <li>
          <Swatch path={meanMark(7)} class="series mean" /> {phrase("page-mean")}
        </li>
      )}
      {crossing && <LineName name={phrase("page-line-before")} kind="fit fit-before" />}
      {crossing && <LineName name={phrase("page-line-after")} kind="fit fit-after" />}
      {heat && (
        <li>
          <Swatch path="M0,-10V10" class="heat-swatch" /> {phrase("page-own-lines-heat")}
        </li>
      )}
      {own && <LineName name={phrase("page-own-lines-legend-before")} kind="own own-before" />}
      {own && <LineName name={phrase("page-own-lines-legend-after")} kind="own own-after" />}
      {sketch && <LineName name={phrase("page-sketch-legend")} kind="sketch" />}
    </ul>
  );
}

/** What of a view is drawn; own lines once they are committed to. */
function drawn({ plan, repeats, mean, result, own_reading, sketch }: PortionsView) {
  const { straight_lines: crossing = null, heat_balance: heat = null } = result ?? {};
  return { planned_cm3: plan.portions.volume_cm3 * plan.portions.count, repeats, mean, crossing, heat, own: own_reading, sketch };
}

let named = 0;

/** A name of its own for what is inside a chart: a page may hold several, seen and unseen. */
export function useName(): string {
  const [name] = useState(() => {
    named += 1;
    return `volume-${named}`;
  });
  return name;
}

function Readable({ view, box, large, meanOnly }: { view: PortionsView; box: Box; large: boolean; meanOnly: boolean }) {
  const { own, heat, ...data } = drawn(view);
  const id = useName();
  const chart = volumeChart(data, box);
  const all = portionPoints(readingsTable(view.repeats, view.mean));
  const points = meanOnly ? all.map((one) => ({ ...one, values: one.values.filter(({ repeat }) => repeat === null) })) : all;
  const { frame } = chart;
  const one = (index: number) => points[index] ?? { portion: 0, volume_cm3: 0, values: [] };
  return (
    <Reader
      frame={frame}
      box={box}
      count={points.length}
      at={(index) => frame.x(one(index).volume_cm3)}
      marks={(index) => pointMarks(one(index), frame)}
      text={(index) => pointText(one(index))}
    >
      <VolumeDrawing chart={chart} crossing={data.crossing} heat={heat} own={own} box={box} id={id} meanOnly={meanOnly} fine={large} />
    </Reader>
  );
}

function ChartLegend({ view, meanOnly = false }: { view: PortionsView; meanOnly?: boolean }) {
  const { repeats, crossing, heat, own, sketch } = drawn(view);
  return (
    <Legend
      repeats={drawnRepeats(repeats)}
      meanOnly={meanOnly}
      crossing={crossing !== null}
      heat={heat !== null}
      own={Boolean(own?.before && own.after)}
      sketch={sketch !== null}
    />
  );
}

/** `large`: the graph of the page, to read a volume from; mean and lines first, the single repeats on a switch. */
export function VolumeFigure({ view, large = false }: { view: PortionsView; large?: boolean }) {
  const { plan, repeats, mean, result, own_reading, sketch } = view;
  const [spread, setSpread] = useState(false);
  const several = large && drawnRepeats(repeats).length > 1;
  const meanOnly = several && !spread;
  // The same node is handed back while the readings stay the same: a sample a second must not redraw this.
  return useMemo(
    () => (
      <>
        <Sized class="drawing" shape={large ? 0.58 : 0.4} {...(large ? { least: LARGE_LETTERS } : {})}>
          {(box) => <Readable view={view} box={box} large={large} meanOnly={meanOnly} />}
        </Sized>
        <ChartLegend view={view} meanOnly={meanOnly} />
        {several && (
          <button type="button" class="plain spread" aria-pressed={spread} onClick={() => setSpread(!spread)}>
            {phrase("page-seeing-single-repeats")}
          </button>
        )}
      </>
    ),
    [plan, repeats, mean, result, own_reading, sketch, large, meanOnly, spread],
  );
}

/** The curve as it grows, in whatever room there is, with nothing to touch. */
export function VolumeChartLive({ view }: { view: PortionsView }) {
  const { own, heat, ...data } = drawn(view);
  return (
    <Sized class="drawing" shape="fill">
      {(box) => <VolumeDrawing chart={volumeChart(data, box)} crossing={data.crossing} heat={heat} own={own} box={box} id="live-curve" />}
    </Sized>
  );
}

const STILL_SHAPE = 0.5;
const STILL_LETTERS = 48;

const TALL_SHAPE = 0.72;

/** The same chart without anything to touch, `width` CSS pixels wide: for paper. `tall`: to read from and draw on. */
export function VolumeChartStill({ view, width, tall = false }: { view: PortionsView; width: number; tall?: boolean }) {
  const { own, heat, ...data } = drawn(view);
  const id = useName();
  const box = { width, height: Math.round((tall ? TALL_SHAPE : STILL_SHAPE) * width), letter: width / STILL_LETTERS };
  return (
    <>
      <VolumeDrawing chart={volumeChart(data, box)} crossing={data.crossing} heat={heat} own={own} box={box} id={id} fine={tall} />
      <ChartLegend view={view} />
    </>
  );
}

// The students' own two lines, as they stand in a chart.

/** A line from edge to edge of the frame. */
function across({ slope_c_cm3, intercept_c }: PlacedLine, { x, y }: Frame): readonly [Point, Point] {
  const [low_cm3, high_cm3] = x.domain() as [number, number];
  const at = (volume_cm3: number): Point => [x(volume_cm3), y(intercept_c + slope_c_cm3 * volume_cm3)];
  return [at(low_cm3), at(high_cm3)];
}

function path([from, to]: readonly [Point, Point]): string {
  return `M${from[0].toFixed(1)},${from[1].toFixed(1)}L${to[0].toFixed(1)},${to[1].toFixed(1)}`;
}

interface Props {
  before: PlacedLine;
  after: PlacedLine;
  frame: Frame;
  /** Of the clip path: one page may hold two charts. */
  id: string;
}

function OwnDrawn({ before, after, frame, id }: Props) {
  const { left, right, top, bottom } = frame;
  return (
    <g class="own-drawn" clip-path={`url(#${id})`}>
      <clipPath id={id}>
        <rect x={left} y={top} width={Math.max(0, right - left)} height={Math.max(0, bottom - top)} />
      </clipPath>
      <path class="own own-before" d={path(across(before, frame))} />
      <path class="own own-after" d={path(across(after, frame))} />
    </g>
  );
}
