// Paper: one side of A4, laid out out of sight beforehand, so that its letters can be made as large as fits; and what
// is printed, whichever view of the bench is on the screen.

import type { ComponentChildren } from "preact";
import { useEffect, useLayoutEffect, useRef, useState } from "preact/hooks";
import { kindOf } from "../../kinds";
import type { View } from "../../live/contract";
import type { Model, Traces } from "../../live/model";
import { phrase } from "../../words";
import { HandIn, useWritten } from "./hand_in";

/** Letters on paper from the largest to the smallest; record.css gives each its size. */
const SIZES = 8;
const NO_TRACES: Traces = new Map();

/** How many notes stand on paper when they are many, until all of it fits; the rest is in the files. */
const NOTES = [24, 16, 10, 6, 3, 1, 0] as const;

export const tracesOf = (view: View, { traces }: Model): Traces => (kindOf(view.plan).drawsTraces ? traces : NO_TRACES);

/** Take the largest letters with which all of it stands on one side; false when no letters are small enough. */
function fits(paper: HTMLElement): boolean {
  for (let size = 0; size < SIZES; size += 1) {
    paper.dataset["size"] = String(size);
    if (paper.scrollHeight <= paper.clientHeight) return true;
  }
  paper.dataset["size"] = "over";
  return false;
}

interface PaperProps {
  name: string;
  /** What it depends on: something else is laid out afresh. */
  of: object;
  children: (notes: number) => ComponentChildren;
}

export function Paper({ name, of, children }: PaperProps) {
  const paper = useRef<HTMLDivElement>(null);
  const [cut, setCut] = useState({ of, step: 0 });
  // Another sheet begins with as many notes as there may be.
  const step = cut.of === of ? cut.step : 0;
  useLayoutEffect(() => {
    if (paper.current && !fits(paper.current) && step + 1 < NOTES.length) setCut({ of, step: step + 1 });
  });
  return (
    <div class={`paper-room paper-room-${name}`}>
      <div class={`paper paper-${name}`} ref={paper}>
        {children(NOTES[step] ?? 0)}
      </div>
    </div>
  );
}

/** Print the paper alone, under a name that a PDF can go by. */
export function usePrinting({ bench, group }: View, day: Date): void {
  const of = [bench.name, group].filter(Boolean).join(" ");
  useEffect(() => {
    document.body.classList.add("prints-record");
    return () => document.body.classList.remove("prints-record", ANSWERS);
  }, []);
  useEffect(() => {
    let before = document.title;
    const named = () => {
      before = document.title;
      document.title = phrase("page-record-file-title", { bench: of, day: day.toISOString().slice(0, 10) });
    };
    const again = () => {
      document.title = before;
      document.body.classList.remove(ANSWERS);
    };
    addEventListener("beforeprint", named);
    addEventListener("afterprint", again);
    return () => {
      removeEventListener("beforeprint", named);
      removeEventListener("afterprint", again);
    };
  }, [of, day]);
}

const ANSWERS = "prints-answers";

/** Print one of the two; without a press it is the sheet to hand in. */
export function printed(what: "sheet" | "answers"): void {
  document.body.classList.toggle(ANSWERS, what === "answers");
  print();
}

/** What the bench's page prints: the sheet to hand in, laid out when somebody prints. */
export function PrintedSheet({ view, model }: { view: View; model: Model }) {
  const [printing, setPrinting] = useState(false);
  const [day] = useState(() => new Date());
  const [written] = useWritten(view);
  usePrinting(view, day);
  useEffect(() => {
    const begin = () => setPrinting(true);
    const end = () => setPrinting(false);
    addEventListener("beforeprint", begin);
    addEventListener("afterprint", end);
    return () => {
      removeEventListener("beforeprint", begin);
      removeEventListener("afterprint", end);
    };
  }, []);
  if (!printing) return null;
  return (
    <div class="prints">
      <Paper name="sheet" of={view}>
        {() => <HandIn view={view} traces={tracesOf(view, model)} day={day} written={written} write={null} />}
      </Paper>
    </div>
  );
}
