// Numbers with their uncertainty, and amounts of substance, as every language writes them. Numbers have a dot here:
// `phrase` and `dress` put the reader's decimal sign and units into all that is shown.

import { placesFor, rounded, short } from "../format";
import type { Substance } from "../live/contract";
import { phrase, said } from "../words";

/** A volume is never known better than to 0.01 cm³, nor a change of temperature to 0.01 °C. */
export const cm3Places = (u_cm3: number) => placesFor(u_cm3, 2);
export const celsiusPlaces = (u_c: number) => placesFor(u_c, 2);
export const joulePlaces = (u_j: number) => placesFor(u_j, 0);
export const kilojoulePlaces = (u_kj: number) => placesFor(u_kj, 1);

/** A volume to the places of its uncertainty, with its unit. */
export const roundedCm3 = (volume_cm3: number, u_cm3: number) => `${rounded(volume_cm3, cm3Places(u_cm3))} cm³`;

/** An uncertainty; one that rounds to nothing is "less than" its last place. */
export function plusMinus(u: number, places: number): string {
  const text = rounded(u, places);
  return Number(text) === 0 ? phrase("page-less-than", { amount: rounded(10 ** -places, places) }) : text;
}

/** A number with so many figures, and at most so many decimals. */
export const figures = (value: number, count: number, decimals: number) => short(Number(value.toPrecision(count)), decimals);

type Amount = Omit<Substance, "mass_g"> & { mass_g?: number | null };

/** "25 cm³ of nitric acid (0.4 mol/dm³)"; without concentration where there is none, and "3 g of …" for a solid. */
export function amountText({ name, volume_cm3, concentration_mol_dm3, mass_g = null }: Amount): string {
  // With the amount: 4 g of a hydroxide are no solution of it.
  if (mass_g !== null) {
    const mass = short(mass_g, 3);
    return said({ id: "amount-mass", values: { mass_g: mass, reagent: said(name) }, text: `${mass} g of ${name}` });
  }
  const strength = concentration_mol_dm3 === null ? "" : ` (${short(concentration_mol_dm3, 4)} mol/dm³)`;
  const volume = short(volume_cm3 ?? 0);
  const amount = { id: "amount-volume", values: { volume_cm3: volume, reagent: said(name) }, text: `${volume} cm³ of ${name}` };
  return `${said(amount)}${strength}`;
}

export function capital(text: string): string {
  return text.charAt(0).toUpperCase() + text.slice(1);
}
