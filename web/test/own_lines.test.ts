import assert from "node:assert/strict";
import { test } from "node:test";
import {
  keyStep_c,
  linesFrom,
  movedTo,
  ownChart,
  ownRange_c,
  placedLine,
  startLines,
  whereTheyCross,
} from "../src/bench/own/lines";

const RANGE = [18, 26] as const;
const BOX = { width: 600, height: 300, letter: 14 };
/** The exact triangle T = 20 + 0.25 V up to 20 cm³, T = 29 − 0.2 V after it: the lines meet at 20 cm³, 25 °C. */
const MET = { volume_cm3: 20, temperature_c: 25 };
const mean = Array.from({ length: 11 }, (_, portion) => {
  const volume_cm3 = 4 * portion;
  const temperature_c = volume_cm3 <= 20 ? 20 + 0.25 * volume_cm3 : 29 - 0.2 * volume_cm3;
  return { portion, volume_cm3, temperature_c, count: 2 };
});

/** The handles set onto the readings under them, as a student would. */
function placed() {
  const start = startLines(4, 10, RANGE);
  return (["before", "after"] as const).reduce((lines, side) => {
    return ([0, 1] as const).reduce((next, which) => {
      const at = start[side][which].volume_cm3;
      return movedTo(next, side, which, mean.find(({ volume_cm3 }) => volume_cm3 === at)?.temperature_c ?? 0, RANGE);
    }, lines);
  }, start);
}

test("the lines start flat, at the edges, and do not cross: nothing is given away", () => {
  const start = startLines(4, 10, RANGE);
  assert.deepEqual([placedLine(start.before).slope_c_cm3, placedLine(start.after).slope_c_cm3], [0, 0]);
  assert.equal(whereTheyCross(start, 40), null);
  assert.ok(start.before[0].temperature_c < 19 && start.after[0].temperature_c > 25);
});

test("the lines start in the same places whatever the readings are", () => {
  const start = (peak: number) => startLines(4, 10, ownRange_c(mean.map((one, index) => ({ ...one, temperature_c: index === peak ? 25 : 20 }))));
  assert.deepEqual(start(3), start(7));
});

test("lines through readings on an exact triangle cross at its corner", () => {
  const met = whereTheyCross(placed(), 40);
  assert.ok(met);
  assert.ok(Math.abs(met.volume_cm3 - MET.volume_cm3) < 1e-9);
  assert.ok(Math.abs(met.temperature_c - MET.temperature_c) < 1e-9);
});

test("a crossing outside the volumes that went in is none", () => {
  assert.equal(whereTheyCross(placed(), 19), null);
  const left = movedTo(placed(), "after", 1, 26, RANGE);
  assert.equal(whereTheyCross(movedTo(left, "after", 0, 19, RANGE), 40)?.volume_cm3 ?? null, null);
});

test("a handle stays on the chart", () => {
  const start = startLines(4, 10, RANGE);
  assert.equal(movedTo(start, "before", 1, 99, RANGE).before[1].temperature_c, 26);
  assert.equal(movedTo(start, "after", 0, -5, RANGE).after[0].temperature_c, 18);
  assert.deepEqual(movedTo(start, "after", 0, -5, RANGE).before, start.before);
});

test("committed lines come back as they were", () => {
  const lines = placed();
  const back = linesFrom(startLines(4, 10, RANGE), placedLine(lines.before), placedLine(lines.after));
  for (const side of ["before", "after"] as const) {
    for (const which of [0, 1] as const) {
      assert.ok(Math.abs(back[side][which].temperature_c - lines[side][which].temperature_c) < 1e-9);
    }
  }
});

test("handles, crossing and readings stand where the axes say", () => {
  const lines = placed();
  const met = whereTheyCross(lines, 40);
  const chart = ownChart(mean, lines, met, 40, BOX);
  const [x, y] = chart.met ?? [0, 0];
  assert.ok(Math.abs(chart.frame.x.invert(x) - 20) < 1e-9 && Math.abs(chart.frame.y.invert(y) - 25) < 1e-9);
  const [first, last] = [chart.lines.before.handles[0], chart.lines.after.handles[1]];
  assert.deepEqual([chart.frame.x.invert(first[0]), chart.frame.x.invert(last[0])].map(Math.round), [0, 40]);
  assert.ok(last[0] < chart.frame.right, "a finger reaches the last handle");
  assert.equal(chart.points.length, mean.length);
});

test("the axis has air for the lines to meet above the readings", () => {
  const [low, high] = ownRange_c(mean);
  assert.ok(low < 20 && high > 26);
});

test("one press of an arrow key is about a hundredth of the axis", () => {
  for (const range of [[18, 22], [18, 30]] as const) {
    const share = keyStep_c(range) / (range[1] - range[0]);
    assert.ok(share > 1 / 200 && share < 1 / 50);
  }
});
