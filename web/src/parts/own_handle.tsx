// One handle of a line: dragged up and down, or moved with the arrow keys like any slider.

import { useRef } from "preact/hooks";
import type { Frame, Point } from "../frame";
import { type Handle, type Side, keyStep_c } from "../own_lines";
import { words } from "../words";

interface Props {
  side: Side;
  handle: Handle;
  at: Point;
  frame: Frame;
  letter: number;
  range_c: readonly [number, number];
  move: (temperature_c: number) => void;
}

/** At least 48 px to touch, whatever the screen. */
const TARGET_PX = 25;
const MANY_STEPS = 10;

/** Where a key takes a handle / °C; null for a key that is none of its own. */
function keyed(key: string, shift: boolean, now_c: number, range_c: readonly [number, number]): number | null {
  const step_c = keyStep_c(range_c) * (shift ? MANY_STEPS : 1);
  const steps: Record<string, number> = {
    ArrowUp: step_c,
    ArrowRight: step_c,
    ArrowDown: -step_c,
    ArrowLeft: -step_c,
    PageUp: MANY_STEPS * step_c,
    PageDown: -MANY_STEPS * step_c,
  };
  if (key === "Home") return range_c[0];
  if (key === "End") return range_c[1];
  const by_c = steps[key];
  return by_c === undefined ? null : now_c + by_c;
}

export function OwnHandle({ side, handle, at: [x, y], frame, letter, range_c, move }: Props) {
  /** How far below the knob's middle it was taken / px; null while it is not held. */
  const held = useRef<number | null>(null);
  const { volume_cm3, temperature_c } = handle;
  const knob = 0.55 * letter;
  return (
    <g
      class={`handle handle-${side}`}
      role="slider"
      tabindex={0}
      aria-orientation="vertical"
      aria-label={words.ownLines.handle(side, volume_cm3)}
      aria-valuemin={range_c[0]}
      aria-valuemax={range_c[1]}
      aria-valuenow={temperature_c}
      aria-valuetext={words.ownLines.handleAt(temperature_c)}
      transform={`translate(${x.toFixed(1)},${y.toFixed(1)})`}
      onKeyDown={(event) => {
        const wanted_c = keyed(event.key, event.shiftKey, temperature_c, range_c);
        if (wanted_c === null || event.altKey || event.ctrlKey || event.metaKey) return;
        event.preventDefault();
        move(wanted_c);
      }}
      // A browser that does not know touch-action inside a drawing would scroll the page under the finger.
      onTouchStart={(event) => event.preventDefault()}
      onPointerDown={(event) => {
        event.currentTarget.setPointerCapture(event.pointerId);
        held.current = event.clientY - y;
      }}
      onPointerMove={(event) => {
        if (held.current !== null) move(frame.y.invert(event.clientY - held.current));
      }}
      onPointerUp={() => {
        held.current = null;
      }}
      onPointerCancel={() => {
        held.current = null;
      }}
    >
      <circle class="target" r={Math.max(TARGET_PX, 1.6 * letter)} />
      <circle class="knob" r={knob} />
      <path class="arrows" d={`M${-0.5 * knob},${-1.6 * knob}l${0.5 * knob},${-0.6 * knob}l${0.5 * knob},${0.6 * knob}M${-0.5 * knob},${1.6 * knob}l${0.5 * knob},${0.6 * knob}l${0.5 * knob},${-0.6 * knob}`} />
    </g>
  );
}
