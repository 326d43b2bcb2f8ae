// A whole repeat: temperature (up) against time (across), with every pour and every settled reading.

import { useEffect, useMemo, useState } from "preact/hooks";
import { fixed, short } from "../format";
import type { Message, Portion, PortionsView, Reading, Repeat, Sample } from "../live/contract";
import type { Traces } from "../live/model";
import { clock } from "../phrases/seeing";
import { phrase } from "../words";
import { Axes, Sized, Swatch, repeatClass, repeatMark } from "./axes";
import { type Box, type Frame, type Point, frame, padded, tracePath } from "./frame";
import { Moments } from "./reader";
import { type Good, goodOnes, thinned } from "./thinned";
import { drawnRepeats } from "./volume";

// Its geometry: no DOM, no words.

interface TraceData {
  samples: readonly Sample[];
  portions: readonly Portion[];
  readings: readonly Reading[];
}

interface PourMark {
  portion: number;
  x: number;
  /** In which row its number stands: one below the other where neighbours leave no room. */
  row: number;
}

interface TraceChart {
  frame: Frame;
  /** SVG path; a bad sample leaves a gap. */
  path: string;
  /** Samples that can be read, in order of time. */
  good: readonly Good[];
  pours: readonly PourMark[];
  /** Readings that settled, and those that were taken without. */
  settled: readonly Point[];
  unsettled: readonly Point[];
}

const LEAST_SPAN_C = 4;
const LEAST_TIME_S = 60;
/** Steps of the time axis, so that the curve does not creep sideways / s. */
const TIME_STEP_S = 60;
/** A pour's number needs this much of the axis / letters. */
const NUMBER_LETTERS = 1.3;

/** Lay the repeat out in `box`. */
export function traceChart({ samples, portions, readings }: TraceData, box: Box): TraceChart {
  const good = goodOnes(samples);
  const last_s = Math.max(good[good.length - 1]?.[0] ?? 0, portions[portions.length - 1]?.time_s ?? 0);
  const span_s = Math.max(LEAST_TIME_S, TIME_STEP_S * Math.ceil(last_s / TIME_STEP_S));
  const read = readings.filter((reading): reading is Reading & { temperature_c: number } => reading.temperature_c !== null);
  const temperatures = [...good.map(([, temperature_c]) => temperature_c), ...read.map((one) => one.temperature_c)];
  const laid = frame([0, span_s], padded(temperatures, LEAST_SPAN_C), box);
  const place = ({ time_s, temperature_c }: { time_s: number; temperature_c: number }): Point => [
    laid.x(time_s),
    laid.y(temperature_c),
  ];
  return {
    frame: laid,
    path: tracePath(thinned(samples, span_s / Math.max(1, laid.right - laid.left)), laid.x, laid.y),
    good,
    pours: pourMarks(portions, laid, NUMBER_LETTERS * box.letter),
    settled: read.filter(({ settled }) => settled).map(place),
    unsettled: read.filter(({ settled }) => !settled).map(place),
  };
}

function pourMarks(portions: readonly Portion[], laid: Frame, room: number): PourMark[] {
  /** From where on each row is free. */
  const free: number[] = [];
  return portions.map(({ portion, time_s }) => {
    const x = laid.x(time_s);
    const fits = free.findIndex((from) => x >= from);
    const row = fits < 0 ? free.length : fits;
    free[row] = x + room * (String(portion).length + 1) / 2;
    return { portion, x, row };
  });
}

/** The newest portion that was in at `time_s`, and for how long / s; portion 0 before the first. */
export function portionAtTime(portions: readonly Portion[], time_s: number): { portion: number; since_s: number } {
  let found = { portion: 0, since_s: time_s };
  for (const { portion, time_s: poured_s } of portions) {
    if (poured_s <= time_s) found = { portion, since_s: time_s - poured_s };
  }
  return found;
}

// Its drawing.

interface TraceFigureProps {
  view: PortionsView;
  traces: Traces;
  take: (message: Message) => void;
}

const NONE: readonly Sample[] = [];

export function TraceFigure({ view, traces, take }: TraceFigureProps) {
  const [chosen, choose] = useState<number | null>(null);
  const repeats = drawnRepeats(view.repeats);
  const repeat = repeats.find((one) => one.repeat === chosen) ?? repeats[repeats.length - 1];
  const number = repeat?.repeat ?? null;
  useEffect(() => {
    take({ kind: "open", data: { repeat: number } });
    return () => take({ kind: "open", data: { repeat: null } });
  }, [number]);
  if (!repeat) return null;
  const trace = traces.get(repeat.repeat);
  return (
    <>
      {repeats.length > 1 && <Choice repeats={repeats} chosen={repeat.repeat} choose={choose} />}
      <Sized class="drawing" shape={0.4}>
        {(box) => <Readable repeat={repeat} samples={trace?.samples ?? NONE} whole={trace?.whole ?? false} box={box} />}
      </Sized>
      <Legend unsettled={repeat.readings.some(({ settled }) => !settled)} />
    </>
  );
}

function Choice({ repeats, chosen, choose }: { repeats: readonly Repeat[]; chosen: number; choose: (repeat: number) => void }) {
  return (
    <div class="choice" role="group" aria-label={phrase("page-seeing-which-repeat")}>
      {repeats.map(({ repeat }) => (
        <button key={repeat} type="button" class="plain" aria-pressed={repeat === chosen} onClick={() => choose(repeat)}>
          <Swatch path={repeatMark(repeat, 12)} class={repeatClass(repeat)} /> {phrase("page-repeat-name", { repeat })}
        </button>
      ))}
    </div>
  );
}

function Readable({ repeat, samples, whole, box }: { repeat: Repeat; samples: readonly Sample[]; whole: boolean; box: Box }) {
  const { portions, readings } = repeat;
  const chart = useMemo(() => traceChart({ samples, portions, readings }, box), [samples, portions, readings, box]);
  const { frame, good } = chart;
  return (
    <Moments
      frame={frame}
      box={box}
      good={good}
      text={(time_s, temperature_c) => {
        const { portion, since_s } = portionAtTime(portions, time_s);
        return phrase("page-seeing-moment", { time: clock(time_s), temperature: fixed(temperature_c, 2), portion, since: Math.round(since_s) });
      }}
    >
      <Drawing chart={chart} repeat={repeat} whole={whole} box={box} />
    </Moments>
  );
}

function Drawing({ chart, repeat, whole, box }: { chart: TraceChart; repeat: Repeat; whole: boolean; box: Box }) {
  const { frame, good } = chart;
  const { letter } = box;
  const size = 0.42 * letter;
  const last_s = good[good.length - 1]?.[0] ?? 0;
  const spoken = whole ? phrase("page-seeing-trace-text", { minutes: short(last_s / 60, 1), portions: repeat.portions.length }) : phrase("page-seeing-loading");
  return (
    <svg viewBox={`0 0 ${box.width} ${box.height}`} width={box.width} height={box.height} role="img" aria-label={phrase("page-seeing-trace-chart", { repeat: repeat.repeat })} aria-describedby="trace-text">
      <desc id="trace-text">{spoken}</desc>
      <Axes frame={frame} letter={letter} across={phrase("page-since-repeat-axis")} up={phrase("page-temperature-axis")} />
      <g class="pours" font-size={0.9 * letter}>
        {chart.pours.map(({ portion, x, row }) => (
          <g key={portion}>
            <path d={`M${x.toFixed(1)},${frame.top}V${frame.bottom}`} />
            <text x={x + 0.2 * letter} y={frame.top + (0.8 + row) * letter}>
              {portion}
            </text>
          </g>
        ))}
      </g>
      <path class={`trace ${repeatClass(repeat.repeat)}`} d={chart.path} />
      <g class="settled-marks">
        {chart.settled.map(([x, y], index) => (
          <circle key={index} cx={x} cy={y} r={size} />
        ))}
      </g>
      <g class="unsettled-marks">
        {chart.unsettled.map(([x, y], index) => (
          <path key={index} d={cross(x, y, size)} />
        ))}
      </g>
    </svg>
  );
}

function cross(x: number, y: number, size: number): string {
  return `M${x - size},${y - size}l${2 * size},${2 * size}M${x - size},${y + size}l${2 * size},${-2 * size}`;
}

function Legend({ unsettled }: { unsettled: boolean }) {
  return (
    <ul class="legend">
      <li>
        <Swatch path="M-10,0H10" class="series" /> {phrase("page-seeing-whole-trace")}
      </li>
      <li>
        <Swatch path="M0,-10V10" class="pour-swatch" /> {phrase("page-seeing-pour")}
      </li>
      <li>
        <Swatch path="M-6,0a6,6 0 1,0 12,0a6,6 0 1,0 -12,0" class="settled-swatch" /> {phrase("page-seeing-settled-reading")}
      </li>
      {unsettled && (
        <li>
          <Swatch path={cross(0, 0, 6)} class="unsettled-swatch" /> {phrase("page-seeing-unsettled-reading")}
        </li>
      )}
    </ul>
  );
}
