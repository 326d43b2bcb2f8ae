// What every chart is drawn with: its size, axes and marks.

import type { ComponentChildren } from "preact";
import { useLayoutEffect, useRef, useState } from "preact/hooks";
import { type Box, type Frame, MARK_COUNT, type Point, markPath } from "./frame";

// A figure that knows its own width in CSS pixels, so that letters in a chart keep the size of letters on the page.

interface SizedProps {
  /** Height as a share of the width; "fill": as high as the place is. */
  shape: number | "fill";
  class: string;
  /** Least height / letters. */
  least?: number;
  children: (box: Box) => ComponentChildren;
}

const LETTER_SHARE = 0.85;
const LEAST_HEIGHT_LETTERS = 17;

export function Sized({ shape, class: name, least = LEAST_HEIGHT_LETTERS, children }: SizedProps) {
  const ref = useRef<HTMLDivElement>(null);
  const [box, setBox] = useState<Box | null>(null);
  useLayoutEffect(() => {
    const element = ref.current;
    if (!element) return undefined;
    const measure = () => {
      const width = element.clientWidth;
      const letter = LETTER_SHARE * parseFloat(getComputedStyle(element).fontSize);
      const height = shape === "fill" ? element.clientHeight : Math.round(Math.max(least * letter, shape * width));
      setBox((old) => (old && old.width === width && old.height === height && old.letter === letter ? old : { width, height, letter }));
    };
    const observer = new ResizeObserver(measure);
    observer.observe(element);
    measure();
    return () => observer.disconnect();
  }, [shape, least]);
  return (
    <div class={name} ref={ref}>
      {box && box.width > 0 && children(box)}
    </div>
  );
}

// Axes with quantity and unit, and a quiet grid.

interface AxesProps {
  frame: Frame;
  letter: number;
  across: string;
  up: string;
  /** The name of the axis across stands on the line of the ticks, in place of the last of them. */
  compact?: boolean;
  /** Grid lines both ways: a value is read from both axes. */
  both?: boolean;
  /** Finer lines between them, where there is room. */
  fine?: boolean;
}

const NAME_LETTERS = 0.6;

export function Axes({ frame, letter, across, up, compact = false, both = false, fine = false }: AxesProps) {
  const { left, right, top, bottom } = frame;
  return (
    <g class="axes" font-size={letter}>
      {fine && <FineGrid frame={frame} />}
      {frame.yTicks.map(({ at, text }) => (
        <g key={text}>
          <line class="grid" x1={left} x2={right} y1={at} y2={at} />
          <text x={left - 0.5 * letter} y={at + 0.35 * letter} text-anchor="end">
            {text}
          </text>
        </g>
      ))}
      {frame.xTicks.map(({ at, text }) => (
        <g key={text}>
          {both && <line class="grid" x1={at} x2={at} y1={top} y2={bottom} />}
          <line class="tick" x1={at} x2={at} y1={bottom} y2={bottom + 0.35 * letter} />
          {(!compact || at < right - NAME_LETTERS * letter * (across.length + 2)) && (
            <text x={at} y={bottom + 1.35 * letter} text-anchor="middle">
              {text}
            </text>
          )}
        </g>
      ))}
      <path class="axis" d={`M${left},${top}V${bottom}H${right}`} />
      <text class="quantity" x={0} y={letter}>
        {up}
      </text>
      <text class="quantity" x={right} y={bottom + (compact ? 1.35 : 2.7) * letter} text-anchor="end">
        {across}
      </text>
    </g>
  );
}

/** Lines nearer together than this are a grey patch / px. */
const FINE_PX = 6;
const FINER = 5;

/** A fifth (or so) of the way from tick to tick: 1 cm³ where the ticks are 5 cm³ apart. */
function FineGrid({ frame: { left, right, top, bottom, x, y, xTicks, yTicks } }: { frame: Frame }) {
  const across = x.ticks(FINER * xTicks.length).map(x);
  const up = y.ticks(FINER * yTicks.length).map(y);
  const apart = (places: readonly number[]) => Math.abs((places[1] ?? 0) - (places[0] ?? 0)) >= FINE_PX;
  return (
    <g class="fine-grid">
      {apart(across) && <path d={across.map((at) => `M${at.toFixed(1)},${top}V${bottom}`).join("")} />}
      {apart(up) && <path d={up.map((at) => `M${left},${at.toFixed(1)}H${right}`).join("")} />}
    </g>
  );
}

// The shapes of the series: repeats differ by shape as well as by colour.

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

interface MarksProps {
  points: readonly Point[];
  path: string;
  class: string;
}

export function Marks({ points, path, class: name }: MarksProps) {
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
