// The sheet to hand in: what was measured, and room for what the group has to say. None of the station's answers stand on it.

import { parts as details } from "@kinds/details";
import { parts as sheets } from "@kinds/sheet";
import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import { keptTogether } from "../../format";
import type { View } from "../../live/contract";
import type { Traces } from "../../live/model";
import { keepInTab, keptInTab } from "../../live/tab";
import { phrase } from "../../words";
import { ownInWords } from "../results";
import { BESIDE, GRAPH_PX, Head, Part, Plan, SHORT, WIDE_GRAPH_PX } from "./sheet";

// What is typed stays in this tab: no names, and nothing that the station keeps.

const PLACES = ["aim", "calculation", "conclusion"] as const;
export const QUESTIONS = [0, 1, 2, 3, 4] as const;

export type Written = Readonly<Record<string, string>>;

/** One practical's texts under one key. */
const keyOf = ({ bench, repeats }: View) => `sheet ${bench.name} ${repeats[0]?.started_s ?? ""}`;

function stored(key: string): Written {
  const held = keptInTab(key);
  return typeof held === "object" && held !== null ? (held as Written) : {};
}

/** What was typed so far, and how to type into a place. */
export function useWritten(view: View): readonly [Written, (place: string, text: string) => void] {
  const key = keyOf(view);
  const [held, hold] = useState<{ key: string; written: Written }>(() => ({ key, written: stored(key) }));
  const written = held.key === key ? held.written : stored(key);
  const write = (place: string, text: string) => {
    const changed = { ...written, [place]: text };
    hold({ key, written: changed });
    keepInTab(key, changed);
  };
  return [written, write];
}

interface Props {
  view: View;
  traces: Traces;
  day: Date;
  written: Written;
  /** How to type; null on paper. */
  write: ((place: string, text: string) => void) | null;
}

/** Ruled room on paper, a field on the screen; what was typed stands in both. */
function Room({ place, name, lines, written, write }: Pick<Props, "written" | "write"> & { place: string; name: string; lines: number }) {
  const text = written[place] ?? "";
  if (write === null) {
    return (
      <div class="to-write" style={{ minHeight: `${2 * lines}em` }}>
        {text}
      </div>
    );
  }
  return <textarea aria-label={name} rows={lines} maxLength={600} value={text} onInput={(event) => write(place, event.currentTarget.value)} />;
}

/** Lines of room at least: where there is more on the page, each place grows. */
const LINES = { aim: 1, calculation: 4, conclusion: 2 } as const;

function Writing({ place, ...props }: Pick<Props, "written" | "write"> & { place: (typeof PLACES)[number] }) {
  const title = phrase("page-sheet-parts", { which: place });
  return (
    <Part name={`writing writing-${place}`} title={title}>
      <Room place={place} name={title} lines={LINES[place]} {...props} />
    </Part>
  );
}

/** A table as long as all the rest has it beside it on paper. */
const isLong = ({ repeats, mean }: View) => repeats.length <= BESIDE && mean.length > SHORT;

function Measured({ view, traces, paper, children }: { view: View; traces: Traces; paper: boolean; children: ComponentChildren }) {
  const { Graph, Numbers } = sheets[view.plan.kind];
  const wide = view.repeats.length > BESIDE;
  const long = paper && isLong(view);
  // The students' own lines are theirs; the station's are answers.
  const own = { ...view, result: null };
  return (
    <div class={`record-measured${wide ? " record-wide" : ""}${long ? " record-long" : ""}`}>
      <Numbers view={own} paper={paper} />
      <div class="record-graph">
        <Graph view={own} traces={traces} paper_px={paper ? (wide ? WIDE_GRAPH_PX : GRAPH_PX) : null} tall={!wide && !long} />
        {long && children}
      </div>
    </div>
  );
}

export function HandIn({ view, traces, day, written, write }: Props) {
  const paper = write === null;
  const at = { written, write };
  const rest = (
    <>
      {view.own_reading && <p>{keptTogether(ownInWords(view.own_reading))}</p>}
      {view.sketch && (
        <Part name="writing" title={phrase("page-sketch-title")}>
          <p>{phrase("page-sketch-question")}</p>
          <Room place="sketch" name={phrase("page-sketch-question")} lines={2} {...at} />
        </Part>
      )}
      <Writing place="calculation" {...at} />
      <Writing place="conclusion" {...at} />
      <Part name="writing record-evaluation" title={phrase("page-sheet-parts", { which: "evaluation" })}>
        <ol>
          {QUESTIONS.map((number) => {
            const question = details[view.plan.kind].question(number);
            return (
              <li key={number}>
                {question}
                <Room place={`question ${number}`} name={question} lines={1} {...at} />
              </li>
            );
          })}
        </ol>
      </Part>
    </>
  );
  return (
    <>
      <Head view={view} day={day} />
      <p class="sheet-names">
        {phrase("page-sheet-names")} {paper ? <span class="by-hand" /> : <small>{phrase("page-sheet-by-hand")}</small>}
      </p>
      <Writing place="aim" {...at} />
      <Plan view={view} />
      {view.repeats.length === 0 ? (
        <p>{phrase("page-record-nothing")}</p>
      ) : (
        <Measured view={view} traces={traces} paper={paper}>
          {rest}
        </Measured>
      )}
      {!(paper && isLong(view)) && rest}
    </>
  );
}
