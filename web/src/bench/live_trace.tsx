// The trace since the last portion as it grows, and the band in which it has to stay to be settled.

import { Axes, Sized } from "../chart/axes";
import { type Box, type Frame, type Point, type Range, frame, padded, tracePath } from "../chart/frame";
import { fixed } from "../format";
import { kindOf } from "../kinds";
import type { Band, Sample, View } from "../live/contract";
import { pouredAt } from "../live/model";
import { phrase } from "../words";

/** Whether there is a trace to watch: not without a probe, nor of another group's readings, nor when all is over. */
export function isTraced({ thermometer, adopted, state }: View): boolean {
  return thermometer.kind === "probe" && adopted === null && state !== "done";
}

/** Whether portions are read from an ordinary thermometer while a repeat is under way. */
export function isTyped({ thermometer, adopted, state, plan }: View): boolean {
  const idle = state === "ready" || state === "alkali" || state === "done";
  return thermometer.kind === "typed" && adopted === null && kindOf(plan).inPortions && !idle;
}

// Geometry of temperature (up) against time (across). No DOM, no words.

interface TimeChart {
  frame: Frame;
  /** SVG path; a bad sample leaves a gap. */
  path: string;
  newest: Point | null;
  /** Height of the settled temperature, when there is one. */
  settled: number | null;
  /** The band: upper and lower edge, and from where on across. */
  band: { top: number; bottom: number; from: number } | null;
}

const LEAST_SPAN_C = 2;
const LEAST_TIME_S = 60;
/** The time axis grows in whole steps, so that the curve does not creep sideways at every sample. */
const TIME_STEP_S = 30;
/** So high a band is seen from some way off / px; where the whole trace leaves it less, the beginning is cut off. */
const BAND_PX = 8;
/** How much of the room is for where the trace came from. */
const FROM = 0.7;
/** Never cut off / s. */
const RECENT_S = 12;

/** Lay out the samples (bench time, temperature or null) since `poured_s`. */
export function timeChart(
  samples: readonly Sample[],
  poured_s: number,
  settled_c: number | null,
  box: Box,
  band: Band | null = null,
  compact = false,
): TimeChart {
  const good = samples.filter((sample): sample is readonly [number, number] => sample[1] !== null);
  const last_s = samples[samples.length - 1]?.[0] ?? poured_s;
  const span_s = Math.max(LEAST_TIME_S, TIME_STEP_S * Math.ceil((last_s - poured_s) / TIME_STEP_S));
  const seen = (rows: readonly (readonly [number, number])[]) => [
    ...rows.map(([, temperature_c]) => temperature_c),
    ...(settled_c === null ? [] : [settled_c]),
    ...(band ? [band.centre_c - band.half_c, band.centre_c + band.half_c] : []),
  ];
  const extent = padded(seen(good), 0);
  const whole = stepped(padded(seen(good), LEAST_SPAN_C));
  const plain = frame([0, span_s], whole, box, compact);
  const near = padded(seen(good.filter(([time_s]) => time_s >= last_s - RECENT_S)), 0);
  const range = band ? nearer(whole, extent, near, (2 * band.half_c * (plain.bottom - plain.top)) / BAND_PX) : whole;
  const laid = range === whole ? plain : frame([0, span_s], range, box, compact);
  const newest = good[good.length - 1];
  return {
    frame: laid,
    path: tracePath(samples, (time_s) => laid.x(time_s - poured_s), laid.y),
    newest: newest ? [laid.x(newest[0] - poured_s), laid.y(newest[1])] : null,
    settled: settled_c === null ? null : laid.y(settled_c),
    band: band && {
      top: laid.y(band.centre_c + band.half_c),
      bottom: laid.y(band.centre_c - band.half_c),
      from: laid.x(Math.max(0, last_s - poured_s - band.span_s)),
    },
  };
}

/** As much of `whole` about `near` as `most_c` leaves room for; most of it is where the trace came from. */
function nearer(whole: Range, extent: Range, near: Range, most_c: number): Range {
  const spare_c = Math.max(0, most_c - (near[1] - near[0]));
  if (near[1] - near[0] + spare_c >= whole[1] - whole[0]) return whole;
  const below = near[0] - extent[0] >= extent[1] - near[1] ? FROM : 1 - FROM;
  return stepped([near[0] - below * spare_c, near[1] + (1 - below) * spare_c]);
}

/** The same in whole steps, so that the scale does not creep with every sample. */
function stepped([low, high]: Range): Range {
  const step_c = high - low < 3 ? 0.25 : 0.5;
  return [step_c * Math.floor(low / step_c), step_c * Math.ceil(high / step_c)];
}

// The figure. It fills its place, whatever size that has.

/** While no cup is ready there is no portion to count from: so much of the newest is shown, as the station keeps / s. */
const IDLE_S = 60;

/** Which samples are shown, since when, and of which portion; portion null where no repeat has begun. */
function shown(view: View, samples: readonly Sample[]) {
  const repeat = view.repeats[view.repeats.length - 1];
  const idle = !repeat || view.state === "ready" || view.state === "alkali";
  const last_s = samples[samples.length - 1]?.[0] ?? view.time_s;
  if (idle) {
    const recent = samples.filter(([time_s]) => time_s >= last_s - IDLE_S);
    return { recent, since_s: recent[0]?.[0] ?? last_s, portion: null, settled_c: null };
  }
  const newest = repeat.portions[repeat.portions.length - 1];
  const since_s = pouredAt(view) ?? repeat.started_s + (newest?.time_s ?? 0);
  const portion = newest?.portion ?? 0;
  const reading = repeat.readings.find((one) => one.portion === portion);
  return { recent: samples, since_s, portion, settled_c: reading?.settled ? reading.temperature_c : null };
}

export function LiveTrace({ view, samples }: { view: View; samples: readonly Sample[] }) {
  const { recent, since_s, portion, settled_c } = shown(view, samples);
  const band = view.settle?.band ?? null;
  const title =
    portion === null ? phrase("page-live-now")
    : kindOf(view.plan).traceTitle(portion);
  return (
    <section class="live-trace" data-testid="trace">
      <h2 id="live-title">{title}</h2>
      <Sized class="drawing" shape="fill">
        {(box) => <Drawing chart={timeChart(recent, since_s, settled_c, box, band, true)} box={box} band={band} settled_c={settled_c} newest_c={newestOf(recent)} />}
      </Sized>
    </section>
  );
}

function newestOf(samples: readonly Sample[]): number | null {
  for (let index = samples.length - 1; index >= 0; index -= 1) {
    const temperature_c = samples[index]?.[1] ?? null;
    if (temperature_c !== null) return temperature_c;
  }
  return null;
}

interface DrawingProps {
  chart: TimeChart;
  box: Box;
  band: Band | null;
  settled_c: number | null;
  newest_c: number | null;
}

/** The chart in one sentence. */
function summary(band: Band | null, settled_c: number | null, newest_c: number | null): string {
  if (newest_c === null) return phrase("page-live-text-none");
  const temperature = fixed(newest_c, 2);
  if (settled_c !== null) return phrase("page-live-text-settled", { temperature, settled: fixed(settled_c, 2) });
  if (!band) return phrase("page-live-text", { temperature });
  const [low, high] = [fixed(band.centre_c - band.half_c, 2), fixed(band.centre_c + band.half_c, 2)];
  return phrase("page-live-text-band", { temperature, low, high });
}

function Drawing({ chart, box, band, settled_c, newest_c }: DrawingProps) {
  const { frame } = chart;
  const { letter } = box;
  const within = { x: frame.left, y: frame.top, width: Math.max(0, frame.right - frame.left), height: Math.max(0, frame.bottom - frame.top) };
  return (
    <svg viewBox={`0 0 ${box.width} ${box.height}`} width={box.width} height={box.height} role="img" aria-labelledby="live-title" aria-describedby="live-text">
      <desc id="live-text">{summary(band, settled_c, newest_c)}</desc>
      <clipPath id="live-clip">
        <rect {...within} />
      </clipPath>
      {chart.band && (
        <rect class="settle-band" x={frame.left} y={chart.band.top} width={within.width} height={Math.max(1, chart.band.bottom - chart.band.top)} />
      )}
      <Axes frame={frame} letter={letter} across={phrase("page-live-time-axis")} up={phrase("page-temperature-axis")} compact />
      {chart.band && <BandName band={chart.band} frame={frame} letter={letter} />}
      {chart.settled !== null && settled_c !== null && (
        <g class="settled" font-size={letter}>
          <path d={`M${frame.left},${chart.settled}H${frame.right}`} />
          <text x={frame.right} y={beside(chart.settled, chart.settled, frame, letter)} text-anchor="end">
            {phrase("page-settled-at", { temperature: fixed(settled_c, 2) })}
          </text>
        </g>
      )}
      <path class="trace" d={chart.path} clip-path="url(#live-clip)" />
      {chart.newest && <circle class="newest" cx={chart.newest[0]} cy={chart.newest[1]} r={0.35 * letter} />}
    </svg>
  );
}

/** Where a name stands beside what lies between `top` and `bottom`: above it, unless there is no room. */
function beside(top: number, bottom: number, frame: Frame, letter: number): number {
  const above = top - 0.4 * letter;
  return above - letter >= frame.top ? above : bottom + 1.1 * letter;
}

/** The part of the band in which the newest samples have to be is framed: the settled temperature is read from them. */
function BandName({ band, frame, letter }: { band: NonNullable<TimeChart["band"]>; frame: Frame; letter: number }) {
  const { top, bottom } = band;
  return (
    <g class="settle-frame" font-size={letter}>
      <path d={`M${frame.left},${top}H${frame.right}M${frame.left},${bottom}H${frame.right}`} />
      <text x={frame.right} y={beside(top, bottom, frame, letter)} text-anchor="end">
        {phrase("page-live-band")}
      </text>
    </g>
  );
}
