import assert from "node:assert/strict";
import { test } from "node:test";
import { ageParts, age_s, freshness } from "../src/age";
import { words } from "../src/words";

test("a number is old from 3 s on and frozen from 10 s on", () => {
  assert.deepEqual([0, 2.99, 3, 9.99, 10, 1e6].map(freshness), ["fresh", "fresh", "old", "old", "frozen", "frozen"]);
  assert.equal(freshness(null), "frozen");
});

test("an age is never negative", () => {
  assert.equal(age_s(2000, 1000), 0);
  assert.equal(age_s(1000, 3500), 2.5);
});

test("ages are said in the unit a person would use", () => {
  assert.deepEqual(ageParts(1.9), { unit: "now", count: 0 });
  assert.equal(words.age(1.9), "measured just now");
  assert.equal(words.age(12.7), "measured 12 s ago");
  assert.equal(words.age(200), "measured 3 min ago");
  assert.equal(words.age(3 * 3600), "measured 3 h ago");
});
