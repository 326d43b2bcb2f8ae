// What the station says of a plan while it is chosen, and the plan that goes along from page to page in one tab.

import { get } from "./get";
import { type Values, formOf, valuesOf, withoutPrepared } from "./plan_form";
import { post } from "./post";

export interface Statement {
  code: string;
  text: string;
}

export interface Label {
  classified: boolean;
  signal: string | null;
  pictograms: readonly string[];
  hazards: readonly Statement[];
  mass_percent: number | null;
  source: string;
}

export interface Hazardous {
  name: string;
  concentration_mol_dm3: number | null;
  /** The class is to find it: taken as strong as this plan could find it. */
  assumed: boolean;
  mass_g: number | null;
  label: Label;
  near_edge: boolean;
}

export interface Problem {
  where: readonly string[];
  text: string;
  /** The key is none of a plan's. */
  unknown?: boolean;
}

/** `toml` is null for who may not save. */
export interface Checked {
  problems: readonly Problem[];
  values: Values;
  plan: Values | null;
  toml: string | null;
  name: string | null;
  hazards: readonly Hazardous[] | null;
  minutes: Record<string, number> | null;
  /** What is left of a lesson of so many minutes; negative where it is too short. */
  left_min: Record<string, number> | null;
  strong: readonly string[] | null;
}

export interface LinesPromised {
  bias_cm3: number;
  u_end_point_cm3: number;
  u_mean_cm3: number;
}

export interface HeatPromised extends LinesPromised {
  u_acid_mol_dm3: number;
  u_enthalpy_kj_mol: number;
}

export interface MethodsPromised {
  straight_lines: LinesPromised | null;
  heat_balance: HeatPromised | null;
}

export interface Compared extends MethodsPromised {
  factor: number;
  acid_mol_dm3: number;
  alkali_mol_dm3: number;
  glassware: string;
  u_portion_cm3: number;
  rise_c: number | null;
}

interface AnyPromise {
  refused_plan?: Problem;
  start_c: number | null;
  enthalpy_kj_mol: number | null;
  refused: Record<string, string>;
  warnings: readonly string[];
  assumed: readonly string[];
}

export interface PortionsPromise extends AnyPromise {
  kind: "portions";
  acid: { concentration_mol_dm3: number; basis: string; range_mol_dm3: readonly [number, number] | null };
  end_point_cm3: number;
  points: { before: number; after: number };
  rise_c: number | null;
  curve: readonly { volume_cm3: number; temperature_c: number }[] | null;
  methods: Record<"probe" | "thermometer_0_1_c" | "thermometer_1_c", MethodsPromised> | null;
  comparison: readonly Compared[] | null;
}

export interface OncePromised {
  bias_c: number;
  u_change_c: number;
  u_mean_c: number;
  u_enthalpy_kj_mol: number;
}

export interface OncePromise extends AnyPromise {
  kind: "once";
  change_c: number | null;
  enthalpy_of?: string;
  curve: readonly { time_s: number; temperature_c: number }[] | null;
  methods: { straight_lines: OncePromised | null; heat_balance: OncePromised | null } | null;
}

export type Promised = PortionsPromise | OncePromise;

export interface Reagent {
  name: string;
  formula: string;
  acid: boolean;
  alkali: boolean;
  sparingly_soluble: boolean;
}

export interface Plans {
  bench: Values;
  ready: readonly { name: string; plan: Values }[];
  reagents: readonly Reagent[];
  glassware: readonly { name: string; u_portion_cm3: number }[];
}

/** An answer, or why there is none; `words` are the station's, null when it did not answer. */
export type Answer<Found> = { found: Found } | { found: null; code: string | null; words: string | null };

const ANSWER_MS = 70_000;

/** Ask the station to compute. */
export async function compute<Found>(path: string, question: object): Promise<Answer<Found>> {
  const answer = await post(path, question, ANSWER_MS);
  const body = (await answer?.json().catch(() => null)) as (Found & { detail?: string; code?: string }) | null;
  if (answer?.ok && body) return { found: body };
  return { found: null, code: body?.code ?? null, words: body?.detail ?? null };
}

export const plansNow = (): Promise<Plans | null> => get<Plans>("/api/plans").catch(() => null);

const KEPT = "plan";

/** Keep the plan for the other pages of this tab; what staff made up only while staff are signed in. */
export function keepPlan(values: Values, staff: boolean): void {
  try {
    sessionStorage.setItem(KEPT, JSON.stringify(staff ? values : withoutPrepared(values)));
  } catch {
    // A device that keeps nothing starts from the bench's plan.
  }
}

function keptPlan(staff: boolean): Values | null {
  try {
    const kept = JSON.parse(sessionStorage.getItem(KEPT) ?? "null") as Values | null;
    return kept && !staff ? withoutPrepared(kept) : kept;
  } catch {
    return null;
  }
}

/** The plan that this tab is about: what was chosen last, else the bench's; the bench's whole, also when what was chosen
 * is the same without what only staff know. */
export function planToBegin({ bench }: Plans, staff: boolean): Values {
  const kept = keptPlan(staff);
  const same = (one: Values, other: Values) => JSON.stringify(valuesOf(formOf(one))) === JSON.stringify(valuesOf(formOf(other)));
  return kept && !same(kept, withoutPrepared(bench)) ? kept : bench;
}
