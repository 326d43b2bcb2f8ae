// What a check of the probe found about its slope.

import { phrase } from "../words";

/** How much each degree of the probe is too large or too small / %, with ± and, where it is known, the 95 % interval. */
export function slopeText(at: string, slope: string, u: string, within: string | null, too: "large" | "small"): string {
  if (Number(slope) === 0) {
    if (within === null) return phrase("page-checks-slope-right", { at, u });
    return phrase("page-checks-slope-right-within", { at, u, within });
  }
  if (within === null) return phrase("page-checks-slope", { at, slope, u, too });
  return phrase("page-checks-slope-within", { at, slope, u, too, within });
}
