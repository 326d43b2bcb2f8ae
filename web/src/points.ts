// The points of the volume chart that can be read one by one: what stands at each portion. Pure, no words.

import type { Frame, Point } from "./frame";
import type { Row, Table } from "./table";

/** A temperature at this portion; `repeat` null is the mean, `ownVolume_cm3` where it is not the row's. */
export interface Value {
  repeat: number | null;
  temperature_c: number;
  ownVolume_cm3: number | null;
}

export interface PortionPoint {
  portion: number;
  volume_cm3: number;
  values: readonly Value[];
}

function valuesOf(row: Row, repeats: readonly number[]): Value[] {
  const own = row.cells.flatMap(({ reading, ownVolume_cm3 }, index): Value[] => {
    const repeat = repeats[index];
    if (repeat === undefined || reading === null || reading.temperature_c === null) return [];
    return [{ repeat, temperature_c: reading.temperature_c, ownVolume_cm3 }];
  });
  if (own.length < 2 || row.mean === null) return own;
  return [...own, { repeat: null, temperature_c: row.mean.temperature_c, ownVolume_cm3: null }];
}

/** One point per portion that has a temperature, in order of volume. */
export function portionPoints({ repeats, rows }: Table): PortionPoint[] {
  return rows
    .map((row) => ({ portion: row.portion, volume_cm3: row.volume_cm3, values: valuesOf(row, repeats) }))
    .filter(({ values }) => values.length > 0);
}

/** Where the values of a point stand. */
export function pointMarks({ volume_cm3, values }: PortionPoint, { x, y }: Frame): Point[] {
  return values.map(({ temperature_c, ownVolume_cm3 }) => [x(ownVolume_cm3 ?? volume_cm3), y(temperature_c)]);
}

/** Index of the value of `at` (ascending, `count` of them) that is nearest to `wanted`; -1 when there is none. */
export function nearest(count: number, at: (index: number) => number, wanted: number): number {
  let [low, high] = [0, count - 1];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (at(middle) < wanted) low = middle;
    else high = middle;
  }
  if (high < 0) return -1;
  return Math.abs(at(low) - wanted) <= Math.abs(at(high) - wanted) ? low : high;
}
