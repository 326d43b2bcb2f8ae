import assert from "node:assert/strict";
import { test } from "node:test";
import { fixed, keptTogether, short, volumeDecimals } from "../src/format";
import { typedNumber } from "../src/typed";

test("negative numbers have a true minus sign and zero has none", () => {
  assert.equal(fixed(-1.26, 1), "\u22121.3");
  assert.equal(fixed(-0.04, 1), "0.0");
  assert.equal(short(-2.5), "\u22122.5");
});

test("short numbers drop zeros after the point only", () => {
  assert.deepEqual([4, 4.5, 10, 10.5, 100, 0.125].map((value) => short(value)), ["4", "4.5", "10", "10.5", "100", "0.13"]);
});

test("an end-point known better than 0.05 cm³ earns a second decimal", () => {
  assert.deepEqual([0.5, 0.05, 0.049].map(volumeDecimals), [1, 1, 2]);
});

test("a number stays on the line of its unit", () => {
  assert.equal(keptTogether("Add portion 3: 4 cm³ of alkali."), "Add portion 3: 4\u00a0cm³ of alkali.");
  assert.equal(keptTogether("portion 4 comes"), "portion 4 comes");
});

test("typed numbers may have a comma or a dot, and nothing else", () => {
  assert.deepEqual(["6,5", " 6.5 ", "\u22121", "", "six", "1e999"].map(typedNumber), [6.5, 6.5, -1, null, null, null]);
});
