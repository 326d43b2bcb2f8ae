// Repeats that part company: the temperature changes of two of them, portion by portion. Pure.

import type { Repeat } from "../live/contract";

/** Two repeats, the first portion from which they stay apart, and how far they are at most / °C. */
export interface Parted {
  first: number;
  second: number;
  portion: number;
  apart_c: number;
}

/** Repeats of one hand differ by less than this share of their largest change, and by less than so many °C: engineering
 * judgement, no source. */
const PARTED_SHARE = 0.1;
const PARTED_C = 0.6;

/** Changes since the start / °C by portion number; what is in doubt is left out. */
function changes({ readings }: Repeat): Map<number, number> {
  const start_c = readings.find(({ portion }) => portion === 0)?.temperature_c ?? null;
  const found = new Map<number, number>();
  for (const { portion, temperature_c, unsure } of readings) {
    if (start_c !== null && temperature_c !== null && !unsure) found.set(portion, temperature_c - start_c);
  }
  return found;
}

function compared(one: Repeat, other: Repeat): Parted | null {
  const [here, there] = [changes(one), changes(other)];
  const both = [...here.keys()].filter((portion) => there.has(portion)).sort((a, b) => a - b);
  const apart = (portion: number) => Math.abs((here.get(portion) ?? 0) - (there.get(portion) ?? 0));
  const largest_c = Math.max(0, ...[...here.values(), ...there.values()].map(Math.abs));
  const limit_c = Math.max(PARTED_C, PARTED_SHARE * largest_c);
  const far = both.filter((portion) => apart(portion) > limit_c);
  const portion = far[0];
  if (portion === undefined) return null;
  return { first: one.repeat, second: other.repeat, portion, apart_c: Math.max(...far.map(apart)) };
}

/** The two repeats that count and lie farthest apart, where any two do. */
export function parted(repeats: readonly Repeat[]): Parted | null {
  const ended = repeats.filter(({ status }) => status === "ended");
  const pairs = ended.flatMap((one, index) => ended.slice(index + 1).map((other) => compared(one, other)));
  return pairs.reduce((worst, each) => (each && each.apart_c > (worst?.apart_c ?? 0) ? each : worst), null);
}
