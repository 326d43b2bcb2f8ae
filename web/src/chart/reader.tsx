// Reads a chart point by point: by touch, pointer or keyboard. The chart itself is not drawn again for that.
//
// A native range field lies over the plot. Arrow keys, Home, End and page keys work as everywhere, and a screen
// reader says its value text at every step: the live word of the point under the cross-hair.

import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import { phrase } from "../words";
import type { Box, Frame, Point, PointValue, PortionPoint } from "./frame";
import type { Good } from "./thinned";
import type { Row, Table } from "./volume";

interface MomentsProps {
  frame: Frame;
  box: Box;
  good: readonly Good[];
  text: (time_s: number, temperature_c: number) => string;
  children: ComponentChildren;
}

/** A curve of temperature against time, read moment by moment. */
export function Moments({ frame, box, good, text, children }: MomentsProps) {
  const one = (index: number) => good[index] ?? [0, 0];
  return (
    <Reader
      frame={frame}
      box={box}
      count={good.length}
      at={(index) => frame.x(one(index)[0])}
      marks={(index) => [[frame.x(one(index)[0]), frame.y(one(index)[1])]]}
      text={(index) => text(...one(index))}
    >
      {children}
    </Reader>
  );
}

interface Props {
  frame: Frame;
  box: Box;
  count: number;
  /** Place of a point across / px; ascending. */
  at: (index: number) => number;
  marks: (index: number) => readonly Point[];
  text: (index: number) => string;
  children: ComponentChildren;
}

export function Reader({ frame, box, count, at, marks, text, children }: Props) {
  const [read, setRead] = useState<{ index: number; shown: boolean } | null>(null);
  if (count === 0) return <>{children}</>;
  const index = Math.min(read?.index ?? count - 1, count - 1);
  const shown = read?.shown ?? false;
  const show = (index: number) => setRead({ index, shown: true });
  const hide = () => setRead((old) => old && { ...old, shown: false });
  const point = (event: PointerEvent) => {
    const left = (event.currentTarget as Element).getBoundingClientRect().left;
    show(nearest(count, at, event.clientX - left));
  };
  return (
    <>
      <div
        class="reader"
        onPointerDown={point}
        onPointerMove={(event) => (event.pointerType === "mouse" || event.buttons > 0) && point(event)}
        onPointerLeave={(event) => event.pointerType === "mouse" && hide()}
      >
        {children}
        {shown && <CrossHair frame={frame} box={box} x={at(index)} marks={marks(index)} />}
        <input
          type="range"
          class="reader-range"
          aria-label={phrase("page-seeing-read-point")}
          min={0}
          max={count - 1}
          step={1}
          value={index}
          aria-valuetext={text(index)}
          onInput={(event) => show(Number(event.currentTarget.value))}
          onFocus={() => show(index)}
          onBlur={hide}
        />
      </div>
      <p class="readout">{shown ? text(index) : phrase("page-seeing-hint")}</p>
    </>
  );
}

function CrossHair({ frame, box, x, marks }: { frame: Frame; box: Box; x: number; marks: readonly Point[] }) {
  // Of several repeats the last mark is their mean: one ring and one line across are enough.
  const last = marks[marks.length - 1];
  return (
    <svg class="cross-hair" viewBox={`0 0 ${box.width} ${box.height}`} width={box.width} height={box.height} aria-hidden="true">
      <rect
        class="ring"
        x={frame.left}
        y={frame.top}
        width={Math.max(0, frame.right - frame.left)}
        height={Math.max(0, frame.bottom - frame.top)}
      />
      <path d={`M${x.toFixed(1)},${frame.top}V${frame.bottom}`} />
      {last && <path d={`M${frame.left},${last[1].toFixed(1)}H${frame.right}`} />}
      {last && <circle cx={last[0]} cy={last[1]} r={0.6 * box.letter} />}
    </svg>
  );
}

// The points of the volume chart that can be read one by one: what stands at each portion. Pure, no words.

function valuesOf(row: Row, repeats: readonly number[]): PointValue[] {
  const own = row.cells.flatMap(({ reading, ownVolume_cm3 }, index): PointValue[] => {
    const repeat = repeats[index];
    if (repeat === undefined || reading === null || reading.temperature_c === null) return [];
    return [{ repeat, temperature_c: reading.temperature_c, ownVolume_cm3 }];
  });
  if (own.length < 2 || row.mean === null) return own;
  return [...own, { repeat: null, temperature_c: row.mean.temperature_c, ownVolume_cm3: null }];
}

/** One point per portion that has a temperature, in order of volume. */
export function portionPoints({ repeats, rows }: Table): PortionPoint[] {
  return rows
    .map((row) => ({ portion: row.portion, volume_cm3: row.volume_cm3, values: valuesOf(row, repeats) }))
    .filter(({ values }) => values.length > 0);
}

/** Where the values of a point stand. */
export function pointMarks({ volume_cm3, values }: PortionPoint, { x, y }: Frame): Point[] {
  return values.map(({ temperature_c, ownVolume_cm3 }) => [x(ownVolume_cm3 ?? volume_cm3), y(temperature_c)]);
}

/** Index of the value of `at` (ascending, `count` of them) that is nearest to `wanted`; -1 when there is none. */
export function nearest(count: number, at: (index: number) => number, wanted: number): number {
  let [low, high] = [0, count - 1];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (at(middle) < wanted) low = middle;
    else high = middle;
  }
  if (high < 0) return -1;
  return Math.abs(at(low) - wanted) <= Math.abs(at(high) - wanted) ? low : high;
}
