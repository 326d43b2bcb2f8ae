// The frame every chart stands in: plot area, scales and ticks. Pure geometry.

import { type ScaleLinear, scaleLinear } from "d3-scale";
import { decimal } from "./format";

export type Point = readonly [number, number];
export type Range = readonly [number, number];

/** Size of the drawing and of its letters, all in CSS pixels. */
export interface Box {
  width: number;
  height: number;
  letter: number;
}

export interface Tick {
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

function ticks(scale: ScaleLinear<number, number>, count: number): Tick[] {
  const write = scale.tickFormat(count);
  // d3 writes a true minus sign already.
  return scale.ticks(count).map((value) => ({ at: scale(value), text: decimal(write(value)) }));
}

/** Lay a frame out: ticks at round numbers, about one per 4.5 letters across and one per 2 letters up. */
export function frame(xRange: Range, yRange: Range, box: Box): Frame {
  const { letter } = box;
  const [left, right] = [3.1 * letter, box.width - 0.9 * letter];
  const [top, bottom] = [1.9 * letter, box.height - 3 * letter];
  const across = Math.max(2, Math.min(10, Math.floor((right - left) / (4.5 * letter))));
  const up = Math.max(2, Math.min(8, Math.floor((bottom - top) / (2.2 * letter))));
  const x = scaleLinear(xRange, [left, Math.max(left + 1, right)]);
  const y = scaleLinear(yRange, [Math.max(top + 1, bottom), top]).nice(up);
  return { left, right, top, bottom, x, y, xTicks: ticks(x, across), yTicks: ticks(y, up) };
}
