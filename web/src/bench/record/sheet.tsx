// What stands on the sheet with the station's answers: plan, table, graph, results, steps, notes, cautions.

import { parts as details } from "@kinds/details";
import { parts as sheets } from "@kinds/sheet";
import type { ComponentChildren } from "preact";
import { keptTogether } from "../../format";
import { kindOf } from "../../kinds";
import type { View } from "../../live/contract";
import type { Traces } from "../../live/model";
import type { WorkedStep } from "../../live/results";
import { typedText } from "../../phrases/record";
import { worked } from "../../phrases/steps";
import { dress, languageOfDates, phrase, said } from "../../words";
import { RecordResults } from "./results";

export interface SheetProps {
  view: View;
  traces: Traces;
  lines: readonly string[];
  day: Date;
  /** Set for paper, with how many notes may stand there. */
  paper?: { notes: number };
}

/** Width of the graph on paper / CSS px; record.css gives it as much room. */
export const GRAPH_PX = 410;
export const WIDE_GRAPH_PX = 480;
/** With more repeats than this the table needs the whole width. */
export const BESIDE = 4;
/** With more portions than this the table is as long as all the rest, which then stands beside it on paper. */
export const SHORT = 20;

export function Part({ name, title, children }: { name: string; title: string; children: ComponentChildren }) {
  return (
    <section class={`record-${name}`}>
      <h3>{title}</h3>
      {children}
    </section>
  );
}

function date(day: Date): string {
  return new Intl.DateTimeFormat(languageOfDates(), { day: "numeric", month: "long", year: "numeric" }).format(day);
}

export function Head({ view, day }: { view: View; day: Date }) {
  const about = [view.bench.name, view.group, date(day)].filter((fact) => fact !== null);
  return (
    <div class="record-head">
      <h2>{said(view.plan.title)}</h2>
      <p>{about.join(" · ")}</p>
      {view.adopted && <p class="not-own">{phrase("page-record-not-their-own", { label: view.adopted.label })}</p>}
      {view.bench.virtual && <p class="not-own">{phrase("page-record-virtual")}</p>}
    </div>
  );
}

export function Plan({ view }: { view: View }) {
  const { plan, thermometer } = view;
  const sentences = [
    `${kindOf(plan).practical(plan)}.`,
    details[plan.kind].planned(plan),
    plan.prompts === "own judgement" ? phrase("page-record-own-moments") : "",
    view.adopted ? "" : thermometer.kind === "typed" ? typedText(thermometer) : phrase("page-record-probe"),
  ];
  return (
    <Part name="plan" title={phrase("page-record-plan")}>
      <p>{keptTogether(sentences.filter((sentence) => sentence !== "").join(" "))}</p>
    </Part>
  );
}

/** A hyphen that means minus: a line could end behind it. */
const HYPHEN = /(^|[\s=(])-(?=[\s\w(])/g;

/** "n = c V" and "n = 0.4 × 20" in one line: what is worked out is named once. */
function inOne(formula: string, working: string): string {
  const [wanted = ""] = formula.split(" = ");
  const worked = working.startsWith(`${wanted} = `) ? working.slice(wanted.length + 3) : working;
  return [formula, worked].filter(Boolean).join(" = ").replace(HYPHEN, "$1\u2212");
}

function Step({ step: { text, formula, working, value, u, unit } }: { step: WorkedStep }) {
  const result = dress(worked(value, u > 0 ? u : null, unit));
  return (
    <li>
      {said(text)}: {keptTogether(inOne(said(formula), said(working)))} = <b>{keptTogether(result)}</b>
    </li>
  );
}

/** The steps of the mean; of the newest repeat where the mean has none. */
function StepLines({ view }: { view: View }) {
  const { result } = view;
  const steps = result?.steps ?? result?.repeats?.[result.repeats.length - 1]?.steps;
  const { straight_lines: lines = [], heat_balance: heat = [] } = steps ?? {};
  if (lines.length + heat.length === 0) return null;
  return (
    <Part name="steps" title={phrase("page-record-steps")}>
      <div class="record-sides">
        {[[phrase("page-steps-by-lines"), lines] as const, [phrase("page-steps-by-heat"), heat] as const].map(([name, some]) =>
          some.length === 0 ? null : (
            <div key={name}>
              <h4>{name}</h4>
              <ol>
                {some.map((step) => (
                  <Step key={step.text} step={step} />
                ))}
              </ol>
            </div>
          ),
        )}
      </div>
      <p class="record-remark">{phrase("page-steps-unrounded")}</p>
    </Part>
  );
}

function Happened({ lines, most }: { lines: readonly string[]; most: number }) {
  if (lines.length === 0) return null;
  const shown = lines.slice(0, most);
  return (
    <Part name="happened" title={phrase("page-record-happened")}>
      <ul>
        {shown.map((line, index) => (
          <li key={index}>{line}</li>
        ))}
        {shown.length < lines.length && <li>{phrase("page-record-more", { count: lines.length - shown.length })}</li>}
      </ul>
    </Part>
  );
}

function Cautions({ view }: { view: View }) {
  const { guide } = view;
  if (!guide || guide.cautions.length === 0) return null;
  return (
    <Part name="cautions" title={phrase("page-record-cautions")}>
      <p>{[...guide.cautions, guide.first].map(said).join(" ")}</p>
    </Part>
  );
}

/** What follows from the readings. */
function Found({ view, lines, most }: { view: View; lines: readonly string[]; most: number }) {
  return (
    <>
      <RecordResults view={view} />
      {view.results.shown && <StepLines view={view} />}
      <Happened lines={lines} most={most} />
    </>
  );
}

export function RecordSheet({ view, traces, lines, day, paper: sheet }: SheetProps) {
  const paper = sheet !== undefined;
  const { Graph, Numbers } = sheets[view.plan.kind];
  const wide = view.repeats.length > BESIDE;
  const beside = paper && !wide && view.mean.length > SHORT;
  const found = <Found view={view} lines={lines} most={sheet?.notes ?? lines.length} />;
  return (
    <>
      <Head view={view} day={day} />
      <Plan view={view} />
      {view.repeats.length === 0 ? (
        <p>{phrase("page-record-nothing")}</p>
      ) : (
        <div class={`record-measured${wide ? " record-wide" : ""}${beside ? " record-long" : ""}`}>
          {/* On the screen the table stands on the sheet above. */}
          {paper && <Numbers view={view} paper />}
          <div class="record-graph">
            <Graph view={view} traces={traces} paper_px={paper ? (wide ? WIDE_GRAPH_PX : GRAPH_PX) : null} />
            {beside && found}
          </div>
        </div>
      )}
      {!beside && found}
      <Cautions view={view} />
    </>
  );
}
