// An invented bench for the tests: sulfuric acid in the cup, two repeats of three portions.

import type { Happening, OncePlan, OnceView, PortionsPlan, Repeat, Sample, State, View } from "../src/live/contract";
import type { Extended, HeatOnce, OnceRepeat } from "../src/live/results";

export function repeatOf(repeat: number, fields: Partial<Repeat> = {}): Repeat {
  return { repeat, status: "running", reason: null, started_s: 100 * repeat, restorable: false, cup: 1, portions: [], readings: [], ...fields };
}

export function portionAt(portion: number, time_s: number) {
  return { portion, time_s, volume_cm3: 5, early: false, unsure: false, unsure_reason: null, mass_g: null, places: null };
}

export function readingAt(portion: number, temperature_c: number | null, volume_cm3 = 5 * portion) {
  return { portion, volume_cm3, temperature_c, u_c: 0.03, settled: true, unsure: false, reason: "", typed: false, time_s: 0 };
}

const usual = {
  pace: "graph",
  cup: { heat_capacity_j_k: 5, u_heat_capacity_j_k: 3 },
  surroundings: { room_c: null },
} as const;

export const plan: PortionsPlan = {
  kind: "portions",
  title: "sulfuric acid with sodium hydroxide",
  acid: { name: "sulfuric acid", volume_cm3: 20, u_volume_cm3: null, concentration_mol_dm3: null },
  alkali: { name: "sodium hydroxide", concentration_mol_dm3: 0.5, temperature_c: null },
  portions: { volume_cm3: 5, count: 3, u_volume_cm3: null, glassware: null },
  ...usual,
  repeats: 2,
  results: "at once",
  prompts: "station",
  predict_first: false,
};

const view: View = {
  seq: 10,
  boot: "one",
  time_s: 130,
  speed: 1,
  bench: { name: "Bench 3", virtual: false, panel: "none" },
  plan,
  state: "settle",
  instruction: { code: "settle", text: "Wait.", detail: null, act: null, portion: null, label: null },
  other_acts: [],
  repeat: 1,
  repeat_of_planned: 1,
  repeats_planned: 2,
  cup: 1,
  portion: 1,
  portions_planned: 3,
  total_added_cm3: 5,
  ended_early: false,
  fault: null,
  link: null,
  settle: { left_s: 12, sure: 0.4, band: null },
  live: { temperature_c: 22.5, time_s: 129.5, bad: null, correction_c: 0 },
  last_good: { temperature_c: 22.5, time_s: 129.5 },
  probe: "ok",
  alkali_temperature_c: null,
  silent: null,
  repeats: [repeatOf(1, { portions: [portionAt(1, 20)] })],
  mean: [],
  repeats_id: "",
  result: null,
  results: { rule: "at once", shown: true, waits_for: null, prepared_mol_dm3: null },
  own_reading: null,
  sketch: null,
  own_working: [],
  group: null,
  notes: [],
  corrections: [],
  clock: null,
  thermometer: { kind: "probe" },
  adopted: null,
  guide: { in_cup: [], added: [], cautions: [], clearing_up: [], first: "", lid: true },
  reaction: null,
  questions: [],
};

export function viewWith(fields: Partial<View> = {}): View {
  return { ...view, ...fields };
}

export function stateWith(fields: Partial<State> = {}): State {
  return { ...view, trace: { repeat: 1, samples: [[121, 22.0], [122, 22.25]] }, ...fields };
}

export function sampleTaken(seq: number, time_s: number, temperature_c: number | null): Happening {
  return { seq, time_s, kind: "sample_taken", body: { temperature_c } };
}

/** Twelve grams of a salt into water: the cup cools by 4 °C, mixed 100 s after the repeat's start. */
export const oncePlan: OncePlan = {
  kind: "once",
  title: "potassium chloride in water",
  liquid: { name: "water", volume_cm3: 60, u_volume_cm3: null, concentration_mol_dm3: null },
  addition: {
    name: "potassium chloride",
    volume_cm3: null,
    u_volume_cm3: null,
    concentration_mol_dm3: null,
    mass_g: 12,
    u_mass_g: null,
    temperature_c: null,
  },
  timing: { before_s: 90, after_s: 180 },
  ...usual,
  repeats: 2,
  results: "at once",
  prompts: "station",
};

export const extended: Extended = {
  change_c: -4,
  u_change_c: 0.04,
  interval_95_c: [-4.08, -3.92],
  mixed_at_s: 100,
  label: "",
  rule: "",
  before: { begin_s: 0, end_s: 90, slope_c_s: 0.001, at_mixing_c: 20.1, u_at_mixing_c: 0.02 },
  after: { begin_s: 130, end_s: 280, slope_c_s: 0.002, at_mixing_c: 16.1, u_at_mixing_c: 0.02 },
  heat_j: -1060,
  u_heat_j: 16,
  enthalpy_kj_mol: 17.2,
  u_enthalpy_kj_mol: 0.31,
  enthalpy_of: "potassium chloride dissolved",
};

export const heatOnce: HeatOnce = {
  ...extended,
  change_c: -4.1,
  describes_trace: true,
  interval_95_j: [-1090, -1030],
  residual_rms_c: 0.02,
};

export function onceRepeat(repeat: number, fields: Partial<OnceRepeat> = {}): OnceRepeat {
  return { repeat, straight_lines: extended, heat_balance: heatOnce, refused: {}, notes: [], ...fields };
}

export function onceViewWith(fields: Partial<OnceView> = {}): OnceView {
  return { ...view, plan: oncePlan, repeats: [repeatOf(1, { portions: [portionAt(1, 100)] })], result: null, ...fields };
}

/** What a crossing has beside its numbers. */
export const crossingWords = { u_temperature_c: null, label: "", rule: "", left_out: [], school: null };

/** One sample a second from `from_s`, rising by 0.01 °C each. */
export function samplesFrom(from_s: number, count: number): Sample[] {
  return Array.from({ length: count }, (_, index) => [from_s + index, 20 + 0.01 * index] as const);
}
