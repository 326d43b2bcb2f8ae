// The station's HTTP contract as the page reads it. All `time_s` are bench seconds, which may run faster than the
// wall's (`speed`). Nothing here knows how a message arrives or how it is shown.

import type { Plan } from "./plan";
import type { Result } from "./results";

/** Bench time / s, temperature / °C; null marks a bad sample. */
export type Sample = readonly [number, number | null];

export interface Live {
  temperature_c: number | null;
  time_s: number;
  bad: string | null;
}

export interface LastGood {
  temperature_c: number;
  time_s: number;
}

export interface Settle {
  left_s: number | null;
  sure: number | null;
}

/** "none": an ordinary thermometer is used on this bench. */
export type Probe = "ok" | "failing" | "lost" | "none";

export interface Instruction {
  code: string;
  text: string;
  detail: string | null;
  act: string | null;
  portion: number | null;
  label: string | null;
}

/** One addition; `time_s` counts from the start of its repeat. */
export interface Portion {
  portion: number;
  time_s: number;
  volume_cm3: number;
  early: boolean;
  unsure: boolean;
  unsure_reason: string | null;
}

/** One settled temperature; `volume_cm3` is the total added so far; portion 0 is the start. */
export interface Reading {
  portion: number;
  volume_cm3: number;
  temperature_c: number | null;
  u_c: number | null;
  settled: boolean;
  unsure: boolean;
  reason: string;
  /** Typed by hand from an ordinary thermometer. */
  typed: boolean;
  /** When it was put down / s since the start of its repeat. */
  time_s: number;
}

export interface Repeat {
  repeat: number;
  status: "running" | "ended" | "set aside";
  reason: string | null;
  /** Whether a repeat that was set aside can count again. */
  restorable: boolean;
  started_s: number;
  portions: Portion[];
  readings: Reading[];
}

/** Readings of the same portion number together; `volume_cm3` is their mean total. */
export interface MeanPoint {
  portion: number;
  volume_cm3: number;
  temperature_c: number;
  count: number;
}

/** Something only a person can know, asked until it is answered. */
export interface Question {
  id: string;
  repeat: number;
  portion: number;
  code: string;
  text: string;
  answers: readonly { answer: string; label: string }[];
}

/** T = intercept_c + slope_c_cm3 · V, as a student placed it. */
export interface PlacedLine {
  slope_c_cm3: number;
  intercept_c: number;
}

/** What the students read off their own lines; all null when they could not read anything. */
export interface OwnReading {
  end_point_cm3: number | null;
  change_c: number | null;
  before: PlacedLine | null;
  after: PlacedLine | null;
  time_s: number;
}

/** Whether results may be seen yet, and what they wait for. */
export interface Gate {
  rule: "at once" | "after own reading" | "when shown";
  shown: boolean;
  waits_for: null | "end" | "own reading" | "staff";
}

export interface Note {
  id: number;
  text: string;
  repeat: number | null;
  portion: number | null;
  time_s: number;
  withdrawn: boolean;
}

/** `division_c` null: not told yet. */
export type Thermometer = { kind: "probe" } | { kind: "typed"; division_c: number | null };

export interface HazardStatement {
  code: string;
  text: string;
}

export interface GuideSubstance {
  name: string;
  amount: string;
  concentration_mol_dm3: number | null;
  pictograms: readonly string[];
  signal: string | null;
  hazards: readonly HazardStatement[];
  basis: string;
  /** Taken for a concentration that the students are to find. */
  assumed_mol_dm3: number | null;
}

/** What to know before the start, and how to clear up. */
export interface Guide {
  in_cup: readonly GuideSubstance[];
  added: readonly GuideSubstance[];
  cautions: readonly string[];
  clearing_up: readonly string[];
  first: string;
}

/** What the station says of itself, without the samples. */
export interface View {
  seq: number;
  boot: string;
  time_s: number;
  speed: number;
  bench: { name: string; virtual: boolean; read_only?: boolean; in_memory?: boolean; panel: string; language?: string | null; units?: string };
  /** Why nothing can be kept just now, in words. */
  fault: string | null;
  /** How the link to the room is; null where there is no room. */
  link?: { up: boolean; text: string; waiting: number } | null;
  plan: Plan;
  state: "ready" | "alkali" | "start" | "pour" | "settle" | "rinse" | "paused" | "done";
  instruction: Instruction;
  other_acts: string[];
  repeat: number;
  repeats_planned: number;
  portion: number;
  portions_planned: number;
  total_added_cm3: number;
  settle: Settle | null;
  live: Live | null;
  last_good: LastGood | null;
  probe: Probe;
  alkali_temperature_c: number | null;
  /** Whether staff silenced the buzzer; null: as in the settings. */
  silent: boolean | null;
  repeats: Repeat[];
  mean: MeanPoint[];
  /** Null until `results.shown`. */
  result: Result | null;
  results: Gate;
  own_reading: OwnReading | null;
  group: string | null;
  notes: readonly Note[];
  /** What was added to what the probe says, and in which repeats; all later ones where none is named. */
  corrections: readonly { repeats: readonly number[]; text: string }[];
  thermometer: Thermometer;
  /** Another group's readings are shown in place of the own ones. */
  adopted: { label: string; repeats: number } | null;
  guide: Guide;
  questions: readonly Question[];
}

export interface State extends View {
  trace: { repeat: number; samples: Sample[] };
}

/** The whole trace of the repeat that began at `started_s`; times since its start. */
export interface Samples {
  repeat: number;
  started_s: number;
  samples: Sample[];
}

export interface LiveMessage {
  time_s: number;
  settle: Settle | null;
  live: Live | null;
  last_good: LastGood | null;
  probe: Probe;
}

export interface Happening {
  seq: number;
  time_s: number;
  kind: string;
  body: { temperature_c?: number | null };
}

/** Everything the page can hear. */
export type Message =
  | { kind: "state"; data: State }
  | { kind: "view"; data: View }
  | { kind: "live"; data: LiveMessage }
  | { kind: "happened"; data: Happening }
  | { kind: "samples"; data: Samples }
  /** From the page itself: which repeat's whole trace a person has opened. */
  | { kind: "open"; data: { repeat: number | null } }
  | { kind: "reset" };
