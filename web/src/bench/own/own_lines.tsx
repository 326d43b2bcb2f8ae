// The students place two straight lines through their mean readings, read the volume at which they cross, and
// commit to it: before the station says anything.

import { useRef, useState } from "preact/hooks";
import { Axes, Marks, Sized, Swatch, meanMark } from "../../chart/axes";
import type { Box, Frame, Point } from "../../chart/frame";
import { fixed, short } from "../../format";
import type { Acting } from "../../live/acts";
import type { MeanPoint, View } from "../../live/contract";
import { keepInTab, keptInTab } from "../../live/tab";
import { Explained } from "../../page/terms";
import { marked, phrase } from "../../words";
import {
  type Handle,
  type Met,
  type OwnChart,
  type OwnLines as Lines,
  type Side,
  keyStep_c,
  linesFrom,
  movedTo,
  ownChart,
  ownRange_c,
  startLines,
  whereTheyCross,
} from "./lines";
import { OwnFields, OwnVolume } from "./own_values";

interface Steps {
  step_cm3: number;
  count: number;
}

interface OwnLinesProps {
  view: View;
  acting: Acting;
  /** What is added in one step, and in how many / cm³: the axis across. */
  steps: Steps;
  /** What the axes are called; temperature against volume added where nothing else is said. */
  names?: { across: string; up: string };
  /** Called once a reading is kept. */
  done: () => void;
}

const SIDES: readonly Side[] = ["before", "after"];
const WHICH: readonly (0 | 1)[] = [0, 1];

/** A finger needs height to set a line well. */
const LEAST_LETTERS = 25;

/** All of the axis / cm³: planned, or what went in where that is more. */
function most(view: View, { step_cm3, count }: Steps): Steps & { most_cm3: number } {
  const most_cm3 = Math.max(step_cm3 * count, ...view.mean.map((point) => point.volume_cm3));
  return { step_cm3, count: Math.max(count, Math.round(most_cm3 / step_cm3)), most_cm3 };
}

const KEPT = "own-lines";

/** Lines are of one bench and one practical: bench time never begins anew. */
const practicalOf = ({ bench, plan, repeats }: View): string => JSON.stringify([bench.name, plan, repeats.map(({ started_s }) => started_s)]);

const isLine = (line: unknown): boolean =>
  Array.isArray(line) && line.length === 2 && line.every((each) => Number.isFinite(each?.volume_cm3) && Number.isFinite(each?.temperature_c));

/** The handles as they were left in this tab: a reload does not take them away before they are committed to. */
function keptLines(view: View): Lines | null {
  const { of, lines } = (keptInTab(KEPT) ?? {}) as { of?: string; lines?: Lines };
  return of === practicalOf(view) && lines && isLine(lines.before) && isLine(lines.after) ? lines : null;
}

function useLines(view: View, steps: Steps) {
  const { step_cm3, count, most_cm3 } = most(view, steps);
  const range_c = ownRange_c(view.mean);
  const [lines, setLines] = useState<Lines>(() => {
    const start = startLines(step_cm3, count, range_c);
    const { before, after } = view.own_reading ?? {};
    return before && after ? linesFrom(start, before, after) : (keptLines(view) ?? start);
  });
  const move = (side: Side, which: 0 | 1, temperature_c: number) =>
    setLines((old) => {
      const moved = movedTo(old, side, which, temperature_c, range_c);
      keepInTab(KEPT, { of: practicalOf(view), lines: moved });
      return moved;
    });
  return { lines, move, range_c, most_cm3, met: whereTheyCross(lines, most_cm3) };
}

function turnsUp(mean: readonly MeanPoint[]): boolean {
  const temperatures = mean.map(({ temperature_c }) => temperature_c);
  return Math.max(...temperatures) > (temperatures[0] ?? 0);
}

export function OwnLines({ view, acting, steps, names, done }: OwnLinesProps) {
  const { lines, move, range_c, most_cm3, met } = useLines(view, steps);
  return (
    <div class="own-reading" data-testid="own-reading">
      <p><Explained text={turnsUp(view.mean) ? marked("page-own-lines-task") : marked("page-own-lines-task-falling")} /></p>
      <Sized class="drawing" shape={0.5} least={LEAST_LETTERS}>
        {(box) => (
          <Drawing
            chart={ownChart(view.mean, lines, met, most_cm3, box)}
            lines={lines}
            met={met}
            box={box}
            range_c={range_c}
            move={move}
            names={names ?? { across: phrase("page-volume-axis"), up: phrase("page-temperature-axis") }}
          />
        )}
      </Sized>
      <p class={met ? "own-crossing" : "own-crossing own-apart"} role="status">
        {met ? phrase("page-own-lines-crossing", { volume: fixed(met.volume_cm3, 1) }) : phrase("page-own-lines-no-crossing")}
      </p>
      <ul class="legend">
        <li>
          <Swatch path={meanMark(7)} class="series mean" /> {phrase("page-own-lines-legend-mean")}
        </li>
        <li>
          <Swatch path="M-10,0H10" class="own own-before" /> {phrase("page-own-lines-legend-before")}
        </li>
        <li>
          <Swatch path="M-10,0H10" class="own own-after" /> {phrase("page-own-lines-legend-after")}
        </li>
      </ul>
      <OwnFields lines={lines} range_c={range_c} move={move} />
      <OwnVolume view={view} acting={acting} lines={lines} met={met} most_cm3={most_cm3} done={done} />
    </div>
  );
}

interface DrawingProps {
  chart: OwnChart;
  lines: Lines;
  met: Met | null;
  box: Box;
  range_c: readonly [number, number];
  move: (side: Side, which: 0 | 1, temperature_c: number) => void;
  names: { across: string; up: string };
}

function Drawing({ chart, lines, met, box, range_c, move, names }: DrawingProps) {
  const { frame } = chart;
  const { letter } = box;
  return (
    <svg viewBox={`0 0 ${box.width} ${box.height}`} width={box.width} height={box.height} role="group" aria-label={phrase("page-own-lines-chart")}>
      <desc>{phrase("page-own-lines-chart-text", { points: chart.points.length })}</desc>
      <clipPath id="own-clip">
        <rect x={frame.left} y={frame.top} width={Math.max(0, frame.right - frame.left)} height={Math.max(0, frame.bottom - frame.top)} />
      </clipPath>
      <Axes frame={frame} letter={letter} across={names.across} up={names.up} />
      <g clip-path="url(#own-clip)">
        {SIDES.map((side) => {
          const [[x1, y1], [x2, y2]] = chart.lines[side].drawn;
          return <line key={side} class={`own own-${side}`} x1={x1} y1={y1} x2={x2} y2={y2} />;
        })}
      </g>
      <Marks points={chart.points} path={meanMark(0.5 * letter)} class="series mean" />
      {chart.met && met && (
        <g class="own-met" font-size={1.25 * letter}>
          <path class="drop" d={`M${chart.met[0]},${chart.met[1]}V${frame.bottom}`} />
          <circle cx={chart.met[0]} cy={chart.met[1]} r={0.5 * letter} />
        </g>
      )}
      {SIDES.map((side) =>
        WHICH.map((which) => (
          <OwnHandle
            key={`${side} ${which}`}
            side={side}
            handle={lines[side][which]}
            at={chart.lines[side].handles[which]}
            frame={frame}
            letter={letter}
            range_c={range_c}
            move={(temperature_c) => move(side, which, temperature_c)}
          />
        )),
      )}
    </svg>
  );
}

// One handle of a line: dragged up and down, or moved with the arrow keys like any slider.

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

function OwnHandle({ side, handle, at: [x, y], frame, letter, range_c, move }: Props) {
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
      aria-label={phrase("page-own-lines-handle", { side, volume: short(volume_cm3) })}
      aria-valuemin={range_c[0]}
      aria-valuemax={range_c[1]}
      aria-valuenow={temperature_c}
      aria-valuetext={phrase("page-own-lines-handle-at", { temperature: fixed(temperature_c, 2) })}
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
