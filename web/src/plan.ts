// The two kinds of practical: portions of an alkali to an acid, or one addition at one marked moment.

import type { View } from "./contract";
import type { OnceResult, PortionsResult } from "./results";
import { words } from "./words";

interface AnyPlan {
  title: string;
  repeats: number;
  results: "at once" | "after own reading" | "when shown";
  prompts: "station" | "own judgement";
}

export interface PortionsPlan extends AnyPlan {
  kind: "portions";
  acid: { name: string; volume_cm3: number; concentration_mol_dm3: number | null };
  alkali: { name: string; concentration_mol_dm3: number };
  portions: { volume_cm3: number; count: number };
}

/** A solution has a volume and a concentration, water only a volume, a weighed solid a mass. */
export interface Substance {
  name: string;
  volume_cm3: number | null;
  concentration_mol_dm3: number | null;
  mass_g: number | null;
}

export interface OncePlan extends AnyPlan {
  kind: "once";
  liquid: Omit<Substance, "mass_g">;
  addition: Substance & { temperature_c: number | null };
  /** How long the temperature is recorded before and after the moment of mixing / s. */
  timing: { before_s: number; after_s: number };
}

export type Plan = PortionsPlan | OncePlan;

export type PortionsView = View & { plan: PortionsPlan; result: PortionsResult | null };
export type OnceView = View & { plan: OncePlan; result: OnceResult | null };

/** A plan says its kind, and its results are of that kind. */
export function isOnce(view: View): view is OnceView {
  return view.plan.kind === "once";
}

/** Whether what is added is a weighed solid. */
export function addsSolid(plan: Plan): boolean {
  return plan.kind === "once" && plan.addition.mass_g !== null;
}

/** What is added, in a word: a class knows the alkali, anything else goes by its name. */
export function addedWord(plan: Plan): string {
  return plan.kind === "once" ? plan.addition.name : words.alkali;
}

/** What a correction is about. */
export function portionWord(plan: Plan, portion: number): string {
  return plan.kind === "once" ? words.whole(plan.addition.name) : words.portion(portion);
}
