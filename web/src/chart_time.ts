// Geometry of temperature (up) against time since the pour (across). No DOM, no words.

import type { Sample } from "./contract";
import { type Box, type Frame, type Point, frame, padded } from "./frame";
import { tracePath } from "./path";

export interface TimeChart {
  frame: Frame;
  /** SVG path; a bad sample leaves a gap. */
  path: string;
  newest: Point | null;
  /** Height of the settled temperature, when there is one. */
  settled: number | null;
}

const LEAST_SPAN_C = 2;
const LEAST_TIME_S = 60;
/** The time axis grows in whole steps, so that the curve does not creep sideways at every sample. */
const TIME_STEP_S = 30;

/** Lay out the samples (bench time, temperature or null) since `poured_s`. */
export function timeChart(samples: readonly Sample[], poured_s: number, settled_c: number | null, box: Box): TimeChart {
  const good = samples.filter((sample): sample is readonly [number, number] => sample[1] !== null);
  const last_s = samples[samples.length - 1]?.[0] ?? poured_s;
  const span_s = Math.max(LEAST_TIME_S, TIME_STEP_S * Math.ceil((last_s - poured_s) / TIME_STEP_S));
  const temperatures = good.map(([, temperature_c]) => temperature_c);
  if (settled_c !== null) temperatures.push(settled_c);
  const laid = frame([0, span_s], padded(temperatures, LEAST_SPAN_C), box);
  const newest = good[good.length - 1];
  return {
    frame: laid,
    path: tracePath(samples, (time_s) => laid.x(time_s - poured_s), laid.y),
    newest: newest ? [laid.x(newest[0] - poured_s), laid.y(newest[1])] : null,
    settled: settled_c === null ? null : laid.y(settled_c),
  };
}
