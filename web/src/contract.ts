// The station's HTTP contract as the page reads it. All `time_s` are bench seconds, which may run faster than the
// wall's (`speed`). Nothing here knows how a message arrives or how it is shown.

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

export type Probe = "ok" | "failing" | "lost";

export interface Instruction {
  code: string;
  text: string;
  detail: string | null;
  act: string | null;
  portion: number | null;
  label: string | null;
}

export interface Plan {
  title: string;
  acid: { name: string; volume_cm3: number; concentration_mol_dm3: number | null };
  alkali: { name: string; concentration_mol_dm3: number };
  portions: { volume_cm3: number; count: number };
  repeats: number;
}

/** One addition; `time_s` counts from the start of its repeat. */
export interface Portion {
  portion: number;
  time_s: number;
  volume_cm3: number;
  early: boolean;
  unsure: boolean;
}

/** One settled temperature; `volume_cm3` is the total added so far; portion 0 is the start. */
export interface Reading {
  portion: number;
  volume_cm3: number;
  temperature_c: number | null;
  u_c: number | null;
  settled: boolean;
  unsure: boolean;
}

export interface Repeat {
  repeat: number;
  status: "running" | "ended" | "set aside";
  reason: string | null;
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

/** T = intercept_c + slope_c_cm3 · V, fitted to the rows of `mean` named in `points`. */
export interface Line {
  slope_c_cm3: number;
  intercept_c: number;
  points: number[];
}

export interface EndPoint {
  end_point_cm3: number;
  u_end_point_cm3: number;
  interval_95_cm3: readonly [number, number];
}

/** The graph-paper method on the mean readings; its interval knows their scatter only. */
export interface Crossing extends EndPoint {
  temperature_c: number;
  /** How far off lines through raw readings are expected to be / cm³; negative: too low. */
  predicted_bias_cm3?: number | null;
  before: Line;
  after: Line;
}

/** The fit of the whole trace. */
export interface HeatBalance extends EndPoint {
  describes_trace: boolean;
}

export interface Result {
  seq: number;
  straight_lines: Crossing | null;
  heat_balance?: HeatBalance | null;
  refused: { straight_lines?: string; heat_balance?: string };
}

/** What the station says of itself, without the samples. */
export interface View {
  seq: number;
  boot: string;
  time_s: number;
  speed: number;
  bench: { name: string; virtual: boolean; panel: string };
  /** Why nothing can be kept just now, in words. */
  fault: string | null;
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
  repeats: Repeat[];
  mean: MeanPoint[];
  result: Result | null;
}

export interface State extends View {
  trace: { repeat: number; samples: Sample[] };
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
  | { kind: "reset" };
