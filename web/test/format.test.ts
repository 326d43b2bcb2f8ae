// Numbers as they are written and typed, and ages.

import assert from "node:assert/strict";
import { test } from "node:test";
import {
  ageParts,
  age_s,
  fixed,
  freshness,
  keptTogether,
  placesFor,
  rounded,
  short,
  signed,
  typedNumber,
} from "../src/format";
import { cm3Places, joulePlaces, kilojoulePlaces, plusMinus } from "../src/phrases/quantities";
import { changeIntervalText, intervalText } from "../src/phrases/results";
import { phrase } from "../src/words";

test("negative numbers have a true minus sign and zero has none", () => {
  assert.equal(fixed(-1.26, 1), "\u22121.3");
  assert.equal(fixed(-0.04, 1), "0.0");
  assert.equal(short(-2.5), "\u22122.5");
});

test("short numbers drop zeros after the point only", () => {
  assert.deepEqual([4, 4.5, 10, 10.5, 100, 0.125].map((value) => short(value)), ["4", "4.5", "10", "10.5", "100", "0.13"]);
});

test("a number is written to the place of its uncertainty: one digit of u, two when the first is 1 or 2", () => {
  const places = [0.5, 0.3, 0.26, 0.12, 0.0996, 0.048, 14.6, 31, 146].map((u) => placesFor(u, 9));
  assert.deepEqual(places, [1, 1, 2, 2, 2, 2, 0, -1, -1]);
});

test("no uncertainty earns more places than there can be", () => {
  assert.deepEqual([0.0004, 0, Number.NaN, Number.POSITIVE_INFINITY].map((u) => placesFor(u, 2)), [2, 2, 2, 2]);
});

test("a number known to tens is rounded to tens", () => {
  assert.deepEqual([rounded(564.5, -1), rounded(-564.5, -2), rounded(-3, -1), rounded(2.636, 2)], ["560", "\u2212600", "0", "2.64"]);
});

test("a rise has a plus sign, a fall a minus sign, nothing has none", () => {
  assert.deepEqual([signed(2.636, 2), signed(-4.08, 1), signed(0.001, 2)], ["+2.64", "\u22124.1", "0.00"]);
});

test("no interval of an end-point has more digits than its u deserves", () => {
  assert.equal(intervalText([22.034, 27.991], 1.52), "Probably between 22.0 and 28.0 cm³ (19 times in 20)");
  assert.equal(intervalText([18.034, 31.991], 3.6), "Probably between 18 and 32 cm³ (19 times in 20)");
  assert.equal(phrase("page-end-point", { volume: rounded(24.0871, cm3Places(0.048)) }), "24.09 cm³");
  assert.equal(phrase("page-plus-minus", { u: plusMinus(0.0478, cm3Places(0.0478)) }), "standard uncertainty 0.05 cm³");
  assert.equal(phrase("page-plus-minus", { u: plusMinus(0.0011, cm3Places(0.0011)) }), "standard uncertainty less than 0.01 cm³");
});

test("heat and enthalpy of a cup whose addition nobody measured are not written as if they were known", () => {
  assert.equal(phrase("page-joules", { heat: rounded(Math.abs(564.5), joulePlaces(145.7)) }), "560 J");
  assert.equal(phrase("page-joules-plus-minus", { u: plusMinus(145.7, joulePlaces(145.7)) }), "standard uncertainty 150 J");
  assert.equal(phrase("page-enthalpy", { enthalpy: signed(-56.45, kilojoulePlaces(14.57)) }), "\u221256 kJ/mol");
  assert.equal(changeIntervalText([-4.08, -3.92], 0.04), "Probably between \u22124.08 and \u22123.92 °C (19 times in 20)");
});

test("a number stays on the line of its unit", () => {
  assert.equal(keptTogether("Add portion 3: 4 cm³ of alkali."), "Add portion 3: 4\u00a0cm³ of alkali.");
  assert.equal(keptTogether("portion 4 comes"), "portion 4 comes");
});

test("typed numbers may have a comma or a dot, and nothing else", () => {
  assert.deepEqual(["6,5", " 6.5 ", "\u22121", "", "six", "1e999"].map(typedNumber), [6.5, 6.5, -1, null, null, null]);
});

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
  assert.equal(phrase("page-age", ageParts(1.9)), "measured just now");
  assert.equal(phrase("page-age", ageParts(12.7)), "measured 12 s ago");
  assert.equal(phrase("page-age", ageParts(200)), "measured 3 min ago");
  assert.equal(phrase("page-age", ageParts(3 * 3600)), "measured 3 h ago");
});
