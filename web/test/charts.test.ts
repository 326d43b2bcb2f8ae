// Charts against volume and time, and the paths in them.

import assert from "node:assert/strict";
import { test } from "node:test";
import { timeChart } from "../src/bench/live_trace";
import { MARK_COUNT, markPath, through, tickTexts, tracePath } from "../src/chart/frame";
import { readingsTable, temperatureOn, volumeChart } from "../src/chart/volume";
import type { Sample } from "../src/live/contract";
import type { Crossing } from "../src/live/results";
import { crossingWords, plan, readingAt, repeatOf } from "./example";

const BOX = { width: 600, height: 300, letter: 14 };
const repeats = [
  repeatOf(1, { readings: [readingAt(0, 20), readingAt(1, 24), readingAt(2, 27), readingAt(3, 26)] }),
  repeatOf(2, { readings: [readingAt(0, 20.5), readingAt(1, null)] }),
  repeatOf(3, { status: "set aside", readings: [readingAt(0, 60)] }),
];
const mean = [0, 1, 2, 3].map((portion) => ({ portion, volume_cm3: 5 * portion, temperature_c: 20 + portion, count: 1 }));
const crossing: Crossing = {
  end_point_cm3: 10,
  u_end_point_cm3: 0.4,
  interval_95_cm3: [9, 18],
  temperature_c: 28,
  ...crossingWords,
  before: { slope_c_cm3: 0.8, intercept_c: 20, points: [0, 1] },
  after: { slope_c_cm3: -0.2, intercept_c: 30, points: [2, 3] },
};

test("readings stand at their volume and temperature; missing and set-aside ones are not drawn", () => {
  const chart = volumeChart({ planned_cm3: plan.portions.volume_cm3 * plan.portions.count, repeats, mean, crossing: null }, BOX);
  assert.deepEqual(chart.series.map((series) => [series.repeat, series.points.length]), [[1, 4], [2, 1]]);
  const [x, y] = chart.series[0]?.points[2] ?? [0, 0];
  assert.equal(chart.frame.x.invert(x), 10);
  assert.ok(Math.abs(chart.frame.y.invert(y) - 27) < 1e-9);
});

test("the volume axis reaches the planned total from the start, so that it does not move while the curve grows", () => {
  const empty = volumeChart({ planned_cm3: plan.portions.volume_cm3 * plan.portions.count, repeats: [], mean: [], crossing: null }, BOX);
  const grown = volumeChart({ planned_cm3: plan.portions.volume_cm3 * plan.portions.count, repeats, mean, crossing }, BOX);
  assert.deepEqual(empty.frame.x.domain(), [0, 15]);
  assert.deepEqual(grown.frame.x.domain(), [0, 15]);
});

test("the lines meet at the crossing, go a little past it, and its interval is cut to the chart", () => {
  const { frame, crossing: marks } = volumeChart({ planned_cm3: plan.portions.volume_cm3 * plan.portions.count, repeats, mean, crossing }, BOX);
  assert.ok(marks);
  assert.equal(temperatureOn(crossing.before, 10), 28);
  assert.deepEqual(marks.at, [frame.x(10), frame.y(28)]);
  assert.ok(marks.before[1][0] > marks.at[0] && marks.after[0][0] < marks.at[0]);
  assert.deepEqual(marks.interval, [frame.x(9), frame.x(15)]);
});

test("everything drawn lies inside the frame", () => {
  const { frame, series, crossing: marks } = volumeChart({ planned_cm3: plan.portions.volume_cm3 * plan.portions.count, repeats, mean, crossing }, BOX);
  for (const [x, y] of [...series.flatMap((one) => one.points), marks?.at ?? [0, 0]]) {
    assert.ok(x >= frame.left - 1e-9 && x <= frame.right + 1e-9 && y >= frame.top - 1e-9 && y <= frame.bottom + 1e-9);
  }
});

test("a nearly constant temperature is not blown up: one step of the probe stays a small step", () => {
  const flat: Sample[] = [[100, 21], [101, 21.0625]];
  const chart = timeChart(flat, 100, null, BOX);
  const [low, high] = chart.frame.y.domain() as [number, number];
  assert.ok(high - low >= 2);
});

test("a bad sample leaves a gap in the curve and time counts from the pour", () => {
  const chart = timeChart([[105, 21], [106, 22], [107, null], [108, 23], [109, 23]], 100, 23, BOX);
  assert.equal(chart.path.match(/M/g)?.length, 2);
  assert.deepEqual(chart.newest, [chart.frame.x(9), chart.frame.y(23)]);
  assert.deepEqual(chart.frame.x.domain(), [0, 60]);
});

test("the time axis grows in whole steps", () => {
  const reach = (last_s: number) => timeChart([[last_s, 20]], 0, null, BOX).frame.x.domain()[1];
  assert.deepEqual([10, 60, 61, 89, 91].map(reach), [60, 60, 90, 90, 120]);
});

test("tick marks carry round numbers with a true minus sign", () => {
  const chart = timeChart([[0, -1.5], [10, 0.5]], 0, null, BOX);
  assert.ok(chart.frame.yTicks.some((tick) => tick.text.startsWith("\u2212")));
  assert.ok(chart.frame.yTicks.length >= 3);
});

test("the table has a row per portion and a column per repeat that counts", () => {
  const table = readingsTable(repeats, mean);
  assert.deepEqual(table.repeats, [1, 2]);
  assert.deepEqual(table.rows.map((row) => row.volume_cm3), [0, 5, 10, 15]);
  assert.deepEqual(table.rows[0]?.cells.map((cell) => cell.reading?.temperature_c), [20, 20.5]);
  assert.equal(table.rows[2]?.cells[1]?.reading, null);
});

test("a reading at another volume than its row says so", () => {
  const corrected = [repeatOf(1, { readings: [readingAt(1, 24, 5)] }), repeatOf(2, { readings: [readingAt(1, 25, 6)] })];
  const averaged = [{ portion: 1, volume_cm3: 5.5, temperature_c: 24.5, count: 2 }];
  const row = readingsTable(corrected, averaged).rows[0];
  assert.equal(row?.volume_cm3, 5.5);
  assert.deepEqual(row?.cells.map((cell) => cell.ownVolume_cm3), [5, 6]);
});

test("a doubt about a portion stands at its reading, with the reason that somebody gave", () => {
  const spilled = { portion: 1, time_s: 10, volume_cm3: 5, early: false, unsure: true, unsure_reason: "spilled", mass_g: null, places: null };
  const repeat = repeatOf(1, { portions: [spilled], readings: [readingAt(0, 20), readingAt(1, 24)] });
  const rows = readingsTable([repeat], []).rows;
  assert.deepEqual(rows.map((row) => row.cells[0]?.unsureReason), [null, "spilled"]);
});

const same = (value: number) => value;

test("a curve goes from sample to sample and leaves a gap where one is bad", () => {
  const path = tracePath([[0, 1], [1, 2.04], [2, null], [3, 4], [4, 5]], same, same);
  assert.equal(path, "M0,1L1,2M3,4L4,5");
});

test("a sample alone between two gaps is a dot, and no samples are no path", () => {
  assert.equal(tracePath([[0, null], [1, 2], [2, null]], same, same), "M1,2Z");
  assert.equal(tracePath([[0, 1]], same, same), "M0,1Z");
  assert.equal(tracePath([], same, same), "");
});

test("a line through points", () => {
  assert.equal(through([[0, 0.04], [-1.26, 2]]), "M0,0L-1.3,2");
});

test("every mark is another shape, about as wide as asked for, and they go round", () => {
  const shapes = Array.from({ length: MARK_COUNT }, (_, shape) => markPath(shape, 10));
  assert.equal(new Set(shapes).size, MARK_COUNT);
  assert.equal(markPath(MARK_COUNT, 10), shapes[0]);
  for (const shape of shapes.slice(1)) {
    const across = [...shape.matchAll(/[ML](-?[\d.]+),/g)].map(([, x]) => Number(x));
    const width = Math.max(...across) - Math.min(...across);
    assert.ok(width > 7 && width < 12, `${width}`);
  }
});

test("an axis writes as many decimals as the distance of its numbers needs, and a true minus sign", () => {
  assert.deepEqual(tickTexts([0, 5, 10]), ["0", "5", "10"]);
  assert.deepEqual(tickTexts([19, 19.5, 20]), ["19.0", "19.5", "20.0"]);
  assert.deepEqual(tickTexts([-0.04, -0.02, 0]), ["\u22120.04", "\u22120.02", "0.00"]);
  assert.deepEqual(tickTexts([0, 100, 200]), ["0", "100", "200"]);
  assert.deepEqual(tickTexts([21]), ["21"]);
});
