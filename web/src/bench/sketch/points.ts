// The curve that a group expects, as temperatures at the volumes of its portions. No DOM, no words.

import type { Range } from "../../chart/frame";

/** Temperature / °C at each volume, from the start on; null where nothing is drawn yet. */
export type Drawn = readonly (number | null)[];

/** Steps of a key press, and how finely a temperature is kept / °C. */
export const STEP_C = 0.5;
const KEPT_C = 0.1;
/** So far below and above the start there is room to draw / °C: a solution may cool, and mostly warms. */
const BELOW_C = 6;
const ABOVE_C = 14;

export const rangeAbout = (start_c: number): Range => [Math.round(start_c) - BELOW_C, Math.round(start_c) + ABOVE_C];

const within = (value: number, [low, high]: Range) => Math.min(high, Math.max(low, value));
const kept = (temperature_c: number, range_c: Range) => Number((Math.round(within(temperature_c, range_c) / KEPT_C) * KEPT_C).toFixed(1));

/** Nothing drawn but the start, which is known. */
export const blank = (count: number, start_c: number): Drawn => [kept(start_c, rangeAbout(start_c)), ...Array<null>(count).fill(null)];

/** A stroke from one place to another, each as a number of portions (with fractions) and a temperature / °C: it sets every
 * volume on its way. */
export function stroked(drawn: Drawn, from: readonly [number, number], to: readonly [number, number], range_c: Range): Drawn {
  const [[x1, y1], [x2, y2]] = from[0] <= to[0] ? [from, to] : [to, from];
  const nearest = Math.round(to[0]);
  return drawn.map((old, index) => {
    if (index >= x1 && index <= x2 && x2 > x1) return kept(y1 + ((y2 - y1) * (index - x1)) / (x2 - x1), range_c);
    return index === nearest ? kept(to[1], range_c) : old;
  });
}

/** One volume set higher or lower; what is not drawn yet begins where the curve before it ends. */
export function nudged(drawn: Drawn, index: number, by_c: number, range_c: Range): Drawn {
  const before = drawn.slice(0, index + 1).filter((one): one is number => one !== null).pop() ?? range_c[0];
  return drawn.map((old, at) => (at === index ? kept((old ?? before) + by_c, range_c) : old));
}

/** What is sent and drawn: the volumes that have a temperature. */
export function pointsOf(drawn: Drawn, portion_cm3: number): [number, number][] {
  return drawn.flatMap((temperature_c, index): [number, number][] => (temperature_c === null ? [] : [[Number((index * portion_cm3).toFixed(3)), temperature_c]]));
}

/** The same back; volumes that no portion ends at are left out. */
export function drawnOf(points: readonly (readonly [number, number])[], count: number, portion_cm3: number): Drawn {
  return Array.from({ length: count + 1 }, (_, index) => points.find(([volume_cm3]) => Math.abs(volume_cm3 - index * portion_cm3) < 0.001)?.[1] ?? null);
}
