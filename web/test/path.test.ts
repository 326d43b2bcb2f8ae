import assert from "node:assert/strict";
import { test } from "node:test";
import { MARK_COUNT, markPath, through, tracePath } from "../src/path";

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
