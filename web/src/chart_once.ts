// Geometry of temperature (up) against time since the start of the repeat (across), for one mixing. No DOM, no words.

import type { Sample } from "./contract";
import { type Box, type Frame, type Point, frame, padded } from "./frame";
import { tracePath } from "./path";
import type { Extended, Stretch } from "./results";
import { type Good, goodOnes, thinned } from "./thinned";

export interface OnceSeries {
  repeat: number;
  samples: readonly Sample[];
  /** When it was mixed / s; null while it was not. */
  mixed_s: number | null;
}

export interface OnceData {
  /** How long the plan records before and after mixing, together / s. */
  planned_s: number;
  series: readonly OnceSeries[];
  /** The repeat whose lines are drawn, with them. */
  read: { repeat: number; lines: Extended } | null;
}

export type Segment = readonly [Point, Point];

/** One line: where it goes through readings, and how it is extended to the moment of mixing. */
export interface StretchDrawn {
  through: Segment;
  extended: Segment;
}

export interface OnceChart {
  frame: Frame;
  /** SVG paths; a bad sample leaves a gap. `marks` are some of its points, for the shape of the repeat. */
  traces: readonly {
    repeat: number;
    path: string;
    marks: readonly Point[];
    mixed_x: number | null;
    /** Samples that can be read, in order of time. */
    good: readonly Good[];
  }[];
  read: { before: StretchDrawn; after: StretchDrawn; change: Segment } | null;
}

const LEAST_SPAN_C = 2;
/** Steps of the time axis, so that the curve does not creep sideways; and room for hands beyond the plan / s. */
const TIME_STEP_S = 60;
const HANDS_S = 30;
/** Marks along a trace, one each so many seconds; repeats take turns. */
const MARK_EACH_S = 60;
const TURN_S = 20;

/** The first good sample of each stretch of time. */
function marked(samples: readonly Good[], turn: number): Good[] {
  const slot = ([time_s]: Good) => Math.floor((time_s - TURN_S * (turn % 3)) / MARK_EACH_S);
  return samples.filter((sample, index) => {
    const before = samples[index - 1];
    return before !== undefined && slot(before) !== slot(sample);
  });
}

/** Lay the chart out in `box`; its time axis starts from the plan. */
export function onceChart(data: OnceData, box: Box): OnceChart {
  const all = data.series.map(({ samples }) => goodOnes(samples));
  const last_s = Math.max(data.planned_s + HANDS_S, ...all.map((samples) => samples[samples.length - 1]?.[0] ?? 0));
  const lines = data.read?.lines;
  const temperatures = all.flatMap((samples) => samples.map(([, temperature_c]) => temperature_c));
  if (lines) temperatures.push(lines.before.at_mixing_c, lines.after.at_mixing_c);
  const span_s = TIME_STEP_S * Math.ceil(last_s / TIME_STEP_S);
  const laid = frame([0, span_s], padded(temperatures, LEAST_SPAN_C), box);
  return {
    frame: laid,
    traces: data.series.map(({ repeat, samples, mixed_s }, index) => ({
      repeat,
      path: tracePath(thinned(samples, span_s / Math.max(1, laid.right - laid.left)), laid.x, laid.y),
      good: all[index] ?? [],
      marks: marked(all[index] ?? [], index).map(([time_s, value]): Point => [laid.x(time_s), laid.y(value)]),
      mixed_x: mixed_s === null ? null : laid.x(mixed_s),
    })),
    read: lines ? readOff(lines, laid) : null,
  };
}

function readOff(lines: Extended, laid: Frame): OnceChart["read"] {
  const { mixed_at_s } = lines;
  const at = (stretch: Stretch, time_s: number): Point => [
    laid.x(time_s),
    laid.y(stretch.at_mixing_c + stretch.slope_c_s * (time_s - mixed_at_s)),
  ];
  const { before, after } = lines;
  return {
    before: {
      through: [at(before, before.begin_s), at(before, before.end_s)],
      extended: [at(before, before.end_s), at(before, mixed_at_s)],
    },
    after: {
      through: [at(after, after.begin_s), at(after, after.end_s)],
      extended: [at(after, mixed_at_s), at(after, after.begin_s)],
    },
    change: [at(before, mixed_at_s), at(after, mixed_at_s)],
  };
}
