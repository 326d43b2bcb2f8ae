// What every chart is made of, as numbers: plot area, scales, ticks, paths, points. No DOM, no words.

import { type ScaleLinear, scaleLinear } from "d3-scale";
import { decimal, fixed } from "../format";
import type { Sample } from "../live/contract";

export type Point = readonly [number, number];
export type Range = readonly [number, number];

/** Size of the drawing and of its letters, all in CSS pixels. */
export interface Box {
  width: number;
  height: number;
  letter: number;
}

interface Tick {
  at: number;
  text: string;
}

export interface Frame {
  left: number;
  right: number;
  top: number;
  bottom: number;
  x: ScaleLinear<number, number>;
  y: ScaleLinear<number, number>;
  xTicks: readonly Tick[];
  yTicks: readonly Tick[];
}

/** Extent of `values` with a little air, at least `least` wide; a room's temperature when there is nothing yet. */
export function padded(values: readonly number[], least: number): Range {
  if (values.length === 0) return [20, 20 + least];
  // Not spread into Math.min: a long trace is more than some engines take as arguments.
  const [low, high] = values.reduce(([low, high], value) => [Math.min(low, value), Math.max(high, value)], [Infinity, -Infinity]);
  const air = 0.08 * Math.max(least, high - low);
  // What is missing to the least span goes on top: there the curve is going to grow.
  return [low - air, Math.max(high + air, low - air + least)];
}

/** Numbers of an axis that are equally far apart, each with as many decimals as their distance needs. */
export function tickTexts(values: readonly number[]): string[] {
  const step = (values[1] ?? 1) - (values[0] ?? 0);
  const decimals = step > 0 ? Math.max(0, Math.ceil(-Math.log10(step) - 1e-9)) : 0;
  return values.map((value) => decimal(fixed(value, decimals)));
}

function ticks(scale: ScaleLinear<number, number>, count: number): Tick[] {
  const values = scale.ticks(count);
  const texts = tickTexts(values);
  return values.map((value, index) => ({ at: scale(value), text: texts[index] ?? "" }));
}

/** Lay a frame out: ticks at round numbers, about one per 4.5 letters across and one per 2 letters up. A compact one has
 * the name of its axis across on the line of the ticks. */
export function frame(xRange: Range, yRange: Range, box: Box, compact = false): Frame {
  const { letter } = box;
  const [left, right] = [(compact ? 3.4 : 3.1) * letter, box.width - 0.9 * letter];
  const [top, bottom] = [1.9 * letter, box.height - (compact ? 1.7 : 3) * letter];
  const across = Math.max(2, Math.min(10, Math.floor((right - left) / (4.5 * letter))));
  const up = Math.max(2, Math.min(8, Math.floor((bottom - top) / (2.2 * letter))));
  const x = scaleLinear(xRange, [left, Math.max(left + 1, right)]);
  const y = scaleLinear(yRange, [Math.max(top + 1, bottom), top]);
  // Where there is little room none is given away to reach a round number.
  if (!compact) y.nice(up);
  return { left, right, top, bottom, x, y, xTicks: ticks(x, across), yTicks: ticks(y, up) };
}

// SVG paths of curves and marks. Written here rather than taken from a library: all of a shape library's curves and
// pies would travel with the first view, for one polyline and five marks.

const pixel = (value: number) => String(Math.round(10 * value) / 10);

/** A straight line from point to point, to a tenth of a pixel. */
export function through(points: readonly Point[]): string {
  return points.map(([x, y], index) => `${index === 0 ? "M" : "L"}${pixel(x)},${pixel(y)}`).join("");
}

/** The curve of a trace; a bad sample leaves a gap, and a sample alone between two gaps is a dot. */
export function tracePath(samples: readonly Sample[], x: (time_s: number) => number, y: (temperature_c: number) => number): string {
  let path = "";
  let open = 0;
  for (const [time_s, temperature_c] of samples) {
    if (temperature_c === null) {
      if (open === 1) path += "Z";
      open = 0;
      continue;
    }
    path += `${open === 0 ? "M" : "L"}${pixel(x(time_s))},${pixel(y(temperature_c))}`;
    open += 1;
  }
  return open === 1 ? `${path}Z` : path;
}

/** Outlines of the marks, each about as large to the eye, for a mark 2 wide and high about its middle. */
const MARKS: readonly ((half: number) => readonly Point[] | null)[] = [
  () => null, // a circle is no polygon
  (half) => [[-half, -half], [half, -half], [half, half], [-half, half]],
  (half) => [[0, -1.25 * half], [1.2 * half, 0.85 * half], [-1.2 * half, 0.85 * half]],
  (half) => [[0, -1.4 * half], [1.05 * half, 0], [0, 1.4 * half], [-1.05 * half, 0]],
  (half) => [[0, 1.25 * half], [1.2 * half, -0.85 * half], [-1.2 * half, -0.85 * half]],
];

/** How many different marks there are. */
export const MARK_COUNT = MARKS.length;

/** Outline of a mark about the origin, `size` pixels wide; shapes go round after the last. */
export function markPath(shape: number, size: number): string {
  const half = 0.42 * size;
  const corners = MARKS[shape % MARK_COUNT]?.(half);
  if (corners) return `${through(corners)}Z`;
  const radius = pixel(1.1 * half);
  return `M-${radius},0a${radius},${radius} 0 1,0 ${2 * Number(radius)},0a${radius},${radius} 0 1,0 -${2 * Number(radius)},0`;
}

// What can be read off a chart at one portion.

/** A temperature at this portion; `repeat` null is the mean, `ownVolume_cm3` where it is not the row's. */
export interface PointValue {
  repeat: number | null;
  temperature_c: number;
  ownVolume_cm3: number | null;
}

export interface PortionPoint {
  portion: number;
  volume_cm3: number;
  values: readonly PointValue[];
}
