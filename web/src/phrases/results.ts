// What results are said to be worth, where that depends on the numbers.

import { fixed, rounded, signed } from "../format";
import type { Interval } from "../live/results";
import { phrase } from "../words";
import { celsiusPlaces, cm3Places } from "./quantities";

/** A bias smaller than these is none / cm³, °C. */
const LEAST_BIAS_CM3 = 0.05;
const LEAST_BIAS_C = 0.01;

export function intervalText([low, high]: Interval, u_cm3: number): string {
  const places = cm3Places(u_cm3);
  return phrase("page-interval", { low: rounded(low, places), high: rounded(high, places) });
}

export function changeIntervalText([low, high]: Interval, u_c: number): string {
  const places = celsiusPlaces(u_c);
  return phrase("page-change-interval", { low: signed(low, places), high: signed(high, places) });
}

/** What the ± of the straight lines leaves out, and by how much they are expected to be off. */
export function scatterText(bias_cm3: number | null): string {
  const known = phrase("page-scatter-only");
  if (bias_cm3 === null || Math.abs(bias_cm3) < LEAST_BIAS_CM3) return known;
  const bias = fixed(Math.abs(bias_cm3), 1);
  return `${known} ${phrase("page-scatter-bias", { bias, side: bias_cm3 < 0 ? "low" : "high" })}`;
}

/** The same of the extended lines of one mixing. */
export function linesKnowText(change_c: number, bias_c: number | null): string {
  const known = phrase("page-lines-know");
  if (bias_c === null) return `${known} ${phrase("page-lines-know-shift")}`;
  if (Math.abs(bias_c) < LEAST_BIAS_C) return known;
  const bias = fixed(Math.abs(bias_c), 2);
  return `${known} ${phrase("page-lines-know-bias", { bias, side: bias_c * change_c > 0 ? "large" : "small" })}`;
}

/** The repeats that a remark is about. */
export function inRepeatsText(repeats: readonly number[]): string {
  const last = repeats[repeats.length - 1] ?? 0;
  if (repeats.length === 1) return phrase("page-in-repeat", { repeat: last });
  return phrase("page-in-repeats", { earlier: repeats.slice(0, -1).join(", "), last });
}

/** The chart of one mixing in words; `change` with its unit, null while there is none. */
export function onceChartText(repeats: number, change: string | null): string {
  if (repeats === 0) return phrase("page-once-chart-none");
  if (change === null) return phrase("page-once-chart-text", { repeats });
  return phrase("page-once-chart-text-change", { repeats, change });
}
