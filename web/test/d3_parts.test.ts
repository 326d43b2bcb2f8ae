// What stands in for d3-interpolate.

import assert from "node:assert/strict";
import { test } from "node:test";
import { scaleLinear } from "d3-scale";
import { interpolate, interpolateRound, piecewise } from "../src/chart/d3_parts";

test("numbers are met at both ends and in between", () => {
  const between = interpolate(10, 20);
  assert.deepEqual([0, 0.25, 1].map(between), [10, 12.5, 20]);
  assert.deepEqual([0, 0.26, 1].map(interpolateRound(10, 20)), [10, 13, 20]);
});

test("stretches follow one another", () => {
  assert.deepEqual([0, 0.25, 0.5, 0.75, 1].map(piecewise(interpolate, [0, 10, 30])), [0, 5, 10, 20, 30]);
  assert.equal(piecewise(interpolate, [7])(0.5), 7);
});

test("a scale runs on it, there and back", () => {
  const scale = scaleLinear([0, 40], [100, 500]);
  assert.equal(scale(10), 200);
  assert.equal(scale.invert(200), 10);
  assert.equal(scaleLinear([0, 1, 2], [0, 10, 30])(1.5), 20);
});
