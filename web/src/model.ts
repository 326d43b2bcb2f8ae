// The page's model: a fold over what the station says. Pure: the clock comes in as a number, nothing goes out.

import type { Happening, LastGood, Message, Repeat, Sample, State, View } from "./contract";
import { type Traces, caughtUp, extendedBy, fetched, keptTraces } from "./traces";

/** The newest good temperature and when it was measured on the page's own clock / ms. */
export interface Measured {
  temperature_c: number;
  measured_ms: number;
}

export interface Model {
  view: View | null;
  /** The newest journal event folded in. */
  seq: number;
  /** Samples since the last pour (or since the start of the repeat), absolute bench time. */
  samples: readonly Sample[];
  /** Whole traces by repeat, of those that a figure shows or has shown. */
  traces: Traces;
  /** The repeat of portions whose whole trace a person has opened. */
  opened: number | null;
  good: Measured | null;
  /** When the page last heard anything of the station, on the page's clock / ms. */
  heard_ms: number | null;
  /** True when something was missed and only a fresh state can mend it. */
  reload: boolean;
  /** Events that came while a fresh state is awaited. */
  waiting: readonly Happening[];
}

export const nothingHeard: Model = {
  view: null,
  seq: 0,
  samples: [],
  traces: new Map(),
  opened: null,
  good: null,
  heard_ms: null,
  reload: true,
  waiting: [],
};

const MOST_WAITING = 2000;

/** The repeat under way, if any. */
export function runningRepeat(view: View): Repeat | undefined {
  return view.repeats.find((repeat) => repeat.status === "running");
}

/** Bench time of the newest pour / s; of the start of the repeat before the first pour; null when none runs. */
export function pouredAt(view: View): number | null {
  const repeat = runningRepeat(view);
  if (!repeat) return null;
  return repeat.started_s + (repeat.portions[repeat.portions.length - 1]?.time_s ?? 0);
}

function measured(good: LastGood | null, time_s: number, speed: number, now_ms: number): Measured | null {
  if (!good) return null;
  const age_s = Math.max(0, time_s - good.time_s) / (speed > 0 ? speed : 1);
  return { temperature_c: good.temperature_c, measured_ms: now_ms - 1000 * age_s };
}

function foldHappening(model: Model, happening: Happening): Model {
  if (happening.seq <= model.seq) return model;
  if (model.reload || happening.seq > model.seq + 1) {
    return { ...model, reload: true, waiting: [...model.waiting, happening].slice(-MOST_WAITING) };
  }
  const traces = model.view ? extendedBy(model.traces, model.view, happening, model.opened) : model.traces;
  const next = { ...model, seq: happening.seq, traces };
  if (happening.kind !== "sample_taken") return next;
  return { ...next, samples: [...model.samples, [happening.time_s, happening.body.temperature_c ?? null]] };
}

function foldView(model: Model, view: View, now_ms: number): Model {
  const known = model.view;
  if (known && known.boot === view.boot && view.seq < known.seq) return model;
  const good = measured(view.last_good, view.time_s, view.speed, now_ms);
  const next = { ...model, view, good, traces: keptTraces(model.traces, view) };
  if (!known || known.boot !== view.boot) return { ...next, reload: true };
  const [before, after] = [pouredAt(known), pouredAt(view)];
  // A portion taken back uncovers samples this page no longer has.
  if (before !== null && after !== null && after < before) return { ...next, reload: true };
  const cut_s = after ?? before;
  return cut_s === null ? next : { ...next, samples: model.samples.filter(([time_s]) => time_s >= cut_s) };
}

function foldState(model: Model, state: State, now_ms: number): Model {
  const known = model.view;
  if (known && known.boot === state.boot && state.seq < Math.max(model.seq, known.seq)) return model;
  const { trace, ...view } = state;
  const fresh: Model = {
    view,
    seq: state.seq,
    samples: trace.samples,
    traces: caughtUp(model.traces, state),
    opened: model.opened,
    good: measured(view.last_good, view.time_s, view.speed, now_ms),
    heard_ms: now_ms,
    reload: false,
    waiting: [],
  };
  return model.waiting.reduce(foldHappening, fresh);
}

/** Fold one message into the model; `now_ms` is the page's monotonic clock. */
export function fold(model: Model, message: Message, now_ms: number): Model {
  const heard = { ...model, heard_ms: now_ms };
  switch (message.kind) {
    case "state":
      return foldState(heard, message.data, now_ms);
    case "view":
      return foldView(heard, message.data, now_ms);
    case "happened":
      return foldHappening(heard, message.data);
    case "samples":
      return model.view ? { ...model, traces: fetched(model.traces, model.view, message.data) } : model;
    case "open":
      return { ...model, opened: message.data.repeat };
    case "reset":
      return { ...heard, reload: true };
    case "live": {
      if (!heard.view) return heard;
      const good = measured(message.data.last_good, message.data.time_s, heard.view.speed, now_ms);
      return { ...heard, view: { ...heard.view, ...message.data }, good };
    }
  }
}
