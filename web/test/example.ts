// An invented bench for the tests: sulfuric acid in the cup, two repeats of three portions.

import type { Happening, Repeat, State, View } from "../src/contract";

export function repeatOf(repeat: number, fields: Partial<Repeat> = {}): Repeat {
  return { repeat, status: "running", reason: null, started_s: 100 * repeat, portions: [], readings: [], ...fields };
}

export function portionAt(portion: number, time_s: number) {
  return { portion, time_s, volume_cm3: 5, early: false, unsure: false };
}

export function readingAt(portion: number, temperature_c: number | null, volume_cm3 = 5 * portion) {
  return { portion, volume_cm3, temperature_c, u_c: 0.03, settled: true, unsure: false };
}

const view: View = {
  seq: 10,
  boot: "one",
  time_s: 130,
  speed: 1,
  bench: { name: "Bench 3", virtual: false, panel: "none" },
  plan: {
    title: "sulfuric acid with sodium hydroxide",
    acid: { name: "sulfuric acid", volume_cm3: 20, concentration_mol_dm3: null },
    alkali: { name: "sodium hydroxide", concentration_mol_dm3: 0.5 },
    portions: { volume_cm3: 5, count: 3 },
    repeats: 2,
  },
  state: "settle",
  instruction: { code: "settle", text: "Wait.", detail: null, act: null, portion: null, label: null },
  other_acts: [],
  repeat: 1,
  repeats_planned: 2,
  portion: 1,
  portions_planned: 3,
  total_added_cm3: 5,
  fault: null,
  settle: { left_s: 12, sure: 0.4 },
  live: { temperature_c: 22.5, time_s: 129.5, bad: null },
  last_good: { temperature_c: 22.5, time_s: 129.5 },
  probe: "ok",
  alkali_temperature_c: null,
  repeats: [repeatOf(1, { portions: [portionAt(1, 20)] })],
  mean: [],
  result: null,
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
