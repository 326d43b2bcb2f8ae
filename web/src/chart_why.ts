// Geometry of the explanation: readings that move onto two straight lines, step by step. No DOM, no words.

import { temperatureOn } from "./chart_volume";
import { type Box, type Frame, type Point, frame, padded } from "./frame";
import { type WhyData, type WhyPoint, straightened } from "./why";

export type Segment = readonly [Point, Point];

export interface WhyChart {
  frame: Frame;
  measured: readonly Point[];
  corrected: readonly Point[];
  /** Both lines of best fit, drawn on to where they are wanted: past the later of the two end-points. */
  before: Segment;
  after: Segment;
  crossing: Point;
  /** The straightened curve: start, end-point, last volume. */
  bend: readonly [Point, Point, Point] | null;
  /** Place of the heat balance's end-point across / px. */
  endPoint: number;
  /** Columns of liquid under the readings: left edge, width and top / px, and the liquid in the cup / cm³. */
  liquid: readonly { portion: number; x: number; width: number; y: number; liquid_cm3: number }[];
}

const LEAST_SPAN_C = 2;
/** How high the highest column of liquid stands, as a share of the plot. */
const LIQUID_SHARE = 0.4;
const COLUMN_SHARE = 0.5;
/** How far past both end-points the lines are drawn, as a share of the volume axis. */
const PAST = 0.05;

function place(points: readonly WhyPoint[], { x, y }: Frame): Point[] {
  return points.map(({ volume_cm3, temperature_c }) => [x(volume_cm3), y(temperature_c)]);
}

function columns({ measured }: WhyData, acid_cm3: number, laid: Frame): WhyChart["liquid"] {
  const most_cm3 = acid_cm3 + (measured[measured.length - 1]?.volume_cm3 ?? 0);
  const width = (COLUMN_SHARE * (laid.right - laid.left)) / Math.max(1, measured.length);
  return measured.slice(1).map(({ volume_cm3 }, index) => {
    const liquid_cm3 = acid_cm3 + volume_cm3;
    const height = (LIQUID_SHARE * (laid.bottom - laid.top) * liquid_cm3) / most_cm3;
    const x = laid.x(volume_cm3) - width / 2;
    return { portion: index + 1, x, width: Math.min(width, laid.right - x), y: laid.bottom - height, liquid_cm3 };
  });
}

/** Lay the explanation out in `box`; the axes are the same in every step. */
export function whyChart(data: WhyData, acid_cm3: number, box: Box): WhyChart {
  const { measured, corrected, crossing, end_point_cm3 } = data;
  const last_cm3 = Math.max(...measured.map(({ volume_cm3 }) => volume_cm3), ...corrected.map(({ volume_cm3 }) => volume_cm3));
  const past_cm3 = Math.max(crossing.end_point_cm3, end_point_cm3) + PAST * last_cm3;
  const early_cm3 = crossing.end_point_cm3 - PAST * last_cm3;
  const all = [...measured, ...corrected].map(({ temperature_c }) => temperature_c);
  const reach = [temperatureOn(crossing.before, past_cm3), temperatureOn(crossing.after, early_cm3), crossing.temperature_c];
  const laid = frame([0, last_cm3], padded([...all, ...reach], LEAST_SPAN_C), box);
  const on = (line: WhyData["crossing"]["before"], volume_cm3: number): Point => [
    laid.x(volume_cm3),
    laid.y(temperatureOn(line, volume_cm3)),
  ];
  const straight = straightened(data);
  return {
    frame: laid,
    measured: place(measured, laid),
    corrected: place(corrected, laid),
    before: [on(crossing.before, 0), on(crossing.before, past_cm3)],
    after: [on(crossing.after, early_cm3), on(crossing.after, last_cm3)],
    crossing: [laid.x(crossing.end_point_cm3), laid.y(crossing.temperature_c)],
    bend: straight && [
      [laid.x(0), laid.y(straight.start_c)],
      [laid.x(end_point_cm3), laid.y(straight.level_c)],
      [laid.x(last_cm3), laid.y(straight.level_c)],
    ],
    endPoint: laid.x(end_point_cm3),
    liquid: columns(data, acid_cm3, laid),
  };
}
