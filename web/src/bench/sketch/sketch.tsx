// The group draws how it thinks that the temperature will go over the volume added: by finger, mouse or keyboard, before
// the first portion. It is kept in the record, and lies under the measured curve.

import { useRef, useState } from "preact/hooks";
import { Axes, Sized } from "../../chart/axes";
import { type Box, type Frame, frame, through } from "../../chart/frame";
import { fixed, short } from "../../format";
import type { Acting } from "../../live/acts";
import type { PortionsView } from "../../live/contract";
import { phrase } from "../../words";
import { type Drawn, STEP_C, blank, drawnOf, nudged, pointsOf, rangeAbout, stroked } from "./points";

interface Props {
  view: PortionsView;
  acting: Acting;
  /** Called once it is kept. */
  done: () => void;
}

/** Least height of the drawing / letters: as much as a finger needs. */
const LEAST_LETTERS = 18;
const FEWEST = 2;

export function SketchPart({ view, acting, done }: Props) {
  const { plan, sketch, last_good } = view;
  const { count, volume_cm3: portion_cm3 } = plan.portions;
  // As when it is begun: what is measured meanwhile must not move it.
  const [start_c] = useState(() => sketch?.[0]?.[1] ?? last_good?.temperature_c ?? plan.surroundings.room_c ?? 20);
  const [drawn, draw] = useState<Drawn>(() => (sketch ? drawnOf(sketch, count, portion_cm3) : blank(count, start_c)));
  const points = pointsOf(drawn, portion_cm3);
  const keep = async () => {
    if (points.length < FEWEST || acting.busy) return;
    if (!(await acting.send({ act: "sketch", points }))) return;
    done();
    // The next step is asked for at the top.
    scrollTo(0, 0);
  };
  return (
    <div class="sketching">
      <p>{phrase("page-sketch-task")}</p>
      <Sized class="drawing" shape={0.5} least={LEAST_LETTERS}>
        {(box) => <Pad drawn={drawn} draw={draw} start_c={start_c} portion_cm3={portion_cm3} box={box} />}
      </Sized>
      <div class="answers">
        <button type="button" class="strong" data-act="sketch" aria-disabled={points.length < FEWEST || acting.busy} onClick={() => void keep()}>
          {phrase("page-sketch-keep")}
        </button>
        <button type="button" class="plain" onClick={() => draw(blank(count, start_c))}>
          {phrase("page-sketch-clear")}
        </button>
      </div>
    </div>
  );
}

interface PadProps {
  drawn: Drawn;
  draw: (change: (old: Drawn) => Drawn) => void;
  start_c: number;
  portion_cm3: number;
  box: Box;
}

function Pad({ drawn, draw, start_c, portion_cm3, box }: PadProps) {
  const range_c = rangeAbout(start_c);
  const last = drawn.length - 1;
  const laid = frame([0, last * portion_cm3], range_c, box);
  const [at, go] = useState(1);
  const stroke = useRef<readonly [number, number] | null>(null);
  const placeOf = (event: PointerEvent): readonly [number, number] => {
    const { left, top } = (event.currentTarget as SVGElement).getBoundingClientRect();
    return [laid.x.invert(event.clientX - left) / portion_cm3, laid.y.invert(event.clientY - top)];
  };
  const press = (event: PointerEvent) => {
    const place = placeOf(event);
    (event.currentTarget as SVGElement).setPointerCapture(event.pointerId);
    stroke.current = place;
    draw((old) => stroked(old, place, place, range_c));
  };
  const pull = (event: PointerEvent) => {
    const from = stroke.current;
    if (!from) return;
    const to = placeOf(event);
    stroke.current = to;
    draw((old) => stroked(old, from, to, range_c));
  };
  const lift = () => {
    stroke.current = null;
  };
  const keys: Record<string, () => void> = {
    ArrowLeft: () => go(Math.max(0, at - 1)),
    ArrowRight: () => go(Math.min(last, at + 1)),
    ArrowUp: () => draw((old) => nudged(old, at, STEP_C, range_c)),
    ArrowDown: () => draw((old) => nudged(old, at, -STEP_C, range_c)),
  };
  const key = (event: KeyboardEvent) => {
    const does = keys[event.key];
    if (!does) return;
    event.preventDefault();
    does();
  };
  const temperature_c = drawn[at] ?? null;
  const volume = short(at * portion_cm3);
  return (
    <svg class="sketch-pad" viewBox={`0 0 ${box.width} ${box.height}`} width={box.width} height={box.height} onPointerDown={press} onPointerMove={pull} onPointerUp={lift} onPointerCancel={lift}>
      <Axes frame={laid} letter={box.letter} across={phrase("page-volume-axis")} up={phrase("page-temperature-axis")} both />
      <SketchLine points={pointsOf(drawn, portion_cm3)} frame={laid} />
      <g
        class="sketch-at"
        role="slider"
        tabindex={0}
        aria-label={phrase("page-sketch-drawing")}
        aria-orientation="vertical"
        aria-valuemin={range_c[0]}
        aria-valuemax={range_c[1]}
        aria-valuenow={temperature_c ?? start_c}
        aria-valuetext={temperature_c === null ? phrase("page-sketch-at-none", { volume }) : phrase("page-sketch-at", { volume, temperature: fixed(temperature_c, 1) })}
        onKeyDown={key}
      >
        <path d={`M${laid.x(at * portion_cm3).toFixed(1)},${laid.top}V${laid.bottom}`} />
        <circle cx={laid.x(at * portion_cm3)} cy={laid.y(temperature_c ?? start_c)} r={0.5 * box.letter} />
      </g>
    </svg>
  );
}

function SketchLine({ points, frame: laid }: { points: readonly (readonly [number, number])[]; frame: Frame }) {
  return <path class="sketch" d={through(points.map(([volume_cm3, temperature_c]) => [laid.x(volume_cm3), laid.y(temperature_c)]))} />;
}
