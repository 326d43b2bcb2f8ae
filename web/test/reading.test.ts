import assert from "node:assert/strict";
import { test } from "node:test";
import { judged, stepOf } from "../src/bench/typed";

const against = (division_c: number, before_c: number | null = 21) => ({ step_c: division_c / 2, before_c });

test("comma and dot, a true minus sign and a unit are understood", () => {
  for (const text of ["21.5", "21,5", " 21,5 °C", "21.5C"]) {
    assert.deepEqual(judged(text, against(1)), { kind: "fine", temperature_c: 21.5 });
  }
  assert.deepEqual(judged("\u22122", against(1, null)), { kind: "fine", temperature_c: -2 });
});

test("nonsense is refused, and so is what no cup in a lesson can have", () => {
  for (const text of ["", "warm", "21.5.2", "2 1", "1e3x", "NaN", "Infinity"]) {
    assert.equal(judged(text, against(1)).kind, "nonsense", text);
  }
  for (const text of ["60.5", "-5.5", "215"]) assert.equal(judged(text, against(1)).kind, "out of range", text);
  for (const text of ["60", "-5"]) assert.notEqual(judged(text, against(1, null)).kind, "out of range", text);
});

test("half a division can be read, no more: a finer value is asked again, with the nearest one that can", () => {
  assert.equal(judged("21.5", against(1)).kind, "fine");
  assert.deepEqual(judged("21.4", against(1)), {
    kind: "doubtful",
    temperature_c: 21.4,
    doubt: { code: "too fine", near_c: 21.5 },
  });
  for (const text of ["21.4", "21.45", "0.3"]) assert.equal(judged(text, against(0.1, null)).kind, "fine", text);
  assert.equal(judged("21.43", against(0.1)).kind, "doubtful");
});

test("a digital thermometer is read to its last digit", () => {
  const digital = (division_c: number) =>
    stepOf({ thermometer: { kind: "typed", division_c, digital: true } } as Parameters<typeof stepOf>[0]);
  assert.equal(judged("21.3", { step_c: digital(0.1), before_c: 21 }).kind, "fine");
  assert.deepEqual(judged("21.35", { step_c: digital(0.1), before_c: 21 }), {
    kind: "doubtful",
    temperature_c: 21.35,
    doubt: { code: "too fine", near_c: 21.4 },
  });
  assert.equal(judged("21.5", { step_c: digital(1), before_c: 21 }).kind, "doubtful");
});

test("a jump that one portion does not make is asked again", () => {
  assert.deepEqual(judged("12", against(1, 23)), {
    kind: "doubtful",
    temperature_c: 12,
    doubt: { code: "far off", change_c: -11 },
  });
  assert.equal(judged("13", against(1, 23)).kind, "fine");
  assert.equal(judged("12", against(1, null)).kind, "fine");
});
