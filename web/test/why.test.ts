import assert from "node:assert/strict";
import { test } from "node:test";
import { firstAndLastRise, straightened, whyChart, whyData } from "../src/bench/why/points";
import type { PortionsView, View } from "../src/live/contract";
import type { Crossing } from "../src/live/results";
import { crossingWords, readingAt, repeatOf, viewWith } from "./example";

const ACID_CM3 = 20;
const END_CM3 = 12;
/** An ideal cup without loss: H J/cm³ up to the end-point, 4.2 J/(cm³ K), alkali as warm as the cup at the start. */
const measuredAt = (volume_cm3: number) => 20 + (60 * Math.min(volume_cm3, END_CM3)) / (4.2 * (ACID_CM3 + volume_cm3));
const correctedAt = (volume_cm3: number) => 20 + (60 * Math.min(volume_cm3, END_CM3)) / (4.2 * (ACID_CM3 + END_CM3));
const volumes = [0, 3, 6, 9, 12, 15, 18];
const crossing: Crossing = {
  end_point_cm3: 11,
  u_end_point_cm3: 0.4,
  interval_95_cm3: [10, 12],
  temperature_c: 26,
  ...crossingWords,
  before: { slope_c_cm3: 0.5, intercept_c: 20.4, points: [0, 1, 2, 3] },
  after: { slope_c_cm3: -0.1, intercept_c: 27, points: [4, 5, 6] },
};
const heat = {
  end_point_cm3: END_CM3,
  u_end_point_cm3: 0.2,
  interval_95_cm3: [11.6, 12.4] as const,
  describes_trace: true,
  enthalpy_kj_mol: null,
  u_enthalpy_kj_mol: null,
  acid_mol_dm3: null,
  u_acid_mol_dm3: null,
  corrected: { volume_cm3: volumes, temperature_c: volumes.map(correctedAt) },
};

function ended(repeat: number, count = volumes.length) {
  const readings = volumes.slice(0, count).map((volume_cm3, portion) => readingAt(portion, measuredAt(volume_cm3), volume_cm3));
  return repeatOf(repeat, { status: "ended", readings });
}

function view(repeats = [ended(1), ended(2)], found = [1, 2]): PortionsView {
  const result = {
    seq: 1,
    straight_lines: crossing,
    heat_balance: heat,
    refused: {},
    notes: [],
    repeats: found.map((repeat) => ({
      repeat,
      straight_lines: { ...crossing, end_point_cm3: 10 + repeat / 10 },
      heat_balance: heat,
      refused: {},
      notes: [],
    })),
  };
  return viewWith({ state: "done", repeats, result } as Partial<View>) as PortionsView;
}

test("the mean of all repeats, where they go together point by point", () => {
  const data = whyData(view());
  assert.equal(data?.repeat, null);
  assert.equal(data?.crossing.end_point_cm3, 11);
  assert.deepEqual(data?.measured.map(({ volume_cm3 }) => volume_cm3), volumes);
});

test("else the newest repeat that both methods could read, with its own numbers", () => {
  const data = whyData(view([ended(1), ended(2)], [1]));
  assert.equal(data?.repeat, 1);
  assert.equal(data?.crossing.end_point_cm3, 10.1);
  assert.equal(whyData(view([ended(1), ended(2, 5)]))?.repeat, 1, "points that do not pair are not paired");
});

test("nothing to show without both methods", () => {
  assert.equal(whyData(view([ended(1)], [])), null);
  assert.equal(whyData(viewWith() as PortionsView), null);
});

test("each portion warms more liquid by less", () => {
  const data = whyData(view());
  const rises = data && firstAndLastRise(data, ACID_CM3);
  assert.ok(rises);
  const [first, last] = rises;
  assert.deepEqual([first.portion, first.liquid_cm3, last.portion, last.liquid_cm3], [1, 23, 3, 29]);
  assert.ok(last.change_c < first.change_c);
});

test("the corrected curve is two straight parts that meet at the end-point", () => {
  const data = whyData(view());
  const straight = data && straightened(data);
  assert.ok(straight);
  assert.ok(Math.abs(straight.start_c - 20) < 1e-9);
  assert.ok(Math.abs(straight.level_c - correctedAt(END_CM3)) < 1e-9);
});

test("everything drawn lies inside the frame, and every reading finds its corrected place", () => {
  const data = whyData(view());
  assert.ok(data);
  const chart = whyChart(data, ACID_CM3, { width: 330, height: 250, letter: 13 });
  const { left, right, top, bottom } = chart.frame;
  const points = [...chart.measured, ...chart.corrected, ...chart.before, ...chart.after, chart.crossing, ...(chart.bend ?? [])];
  for (const [x, y] of points) assert.ok(x >= left - 1e-6 && x <= right + 1e-6 && y >= top - 1e-6 && y <= bottom + 1e-6);
  assert.equal(chart.measured.length, chart.corrected.length);
  assert.ok(chart.liquid.every(({ x, width }) => x + width <= right + 1e-6));
});
