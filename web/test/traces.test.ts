import assert from "node:assert/strict";
import { test } from "node:test";
import type { Message } from "../src/live/contract";
import { type Model, fold, nothingHeard, wantedTrace } from "../src/live/model";
import { oncePlan, onceViewWith, portionAt, repeatOf, sampleTaken, samplesFrom, stateWith } from "./example";

const NOW_MS = 50_000;
const STARTED_S = 100;

function after(model: Model, ...messages: Message[]): Model {
  return messages.reduce((next, message) => fold(next, message, NOW_MS), model);
}

const running = repeatOf(1, { started_s: STARTED_S });
const poured = { ...running, portions: [portionAt(1, 31)] };

/** The station at sequence number 10 with `count` samples of repeat 1 since the newest pour. */
function state(repeats = [running], samples = samplesFrom(STARTED_S, 20), seq = 10): Message {
  return { kind: "state", data: stateWith({ seq, plan: oncePlan, repeats, trace: { repeat: 1, samples } }) };
}

function answer(count: number, started_s = STARTED_S): Message {
  return { kind: "samples", data: { repeat: 1, started_s, samples: samplesFrom(0, count) } };
}

const sample = (seq: number, time_s: number): Message => ({ kind: "happened", data: sampleTaken(seq, time_s, 21) });
const times = (model: Model) => (model.traces.get(1)?.samples ?? []).map(([time_s]) => time_s);
const upTo = (last_s: number) => Array.from({ length: last_s + 1 }, (_, time_s) => time_s);

test("the trace of each repeat that counts is asked for, until it is known whole", () => {
  const repeats = [repeatOf(1, { status: "set aside" }), repeatOf(2, { status: "ended" }), repeatOf(3)];
  const model = after(nothingHeard, state(repeats));
  assert.ok(model.view);
  assert.deepEqual(wantedTrace(model.traces, model.view), { repeat: 2, started_s: 200 });
  const next = fold(model, { kind: "samples", data: { repeat: 2, started_s: 200, samples: [] } }, NOW_MS);
  assert.deepEqual(next.view && wantedTrace(next.traces, next.view), { repeat: 3, started_s: 300 });
});

test("a practical in portions asks for none", () => {
  const model = after(nothingHeard, { kind: "state", data: stateWith() }, sample(11, 131));
  assert.equal(model.view && wantedTrace(model.traces, model.view), null);
  assert.equal(model.traces.size, 0);
});

test("of portions the trace is asked for that a person has opened, and the stream extends it", () => {
  const repeats = [repeatOf(1, { status: "ended" }), repeatOf(2, { started_s: STARTED_S })];
  const known = after(nothingHeard, { kind: "state", data: stateWith({ repeats, trace: { repeat: 2, samples: [] } }) });
  const opened = after(known, { kind: "open", data: { repeat: 2 } });
  assert.deepEqual(opened.view && wantedTrace(opened.traces, opened.view, opened.opened), { repeat: 2, started_s: STARTED_S });
  const answered: Message = { kind: "samples", data: { repeat: 2, started_s: STARTED_S, samples: samplesFrom(0, 20) } };
  // The station measured on while its answer was under way.
  const model = after(opened, sample(11, STARTED_S + 20), answered, sample(12, STARTED_S + 21));
  assert.deepEqual((model.traces.get(2)?.samples ?? []).map(([time_s]) => time_s), upTo(21));
  const other = after(model, { kind: "open", data: { repeat: 1 } });
  assert.equal(other.view && wantedTrace(other.traces, other.view, other.opened)?.repeat, 1);
  const closed = after(other, { kind: "open", data: { repeat: null } });
  assert.equal(closed.view && wantedTrace(closed.traces, closed.view, closed.opened), null);
});

test("the stream extends the trace, over the pour too, and nothing comes twice", () => {
  const view = onceViewWith({ seq: 22, repeats: [poured] });
  const model = after(
    nothingHeard,
    state(),
    sample(11, STARTED_S + 20),
    answer(21),
    sample(12, STARTED_S + 21),
    ...Array.from({ length: 9 }, (_, index) => sample(13 + index, STARTED_S + 22 + index)),
    { kind: "view", data: view },
    sample(22, STARTED_S + 31),
  );
  assert.deepEqual(times(model), upTo(31));
  assert.equal(wantedTrace(model.traces, view), null);
});

test("a sample from before the start, heard after it, is not the repeat's", () => {
  const model = after(nothingHeard, state([running], []), answer(0), sample(11, STARTED_S - 0.4), sample(12, STARTED_S + 0.6));
  assert.deepEqual(times(model).map((time_s) => Math.round(10 * time_s)), [6]);
});

test("an answer that is older or newer than the stream leaves no hole", () => {
  const older = after(nothingHeard, state(), sample(11, STARTED_S + 20), sample(12, STARTED_S + 21), answer(20));
  assert.deepEqual(times(older), upTo(21));
  const newer = after(nothingHeard, state(), answer(23), sample(11, STARTED_S + 20), sample(12, STARTED_S + 23));
  assert.deepEqual(times(newer), upTo(23));
});

test("a fresh state that follows on completes the trace; one that does not asks for it again", () => {
  const known = after(nothingHeard, state(), answer(20));
  const follows = after(known, state([running], samplesFrom(STARTED_S, 25), 15));
  assert.deepEqual(times(follows), upTo(24));
  assert.equal(follows.view && wantedTrace(follows.traces, follows.view), null);
  const gap = after(known, state([poured], samplesFrom(STARTED_S + 31, 5), 40));
  assert.deepEqual(gap.view && wantedTrace(gap.traces, gap.view), { repeat: 1, started_s: STARTED_S });
  assert.deepEqual(times(after(gap, answer(40))), upTo(39));
});

test("what comes after the end of a repeat is not its own, even before the view says so", () => {
  const end: Message = { kind: "happened", data: { seq: 11, time_s: STARTED_S + 20, kind: "repeat_ended", body: {} } };
  const known = after(nothingHeard, state(), answer(20), end, sample(12, STARTED_S + 20), sample(13, STARTED_S + 21));
  assert.deepEqual(times(known), upTo(19));
  const late = after(nothingHeard, state(), sample(11, STARTED_S + 20));
  const asked = after(late, { ...end, data: { ...end.data, seq: 12 } } as Message, sample(13, STARTED_S + 21), answer(21));
  assert.deepEqual(times(asked), upTo(20));
});

test("a repeat that ended while nothing was heard is asked for once more, and never again", () => {
  const ended = [{ ...poured, status: "ended" as const }, repeatOf(2, { started_s: 500 })];
  const later: Message = { kind: "state", data: stateWith({ seq: 90, plan: oncePlan, repeats: ended, trace: { repeat: 2, samples: [] } }) };
  const model = after(nothingHeard, state(), answer(20), later);
  assert.deepEqual(model.view && wantedTrace(model.traces, model.view), { repeat: 1, started_s: STARTED_S });
  const known = after(model, answer(60), { kind: "samples", data: { repeat: 2, started_s: 500, samples: [] } }, later);
  assert.equal(times(known).length, 60);
  assert.equal(known.traces.get(1)?.whole, true);
});

test("a repeat of another practical with the same number is another repeat", () => {
  const known = after(nothingHeard, state(), answer(20));
  const other = after(known, { kind: "view", data: onceViewWith({ seq: 50, repeats: [repeatOf(1, { started_s: 900 })] }) });
  assert.equal(other.traces.size, 0);
  assert.equal(after(other, answer(20)).traces.size, 0);
});
