import assert from "node:assert/strict";
import { test } from "node:test";
import { frame } from "../src/chart/frame";
import { nearest, pointMarks, portionPoints } from "../src/chart/reader";
import { thinned } from "../src/chart/thinned";
import { portionAtTime, traceChart } from "../src/chart/trace_figure";
import { readingsTable } from "../src/chart/volume";
import type { Sample } from "../src/live/contract";
import { pointText } from "../src/phrases/seeing";
import { portionAt, readingAt, repeatOf, samplesFrom } from "./example";

const BOX = { width: 600, height: 300, letter: 14 };
const first = repeatOf(1, { readings: [readingAt(0, 20), readingAt(1, 22.5), readingAt(2, null)] });
const second = repeatOf(2, { readings: [readingAt(0, 20.25), readingAt(1, 22.25, 5.5)] });
const mean = [
  { portion: 0, volume_cm3: 0, temperature_c: 20.125, count: 2 },
  { portion: 1, volume_cm3: 5.25, temperature_c: 22.375, count: 2 },
];

test("a point per portion that has a temperature; the mean only where there is something to average", () => {
  const one = portionPoints(readingsTable([first], []));
  assert.deepEqual(one.map(({ portion, values }) => [portion, values.length]), [[0, 1], [1, 1]]);
  const two = portionPoints(readingsTable([first, second], mean));
  assert.deepEqual(two[1]?.values.map(({ repeat, temperature_c }) => [repeat, temperature_c]), [[1, 22.5], [2, 22.25], [null, 22.375]]);
});

test("what stands there is said with portion, volume and temperature", () => {
  const [start, point] = portionPoints(readingsTable([first], []));
  assert.ok(start && point);
  assert.equal(pointText(start), "start: 0 cm³, 20.00 °C");
  assert.equal(pointText(point), "portion 1: 5 cm³, 22.50 °C");
  const both = portionPoints(readingsTable([first, second], mean))[1];
  assert.ok(both);
  assert.match(pointText(both), /^portion 1: 5\.25 cm³; repeat 1 22\.50 °C \(at 5 cm³\), repeat 2 22\.25 °C \(at 5\.5 cm³\), mean 22\.38 °C$/);
});

test("a value stands at its own volume", () => {
  const laid = frame([0, 10], [20, 24], BOX);
  const point = portionPoints(readingsTable([first, second], mean))[1];
  assert.ok(point);
  assert.deepEqual(pointMarks(point, laid).map(([x]) => Math.round(100 * laid.x.invert(x)) / 100), [5, 5.5, 5.25]);
});

test("the nearest point is found on either side, and none among none", () => {
  const at = (index: number) => [0, 10, 30][index] ?? 0;
  assert.deepEqual([-5, 4, 6, 19, 21, 99].map((wanted) => nearest(3, at, wanted)), [0, 0, 1, 1, 2, 2]);
  assert.equal(nearest(0, at, 5), -1);
  assert.equal(nearest(1, at, 5), 0);
});

test("a whole repeat: every pour, every reading, settled ones apart from the others", () => {
  const portions = [portionAt(1, 60), portionAt(2, 61), portionAt(3, 180)];
  const readings = [
    { ...readingAt(0, 20), time_s: 50 },
    { ...readingAt(1, 22), time_s: 120, settled: false },
    { ...readingAt(2, null), time_s: 170 },
  ];
  const chart = traceChart({ samples: samplesFrom(0, 200), portions, readings }, BOX);
  assert.deepEqual(chart.frame.x.domain(), [0, 240]);
  assert.deepEqual(chart.pours.map(({ x }) => Math.round(chart.frame.x.invert(x))), [60, 61, 180]);
  assert.deepEqual(chart.pours.map(({ row }) => row), [0, 1, 0]);
  assert.deepEqual(chart.settled, [[chart.frame.x(50), chart.frame.y(20)]]);
  assert.deepEqual(chart.unsettled, [[chart.frame.x(120), chart.frame.y(22)]]);
  assert.equal(chart.good.length, 200);
});

test("a moment is told from the newest pour", () => {
  const portions = [portionAt(1, 60), portionAt(2, 90)];
  assert.deepEqual([10, 60, 100].map((time_s) => portionAtTime(portions, time_s)), [
    { portion: 0, since_s: 10 },
    { portion: 1, since_s: 0 },
    { portion: 2, since_s: 10 },
  ]);
});

test("a long trace is thinned to lowest and highest of each column, in order; gaps stay gaps", () => {
  const wave = Array.from({ length: 3600 }, (_, s): Sample => [s, s === 1234 ? 99 : s === 2000 ? null : 20 + Math.sin(s)]);
  const kept = thinned(wave, 10);
  assert.ok(kept.length <= 2 * 361 + 1);
  assert.ok(kept.some(([time_s]) => time_s === 1234) && kept.some(([, value]) => value === null));
  assert.ok(kept.every(([time_s], index) => index === 0 || time_s > (kept[index - 1]?.[0] ?? 0)));
  for (let column = 0; column < 360; column++) {
    const of = (samples: readonly Sample[]) =>
      samples.flatMap(([time_s, value]) => (Math.floor(time_s / 10) === column && value !== null ? [value] : []));
    assert.equal(Math.max(...of(kept)), Math.max(...of(wave)));
    assert.equal(Math.min(...of(kept)), Math.min(...of(wave)));
  }
});

test("few samples come back as they are", () => {
  const few = samplesFrom(0, 100);
  assert.equal(thinned(few, 1), few);
  assert.deepEqual(thinned([], 1), []);
});
