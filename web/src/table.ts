// The readings as a table: one row per portion, one column per repeat that counts, and the mean.

import { drawnRepeats } from "./chart_volume";
import type { MeanPoint, Reading, Repeat } from "./contract";

export interface Cell {
  reading: Reading | null;
  /** The cell's own total volume / cm³, when it is not that of its row. */
  ownVolume_cm3: number | null;
  /** Why it is not sure what went in, where somebody said so. */
  unsureReason: string | null;
}

export interface Row {
  portion: number;
  /** Total added / cm³: of the mean, else of the first repeat that has it. */
  volume_cm3: number;
  cells: readonly Cell[];
  mean: MeanPoint | null;
}

export interface Table {
  repeats: readonly number[];
  rows: readonly Row[];
}

/** Volumes closer than this are the same volume. */
const SAME_CM3 = 5e-4;

function cell(repeat: Repeat, portion: number, volume_cm3: number): Cell {
  const reading = repeat.readings.find((one) => one.portion === portion) ?? null;
  const differs = reading !== null && Math.abs(reading.volume_cm3 - volume_cm3) > SAME_CM3;
  const unsureReason = repeat.portions.find((one) => one.portion === portion)?.unsure_reason ?? null;
  return { reading, ownVolume_cm3: differs ? reading.volume_cm3 : null, unsureReason };
}

/** Lay readings and means out by portion; portion 0 is the start. */
export function readingsTable(repeats: readonly Repeat[], mean: readonly MeanPoint[]): Table {
  const drawn = drawnRepeats(repeats);
  const readings = drawn.flatMap((repeat) => repeat.readings);
  const portions = [...new Set(readings.map((reading) => reading.portion))].sort((a, b) => a - b);
  return {
    repeats: drawn.map((repeat) => repeat.repeat),
    rows: portions.map((portion) => {
      const averaged = mean.find((one) => one.portion === portion) ?? null;
      const first = readings.find((reading) => reading.portion === portion);
      const volume_cm3 = averaged?.volume_cm3 ?? first?.volume_cm3 ?? 0;
      return { portion, volume_cm3, cells: drawn.map((repeat) => cell(repeat, portion, volume_cm3)), mean: averaged };
    }),
  };
}
