// Mean readings and lines against the volume added: geometry of the chart, and the same as a table.

import type { MeanPoint, Reading, Repeat } from "../live/contract";
import type { Crossing, Line } from "../live/results";
import { type Box, type Frame, type Point, frame, padded } from "./frame";

// Geometry of temperature (up) against total volume added (across): data in, pixels out. No DOM, no words.

/** What is drawn of two lines and where they cross. */
export type Crossed = Pick<Crossing, "end_point_cm3" | "u_end_point_cm3" | "interval_95_cm3" | "temperature_c" | "before" | "after">;

interface VolumeData {
  /** How far the volume goes when all is in. */
  planned_cm3: number;
  repeats: readonly Repeat[];
  mean: readonly MeanPoint[];
  crossing: Crossed | null;
  /** The curve that the group expected: volume / cm³ and temperature / °C. */
  sketch?: readonly (readonly [number, number])[] | null;
}

interface Series {
  repeat: number;
  points: readonly Point[];
}

export interface CrossingMarks {
  at: Point;
  /** The interval along the volume axis, cut to the chart: left and right pixel. */
  interval: readonly [number, number];
  before: readonly [Point, Point];
  after: readonly [Point, Point];
}

export interface VolumeChart {
  frame: Frame;
  series: readonly Series[];
  mean: readonly Point[];
  crossing: CrossingMarks | null;
  sketch: readonly Point[];
}

/** Least span of the temperature axis / °C: less would blow probe noise up into a curve. */
const LEAST_SPAN_C = 4;
/** How far a fitted line is drawn past the crossing, as a share of the volume axis. */
const OVERSHOOT = 0.06;

export function temperatureOn(line: Line, volume_cm3: number): number {
  return line.intercept_c + line.slope_c_cm3 * volume_cm3;
}

interface Value {
  volume_cm3: number;
  temperature_c: number;
}

function values(repeat: Repeat): Value[] {
  return repeat.readings.flatMap(({ volume_cm3, temperature_c }) =>
    temperature_c === null ? [] : [{ volume_cm3, temperature_c }],
  );
}

/** Repeats that count: a repeat set aside is told in words, not drawn. */
export function drawnRepeats(repeats: readonly Repeat[]): Repeat[] {
  return repeats.filter((repeat) => repeat.status !== "set aside");
}

/** Lay the chart out in `box`; the axes start from the plan, so that they hardly move while the curve grows. */
export function volumeChart(data: VolumeData, box: Box): VolumeChart {
  const repeats = drawnRepeats(data.repeats);
  const all = [...repeats.flatMap(values), ...data.mean];
  const most_cm3 = Math.max(data.planned_cm3, ...all.map((value) => value.volume_cm3));
  const temperatures = all.map((value) => value.temperature_c);
  if (data.crossing) temperatures.push(data.crossing.temperature_c);
  for (const [, sketched_c] of data.sketch ?? []) temperatures.push(sketched_c);
  const laid = frame([0, most_cm3], padded(temperatures, LEAST_SPAN_C), box);
  const place = ({ volume_cm3, temperature_c }: Value): Point => [laid.x(volume_cm3), laid.y(temperature_c)];
  return {
    frame: laid,
    series: repeats.map((repeat) => ({ repeat: repeat.repeat, points: values(repeat).map(place) })),
    mean: data.mean.map(place),
    sketch: (data.sketch ?? []).map(([volume_cm3, temperature_c]) => [laid.x(volume_cm3), laid.y(temperature_c)]),
    crossing: data.crossing && crossingMarks(data.crossing, data.mean, laid, most_cm3),
  };
}

function crossingMarks(
  crossing: Crossed,
  mean: readonly MeanPoint[],
  laid: Frame,
  most_cm3: number,
): CrossingMarks {
  const on = (line: Line, volume_cm3: number): Point => [laid.x(volume_cm3), laid.y(temperatureOn(line, volume_cm3))];
  const volumes = (line: Line) => line.points.flatMap((index) => mean[index]?.volume_cm3 ?? []);
  const from_cm3 = Math.min(crossing.end_point_cm3, ...volumes(crossing.before));
  const to_cm3 = Math.max(crossing.end_point_cm3, ...volumes(crossing.after));
  const over_cm3 = OVERSHOOT * most_cm3;
  const inside = (volume_cm3: number) => laid.x(Math.min(most_cm3, Math.max(0, volume_cm3)));
  const [low, high] = crossing.interval_95_cm3;
  return {
    at: [laid.x(crossing.end_point_cm3), laid.y(crossing.temperature_c)],
    interval: [inside(low), inside(high)],
    before: [on(crossing.before, from_cm3), on(crossing.before, crossing.end_point_cm3 + over_cm3)],
    after: [on(crossing.after, crossing.end_point_cm3 - over_cm3), on(crossing.after, to_cm3)],
  };
}

// The readings as a table: one row per portion, one column per repeat that counts, and the mean.

export interface Cell {
  reading: Reading | null;
  /** The cell's own total volume / cm³, when it is not that of its row. */
  ownVolume_cm3: number | null;
  /** Why it is not sure what went in, where somebody said so. */
  unsureReason: string | null;
}

export interface Row {
  portion: number;
  /** Total added / cm³: of the mean, else of the first repeat that has it. */
  volume_cm3: number;
  cells: readonly Cell[];
  mean: MeanPoint | null;
}

export interface Table {
  repeats: readonly number[];
  rows: readonly Row[];
}

/** Volumes closer than this are the same volume. */
const SAME_CM3 = 5e-4;

function cell(repeat: Repeat, portion: number, volume_cm3: number): Cell {
  const reading = repeat.readings.find((one) => one.portion === portion) ?? null;
  const differs = reading !== null && Math.abs(reading.volume_cm3 - volume_cm3) > SAME_CM3;
  const unsureReason = repeat.portions.find((one) => one.portion === portion)?.unsure_reason ?? null;
  return { reading, ownVolume_cm3: differs ? reading.volume_cm3 : null, unsureReason };
}

/** Lay readings and means out by portion; portion 0 is the start. */
export function readingsTable(repeats: readonly Repeat[], mean: readonly MeanPoint[]): Table {
  const drawn = drawnRepeats(repeats);
  const readings = drawn.flatMap((repeat) => repeat.readings);
  const portions = [...new Set(readings.map((reading) => reading.portion))].sort((a, b) => a - b);
  return {
    repeats: drawn.map((repeat) => repeat.repeat),
    rows: portions.map((portion) => {
      const averaged = mean.find((one) => one.portion === portion) ?? null;
      const first = readings.find((reading) => reading.portion === portion);
      const volume_cm3 = averaged?.volume_cm3 ?? first?.volume_cm3 ?? 0;
      return { portion, volume_cm3, cells: drawn.map((repeat) => cell(repeat, portion, volume_cm3)), mean: averaged };
    }),
  };
}
