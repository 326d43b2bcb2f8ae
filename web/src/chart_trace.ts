// Geometry of a whole repeat: temperature (up) against time since its start (across), with every pour and every
// settled reading. No DOM, no words.

import type { Portion, Reading, Sample } from "./contract";
import { type Box, type Frame, type Point, frame, padded } from "./frame";
import { tracePath } from "./path";
import { type Good, goodOnes, thinned } from "./thinned";

export interface TraceData {
  samples: readonly Sample[];
  portions: readonly Portion[];
  readings: readonly Reading[];
}

export interface PourMark {
  portion: number;
  x: number;
  /** Whether its number has room beside its neighbour's. */
  named: boolean;
}

export interface TraceChart {
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
  let free = Number.NEGATIVE_INFINITY;
  return portions.map(({ portion, time_s }) => {
    const x = laid.x(time_s);
    const named = x >= free;
    if (named) free = x + room * String(portion).length;
    return { portion, x, named };
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
