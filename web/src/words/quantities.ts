// Numbers with their uncertainty, and amounts of substance, as every language writes them. Numbers have a dot here:
// the catalogue puts the reader's decimal sign and units into everything it says.

import { placesFor, rounded, short } from "../format";
import type { Substance } from "../plan";

/** A volume is never known better than to 0.01 cm³, nor a change of temperature to 0.01 °C. */
export const cm3Places = (u_cm3: number) => placesFor(u_cm3, 2);
export const celsiusPlaces = (u_c: number) => placesFor(u_c, 2);
export const joulePlaces = (u_j: number) => placesFor(u_j, 0);
export const kilojoulePlaces = (u_kj: number) => placesFor(u_kj, 1);

/** An uncertainty; `lessThan` stands before the last place when it rounds to nothing. */
export function plusMinus(u: number, places: number, lessThan: string): string {
  const text = rounded(u, places);
  return Number(text) === 0 ? `${lessThan} ${rounded(10 ** -places, places)}` : text;
}

export type Amount = Omit<Substance, "mass_g"> & { mass_g?: number | null };

/** "25 cm³" or "3 g"; and " (0.4 mol/dm³)", empty where there is no concentration. */
export function amountParts({ volume_cm3, concentration_mol_dm3, mass_g = null }: Amount): { much: string; strength: string } {
  if (mass_g !== null) return { much: `${short(mass_g, 3)} g`, strength: "" };
  const strength = concentration_mol_dm3 === null ? "" : ` (${short(concentration_mol_dm3, 4)} mol/dm³)`;
  return { much: `${short(volume_cm3 ?? 0)} cm³`, strength };
}

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
