// The record: a printable page, and everything to take away. On the screen it flows like any page; on paper it is one
// side of A4, laid out out of sight beforehand, so that its letters can be made as large as fits.

import { useEffect, useLayoutEffect, useMemo, useRef, useState } from "preact/hooks";
import type { View } from "../contract";
import type { Model } from "../model";
import { isOnce } from "../plan";
import type { Traces } from "../traces";
import { words } from "../words";
import { Downloads } from "./downloads";
import { useHappened } from "./record_happened";
import { RecordSheet, type SheetProps } from "./record_sheet";

interface Props {
  view: View;
  model: Model;
}

/** Letters on paper from the largest to the smallest; record.css gives each its size. */
const SIZES = 8;
const NO_TRACES: Traces = new Map();

/** How many notes stand on paper when they are many, until all of it fits; the rest is in the files. */
const NOTES = [24, 16, 10, 6, 3, 1, 0] as const;

/** Take the largest letters with which all of it stands on one side; false when no letters are small enough. */
function fits(paper: HTMLElement): boolean {
  for (let size = 0; size < SIZES; size += 1) {
    paper.dataset.size = String(size);
    if (paper.scrollHeight <= paper.clientHeight) return true;
  }
  paper.dataset.size = "over";
  return false;
}

function Paper(sheet: Omit<SheetProps, "paper">) {
  const paper = useRef<HTMLDivElement>(null);
  const [cut, setCut] = useState({ of: sheet, step: 0 });
  // Another sheet begins with as many notes as there may be.
  const step = cut.of === sheet ? cut.step : 0;
  useLayoutEffect(() => {
    if (paper.current && !fits(paper.current) && step + 1 < NOTES.length) setCut({ of: sheet, step: step + 1 });
  });
  return (
    <div class="paper-room">
      <div class="paper" ref={paper}>
        <RecordSheet {...sheet} paper={{ notes: NOTES[step] ?? 0 }} />
      </div>
    </div>
  );
}

/** Print the paper alone, under a name that a PDF can go by. */
function usePrinting(of: string, day: Date): void {
  useEffect(() => {
    let before = document.title;
    const named = () => {
      before = document.title;
      document.title = words.record.fileTitle(of, day.toISOString().slice(0, 10));
    };
    const again = () => {
      document.title = before;
    };
    document.body.classList.add("prints-record");
    addEventListener("beforeprint", named);
    addEventListener("afterprint", again);
    return () => {
      document.body.classList.remove("prints-record");
      removeEventListener("beforeprint", named);
      removeEventListener("afterprint", again);
    };
  }, [of, day]);
}

export function RecordView({ view, model }: Props) {
  const { lines, day } = useHappened(view);
  usePrinting([view.bench.name, view.group].filter(Boolean).join(" "), day);
  // Of portions no trace is drawn here.
  const traces = isOnce(view) ? model.traces : NO_TRACES;
  const { plan, repeats, mean, result, results, own_reading, group, adopted, thermometer, alkali_temperature_c, bench } = view;
  // A sample a second must not lay the paper out afresh.
  const known = [plan, repeats, mean, result, results, own_reading, group, adopted, thermometer, alkali_temperature_c, bench.name];
  return useMemo(
    () => (
      <div class="record">
        <section class="record-tools">
          <h2>{words.record.title}</h2>
          <button type="button" class="strong" onClick={() => print()}>
            {words.record.print}
          </button>
          <p class="remark">{words.record.printHint}</p>
          {!bench.read_only && <Downloads />}
        </section>
        <article class="sheet">
          <RecordSheet view={view} traces={traces} lines={lines} day={day} />
        </article>
        <Paper view={view} traces={traces} lines={lines} day={day} />
      </div>
    ),
    [...known, lines, day, traces],
  );
}
