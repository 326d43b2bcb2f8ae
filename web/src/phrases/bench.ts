// What stands around the instruction, where it needs more than one message.

import { fixed, short } from "../format";
import type { OncePlan, Portion } from "../live/contract";
import { phrase } from "../words";

/** How much was mixed in: the mass of a solid, with the digits that were typed of it, else the volume. */
export function addedOnceText({ addition: { mass_g } }: OncePlan, total_cm3: number, added: Portion | undefined): string {
  if (mass_g === null) return phrase("page-volume", { volume: short(added ? total_cm3 : 0) });
  if (!added) return phrase("page-added-mass", { mass: 0 });
  const weighed = added.mass_g === null || added.places === null ? short(added.mass_g ?? mass_g, 3) : fixed(added.mass_g, added.places);
  return phrase("page-added-mass", { mass: weighed });
}

/** How much longer the station waits; under a second it may end at any moment. */
export function timeLeftText(left_s: number): string {
  return left_s < 1 ? phrase("page-left-now") : phrase("page-left", { seconds: Math.ceil(left_s) });
}

/** The name of a repeat to choose, with the volume that went in where there is one. */
export function onceNameText(repeat: number, volume_cm3: number): string {
  if (volume_cm3 > 0) return phrase("page-once-name", { repeat, volume: short(volume_cm3) });
  return phrase("page-repeat-name", { repeat });
}

/** How far a typed temperature is from the last one. */
export function farOffText(change_c: number): string {
  return phrase("page-doing-far-off", { change: fixed(Math.abs(change_c), 1), side: change_c > 0 ? "above" : "below" });
}
