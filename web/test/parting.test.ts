// Repeats that part company, and portions that do not look like their volume.

import assert from "node:assert/strict";
import { test } from "node:test";
import { doubtfulPortions, isNamed } from "../src/bench/doubts";
import { parted } from "../src/bench/parting";
import type { Repeat } from "../src/live/contract";
import { remember } from "../src/words";
import { portionAt, repeatOf, viewWith } from "./example";

function curve(repeat: number, temperatures_c: readonly (number | null)[], unsure: readonly number[] = []): Repeat {
  const readings = temperatures_c.map((temperature_c, portion) => ({
    portion,
    volume_cm3: 4 * portion,
    temperature_c,
    u_c: 0.05,
    settled: true,
    unsure: unsure.includes(portion),
    reason: "",
    typed: false,
    time_s: 60 * portion,
  }));
  return repeatOf(repeat, { status: "ended", readings });
}

test("repeats alike do not part, whatever their starts", () => {
  assert.equal(parted([curve(1, [20, 22, 24, 25, 24.5]), curve(2, [21, 23.1, 25.1, 25.9, 25.5])]), null);
});

test("two that part are named with the portion and how far they are apart", () => {
  const found = parted([curve(1, [20, 22, 24, 25]), curve(2, [20, 22, 23, 23.5]), curve(3, [20, 22.1, 24.1, 25])]);
  assert.deepEqual(found && [found.first, found.second, found.portion], [1, 2, 2]);
  assert.ok(found && Math.abs(found.apart_c - 1.5) < 1e-9);
});

test("what is in doubt, missing or set aside parts nothing", () => {
  const good = curve(1, [20, 22, 24, 25]);
  assert.equal(parted([good, curve(2, [20, 22, null, 25])]), null);
  assert.equal(parted([good, curve(2, [20, 22, 21, 25], [2])]), null);
  assert.equal(parted([good, { ...curve(2, [20, 20, 20, 20]), status: "set aside" }]), null);
});

test("a portion that does not look like its volume is offered until a person has said its volume", () => {
  const note = "Portion 2 does not look like its planned volume: was it missed, doubled or short?";
  remember({ messages: { [note]: { id: "heat-note-portion-volume", values: { portion: 2 } } } });
  const repeat = repeatOf(1, { status: "ended", portions: [portionAt(1, 20), portionAt(2, 80)] });
  const result = { repeats: [{ repeat: 1, notes: [note, "Something else."] }] } as unknown as ReturnType<typeof viewWith>["result"];
  const view = viewWith({ repeats: [repeat], result });
  assert.deepEqual(doubtfulPortions(view).map(({ repeat: which, portion }) => [which, portion]), [[1, 2]]);
  assert.deepEqual(doubtfulPortions({ ...view, repeats: [{ ...repeat, confirmed: [2] }] }), []);
  assert.deepEqual(doubtfulPortions({ ...view, repeats: [{ ...repeat, status: "set aside" as const }] }), []);
});

test("a remark that is named with its buttons is not said again", () => {
  const apart = { first: 1, second: 2, portion: 3, apart_c: 1 };
  const note = "Portion 3 does not look like its planned volume";
  const doubts = { apart, portions: [{ repeat: 1, portion: 3, volume_cm3: 4, note }] };
  assert.equal(isNamed(doubts, note, 1), true);
  assert.equal(isNamed(doubts, note, 2), false, "of another repeat nothing is named");
  remember({
    messages: {
      "they differ": { id: "result-repeats-differ", values: { first: 2, second: 1, apart_cm3: "1.0", u_cm3: "0.2" } },
      "others differ": { id: "result-repeats-differ", values: { first: 1, second: 3, apart_cm3: "1.0", u_cm3: "0.2" } },
    },
  });
  assert.equal(isNamed(doubts, "they differ", null), true);
  assert.equal(isNamed(doubts, "others differ", null), false);
  assert.equal(isNamed({ apart: null, portions: [] }, "they differ", null), false);
});
