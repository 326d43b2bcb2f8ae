import assert from "node:assert/strict";
import { test } from "node:test";
import {
  choices,
  likelyVolumes,
  moreThan,
  possibleCorrections,
  typedReadings,
} from "../src/bench/corrections/possible";
import type { View } from "../src/live/contract";
import { onceViewWith, oncePlan, portionAt, readingAt, repeatOf, viewWith } from "./example";

const names = (view: View) => possibleCorrections(view).flatMap((group) => group.names);

test("a weighed solid has no volume to correct; a solution and a portion have", () => {
  const other_acts = ["portion_volume", "portion_unsure", "answer"];
  assert.deepEqual(names(onceViewWith({ other_acts })), ["portion_unsure"]);
  const solution = { ...oncePlan.addition, volume_cm3: 30, concentration_mol_dm3: 0.2, mass_g: null };
  const two = onceViewWith({ other_acts, plan: { ...oncePlan, addition: solution } });
  assert.deepEqual(names(two), ["portion_unsure", "portion_volume"]);
  assert.deepEqual(names(viewWith({ other_acts })), ["portion_unsure", "portion_volume"]);
});

test("more portions can be told while a repeat runs, whether one is asked for or not, and never beyond the plan", () => {
  assert.deepEqual(names(viewWith({ other_acts: ["portion_added"] })), ["more"]);
  const asked = { code: "pour", text: "", detail: null, act: "portion_added", portion: 2, label: null };
  assert.deepEqual(names(viewWith({ instruction: asked })), ["more"]);
  assert.deepEqual(moreThan(viewWith({ portion: 1 })), [2, 3]);
  assert.deepEqual(moreThan(viewWith({ portion: 1, portions_planned: 12 })), [2, 3, 4, 5]);
  assert.deepEqual(names(viewWith({ other_acts: ["portion_added"], portion: 3 })), []);
  assert.deepEqual(names(viewWith({ instruction: asked, repeats: [repeatOf(1, { status: "ended" })] })), []);
});

test("the newest portion comes first, and none of a repeat that was left out", () => {
  const repeats = [
    repeatOf(1, { status: "set aside", portions: [portionAt(1, 10)] }),
    repeatOf(2, { portions: [portionAt(1, 10), { ...portionAt(2, 20), unsure: true, unsure_reason: "spilled" }] }),
  ];
  assert.deepEqual(choices(viewWith({ repeats })), [
    { repeat: 2, portion: 2, volume_cm3: 5, unsure: true, reason: "spilled" },
    { repeat: 2, portion: 1, volume_cm3: 5, unsure: false, reason: null },
  ]);
});

test("a repeat is left out when it has ended, and counts again when it was left out and can", () => {
  const other_acts = ["repeat_set_aside", "repeat_restored"];
  assert.deepEqual(names(viewWith({ other_acts })), []);
  const repeats = [repeatOf(1, { status: "ended" }), repeatOf(2, { status: "set aside", restorable: true })];
  assert.deepEqual(names(viewWith({ other_acts, repeats })), ["repeat_set_aside", "repeat_restored"]);
  const spoilt = [repeatOf(1, { status: "set aside", restorable: false })];
  assert.deepEqual(names(viewWith({ other_acts, repeats: spoilt })), []);
});

test("only typed readings can be typed again; a bench without a probe cannot go back to it", () => {
  const readings = [{ ...readingAt(0, 20), typed: true }, readingAt(1, 22), { ...readingAt(2, null), typed: true }];
  const view = viewWith({ other_acts: ["reading", "thermometer"], repeats: [repeatOf(1, { readings })] });
  assert.deepEqual(typedReadings(view).map(({ portion }) => portion), [0]);
  const typed = { ...view, thermometer: { kind: "typed", division_c: 1, digital: false } } as const;
  assert.deepEqual(names({ ...typed, probe: "none" }), ["reading"]);
  assert.deepEqual(names({ ...typed, probe: "lost" }), ["reading", "thermometer"]);
});

test("likely volumes lie around the planned one, leave out the recorded one, and are never nothing", () => {
  assert.deepEqual(likelyVolumes(4, 4), [3, 3.5, 4.5, 5, 8]);
  assert.deepEqual(likelyVolumes(4, 4.5), [3, 3.5, 4, 5, 8]);
  assert.deepEqual(likelyVolumes(1, 1), [0.6, 0.8, 1.2, 1.4, 2]);
  for (const planned of [0.1, 0.5, 2, 30]) assert.ok(likelyVolumes(planned, 0).every((volume) => volume > 0));
});
