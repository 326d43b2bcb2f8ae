// The numbers of each repeat of a practical that mixes once: a row for each quantity, a column for each repeat.

import { drawnRepeats } from "./chart_volume";
import type { MeanPoint, Repeat } from "./contract";
import type { OnceRepeat, OnceResult } from "./results";
import { words } from "./words";

export interface OnceRow {
  quantity: string;
  /** In the order of the repeats; null is missing. */
  values_c: readonly (number | null)[];
  mean_c: number | null;
}

export interface OnceTable {
  repeats: readonly number[];
  rows: readonly OnceRow[];
}

/** Rows that nobody has a number for yet are left out. */
export function onceTable(repeats: readonly Repeat[], mean: readonly MeanPoint[], result: OnceResult | null): OnceTable {
  const drawn = drawnRepeats(repeats);
  const read = (portion: number): OnceRow["values_c"] =>
    drawn.map(({ readings }) => readings.find((one) => one.portion === portion)?.temperature_c ?? null);
  const found = (pick: (repeat: OnceRepeat) => number | undefined): OnceRow["values_c"] =>
    drawn.map(({ repeat }) => {
      const one = result?.repeats.find((each) => each.repeat === repeat);
      return (one && pick(one)) ?? null;
    });
  const meanAt = (portion: number) => mean.find((one) => one.portion === portion)?.temperature_c ?? null;
  const rows: OnceRow[] = [
    { quantity: words.rows.start, values_c: read(0), mean_c: meanAt(0) },
    { quantity: words.rows.before, values_c: found((one) => one.straight_lines?.before.at_mixing_c), mean_c: null },
    { quantity: words.rows.after, values_c: found((one) => one.straight_lines?.after.at_mixing_c), mean_c: null },
    {
      quantity: words.rows.change,
      values_c: found((one) => one.straight_lines?.change_c),
      mean_c: result?.straight_lines?.change_c ?? null,
    },
    {
      quantity: words.rows.heatChange,
      values_c: found((one) => one.heat_balance?.change_c),
      mean_c: result?.heat_balance?.change_c ?? null,
    },
    { quantity: words.rows.end, values_c: read(1), mean_c: meanAt(1) },
  ];
  return {
    repeats: drawn.map(({ repeat }) => repeat),
    rows: rows.filter(({ values_c }) => values_c.some((value) => value !== null)),
  };
}
