// What the board's page knows: whole and changes, ages that go on by themselves, numbers in place of names.

import assert from "node:assert/strict";
import test from "node:test";
import { reasonInWords } from "../src/room/board";
import type { Reason, Room, Tile } from "../src/room/contract";
import { ageOf, changed, counted, numberOf, whole } from "../src/room/feed";

const tile = (bench: string, more: Partial<Tile> = {}): Tile => ({
  bench,
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
  fault: null,
  class: { version: 0, shown: false, waits_for: [], taking_part: 2 },
  orders: [],
  about: { name: "Room" },
  addresses: ["http://192.0.2.7:8080/"],
};

test("a change leaves the other tiles the very same, so that they are not drawn again", () => {
  const before = whole(room, null, 1000);
  const after = changed(before, { order: ["bench-2", "bench-1"], tiles: { "bench-2": tile("bench-2", { need: 3 }) } }, 2000);
  assert.deepEqual(after.room.order, ["bench-2", "bench-1"]);
  assert.equal(after.room.tiles["bench-1"], before.room.tiles["bench-1"]);
  assert.equal(after.room.tiles["bench-2"]?.need, 3);
  assert.deepEqual(after.told_ms, { "bench-1": 1000, "bench-2": 2000 });
});

test("a repeat that was set aside is told as that, whoever did it", () => {
  const aside: Reason = { need: 1, code: "set_aside", count: 2, text: "the lid was off" };
  assert.equal(reasonInWords(aside), "Repeat 2 is set aside: the lid was off");
});

test("a bench that is in no order any more is gone, and one that nobody told of is not drawn", () => {
  const after = changed(whole(room, null, 0), { order: ["bench-2", "bench-9"], tiles: {} }, 1);
  assert.deepEqual(Object.keys(after.room.tiles), ["bench-2"]);
});

test("a whole that comes over the stream keeps the addresses", () => {
  const { addresses: _, ...streamed } = room;
  assert.deepEqual(whole(streamed, whole(room, null, 0), 1).room.addresses, room.addresses);
});

test("ages go on while nothing is heard", () => {
  assert.equal(ageOf(tile("bench-1"), 1000, 4000), 3.5);
  assert.equal(ageOf(tile("bench-1", { age_s: null }), 1000, 4000), null);
  assert.equal(ageOf(tile("bench-1"), 5000, 4000), 0.5);
});

test("on the wall a bench has the number of its id, or its place", () => {
  assert.equal(numberOf("bench-07", ["bench-07"]), "7");
  assert.equal(numberOf("lab2-bench-12b", ["lab2-bench-12b"]), "12");
  assert.equal(numberOf("window", ["window", "door"]), "2");
  assert.deepEqual(counted(["bench-10", "bench-9", "bench-1"]), ["bench-1", "bench-9", "bench-10"]);
});
