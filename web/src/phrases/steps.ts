// Worked numbers.

import { placesFor, rounded } from "../format";

/** A worked number as its uncertainty deserves; one without has three figures, as in school, a percentage two at most. */
export function worked(value: number, u: number | null, unit: string): string {
  if (unit === "%") return `${Math.abs(value) < 10 ? rounded(value, 1) : rounded(value, 0)} %`;
  const places = u ? placesFor(u, 6) : Math.max(0, 2 - Math.floor(Math.log10(Math.abs(value) || 1)));
  const plusMinus = u ? ` ± ${rounded(u, places)}` : "";
  // A change of enthalpy has its sign, as books write it.
  const sign = unit === "kJ/mol" && value > 0 ? "+" : "";
  return `${sign}${rounded(value, places)}${plusMinus}${unit ? ` ${unit}` : ""}`;
}
