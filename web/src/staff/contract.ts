// What the station sends to the pages of staff, made from its own OpenAPI document: what it says of a plan, the
// preparation of a class, checks of probes.

import type {
  CheckShown,
  CheckedShown,
  Checks as ChecksAnswer,
  CupShown,
  OncePromise,
  PlanAnswer,
  Plans as PlansAnswer,
  PortionsPromise,
  RefusedPlan,
  RegisteredProbe,
} from "../live/contract.generated";
import type { Plan } from "../live/contract";
import type { Values } from "./plan/form";

export type {
  Bottle,
  Compared,
  Hazardous,
  KitShown,
  LabelShown as Label,
  LessonShown as Lesson,
  MethodsPromised,
  Problem,
  ReagentShown as Reagent,
  Section,
  Sheet,
  Warned as Warning,
} from "../live/contract.generated";

/** A plan is filled in and sent back as a form has it: tables of keys with plain values. */
export type PlanChecked = Omit<PlanAnswer, "plan" | "values"> & { plan: Values | null; values: Values };
export type Plans = Omit<PlansAnswer, "bench" | "ready"> & {
  bench: Values;
  ready: readonly { name: string; plan: Values }[];
};

export type { OncePromise, PortionsPromise };

/** What the promises of plans of all kinds have; what else there is, the kind's own form knows. */
type OfAll = Pick<PortionsPromise, "practical" | "start_c" | "enthalpy_kj_mol" | "minutes" | "refused" | "warnings" | "assumed">;
export type Promised = OfAll & { kind: Plan["kind"] } & Partial<RefusedPlan>;

/** An answer, or why there is none; `words` are the station's, null when it did not answer. */
export type Answer<Found> = { found: Found } | { found: null; code: string | null; words: string | null };

export interface Point {
  probe_c: number;
  reference_c: number;
}

/** What a check found: numbers by name; which there are depends on the check. `points` are a comparison's. */
export type Found = Readonly<Record<string, number>> & { readonly points?: readonly Point[] };

export type CheckKind = CheckShown["check"];
export type Check = Omit<CheckShown, "found" | "points"> & { found: Found | null; points: readonly Point[] };
export type Checked = Omit<CheckedShown, "values"> & { values: Found };
export type Probe = Omit<RegisteredProbe, "checks"> & { checks: readonly Checked[] };
type Cup = Omit<CupShown, "values"> & { values: Found };
export type Checks = Omit<ChecksAnswer, "check" | "probes" | "cups"> & {
  check: Check | null;
  probes: readonly Probe[];
  cups: readonly Cup[];
};
