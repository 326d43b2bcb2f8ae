// Fetches what happened for the record, afresh whenever something did.

import { useEffect, useState } from "preact/hooks";
import { base } from "../base";
import type { View } from "../contract";
import { type JournalEvent, dayOf, eventsOf, happenedLines } from "../happened";

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
