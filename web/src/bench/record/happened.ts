// What happened on the bench, as the journal tells it, samples left out: for the notes of the printed record.

import { useEffect, useState } from "preact/hooks";
import { decimal, short } from "../../format";
import { base } from "../../live/ask";
import type { View } from "../../live/contract";
import { becauseText, lineText, whereText } from "../../phrases/record";
import { phrase } from "../../words";
import { reasonInWords } from "../names";

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

const reasonOf = (value: unknown): string => reasonInWords(textOf(value)) ?? "";

type Body = JournalEvent["body"];

/** What is worth a line, and its words; null where this one is not. Typed words of a person stay as they are. */
const SAID: Readonly<Record<string, (body: Body, all: readonly JournalEvent[]) => string | null>> = {
  note_written: (body, all) => {
    const withdrawn = all.some((each) => each.kind === "note_withdrawn" && each.body.note === body.note);
    return withdrawn ? phrase("page-record-note-withdrawn", { text: textOf(body.text) }) : textOf(body.text);
  },
  portion_added: (body) => (body.early === true ? phrase("page-record-early") : null),
  portion_undone: () => phrase("page-record-undone"),
  portion_volume_corrected: (body) => {
    const mass_g = numberOf(body.mass_g);
    if (mass_g !== null) return phrase("page-record-mass", { mass: decimal(mass_g.toFixed(numberOf(body.places) ?? 2)) });
    return phrase("page-record-volume", { volume: short(numberOf(body.volume_cm3) ?? 0) });
  },
  temperature_read: (body, all) => {
    const before = all.filter(({ kind, body: one }) => kind === "temperature_read" && one.repeat === body.repeat && one.at_s === body.at_s);
    return before[0]?.body === body ? null : phrase("page-record-retyped", { temperature: short(numberOf(body.temperature_c) ?? 0) });
  },
  portion_unsure: (body) => becauseText(phrase("page-record-unsure"), reasonOf(body.reason)),
  portion_sure: () => phrase("page-record-sure"),
  repeat_set_aside: (body) => becauseText(phrase("page-record-aside"), reasonOf(body.reason)),
  repeat_restored: () => phrase("page-record-restored"),
  probe_lost: () => phrase("page-record-probe-lost"),
  probe_found: () => phrase("page-record-probe-found"),
  thermometer_chosen: (body) => {
    const division_c = numberOf(body.division_c);
    if (division_c === null) return phrase("page-record-probe-again");
    return phrase("page-record-thermometer", { division: short(division_c), digital: body.digital === true ? "true" : "false" });
  },
  practical_ended: (body) => (body.early === true ? phrase("page-record-ended-early") : null),
  curve_sketched: () => phrase("page-record-sketch"),
  repeat_asked: () => phrase("page-record-repeat-asked"),
  finish_undone: () => phrase("page-record-finish-undone"),
  set_adopted: (body) => phrase("page-record-adopted", { label: textOf(body.label) }),
  set_returned: () => phrase("page-record-returned"),
  record_salvaged: () => phrase("page-record-salvaged"),
};

/** A reading that was typed again for the same portion. */
function retyped(event: JournalEvent, before: readonly JournalEvent[]): string | null {
  const { repeat, portion, reason, temperature_c } = event.body;
  if (event.kind !== "reading_settled" || reason !== "typed") return null;
  const again = before.some(({ kind, body }) => kind === event.kind && body.repeat === repeat && body.portion === portion);
  return again ? phrase("page-record-retyped", { temperature: short(numberOf(temperature_c) ?? 0) }) : null;
}

/** When the first repeat began / bench s; null before it. */
function begun_s(events: readonly JournalEvent[]): number | null {
  return events.find(({ kind }) => kind === "repeat_begun" || kind === "set_adopted")?.time_s ?? null;
}

/** Ends of a stretch in which the probe matters. */
const RUNNING: Readonly<Record<string, boolean>> = { repeat_begun: true, repeat_ended: false, practical_ended: false, finish_undone: true };

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
    const at = phrase("page-record-at", { minutes: Math.floor(since_s / 60), seconds: String(since_s % 60).padStart(2, "0") });
    return [lineText(at, whereText(numberOf(event.body.repeat), numberOf(event.body.portion)), what)];
  });
  return often ? [...lines, phrase("page-record-probe-often", { times: losses })] : lines;
}

/** The day of the practical: this device's clock counted back by bench time, since a station may have no clock. */
export function dayOf(events: readonly JournalEvent[], time_s: number, speed: number, now: Date): Date {
  const start_s = begun_s(events);
  const ago_s = start_s === null || !(speed > 0) ? 0 : Math.max(0, time_s - start_s) / speed;
  return new Date(now.getTime() - 1000 * ago_s);
}

// Fetches what happened for the record, afresh whenever something did.

const path = () => `${base()}/journal.jsonl?samples=false`;
const AGAIN_MS = 3000;

interface Known {
  lines: readonly string[];
  /** The day of the practical. */
  day: Date;
}

async function fetched(): Promise<JournalEvent[]> {
  const answer = await fetch(path(), { cache: "no-store" });
  if (!answer.ok) throw new Error(`status ${answer.status}`);
  return eventsOf(await answer.text());
}

export function useHappened({ seq, time_s, speed }: View): Known {
  const [known, know] = useState<Known>(() => ({ lines: [], day: new Date() }));
  useEffect(() => {
    let timer = 0;
    let gone = false;
    const ask = () => {
      fetched().then(
        (events) => {
          if (!gone) know({ lines: happenedLines(events), day: dayOf(events, time_s, speed, new Date()) });
        },
        () => {
          // The page says itself when the station is silent.
          if (!gone) timer = window.setTimeout(ask, AGAIN_MS);
        },
      );
    };
    ask();
    return () => {
      gone = true;
      clearTimeout(timer);
    };
  }, [seq]);
  return known;
}
