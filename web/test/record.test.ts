import assert from "node:assert/strict";
import { test } from "node:test";
import { type JournalEvent, dayOf, eventsOf, happenedLines } from "../src/bench/record/happened";

let seq = 0;
function at(time_s: number, kind: string, body: Record<string, unknown> = {}): JournalEvent {
  seq += 1;
  return { seq, time_s, wall: "", kind, body };
}

const BEGUN = [at(100, "plan_chosen"), at(130, "repeat_begun", { repeat: 1 })];

test("lines of the journal are read up to one that is cut short", () => {
  assert.deepEqual(eventsOf('{"seq":1,"kind":"a"}\n{"seq":2,"kind":"b"}\n{"seq":3,"ki').map(({ kind }) => kind), ["a", "b"]);
  assert.deepEqual(eventsOf(""), []);
});

test("notes and corrections stand with minute and place since the first repeat", () => {
  const events = [
    ...BEGUN,
    at(190, "portion_added", { repeat: 1, portion: 1, early: false }),
    at(200, "note_written", { note: 1, text: "=1+1", repeat: 1, portion: 1 }),
    at(255, "portion_volume_corrected", { repeat: 1, portion: 1, volume_cm3: 4.5 }),
    at(260, "portion_unsure", { repeat: 1, portion: 1, reason: "spilled" }),
    at(730, "repeat_set_aside", { repeat: 1, reason: "we forgot to stir" }),
  ];
  assert.deepEqual(happenedLines(events), [
    "1:10  repeat 1, portion 1: =1+1",
    "2:05  repeat 1, portion 1: 4.5 cm³ went in",
    "2:10  repeat 1, portion 1: not sure, left out of the lines: Spilled",
    "10:00  repeat 1: set aside: we forgot to stir",
  ]);
});

test("a note that was withdrawn stays, as withdrawn", () => {
  const events = [...BEGUN, at(140, "note_written", { note: 1, text: "wrong cup" }), at(150, "note_withdrawn", { note: 1 })];
  assert.deepEqual(happenedLines(events), ["0:10  note withdrawn: wrong cup"]);
});

test("a reading typed again for the same portion is a correction, the first is not", () => {
  const typed = (time_s: number, temperature_c: number) =>
    at(time_s, "reading_settled", { repeat: 1, portion: 2, temperature_c, reason: "typed" });
  assert.deepEqual(happenedLines([...BEGUN, typed(140, 21), typed(150, 22.5)]), [
    "0:20  repeat 1, portion 2: reading corrected to 22.5 °C",
  ]);
});

test("a probe that is lost counts while a repeat runs only, and often is said once", () => {
  const idle = [at(105, "probe_lost", { bad: "gone" }), at(108, "probe_found")];
  const [chosen, begun] = BEGUN as [JournalEvent, JournalEvent];
  assert.deepEqual(happenedLines([chosen, ...idle, begun]), []);
  const once = [at(140, "probe_lost"), at(150, "probe_found")];
  assert.equal(happenedLines([chosen, begun, ...once]).length, 2);
  const often = [...once, ...once, ...once, ...once];
  assert.deepEqual(happenedLines([chosen, begun, ...often]), ["The probe did not answer 4 times."]);
});

test("the day is this device's, counted back by bench time", () => {
  const now = new Date("2026-09-02T00:10:00Z");
  assert.equal(dayOf(BEGUN, 130 + 3600, 1, now).toISOString(), "2026-09-01T23:10:00.000Z");
  assert.equal(dayOf(BEGUN, 130 + 3600, 60, now).toISOString(), "2026-09-02T00:09:00.000Z");
  assert.equal(dayOf([], 5, 1, now).getTime(), now.getTime());
});
