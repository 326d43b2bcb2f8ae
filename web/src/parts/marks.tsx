// The shapes of the series: repeats differ by shape as well as by colour.

import type { Point } from "../frame";
import { MARK_COUNT, markPath } from "../path";

/** Outline of the mark of a repeat (from 1), about `size` pixels wide. */
export function repeatMark(repeat: number, size: number): string {
  return markPath(repeat - 1, size);
}

/** The mark of a mean: a plus sign. */
export function meanMark(size: number): string {
  return `M${-size},0H${size}M0,${-size}V${size}`;
}

/** Series class of a repeat: colours go round after five. */
export function repeatClass(repeat: number): string {
  return `series series-${((repeat - 1) % MARK_COUNT) + 1}`;
}

interface Props {
  points: readonly Point[];
  path: string;
  class: string;
}

export function Marks({ points, path, class: name }: Props) {
  return (
    <g class={name}>
      {points.map(([x, y], index) => (
        <path key={index} d={path} transform={`translate(${x.toFixed(1)},${y.toFixed(1)})`} />
      ))}
    </g>
  );
}

/** A mark standing in a legend. */
export function Swatch({ path, class: name }: { path: string; class: string }) {
  return (
    <svg class={`swatch ${name}`} viewBox="-10 -10 20 20" aria-hidden="true">
      <path d={path} />
    </svg>
  );
}
