import assert from "node:assert/strict";
import { test } from "node:test";
import { timeLeftText } from "../src/phrases/bench";
import { waitLeft } from "../src/bench/instruction";
import { viewWith } from "./example";

test("a wait is told in wall seconds, and how much of it is over", () => {
  const view = viewWith({ time_s: 130, settle: { left_s: 30, sure: 0.2, band: null }, speed: 10 });
  assert.deepEqual(waitLeft(view, 120), { left_s: 3, over: 0.25 });
  assert.equal(timeLeftText(3), "about 3 s");
  assert.equal(timeLeftText(0.4), "any moment");
});

test("a wait of unknown length has neither", () => {
  const unknown = { left_s: null, over: null };
  assert.deepEqual(waitLeft(viewWith({ settle: null }), 120), unknown);
  assert.deepEqual(waitLeft(viewWith({ settle: { left_s: null, sure: 0, band: null } }), 120), unknown);
});

test("a wait that begins now is not over at all", () => {
  assert.deepEqual(waitLeft(viewWith({ settle: { left_s: 20, sure: 0, band: null } }), null), { left_s: 20, over: 0 });
});
