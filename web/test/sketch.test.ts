// The curve that a group expects: strokes, key presses, and what is sent.

import assert from "node:assert/strict";
import { test } from "node:test";
import { blank, drawnOf, nudged, pointsOf, rangeAbout, stroked } from "../src/bench/sketch/points";
import { volumeChart } from "../src/chart/volume";
import { viewWith } from "./example";
import type { PortionsView } from "../src/live/contract";

const RANGE = rangeAbout(20);

test("a blank drawing has the start alone", () => {
  assert.deepEqual(blank(3, 20.06), [20.1, null, null, null]);
});

test("a stroke sets every volume on its way, whichever way it goes", () => {
  const there = stroked(blank(4, 20), [0.2, 20], [3.2, 26], RANGE);
  assert.deepEqual(there, [20, 21.6, 23.6, 25.6, null]);
  assert.deepEqual(stroked(blank(4, 20), [3.2, 26], [0.2, 20], RANGE), there);
});

test("a tap sets the nearest volume, and nothing leaves the graph", () => {
  assert.deepEqual(stroked(blank(2, 20), [1.3, 99], [1.3, 99], RANGE), [20, RANGE[1], null]);
  assert.deepEqual(stroked(blank(2, 20), [1.6, -99], [1.6, -99], RANGE), [20, null, RANGE[0]]);
});

test("a key begins where the curve before it ends", () => {
  const one = nudged(blank(3, 20), 2, 0.5, RANGE);
  assert.deepEqual(one, [20, null, 20.5, null]);
  assert.deepEqual(nudged(one, 2, -0.5, RANGE), [20, null, 20, null]);
});

test("what is kept is drawn again", () => {
  const drawn = [20, null, 24.5, 23];
  const points = pointsOf(drawn, 1.1);
  assert.deepEqual(points, [[0, 20], [2.2, 24.5], [3.3, 23]]);
  assert.deepEqual(drawnOf(points, 3, 1.1), drawn);
});

test("a sketch lies in the chart of the readings, whose axis has room for it", () => {
  const { plan, repeats, mean } = viewWith({}) as PortionsView;
  const box = { width: 400, height: 300, letter: 10 };
  const { frame, sketch } = volumeChart({ planned_cm3: plan.portions.volume_cm3 * plan.portions.count, repeats, mean, crossing: null, sketch: [[0, 10], [4, 45]] }, box);
  assert.deepEqual(sketch, [[frame.x(0), frame.y(10)], [frame.x(4), frame.y(45)]]);
  assert.ok(sketch.every(([, y]) => y >= frame.top && y <= frame.bottom));
});
