// What happened on the bench, as the journal tells it, samples left out: for the notes of the printed record.

import { DOUBTS, REASONS, REASONS_ONCE } from "./reasons";
import { words } from "./words";

/** One event of the journal; `body` is as the station wrote it. */
export interface JournalEvent {
  seq: number;
  time_s: number;
  wall: string;
  kind: string;
  body: Readonly<Record<string, unknown>>;
}

/** Read JSON lines; a line that is cut short ends them. */
export function eventsOf(lines: string): JournalEvent[] {
  const events: JournalEvent[] = [];
  for (const line of lines.split("\n")) {
    if (line === "") continue;
    try {
      events.push(JSON.parse(line) as JournalEvent);
    } catch {
      break;
    }
  }
  return events;
}

const numberOf = (value: unknown): number | null => (typeof value === "number" ? value : null);
const textOf = (value: unknown): string => (typeof value === "string" ? value : "");

/** A reason in the reader's language where it was chosen, as it stands where it was typed. */
function reasonOf(value: unknown): string {
  const reason = textOf(value);
  const doubt = DOUBTS.find((each) => each === reason);
  if (doubt) return words.mistakes.doubts[doubt];
  const index = (reasons: readonly string[]) => reasons.indexOf(reason);
  return words.reasons[index(REASONS)] ?? words.reasonsOnce[index(REASONS_ONCE)] ?? reason;
}

type Body = JournalEvent["body"];

/** What is worth a line, and its words; null where this one is not. Typed words of a person stay as they are. */
const SAID: Readonly<Record<string, (body: Body, all: readonly JournalEvent[]) => string | null>> = {
  note_written: (body, all) => {
    const withdrawn = all.some((each) => each.kind === "note_withdrawn" && each.body.note === body.note);
    return withdrawn ? words.record.noteWithdrawn(textOf(body.text)) : textOf(body.text);
  },
  portion_added: (body) => (body.early === true ? words.record.early : null),
  portion_undone: () => words.record.undone,
  portion_volume_corrected: (body) => words.record.volume(numberOf(body.volume_cm3) ?? 0),
  portion_unsure: (body) => words.record.because(words.record.unsure, reasonOf(body.reason)),
  portion_sure: () => words.record.sure,
  repeat_set_aside: (body) => words.record.because(words.record.aside, reasonOf(body.reason)),
  repeat_restored: () => words.record.restored,
  probe_lost: () => words.record.probeLost,
  probe_found: () => words.record.probeFound,
  thermometer_chosen: (body) => {
    const division_c = numberOf(body.division_c);
    return division_c === null ? words.record.probeAgain : words.record.thermometer(division_c);
  },
  practical_ended: (body) => (body.early === true ? words.record.endedEarly : null),
  set_adopted: (body) => words.record.adopted(textOf(body.label)),
  set_returned: () => words.record.returned,
  record_salvaged: () => words.record.salvaged,
};

/** A reading that was typed again for the same portion. */
function retyped(event: JournalEvent, before: readonly JournalEvent[]): string | null {
  const { repeat, portion, reason, temperature_c } = event.body;
  if (event.kind !== "reading_settled" || reason !== "typed") return null;
  const again = before.some(({ kind, body }) => kind === event.kind && body.repeat === repeat && body.portion === portion);
  return again ? words.record.retyped(numberOf(temperature_c) ?? 0) : null;
}

/** When the first repeat began / bench s; null before it. */
export function begun_s(events: readonly JournalEvent[]): number | null {
  return events.find(({ kind }) => kind === "repeat_begun" || kind === "set_adopted")?.time_s ?? null;
}

/** Ends of a stretch in which the probe matters. */
const RUNNING: Readonly<Record<string, boolean>> = { repeat_begun: true, repeat_ended: false, practical_ended: false };

/** The same without a probe that was lost and found while nothing ran. */
function withoutIdleProbe(events: readonly JournalEvent[]): JournalEvent[] {
  let running = false;
  return events.filter(({ kind }) => {
    running = RUNNING[kind] ?? running;
    return running || !kind.startsWith("probe_");
  });
}

/** A probe lost more often than this gets one line for all: what people noted must not drown in it. */
const SEVERAL = 3;

/** Notes and corrections in order of time, as lines. */
export function happenedLines(events: readonly JournalEvent[]): string[] {
  const start_s = begun_s(events) ?? events[0]?.time_s ?? 0;
  const known = withoutIdleProbe(events);
  const losses = known.filter(({ kind }) => kind === "probe_lost").length;
  const often = losses > SEVERAL;
  const lines = known.flatMap((event, index, all) => {
    if (often && event.kind.startsWith("probe_")) return [];
    const what = SAID[event.kind]?.(event.body, all) ?? retyped(event, all.slice(0, index));
    if (what === null) return [];
    const since_s = Math.max(0, Math.round(event.time_s - start_s));
    const at = words.record.at(Math.floor(since_s / 60), since_s % 60);
    return [words.record.line(at, words.record.where(numberOf(event.body.repeat), numberOf(event.body.portion)), what)];
  });
  return often ? [...lines, words.record.probeOften(losses)] : lines;
}

/** The day of the practical: this device's clock counted back by bench time, since a station may have no clock. */
export function dayOf(events: readonly JournalEvent[], time_s: number, speed: number, now: Date): Date {
  const start_s = begun_s(events);
  const ago_s = start_s === null || !(speed > 0) ? 0 : Math.max(0, time_s - start_s) / speed;
  return new Date(now.getTime() - 1000 * ago_s);
}
