// How far the own reading is from a computed one.

import { rounded } from "../format";
import { phrase } from "../words";

/** The distance as it is shown; null when it rounds to nothing. */
function apartOf(own: number, computed: number, places: number): string | null {
  const apart = rounded(Math.abs(own - computed), places);
  return Number(apart) === 0 ? null : apart;
}

export function offText(own_cm3: number, computed_cm3: number): string {
  const apart = apartOf(own_cm3, computed_cm3, 1);
  if (apart === null) return phrase("page-own-lines-same");
  return phrase("page-own-lines-off", { apart, side: own_cm3 > computed_cm3 ? "more" : "less" });
}

export function offChangeText(own_c: number, computed_c: number): string {
  const apart = apartOf(own_c, computed_c, 2);
  if (apart === null) return phrase("page-own-lines-same");
  return phrase("page-own-lines-off-change", { apart, side: own_c > computed_c ? "higher" : "lower" });
}
