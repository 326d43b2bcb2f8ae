// What stands on the record: plan, table, graph, results, steps, notes, cautions.

import type { ComponentChildren } from "preact";
import type { View } from "../contract";
import { keptTogether } from "../format";
import { type PortionsView, isOnce } from "../plan";
import type { WorkedStep } from "../results";
import type { Traces } from "../traces";
import { said, speaking, words } from "../words";
import { OnceNumbers } from "./once_table";
import { OnceStill } from "./record_once";
import { RecordResults } from "./record_results";
import { RecordTable } from "./record_table";
import { VolumeChartStill, VolumeFigure } from "./volume_figure";

export interface SheetProps {
  view: View;
  traces: Traces;
  lines: readonly string[];
  day: Date;
  /** Set for paper, with how many notes may stand there. */
  paper?: { notes: number };
}

/** Width of the graph on paper / CSS px; record.css gives it as much room. */
const GRAPH_PX = 410;
const WIDE_GRAPH_PX = 480;
/** With more repeats than this the table needs the whole width. */
const BESIDE = 4;
/** With more portions than this the table is as long as all the rest, which then stands beside it on paper. */
const SHORT = 20;

function Part({ name, title, children }: { name: string; title: string; children: ComponentChildren }) {
  return (
    <section class={`record-${name}`}>
      <h3>{title}</h3>
      {children}
    </section>
  );
}

function date(day: Date): string {
  const tag = speaking().language === "de" ? "de" : "en-GB";
  return new Intl.DateTimeFormat(tag, { day: "numeric", month: "long", year: "numeric" }).format(day);
}

function Head({ view, day }: { view: View; day: Date }) {
  const about = [view.bench.name, view.group, date(day)].filter((fact) => fact !== null);
  return (
    <div class="record-head">
      <h2>{said(view.plan.title)}</h2>
      <p>{about.join(" · ")}</p>
      {view.adopted && <p class="not-own">{words.record.notTheirOwn(view.adopted.label)}</p>}
      {view.bench.virtual && <p class="not-own">{words.record.virtual}</p>}
    </div>
  );
}

function Plan({ view }: { view: View }) {
  const { plan, thermometer } = view;
  const sentences = [
    `${words.practical(plan)}.`,
    words.record.planned(plan),
    view.adopted ? "" : thermometer.kind === "typed" ? words.record.typed(thermometer.division_c) : words.record.probe,
  ];
  return (
    <Part name="plan" title={words.record.plan}>
      <p>{keptTogether(sentences.filter((sentence) => sentence !== "").join(" "))}</p>
    </Part>
  );
}

function Graph({ view, traces, paper, wide }: { view: View; traces: Traces; paper: boolean; wide: boolean }) {
  const width = wide ? WIDE_GRAPH_PX : GRAPH_PX;
  if (isOnce(view)) return <OnceStill view={view} traces={traces} width={paper ? width : null} />;
  return paper ? <VolumeChartStill view={view as PortionsView} width={width} /> : <VolumeFigure view={view as PortionsView} />;
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
  const result = words.steps.worked(value, u > 0 ? u : null, unit);
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
    <Part name="steps" title={words.record.steps}>
      <div class="record-sides">
        {[[words.steps.byLines, lines] as const, [words.steps.byHeat, heat] as const].map(([name, some]) =>
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
    </Part>
  );
}

function Happened({ lines, most }: { lines: readonly string[]; most: number }) {
  if (lines.length === 0) return null;
  const shown = lines.slice(0, most);
  return (
    <Part name="happened" title={words.record.happened}>
      <ul>
        {shown.map((line, index) => (
          <li key={index}>{line}</li>
        ))}
        {shown.length < lines.length && <li>{words.record.more(lines.length - shown.length)}</li>}
      </ul>
    </Part>
  );
}

function Cautions({ view }: { view: View }) {
  const { guide } = view;
  if (!guide || guide.cautions.length === 0) return null;
  return (
    <Part name="cautions" title={words.record.cautions}>
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
  const wide = view.repeats.length > BESIDE;
  const beside = paper && !wide && view.mean.length > SHORT;
  const found = <Found view={view} lines={lines} most={sheet?.notes ?? lines.length} />;
  return (
    <>
      <Head view={view} day={day} />
      <Plan view={view} />
      {view.repeats.length === 0 ? (
        <p>{words.record.nothing}</p>
      ) : (
        <div class={`record-measured${wide ? " record-wide" : ""}${beside ? " record-long" : ""}`}>
          {isOnce(view) ? <OnceNumbers view={view} /> : <RecordTable view={view} paper={paper} />}
          <div class="record-graph">
            <Graph view={view} traces={traces} paper={paper} wide={wide} />
            {beside && found}
          </div>
        </div>
      )}
      {!beside && found}
      <Cautions view={view} />
    </>
  );
}
