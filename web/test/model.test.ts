import assert from "node:assert/strict";
import { test } from "node:test";
import type { Message } from "../src/live/contract";
import { type Model, fold, nothingHeard, pouredAt } from "../src/live/model";
import { portionAt, repeatOf, sampleTaken, stateWith, viewWith } from "./example";

const NOW_MS = 50_000;

function after(...messages: Message[]): Model {
  return messages.reduce((model, message) => fold(model, message, NOW_MS), nothingHeard);
}

const state = (fields = {}): Message => ({ kind: "state", data: stateWith(fields) });
const view = (fields = {}): Message => ({ kind: "view", data: viewWith(fields) });
const sample = (seq: number, time_s: number, temperature_c: number | null): Message => ({
  kind: "happened",
  data: sampleTaken(seq, time_s, temperature_c),
});

test("a page that has heard nothing asks for the state", () => {
  assert.equal(nothingHeard.reload, true);
  assert.equal(after(state()).reload, false);
});

test("samples are appended in order, bad ones as gaps, and each only once", () => {
  const model = after(state(), sample(11, 131, 23), sample(11, 131, 23), sample(12, 132, null));
  assert.deepEqual(model.samples.slice(2), [[131, 23], [132, null]]);
  assert.equal(model.seq, 12);
});

test("a gap in the sequence asks for the state, and what came meanwhile is folded in afterwards", () => {
  const gap = after(state(), sample(13, 133, 23), sample(14, 134, 24));
  assert.equal(gap.reload, true);
  assert.equal(gap.samples.length, 2);
  const mended = fold(gap, state({ seq: 13, trace: { repeat: 1, samples: [[133, 23]] } }), NOW_MS);
  assert.equal(mended.reload, false);
  assert.deepEqual(mended.samples, [[133, 23], [134, 24]]);
  assert.equal(mended.seq, 14);
});

test("events before the first state wait for it", () => {
  const model = after(sample(10, 130, 21), sample(11, 131, 23), state());
  assert.deepEqual(model.samples[model.samples.length - 1], [131, 23]);
});

test("a pour cuts the trace to what came after it", () => {
  const poured = viewWith({ seq: 12, repeats: [repeatOf(1, { portions: [portionAt(1, 20), portionAt(2, 31)] })] });
  const model = after(state(), sample(11, 131, 23), { kind: "view", data: poured });
  assert.deepEqual(model.samples, [[131, 23]]);
  assert.equal(pouredAt(poured), 131);
});

test("a portion taken back needs the older samples again", () => {
  assert.equal(after(state(), view({ seq: 12, repeats: [repeatOf(1)] })).reload, true);
});

test("an older view of the same boot is ignored, a restart of the station asks for the state", () => {
  const older = after(state(), view({ seq: 9, portion: 0 }));
  assert.equal(older.view?.portion, 1);
  assert.equal(older.reload, false);
  assert.equal(after(state(), view({ boot: "two", seq: 3 })).reload, true);
});

test("a late state cannot take the page back, unless the station was restarted", () => {
  const model = after(state(), sample(11, 131, 23));
  assert.equal(fold(model, state({ seq: 10 }), NOW_MS).seq, 11);
  assert.equal(fold(model, state({ seq: 4, boot: "two" }), NOW_MS).seq, 4);
});

test("reset asks for the state", () => {
  assert.equal(after(state(), { kind: "reset" }).reload, true);
});

test("the newest good value carries the moment it was measured, in wall time whatever the speed", () => {
  const good = { temperature_c: 22.5, time_s: 100 };
  const live = (time_s: number): Message => ({
    kind: "live",
    data: { time_s, settle: null, live: { temperature_c: null, time_s, bad: "empty", correction_c: 0 }, last_good: good, clock: null, probe: "failing" },
  });
  assert.equal(after(state(), live(106)).good?.measured_ms, NOW_MS - 6000);
  assert.equal(after(state({ speed: 30 }), live(106)).good?.measured_ms, NOW_MS - 200);
  assert.equal(after(state(), live(106)).view?.probe, "failing");
});

test("folding leaves the old model as it was", () => {
  const model = after(state());
  const copy = structuredClone(model);
  fold(model, sample(11, 131, 23), NOW_MS);
  fold(model, view({ seq: 12, repeats: [] }), NOW_MS);
  assert.deepEqual(model, copy);
});

test("repeats that the station leaves out stay as they are known, and others are asked for", () => {
  const { repeats, mean, ...told } = viewWith({ seq: 12, repeats_id: "one-5", group: "Group 4" });
  const model = after(state({ repeats_id: "one-5" }), { kind: "view", data: told });
  assert.equal(model.view?.group, "Group 4");
  assert.deepEqual([model.view?.repeats, model.view?.mean, model.reload], [repeats, mean, false]);
  const others = after(state({ repeats_id: "one-5" }), { kind: "view", data: { ...told, repeats_id: "one-12" } });
  assert.equal(others.reload, true);
  assert.equal(others.view?.repeats_id, "one-5");
  assert.equal(after({ kind: "view", data: told }).view, null);
});

test("a sample from before the pour that is heard after it is not the new portion's", () => {
  const model = after(state(), sample(11, 119.5, 19));
  assert.ok(pouredAt(stateWith({})) === 120);
  assert.equal(model.samples.some(([time_s]) => time_s === 119.5), false);
  assert.equal(model.seq, 11);
});
