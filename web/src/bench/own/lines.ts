// Two straight lines as a student places them: each runs through two handles that move up and down at fixed volumes.
// Pure. The handles stand off where the arms meet, and start as two flat lines, so that nothing is given away.

import { type Box, type Frame, type Point, type Range, frame, padded } from "../../chart/frame";
import type { MeanPoint, PlacedLine } from "../../live/contract";

export interface Handle {
  volume_cm3: number;
  temperature_c: number;
}

type OwnLine = readonly [Handle, Handle];
export type Side = "before" | "after";

export interface OwnLines {
  before: OwnLine;
  after: OwnLine;
}

export interface Met {
  volume_cm3: number;
  temperature_c: number;
}

/** Shares of all portions between which a line's handles stand. */
const HANDLES: Record<Side, readonly [number, number]> = { before: [0, 0.35], after: [0.65, 1] };
/** How far from the edges of the temperature axis the flat lines start, as a share of it. */
const START_SHARE = 0.08;
/** Lines whose slopes differ by less do not cross anywhere near / °C per cm³. */
const SAME_SLOPE = 1e-6;

function handleVolumes(side: Side, portion_cm3: number, count: number): readonly [number, number] {
  const [low, high] = HANDLES[side];
  return [Math.round(low * count) * portion_cm3, Math.round(high * count) * portion_cm3];
}

function flat([low_cm3, high_cm3]: readonly [number, number], temperature_c: number): OwnLine {
  return [
    { volume_cm3: low_cm3, temperature_c },
    { volume_cm3: high_cm3, temperature_c },
  ];
}

/** Two flat lines at the edges of the temperature axis `range_c`, for `count` portions of `portion_cm3`. */
export function startLines(portion_cm3: number, count: number, range_c: readonly [number, number]): OwnLines {
  const [low_c, high_c] = range_c;
  const off_c = START_SHARE * (high_c - low_c);
  return {
    before: flat(handleVolumes("before", portion_cm3, count), low_c + off_c),
    after: flat(handleVolumes("after", portion_cm3, count), high_c - off_c),
  };
}

/** Lines that were committed before, with the handles where they stand in `start`. */
export function linesFrom(start: OwnLines, before: PlacedLine, after: PlacedLine): OwnLines {
  const on = (line: OwnLine, { slope_c_cm3, intercept_c }: PlacedLine): OwnLine => {
    const at = ({ volume_cm3 }: Handle) => ({ volume_cm3, temperature_c: intercept_c + slope_c_cm3 * volume_cm3 });
    return [at(line[0]), at(line[1])];
  };
  return { before: on(start.before, before), after: on(start.after, after) };
}

/** The same lines with one handle at another temperature, kept within `range_c`. */
export function movedTo(
  lines: OwnLines,
  side: Side,
  which: 0 | 1,
  temperature_c: number,
  range_c: readonly [number, number],
): OwnLines {
  const kept_c = Math.min(range_c[1], Math.max(range_c[0], temperature_c));
  const [first, second] = lines[side];
  const moved: OwnLine =
    which === 0 ? [{ ...first, temperature_c: kept_c }, second] : [first, { ...second, temperature_c: kept_c }];
  return { ...lines, [side]: moved };
}

/** The line as slope and intercept. */
export function placedLine([first, second]: OwnLine): PlacedLine {
  const slope_c_cm3 = (second.temperature_c - first.temperature_c) / (second.volume_cm3 - first.volume_cm3);
  return { slope_c_cm3, intercept_c: first.temperature_c - slope_c_cm3 * first.volume_cm3 };
}

/** Where the lines cross; null when they do not, or not between no volume and `most_cm3`. */
export function whereTheyCross(lines: OwnLines, most_cm3: number): Met | null {
  const [before, after] = [placedLine(lines.before), placedLine(lines.after)];
  const apart = before.slope_c_cm3 - after.slope_c_cm3;
  if (Math.abs(apart) < SAME_SLOPE) return null;
  const volume_cm3 = (after.intercept_c - before.intercept_c) / apart;
  if (!(volume_cm3 > 0 && volume_cm3 <= most_cm3)) return null;
  return { volume_cm3, temperature_c: before.intercept_c + before.slope_c_cm3 * volume_cm3 };
}

/** How far one press of an arrow key moves a handle / °C: about a hundredth of the axis. */
export function keyStep_c(range_c: readonly [number, number]): number {
  return range_c[1] - range_c[0] > 8 ? 0.1 : 0.05;
}

// Geometry of the chart on which students place their own lines: mean readings, with air above for the lines to meet.

const LEAST_SPAN_C = 2;
/** Air below and above the readings, as shares of their span. */
const BELOW = 0.1;
const ABOVE = 0.35;
/** The volume axis goes on a little, so that a finger reaches the last handle. */
const BEYOND = 1.06;

/** Temperatures that lines may be drawn through / °C; whatever the readings, both edges stand off them. */
export function ownRange_c(mean: readonly MeanPoint[]): Range {
  const [low, high] = padded(mean.map(({ temperature_c }) => temperature_c), LEAST_SPAN_C);
  return [low - BELOW * (high - low), high + ABOVE * (high - low)];
}

export interface OwnChart {
  frame: Frame;
  points: readonly Point[];
  /** Each line from edge to edge, and its two handles. */
  lines: Record<keyof OwnLines, { drawn: readonly [Point, Point]; handles: readonly [Point, Point] }>;
  met: Point | null;
}

/** Lay the chart out; `most_cm3` is the volume that all portions together have. */
export function ownChart(
  mean: readonly MeanPoint[],
  lines: OwnLines,
  met: Met | null,
  most_cm3: number,
  box: Box,
): OwnChart {
  const laid = frame([0, BEYOND * most_cm3], ownRange_c(mean), box);
  const place = ({ volume_cm3, temperature_c }: Met): Point => [laid.x(volume_cm3), laid.y(temperature_c)];
  const one = (side: keyof OwnLines) => {
    const { slope_c_cm3, intercept_c } = placedLine(lines[side]);
    const at = (volume_cm3: number) => place({ volume_cm3, temperature_c: intercept_c + slope_c_cm3 * volume_cm3 });
    const [first, second] = lines[side];
    return {
      drawn: [at(0), at(BEYOND * most_cm3)] as const,
      handles: [place(first), place(second)] as const,
    };
  };
  return {
    frame: laid,
    points: mean.map(place),
    lines: { before: one("before"), after: one("after") },
    met: met && place(met),
  };
}
