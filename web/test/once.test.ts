import assert from "node:assert/strict";
import { test } from "node:test";
import { expectedBias } from "../src/kinds/once/seeing";
import { clockNow, markToType, typedAmount } from "../src/bench/by_clock";
import { clockedReadings, possibleCorrections } from "../src/bench/corrections/possible";
import { drawnFor } from "../src/bench/drawings";
import { remarksOn, sentence } from "../src/bench/remarks";
import { type OnceSeries, onceChart, onceTable, seriesOf } from "../src/chart/once";
import { minutesText, rounded, signed } from "../src/format";
import type { OnceResult } from "../src/live/results";
import { linesKnowText } from "../src/phrases/results";
import { joulePlaces, kilojoulePlaces } from "../src/phrases/quantities";
import { kindOf } from "../src/kinds";
import { addedOnceText } from "../src/phrases/bench";
import { phrase, said } from "../src/words";
import { crossingWords, extended, oncePlan, onceRepeat, onceViewWith, plan, portionAt, readingAt, repeatOf, samplesFrom } from "./example";

const BOX = { width: 600, height: 300, letter: 14 };
const planned_s = 270;
const series: OnceSeries[] = [{ repeat: 1, samples: [...samplesFrom(0, 100), [100, null], ...samplesFrom(101, 100)], mixed_s: 100 }];
const read = { repeat: 1, lines: extended };

function resultOf(repeats: OnceResult["repeats"], fields: Partial<OnceResult> = {}): OnceResult {
  return { seq: 1, straight_lines: extended, heat_balance: extended, refused: {}, notes: [], repeats, ...fields };
}

test("the time axis starts from the plan and grows in whole minutes", () => {
  const empty = onceChart({ planned_s, series: [], read: null }, BOX);
  assert.deepEqual(empty.frame.x.domain(), [0, 300]);
  const long = [{ repeat: 1, samples: samplesFrom(0, 330), mixed_s: 100 }];
  assert.deepEqual(onceChart({ planned_s, series: long, read: null }, BOX).frame.x.domain(), [0, 360]);
});

test("a trace stands at its times, with a gap at a bad sample and the moment of mixing", () => {
  const { frame, traces } = onceChart({ planned_s, series, read: null }, BOX);
  assert.equal(traces[0]?.path.match(/M/g)?.length, 2);
  assert.equal(traces[0]?.mixed_x, frame.x(100));
  const marks = traces[0]?.marks.map(([x]) => Math.round(frame.x.invert(x)));
  assert.deepEqual(marks, [60, 120, 180]);
});

test("both lines go through their readings and are extended to the moment of mixing, where the change is read", () => {
  const { frame, read: drawn } = onceChart({ planned_s, series, read }, BOX);
  assert.ok(drawn);
  const { before, after, change } = drawn;
  const near = (point: readonly [number, number], time_s: number, temperature_c: number) => {
    assert.ok(Math.abs(frame.x.invert(point[0]) - time_s) < 1e-9);
    assert.ok(Math.abs(frame.y.invert(point[1]) - temperature_c) < 1e-9);
  };
  near(before.through[0], 0, 20.0);
  near(before.through[1], 90, 20.09);
  near(after.through[1], 280, 16.46);
  assert.deepEqual(before.extended, [before.through[1], change[0]]);
  assert.deepEqual(after.extended, [change[1], after.through[0]]);
  near(change[0], 100, 20.1);
  near(change[1], 100, 16.1);
});

test("everything drawn lies inside the frame, though no reading was that cold", () => {
  const { frame, read: drawn } = onceChart({ planned_s, series, read }, BOX);
  for (const [x, y] of drawn ? [...drawn.before.through, ...drawn.after.through, ...drawn.change] : []) {
    assert.ok(x >= frame.left - 1e-9 && x <= frame.right + 1e-9 && y >= frame.top - 1e-9 && y <= frame.bottom + 1e-9);
  }
});

test("the table gives each repeat's numbers and their mean, and no row without a number", () => {
  const repeats = [
    repeatOf(1, { status: "ended", readings: [readingAt(0, 20.1), readingAt(1, 16.5)] }),
    repeatOf(2, { status: "set aside", readings: [readingAt(0, 50)] }),
    repeatOf(3, { readings: [readingAt(0, 20.3)] }),
  ];
  const mean = [{ portion: 0, volume_cm3: 0, temperature_c: 20.2, count: 2 }];
  const before = onceTable(repeats, mean, null);
  assert.deepEqual(before.repeats, [1, 3]);
  assert.deepEqual(before.rows.map((row) => row.quantity), [phrase("page-rows-start"), phrase("page-rows-end")]);
  const result = resultOf([onceRepeat(1, { heat_balance: null }), onceRepeat(3, { straight_lines: null, heat_balance: null })]);
  const { rows } = onceTable(repeats, mean, result);
  const change = rows.find((row) => row.quantity === phrase("page-rows-change"));
  assert.deepEqual(change, { quantity: phrase("page-rows-change"), values_c: [-4, null], mean_c: -4 });
  assert.equal(rows.some((row) => row.quantity === phrase("page-rows-heat-change")), false);
});

test("a remark is said once, with the repeats it is about", () => {
  const late = "The temperature began to change 14 s after the mixing was marked.";
  const result = resultOf([onceRepeat(1, { notes: [late] }), onceRepeat(2, { notes: [late, "Another."] })], { notes: ["All differ."] });
  const told = remarksOn(result, [1, 2]).map((remark) => sentence(remark, 2));
  assert.deepEqual(told, ["All differ.", `Repeats 1 and 2: ${late}`, "Repeat 2: Another."]);
  assert.equal(sentence({ repeats: [1], text: late }, 1), late);
});

test("why one repeat gave no number is told where the others gave one, and only once it has ended", () => {
  const refused = { straight_lines: "No straight part.", heat_balance: "No fit." };
  const repeats = [onceRepeat(1), onceRepeat(2, { straight_lines: null, heat_balance: null, refused })];
  const told = remarksOn(resultOf(repeats, { heat_balance: null }), [1, 2]);
  assert.deepEqual(told, [{ repeats: [2], text: phrase("page-refused-change", { reason: said("No straight part.") }) }]);
  assert.deepEqual(remarksOn(resultOf(repeats), [1]), []);
});

test("the head says what is in the cup and what is added, a solution by strength and a solid by mass", () => {
  assert.equal(kindOf(oncePlan).practical(oncePlan), "60 cm³ of water in the cup; 12 g of potassium chloride all at once");
  const rest = { u_volume_cm3: null, mass_g: null, u_mass_g: null, temperature_c: null };
  const solution = { name: "nitric acid", volume_cm3: 30, concentration_mol_dm3: 0.25, ...rest };
  const two = { ...oncePlan, liquid: { ...solution, name: "sodium hydroxide" }, addition: solution };
  assert.equal(
    kindOf(two).practical(two),
    "30 cm³ of sodium hydroxide (0.25 mol/dm³) in the cup; 30 cm³ of nitric acid (0.25 mol/dm³) all at once",
  );
  const added = portionAt(1, 20);
  assert.equal(addedOnceText(oncePlan, 0, added), "12 g");
  assert.equal(addedOnceText(oncePlan, 0, { ...added, mass_g: 12.1, places: 2 }), "12.10 g", "as it was typed");
  assert.equal(addedOnceText(two, 28, added), "28 cm³");
  assert.equal(addedOnceText(oncePlan, 0, undefined), "0 g");
  assert.equal(addedOnceText(two, 28, undefined), "0 cm³");
  assert.match(kindOf(plan).practical(plan), /^20 cm³ of sulfuric acid in the cup; .* in 5 cm³ portions$/);
});

test("heat is given out or taken in, and its enthalpy change has the sign that says so", () => {
  assert.deepEqual([phrase("page-heat", { way: -1060 < 0 ? "in" : "out" }), phrase("page-joules", { heat: rounded(Math.abs(-1060), joulePlaces(16)) })], ["heat taken in", "1060 J"]);
  assert.equal(phrase("page-enthalpy", { enthalpy: signed(17.2, kilojoulePlaces(0.31)) }), "+17.2 kJ/mol");
  assert.equal(phrase("page-heat", { way: 560 < 0 ? "in" : "out" }), "heat given out");
});

test("portions: a repeat's doubt stands beside the mean of the rest", () => {
  const end = { end_point_cm3: 12, u_end_point_cm3: 0.3, interval_95_cm3: [11.4, 12.6] as const };
  const line = { slope_c_cm3: 0, intercept_c: 20, points: [] };
  const result = {
    seq: 1,
    straight_lines: { ...end, temperature_c: 25, ...crossingWords, before: line, after: line },
    heat_balance: null,
    notes: [],
    refused: { heat_balance: "It gives gas." },
    repeats: [
      {
        repeat: 1,
        straight_lines: null,
        heat_balance: null,
        refused: { straight_lines: "Too few points.", heat_balance: "It gives gas." },
        notes: [],
      },
    ],
  };
  assert.deepEqual(remarksOn(result, [1]), [{ repeats: [1], text: phrase("page-refused", { reason: said("Too few points.") }) }]);
});

test("the bias that is expected of the lines is said by its side: a fall that looks too small is too small", () => {
  const biased = (predicted_bias_c: number | null) => onceRepeat(1, { straight_lines: { ...extended, predicted_bias_c } });
  assert.equal(expectedBias([biased(0.1), biased(0.2), biased(null)])?.toFixed(3), "0.150");
  assert.equal(expectedBias([onceRepeat(1), onceRepeat(2, { straight_lines: null })]), null);
  assert.match(linesKnowText(-4, 0.15), /about 0\.15 °C too small here\.$/);
  assert.match(linesKnowText(4, 0.15), /about 0\.15 °C too large here\.$/);
  assert.match(linesKnowText(4, null), /slow cup wall/);
  assert.equal(linesKnowText(4, 0.004), "This range covers only the scatter of your readings.");
});

const clocked = [0, 30, 60].map((at_s) => ({ at_s, temperature_c: 20 + at_s / 100, division_c: 0.1 }));

test("temperatures typed by the clock are points of their own, with no line between them", () => {
  const one = repeatOf(1, { clocked, portions: [] });
  const { traces, frame } = onceChart({ planned_s, series: [seriesOf(one, undefined)], read: null }, BOX);
  assert.equal(traces[0]?.path, "");
  assert.deepEqual(traces[0]?.marks.map(([x]) => Math.round(frame.x.invert(x))), [0, 30, 60]);
  assert.equal(seriesOf(one, undefined).samples, seriesOf(one, undefined).samples, "the same readings are the same samples");
  const trace = samplesFrom(0, 10);
  assert.equal(seriesOf(repeatOf(1), trace).samples, trace);
});

test("the clock goes on between what the station tells, at its speed", () => {
  const clock = { every_s: 30, now_s: 61, next_s: 90 };
  assert.equal(clockNow(clock, 2000, 1), 63);
  assert.equal(clockNow(clock, 2000, 10), 81);
  assert.equal(markToType(clock, 63, null), 90);
  assert.equal(markToType(clock, 116, null), 120, "a mark that was missed gives way to the next");
  assert.equal(markToType(clock, 116, 90), 90, "what somebody has begun to type belongs to its mark");
  assert.equal(minutesText(90.9), "1:30");
});

test("an amount keeps the decimals with which it was typed, with a dot or a comma", () => {
  assert.deepEqual(typedAmount("4.02"), { amount: 4.02, places: 2 });
  assert.deepEqual(typedAmount(" 4,0 "), { amount: 4, places: 1 });
  assert.deepEqual(typedAmount("40"), { amount: 40, places: 0 });
  for (const none of ["", "four", "-4", "0"]) assert.equal(typedAmount(none), null);
});

test("a solid is tipped and a liquid poured, and a reading by the clock can be corrected", () => {
  assert.equal(drawnFor("tip"), "tip");
  assert.equal(drawnFor("mix"), "pour");
  const view = onceViewWith({ repeats: [repeatOf(1, { clocked }), repeatOf(2, { status: "set aside", clocked })], other_acts: ["reading"] });
  assert.deepEqual(clockedReadings(view).map(({ repeat, at_s }) => [repeat, at_s]), [[1, 60], [1, 30], [1, 0]]);
  assert.ok(possibleCorrections(view).some(({ names }) => names.includes("reading")));
});
