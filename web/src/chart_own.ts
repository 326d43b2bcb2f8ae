// Geometry of the chart on which students place their own lines: mean readings, with air above for the lines to meet.

import type { MeanPoint } from "./contract";
import { type Box, type Frame, type Point, type Range, frame, padded } from "./frame";
import { type Met, type OwnLines, placedLine } from "./own_lines";

const LEAST_SPAN_C = 2;
/** Air below and above the readings, as shares of their span. */
const BELOW = 0.1;
const ABOVE = 0.35;
/** The volume axis goes on a little, so that a finger reaches the last handle. */
const BEYOND = 1.06;

/** Temperatures that lines may be drawn through / °C; whatever the readings, both edges stand off them. */
export function ownRange_c(mean: readonly MeanPoint[]): Range {
  const [low, high] = padded(mean.map(({ temperature_c }) => temperature_c), LEAST_SPAN_C);
  return [low - BELOW * (high - low), high + ABOVE * (high - low)];
}

export interface OwnChart {
  frame: Frame;
  points: readonly Point[];
  /** Each line from edge to edge, and its two handles. */
  lines: Record<keyof OwnLines, { drawn: readonly [Point, Point]; handles: readonly [Point, Point] }>;
  met: Point | null;
}

/** Lay the chart out; `most_cm3` is the volume that all portions together have. */
export function ownChart(
  mean: readonly MeanPoint[],
  lines: OwnLines,
  met: Met | null,
  most_cm3: number,
  box: Box,
): OwnChart {
  const laid = frame([0, BEYOND * most_cm3], ownRange_c(mean), box);
  const place = ({ volume_cm3, temperature_c }: Met): Point => [laid.x(volume_cm3), laid.y(temperature_c)];
  const one = (side: keyof OwnLines) => {
    const { slope_c_cm3, intercept_c } = placedLine(lines[side]);
    const at = (volume_cm3: number) => place({ volume_cm3, temperature_c: intercept_c + slope_c_cm3 * volume_cm3 });
    const [first, second] = lines[side];
    return {
      drawn: [at(0), at(BEYOND * most_cm3)] as const,
      handles: [place(first), place(second)] as const,
    };
  };
  return {
    frame: laid,
    points: mean.map(place),
    lines: { before: one("before"), after: one("after") },
    met: met && place(met),
  };
}
