// SVG paths of curves and marks. Written here rather than taken from a library: all of a shape library's curves and
// pies would travel with the first view, for one polyline and five marks.

import type { Sample } from "./contract";
import type { Point } from "./frame";

const pixel = (value: number) => String(Math.round(10 * value) / 10);

/** A straight line from point to point, to a tenth of a pixel. */
export function through(points: readonly Point[]): string {
  return points.map(([x, y], index) => `${index === 0 ? "M" : "L"}${pixel(x)},${pixel(y)}`).join("");
}

/** The curve of a trace; a bad sample leaves a gap, and a sample alone between two gaps is a dot. */
export function tracePath(samples: readonly Sample[], x: (time_s: number) => number, y: (temperature_c: number) => number): string {
  let path = "";
  let open = 0;
  for (const [time_s, temperature_c] of samples) {
    if (temperature_c === null) {
      if (open === 1) path += "Z";
      open = 0;
      continue;
    }
    path += `${open === 0 ? "M" : "L"}${pixel(x(time_s))},${pixel(y(temperature_c))}`;
    open += 1;
  }
  return open === 1 ? `${path}Z` : path;
}

/** Outlines of the marks, each about as large to the eye, for a mark 2 wide and high about its middle. */
const MARKS: readonly ((half: number) => readonly Point[] | null)[] = [
  () => null, // a circle is no polygon
  (half) => [[-half, -half], [half, -half], [half, half], [-half, half]],
  (half) => [[0, -1.25 * half], [1.2 * half, 0.85 * half], [-1.2 * half, 0.85 * half]],
  (half) => [[0, -1.4 * half], [1.05 * half, 0], [0, 1.4 * half], [-1.05 * half, 0]],
  (half) => [[0, 1.25 * half], [1.2 * half, -0.85 * half], [-1.2 * half, -0.85 * half]],
];

/** How many different marks there are. */
export const MARK_COUNT = MARKS.length;

/** Outline of a mark about the origin, `size` pixels wide; shapes go round after the last. */
export function markPath(shape: number, size: number): string {
  const half = 0.42 * size;
  const corners = MARKS[shape % MARK_COUNT]?.(half);
  if (corners) return `${through(corners)}Z`;
  const radius = pixel(1.1 * half);
  return `M-${radius},0a${radius},${radius} 0 1,0 ${2 * Number(radius)},0a${radius},${radius} 0 1,0 -${2 * Number(radius)},0`;
}
