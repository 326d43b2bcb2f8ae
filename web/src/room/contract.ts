// The room's HTTP contract as its page reads it. Ages and waits are seconds; `waits_s` and `usual_s` are bench time.

export type StepName = "ready" | "alkali" | "start" | "pour" | "settle" | "rinse" | "paused" | "done" | "unknown";

export const CODES = [
  "trouble",
  "unreadable",
  "silent",
  "probe_lost",
  "bad_readings",
  "not_begun",
  "stuck",
  "slow",
  "paused",
  "behind",
  "question",
  "started_again",
  "set_aside",
] as const;
export type Code = (typeof CODES)[number];

/** 0: fine, 1: a note, 2: have a look, 3: needs help. */
export type Need = 0 | 1 | 2 | 3;

export interface Reason {
  need: Need;
  code: Code;
  seconds?: number;
  text?: string;
  count?: number;
}

export interface Tile {
  bench: string;
  name: string;
  group: string | null;
  plan: string | null;
  state: StepName;
  repeat: number;
  repeats_planned: number;
  portion: number;
  portions_planned: number;
  progress: number;
  temperature_c: number | null;
  /** How long ago anything was heard, when the room told this; null: never. */
  age_s: number | null;
  waits_s: number;
  usual_s: number | null;
  questions: readonly { id: string; text: string }[];
  probe: string;
  silent: boolean;
  results_shown: boolean;
  repeats: readonly { repeat: number; status: string }[];
  need: Need;
  reasons: readonly Reason[];
}

export interface Lesson {
  lesson: number;
  label: string;
  began: string;
  ended: string | null;
  /** How many benches took part; in the list of lessons only. */
  benches?: number;
}

export interface OrderLeft {
  order: number;
  bench: string;
  act: string;
  state: "pending" | "refused";
  why: string | null;
}

export interface Room {
  lesson: Lesson | null;
  order: readonly string[];
  tiles: Readonly<Record<string, Tile>>;
  fault: string | null;
  class: { version: number; shown: boolean; waits_for: readonly string[]; taking_part: number };
  orders: readonly OrderLeft[];
  about: { name: string; language?: string | null; units?: string };
  addresses?: readonly string[];
}

export interface TilesMessage {
  order: readonly string[];
  tiles: Readonly<Record<string, Tile>>;
}

export type Method = "heat_balance" | "straight_lines";
export type QuantityName = "end_point_cm3" | "enthalpy_kj_mol" | "change_c";

export interface Value {
  bench: string;
  value: number;
  u: number;
  low: number;
  high: number;
}

export interface Pooled {
  count: number;
  mean: number;
  u: number;
  low: number;
  high: number;
  between: number;
  sd: number;
  p: number;
}

export interface Quantity {
  quantity: QuantityName;
  method: Method;
  values: readonly Value[];
  pooled: Pooled | null;
  silent: readonly string[];
}

export interface ClassBench {
  bench: string;
  name: string;
  group: string | null;
  repeats: number;
  pooled: boolean;
  refused: Readonly<Record<string, string>>;
  notes: readonly string[];
  aside: readonly { repeat: number; reason: string }[];
}

export interface ClassResult {
  benches: readonly ClassBench[];
  quantities: readonly Quantity[];
  curve: readonly { portion: number; volume_cm3: number; change_c: number; sd_c: number | null; count: number }[];
  anomalies: readonly { bench: string; text: string; reasons: readonly string[] }[];
  other_plans: readonly string[];
  words: readonly string[];
}

export interface ClassAnswer {
  lesson: Lesson | null;
  shown: boolean;
  waits_for: readonly string[];
  taking_part: number;
  /** It is shown, and being computed. */
  computing: boolean;
  result: ClassResult | null;
}
