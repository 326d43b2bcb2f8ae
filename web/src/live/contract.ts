// The station's HTTP contract as the page reads it: types made from the station's own OpenAPI document, under the
// page's names. All `time_s` are bench seconds, which may run faster than the wall's (`speed`).

import type {
  BenchState,
  BenchView,
  Happening as AnyHappening,
  LiveNow,
  OncePlan as AnyOncePlan,
  OnceResult,
  PortionsPlan as AnyPortionsPlan,
  PortionsResult,
  Standing,
  Trace,
} from "./contract.generated";

export type {
  Band,
  GuideSubstance,
  Instruction,
  LastGood,
  MeanPoint,
  Note,
  OwnReading,
  OwnStep,
  PlacedLine,
  Portion,
  Practice,
  ReadingShown as Reading,
  RepeatShown as Repeat,
} from "./contract.generated";

/** Time / s, temperature / °C; null marks a bad sample. */
export type Sample = Trace["samples"][number];

/** A plan as it is shown is always called something. */
type Titled<Plan> = Plan & { title: string };
export type PortionsPlan = Titled<AnyPortionsPlan>;
export type OncePlan = Titled<AnyOncePlan>;
/** A plan of any kind. */
export type Plan = Titled<BenchView["plan"]>;

/** A solution has a volume and a concentration, water only a volume, a weighed solid a mass. */
export type Substance = Pick<OncePlan["addition"], "name" | "volume_cm3" | "concentration_mol_dm3" | "mass_g">;

/** What the station says of itself, without the samples. */
export type View = Omit<BenchView, "plan"> & { plan: Plan };
export type State = View & Pick<BenchState, "trace">;

/** What a view leaves out for who knows it already. */
type Known = Pick<View, "repeats" | "mean">;

/** What the station tells a page that knows the repeats already: see `repeats_id`. */
export type Told<Whole extends View> = Omit<Whole, keyof Known> & Partial<Known>;

/** The whole trace of the repeat that began at `started_s`; times since its start. */
export type Samples = Trace & { started_s: number };

/** One event of the journal; the page reads a sample's temperature itself. */
export type Happening = AnyHappening & { body: { temperature_c?: number | null } };

/** Everything the page can hear. */
export type Message =
  | { kind: "state"; data: Told<State> }
  | { kind: "view"; data: Told<View> }
  | { kind: "live"; data: LiveNow }
  | { kind: "happened"; data: Happening }
  | { kind: "samples"; data: Samples }
  /** From the page itself: which repeat's whole trace a person has opened. */
  | { kind: "open"; data: { repeat: number | null } }
  | { kind: "reset" };

export type PortionsView = View & { plan: PortionsPlan; result: PortionsResult | null };
export type OnceView = View & { plan: OncePlan; result: OnceResult | null };

// Who a device is to the station.

export type { Standing };
export type Role = Standing["role"];
export type Staff = Extract<Role, "teacher" | "technician">;
