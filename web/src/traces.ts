// The whole trace of every repeat, for a figure over time. Fetched once, then extended by what the stream brings.
// Pure. A trace is whole when nothing can be missing between its first and its newest sample.

import type { Happening, Repeat, Sample, Samples, State, View } from "./contract";
import { isOnce } from "./plan";

export interface Trace {
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

/** Whether a figure shows this trace: of one mixing all of them, of portions the one that a person has opened. */
function shows(view: View, repeat: number, opened: number | null): boolean {
  return isOnce(view) || repeat === opened;
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
export function keptTraces(traces: Traces, view: View): Traces {
  const kept = counted(view).flatMap(({ repeat, started_s }) => {
    const trace = traces.get(repeat);
    return trace?.started_s === started_s ? [[repeat, trace] as const] : [];
  });
  return kept.length === traces.size ? traces : new Map(kept);
}

/** What the stream says: a sample belongs to the repeat under way, until that has ended. The view may still call a
 * repeat running then: it comes after the events. */
export function extendedBy(traces: Traces, view: View, happening: Happening, opened: number | null): Traces {
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
export function caughtUp(traces: Traces, state: State): Traces {
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
export function fetched(traces: Traces, view: View, { repeat, started_s, samples }: Samples): Traces {
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
