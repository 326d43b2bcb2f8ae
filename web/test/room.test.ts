// What the board's page knows: whole and changes, ages that go on by themselves, numbers in place of names.

import assert from "node:assert/strict";
import test from "node:test";
import { reasonInWords } from "../src/room/board";
import type { Reason, Room, Tile } from "../src/room/contract";
import { countedOn } from "../src/room/counting";
import { changed, columnsOf, counted, counts, numberOf, standingOf, usualCurve, usualProgress, whole } from "../src/room/feed";
import { lasted, needText } from "../src/phrases/room";

const tile = (bench: string, more: Partial<Tile> = {}): Tile => ({
  bench,
  place: 1,
  name: `By the ${bench}`,
  group: null,
  plan: "acid",
  state: "settle",
  repeat: 1,
  repeats_planned: 2,
  portion: 3,
  portions_planned: 10,
  progress: 0.15,
  temperature_c: 21.5,
  age_s: 0.5,
  waits_s: 12,
  usual_s: 20,
  speed: 1,
  held: false,
  called: false,
  curve: [],
  curve_to: 40,
  questions: [],
  probe: "ok",
  silent: false,
  results_shown: false,
  repeats: [],
  need: 0,
  reasons: [],
  ...more,
});

const room: Room = {
  lesson: null,
  order: ["bench-1", "bench-2"],
  tiles: { "bench-1": tile("bench-1"), "bench-2": tile("bench-2") },
  needs: [],
  practice: [],
  fault: null,
  class: { version: 0, shown: false, waits_for: [], taking_part: 2 },
  orders: [],
  about: { name: "Room" },
  addresses: ["http://192.0.2.7:8080/"],
};

test("a change leaves the other tiles the very same, so that they are not drawn again", () => {
  const before = whole(room, null, 1000);
  const after = changed(before, { order: ["bench-2", "bench-1"], tiles: { "bench-2": tile("bench-2", { need: 3 }) }, needs: ["bench-2"], practice: [] }, 2000);
  assert.deepEqual(after.room.order, ["bench-2", "bench-1"]);
  assert.equal(after.room.tiles["bench-1"], before.room.tiles["bench-1"]);
  assert.equal(after.room.tiles["bench-2"]?.need, 3);
  assert.deepEqual(after.room.needs, ["bench-2"]);
  assert.deepEqual(after.told_ms, { "bench-1": 1000, "bench-2": 2000 });
});

test("a repeat that was set aside is told as that, whoever did it", () => {
  const aside: Reason = { need: 1, code: "set_aside", count: 2, text: "the lid was off" };
  assert.equal(reasonInWords(aside), "Repeat 2 is set aside: the lid was off");
});

test("a bench that is in no order any more is gone, and one that nobody told of is not drawn", () => {
  const after = changed(whole(room, null, 0), { order: ["bench-2", "bench-9"], tiles: {}, needs: [], practice: [] }, 1);
  assert.deepEqual(Object.keys(after.room.tiles), ["bench-2"]);
});

test("a whole that comes over the stream keeps the addresses", () => {
  const { addresses: _, ...streamed } = room;
  assert.deepEqual(whole(streamed, whole(room, null, 0), 1).room.addresses, room.addresses);
});

test("on the wall a bench has the number of its id, or its place", () => {
  assert.equal(numberOf("bench-07", ["bench-07"]), "7");
  assert.equal(numberOf("lab2-bench-12b", ["lab2-bench-12b"]), "12");
  assert.equal(numberOf("window", ["window", "door"]), "2");
  assert.deepEqual(counted(["bench-10", "bench-9", "bench-1"]), ["bench-1", "bench-9", "bench-10"]);
});

test("a second set of benches is laid out by itself, and a spare row is for who is moved", () => {
  const to = (low: number, high: number) => Array.from({ length: high - low + 1 }, (_, index) => low + index);
  assert.deepEqual(columnsOf(to(1, 15)), { columns: 5, first: 1, cells: 15 });
  assert.deepEqual(columnsOf(to(1, 30)), { columns: 6, first: 1, cells: 30 });
  assert.deepEqual(columnsOf(to(16, 30)), { columns: 5, first: 16, cells: 15 });
  assert.deepEqual(columnsOf([2, 7, 14]), { columns: 5, first: 1, cells: 15 });
  assert.deepEqual(columnsOf(to(1, 15), true), { columns: 5, first: 1, cells: 20 });
});

test("done, paused and idle are not at work, and staff's pause is told from the group's", () => {
  assert.equal(standingOf(tile("a", { state: "paused", held: true })), "held");
  assert.equal(standingOf(tile("a", { state: "paused" })), "paused");
  assert.equal(standingOf(tile("a", { state: "unknown" })), "idle");
  const all = [tile("a"), tile("b", { state: "done" }), tile("c", { state: "ready" }), tile("d", { state: "paused", held: true })];
  assert.deepEqual(counts(all), { idle: 1, works: 1, paused: 0, held: 1, done: 1 });
});

test("a wait goes on in the practical's own seconds", () => {
  assert.equal(countedOn({ from_s: 12, told_ms: 1000, speed: 20 }, 1500), 22);
  assert.equal(countedOn({ from_s: 12, told_ms: 1000, speed: 1 }, 500), 12);
  assert.deepEqual([7.9, 760, 3725].map(lasted), ["0:07", "12:40", "1:02:05"]);
});

test("the class's curve and progress are medians, of three at the least", () => {
  const of = (change: number, progress: number) => tile("x", { curve: [[0, 20], [4, 20 + change]], progress });
  assert.equal(usualCurve([of(1, 0.1), of(3, 0.2)]), "[]");
  assert.equal(usualCurve([of(1, 0.1), of(3, 0.2), of(2, 0.6)]), "[[0,0],[4,2]]");
  assert.equal(usualProgress([of(1, 0.1), of(3, 0.2), of(2, 0.6), tile("y", { state: "ready", progress: 0 })]), 0.2);
});

test("who needs somebody and why is said in six words", () => {
  const codes: Reason["code"][] = ["called", "trouble", "unreadable", "silent", "probe_lost", "bad_readings", "not_begun", "stuck", "slow", "paused", "question", "many_aside"];
  for (const code of codes) {
    const text = needText("Bench 12", { code });
    assert.ok(text.startsWith("Bench 12") && text.split(" ").length <= 6, text);
  }
});
