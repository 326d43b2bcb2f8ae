// A bench whose plan is of mixing ratios, as the page reads it; and a ratio in words.

import { placesFor, rounded } from "../../format";
import type { Plan, View } from "../../live/contract";
import type { RatioFound, RatiosResult } from "../../live/contract.generated";

export type RatiosPlan = Extract<Plan, { kind: "ratios" }>;
export type RatiosView = View & { plan: RatiosPlan; result: RatiosResult | null };
export type Found = RatioFound;

const MOST_PLACES = 3;

export const ratioPlaces = (u: number): number => placesFor(u, MOST_PLACES);
export const ratioText = (ratio: number, u: number): string => rounded(ratio, ratioPlaces(u));

/** Moles of alkali for one mole of acid in a mixture with so much alkali / cm³. */
export function ratioAt({ acid, alkali, mixtures: { total_cm3 } }: RatiosPlan, alkali_cm3: number): number {
  return (alkali.concentration_mol_dm3 * alkali_cm3) / (acid.concentration_mol_dm3 * (total_cm3 - alkali_cm3));
}

/** The volume of alkali of a mixture (from 1) / cm³. */
export const alkaliOf = ({ mixtures: { first_cm3, step_cm3 } }: RatiosPlan, cup: number): number => first_cm3 + (cup - 1) * step_cm3;
