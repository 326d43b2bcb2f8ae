// The page's model: a fold over what the station says. Pure: the clock comes in as a number, nothing goes out.

import { kindOf } from "../kinds";
import {
  type Happening,
  type Instruction,
  type LastGood,
  type Message,
  type Repeat,
  type Sample,
  type Samples,
  type State,
  type Told,
  type View,
} from "./contract";

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
  // A sample whose middle lies before the pour may be heard after it: a fresh state would not have it either.
  if (happening.time_s < ((model.view && pouredAt(model.view)) ?? Number.NEGATIVE_INFINITY)) return next;
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

/** What was told with the repeats that are known; null when these are others. */
function completed<Whole extends View>(told: Told<Whole>, known: View | null): Whole | null {
  if (told.repeats && told.mean) return told as Whole;
  if (!known || known.repeats_id !== told.repeats_id) return null;
  return { ...told, repeats: known.repeats, mean: known.mean } as Whole;
}

/** Fold one message into the model; `now_ms` is the page's monotonic clock. */
export function fold(model: Model, message: Message, now_ms: number): Model {
  const heard = { ...model, heard_ms: now_ms };
  switch (message.kind) {
    case "state": {
      const state = completed<State>(message.data, model.view);
      return state ? foldState(heard, state, now_ms) : { ...heard, reload: true };
    }
    case "view": {
      const view = completed<View>(message.data, model.view);
      return view ? foldView(heard, view, now_ms) : { ...heard, reload: true };
    }
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

// The whole trace of every repeat, for a figure over time. Fetched once, then extended by what the stream brings.
// Pure. A trace is whole when nothing can be missing between its first and its newest sample.

interface Trace {
  /** Bench time of the repeat's start / s: tells a repeat of another practical with the same number apart. */
  started_s: number;
  /** Times since the repeat's start. */
  samples: readonly Sample[];
  whole: boolean;
  /** Its repeat has ended: nothing can follow. */
  closed: boolean;
}

export type Traces = ReadonlyMap<number, Trace>;

export interface Wanted {
  repeat: number;
  started_s: number;
}

/** Two samples closer than this are the same one: times are rounded on their way / s. */
const SAME_S = 0.002;

function counted(view: View): Repeat[] {
  return view.repeats.filter((repeat) => repeat.status !== "set aside");
}

/** Whether a figure shows this trace: all of them, or the one that a person has opened. */
function shows(view: View, repeat: number, opened: number | null): boolean {
  return kindOf(view.plan).drawsTraces || repeat === opened;
}

/** `samples` and those of `more` that come after them; both in order of time. */
function joined(samples: readonly Sample[], more: readonly Sample[]): readonly Sample[] {
  const last_s = samples[samples.length - 1]?.[0] ?? Number.NEGATIVE_INFINITY;
  const later = more.filter(([time_s]) => time_s > last_s + SAME_S);
  return later.length === 0 ? samples : [...samples, ...later];
}

function withTrace(traces: Traces, repeat: number, trace: Trace): Traces {
  return new Map(traces).set(repeat, trace);
}

/** Traces of repeats that the view still counts. */
function keptTraces(traces: Traces, view: View): Traces {
  const kept = counted(view).flatMap(({ repeat, started_s }) => {
    const trace = traces.get(repeat);
    return trace?.started_s === started_s ? [[repeat, trace] as const] : [];
  });
  return kept.length === traces.size ? traces : new Map(kept);
}

/** What the stream says: a sample belongs to the repeat under way, until that has ended. The view may still call a
 * repeat running then: it comes after the events. */
function extendedBy(traces: Traces, view: View, happening: Happening, opened: number | null): Traces {
  const running = counted(view).find((repeat) => repeat.status === "running");
  if (!running || traces.get(running.repeat)?.closed) return traces;
  const { repeat, started_s } = running;
  if (!traces.has(repeat) && !shows(view, repeat, opened)) return traces;
  if (happening.kind === "repeat_ended") {
    const trace = traces.get(repeat);
    return trace ? withTrace(traces, repeat, { ...trace, closed: true }) : traces;
  }
  // A sample whose middle lies before the start is heard after it, and is not the repeat's.
  if (happening.kind !== "sample_taken" || happening.time_s < started_s) return traces;
  const sample: Sample = [happening.time_s - started_s, happening.body.temperature_c ?? null];
  const trace = traces.get(repeat) ?? { started_s, samples: [], whole: false, closed: false };
  return withTrace(traces, repeat, { ...trace, samples: joined(trace.samples, [sample]) });
}

/** A fresh state: its samples since the newest pour follow on, or else something between may be missing. */
function caughtUp(traces: Traces, state: State): Traces {
  const kept = [...keptTraces(traces, state)].map(([repeat, trace]): [number, Trace] => {
    if (trace.closed && trace.whole) return [repeat, trace];
    if (repeat !== state.trace.repeat) return [repeat, { ...trace, whole: false }];
    const recent = state.trace.samples.map(([time_s, value]): Sample => [time_s - trace.started_s, value]);
    const first_s = recent[0]?.[0] ?? Number.POSITIVE_INFINITY;
    const last_s = trace.samples[trace.samples.length - 1]?.[0] ?? Number.NEGATIVE_INFINITY;
    const whole = trace.whole && first_s <= last_s + SAME_S;
    return [repeat, { ...trace, samples: joined(trace.samples, recent), whole }];
  });
  return new Map(kept);
}

/** The answer to a request; what the stream brought meanwhile follows it. */
function fetched(traces: Traces, view: View, { repeat, started_s, samples }: Samples): Traces {
  const meant = counted(view).find((one) => one.repeat === repeat && one.started_s === started_s);
  if (!meant) return traces;
  const known = traces.get(repeat);
  const after = known?.started_s === started_s ? known.samples : [];
  const closed = meant.status === "ended" || (known?.started_s === started_s && known.closed);
  return withTrace(traces, repeat, { started_s, samples: joined(samples, after), whole: true, closed });
}

/** The first trace that is shown and not known whole; null when there is none to ask for. */
export function wantedTrace(traces: Traces, view: View, opened: number | null = null): Wanted | null {
  const wanted = counted(view).find(({ repeat }) => shows(view, repeat, opened) && !traces.get(repeat)?.whole);
  return wanted ? { repeat: wanted.repeat, started_s: wanted.started_s } : null;
}

// Whether the instruction asks for something now, or only says what is going on.

/** Codes that ask for something although no button stands for it. */
const TO_DO = ["thermometer", "type_start", "type_reading"];

export const asksForSomething = ({ act, code }: Instruction): boolean => act !== null || TO_DO.includes(code);
