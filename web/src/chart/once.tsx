// Repeats of a practical that mixes once: geometry of the chart, and the numbers as a table.

import { AsideAndAdded } from "../bench/readings";
import { fixed } from "../format";
import type { MeanPoint, OnceView, Repeat, Sample } from "../live/contract";
import type { Extended, OnceRepeat, OnceResult, Stretch } from "../live/results";
import { TableFrame } from "../page/shared";
import { dress, phrase } from "../words";
import { type Box, type Frame, type Point, frame, padded, tracePath } from "./frame";
import { type Good, goodOnes, thinned } from "./thinned";
import { drawnRepeats } from "./volume";

// Geometry of temperature (up) against time since the start of the repeat (across), for one mixing. No DOM, no words.

export interface OnceSeries {
  repeat: number;
  samples: readonly Sample[];
  /** When it was mixed / s; null while it was not. */
  mixed_s: number | null;
  /** Typed by the clock: each reading is a point of its own. */
  byHand?: boolean;
}

/** What there is to draw of a repeat: temperatures typed by the clock, else the probe's trace. */
export function seriesOf({ repeat, portions, clocked }: Repeat, trace: readonly Sample[] | undefined): OnceSeries {
  const byHand = (clocked ?? []).length > 0;
  return {
    repeat,
    samples: byHand ? clockedSamples(clocked ?? []) : (trace ?? NONE),
    mixed_s: portions[0]?.time_s ?? null,
    byHand,
  };
}

const NONE: readonly Sample[] = [];
const CLOCKED = new WeakMap<object, readonly Sample[]>();

/** The same readings are the same samples, so that a chart is not laid out anew. */
function clockedSamples(clocked: NonNullable<Repeat["clocked"]>): readonly Sample[] {
  const known = CLOCKED.get(clocked) ?? clocked.map(({ at_s, temperature_c }): Sample => [at_s, temperature_c]);
  CLOCKED.set(clocked, known);
  return known;
}

interface OnceData {
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
    traces: data.series.map(({ repeat, samples, mixed_s, byHand = false }, index) => ({
      repeat,
      path: byHand ? "" : tracePath(thinned(samples, span_s / Math.max(1, laid.right - laid.left)), laid.x, laid.y),
      good: all[index] ?? [],
      marks: (byHand ? (all[index] ?? []) : marked(all[index] ?? [], index)).map(([time_s, value]): Point => [laid.x(time_s), laid.y(value)]),
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

// The numbers of each repeat of a practical that mixes once: a row for each quantity, a column for each repeat.

interface OnceRow {
  quantity: string;
  /** In the order of the repeats; null is missing. */
  values_c: readonly (number | null)[];
  mean_c: number | null;
}

interface OnceTable {
  repeats: readonly number[];
  rows: readonly OnceRow[];
}

/** Rows that nobody has a number for yet are left out. */
export function onceTable(repeats: readonly Repeat[], mean: readonly MeanPoint[], result: OnceResult | null): OnceTable {
  const drawn = drawnRepeats(repeats);
  const read = (portion: number): OnceRow["values_c"] =>
    drawn.map(({ readings }) => readings.find((one) => one.portion === portion)?.temperature_c ?? null);
  const found = (pick: (repeat: OnceRepeat) => number | undefined): OnceRow["values_c"] =>
    drawn.map(({ repeat }) => {
      const one = result?.repeats.find((each) => each.repeat === repeat);
      return (one && pick(one)) ?? null;
    });
  const meanAt = (portion: number) => mean.find((one) => one.portion === portion)?.temperature_c ?? null;
  const rows: OnceRow[] = [
    { quantity: phrase("page-rows-start"), values_c: read(0), mean_c: meanAt(0) },
    { quantity: phrase("page-rows-before"), values_c: found((one) => one.straight_lines?.before.at_mixing_c), mean_c: null },
    { quantity: phrase("page-rows-after"), values_c: found((one) => one.straight_lines?.after.at_mixing_c), mean_c: null },
    {
      quantity: phrase("page-rows-change"),
      values_c: found((one) => one.straight_lines?.change_c),
      mean_c: result?.straight_lines?.change_c ?? null,
    },
    {
      quantity: phrase("page-rows-heat-change"),
      values_c: found((one) => one.heat_balance?.change_c),
      mean_c: result?.heat_balance?.change_c ?? null,
    },
    { quantity: phrase("page-rows-end"), values_c: read(1), mean_c: meanAt(1) },
  ];
  return {
    repeats: drawn.map(({ repeat }) => repeat),
    rows: rows.filter(({ values_c }) => values_c.some((value) => value !== null)),
  };
}

// The table of a practical that mixes once: the numbers behind the figure.

function Cell({ value_c, mean = false }: { value_c: number | null; mean?: boolean }) {
  const name = mean ? "mean-cell" : undefined;
  if (value_c !== null) return <td class={name}>{dress(fixed(value_c, 2))}</td>;
  return (
    <td class={name}>
      <span aria-hidden="true">{phrase("page-missing")}</span>
      <span class="unseen">{phrase("page-no-reading")}</span>
    </td>
  );
}

export function OnceNumbers({ view }: { view: OnceView }) {
  const table = onceTable(view.repeats, view.mean, view.result);
  const averaged = table.repeats.length > 1;
  if (view.repeats.length === 0) return null;
  return (
    <section class="readings">
      {table.rows.length > 0 && (
        <TableFrame name={phrase("page-once-table")}>
          <table class="once-table">
            <caption>{phrase("page-once-table")}</caption>
            <thead>
              <tr>
                <th scope="col">{phrase("page-quantity")}</th>
                {table.repeats.map((repeat) => (
                  <th scope="col" key={repeat}>
                    {phrase("page-repeat-name", { repeat })}
                  </th>
                ))}
                {averaged && <th scope="col">{phrase("page-mean")}</th>}
              </tr>
            </thead>
            <tbody>
              {table.rows.map((row) => (
                <tr key={row.quantity}>
                  <th scope="row">{row.quantity}</th>
                  {row.values_c.map((value_c, index) => (
                    <Cell key={table.repeats[index]} value_c={value_c} />
                  ))}
                  {averaged && (row.mean_c === null ? <td /> : <Cell value_c={row.mean_c} mean />)}
                </tr>
              ))}
            </tbody>
          </table>
        </TableFrame>
      )}
      <AsideAndAdded view={view} />
    </section>
  );
}
