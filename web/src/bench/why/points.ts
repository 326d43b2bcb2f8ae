// What the explanation of the two end-points is made of: this bench's readings, its crossing, and the same readings
// as they would be if every portion had warmed the same amount of liquid and nothing had been lost. Pure.

import { type Box, type Frame, type Point, frame, padded } from "../../chart/frame";
import { temperatureOn } from "../../chart/volume";
import type { PortionsView } from "../../live/contract";
import type { Crossing, HeatBalance } from "../../live/results";

interface WhyPoint {
  volume_cm3: number;
  temperature_c: number;
}

export interface WhyData {
  /** The repeat that is shown; null for the mean of all. */
  repeat: number | null;
  measured: readonly WhyPoint[];
  corrected: readonly WhyPoint[];
  crossing: Crossing;
  end_point_cm3: number;
  u_end_point_cm3: number;
}

/** One repeat that both methods could read. */
interface Whole {
  repeat: number;
  measured: WhyPoint[];
  corrected: WhyPoint[];
  crossing: Crossing;
  heat: HeatBalance;
}

function wholeRepeats(view: PortionsView): Whole[] {
  const fitted = view.result?.repeats ?? [];
  return fitted.flatMap(({ repeat, straight_lines: crossing, heat_balance: heat }): Whole[] => {
    const own = view.repeats.find((one) => one.repeat === repeat && one.status === "ended");
    if (!own || !crossing || !heat?.corrected) return [];
    const { volume_cm3, temperature_c } = heat.corrected;
    const corrected = volume_cm3.flatMap((volume, index): WhyPoint[] => {
      const value = temperature_c[index];
      return value === undefined ? [] : [{ volume_cm3: volume, temperature_c: value }];
    });
    const measured = own.readings.flatMap(({ volume_cm3: volume, temperature_c: value }): WhyPoint[] =>
      value === null ? [] : [{ volume_cm3: volume, temperature_c: value }],
    );
    // A reading that is missing would pair the others with the wrong points.
    return measured.length === corrected.length ? [{ repeat, measured, corrected, crossing, heat }] : [];
  });
}

function meanOf(curves: readonly (readonly WhyPoint[])[]): WhyPoint[] {
  const count = curves.length;
  return (curves[0] ?? []).map((_, index) => {
    const all = curves.flatMap((curve) => curve[index] ?? []);
    const sum = all.reduce((a, b) => ({ volume_cm3: a.volume_cm3 + b.volume_cm3, temperature_c: a.temperature_c + b.temperature_c }));
    return { volume_cm3: sum.volume_cm3 / count, temperature_c: sum.temperature_c / count };
  });
}

/** The mean of all repeats where they go together point by point, else the newest repeat; null when there is none. */
export function whyData(view: PortionsView): WhyData | null {
  const found = wholeRepeats(view);
  const newest = found[found.length - 1];
  if (!newest) return null;
  const { straight_lines: crossing, heat_balance: heat } = view.result ?? {};
  const counted = view.repeats.filter(({ status }) => status === "ended").length;
  const together = found.length === counted && found.every(({ measured }) => measured.length === newest.measured.length);
  if (together && crossing && heat && counted > 1) {
    return {
      repeat: null,
      measured: meanOf(found.map(({ measured }) => measured)),
      corrected: meanOf(found.map(({ corrected }) => corrected)),
      crossing,
      end_point_cm3: heat.end_point_cm3,
      u_end_point_cm3: heat.u_end_point_cm3,
    };
  }
  const { end_point_cm3, u_end_point_cm3 } = newest.heat;
  const { repeat, measured, corrected, crossing: own } = newest;
  return { repeat, measured, corrected, crossing: own, end_point_cm3, u_end_point_cm3 };
}

/** What one portion did: how far the temperature went, and how much liquid it had to warm. */
export interface Rise {
  portion: number;
  liquid_cm3: number;
  change_c: number;
}

/** The first portion, and the last one that went in wholly before either end-point; null when that is the same. */
export function firstAndLastRise(data: WhyData, acid_cm3: number): readonly [Rise, Rise] | null {
  const before_cm3 = Math.min(data.crossing.end_point_cm3, data.end_point_cm3);
  const rises = data.measured.flatMap((point, index): Rise[] => {
    const previous = data.measured[index - 1];
    if (!previous || point.volume_cm3 > before_cm3) return [];
    const change_c = point.temperature_c - previous.temperature_c;
    return [{ portion: index, liquid_cm3: acid_cm3 + point.volume_cm3, change_c }];
  });
  const [first] = rises;
  const last = rises[rises.length - 1];
  return first && last && last.portion > first.portion ? [first, last] : null;
}

/** The two straight parts of the corrected curve: it starts at `start_c`, reaches `level_c` at the end-point, stays. */
export function straightened({ corrected, end_point_cm3 }: WhyData): { start_c: number; level_c: number } | null {
  const x = corrected.map(({ volume_cm3 }) => Math.min(volume_cm3, end_point_cm3) / end_point_cm3);
  const y = corrected.map(({ temperature_c }) => temperature_c);
  const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;
  const [mean_x, mean_y] = [mean(x), mean(y)];
  const spread = x.reduce((sum, value) => sum + (value - mean_x) ** 2, 0);
  if (!(spread > 0)) return null;
  const slope = x.reduce((sum, value, index) => sum + (value - mean_x) * ((y[index] ?? mean_y) - mean_y), 0) / spread;
  const start_c = mean_y - slope * mean_x;
  return { start_c, level_c: start_c + slope };
}

// Geometry of the explanation: readings that move onto two straight lines, step by step. No DOM, no words.

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
