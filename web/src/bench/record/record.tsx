// The record: the sheet to hand in, the station's answers as a second sheet, and everything to take away. On the screen
// they flow like any page; on paper each is one side of A4.

import { useMemo } from "preact/hooks";
import { decimal } from "../../format";
import { base } from "../../live/ask";
import type { View } from "../../live/contract";
import type { Model } from "../../live/model";
import { phrase } from "../../words";
import { HandIn, useWritten } from "./hand_in";
import { useHappened } from "./happened";
import { Paper, printed, tracesOf, usePrinting } from "./paper";
import { RecordSheet } from "./sheet";

interface Props {
  view: View;
  model: Model;
}

export function RecordView({ view, model }: Props) {
  const { lines, day } = useHappened(view);
  usePrinting(view, day);
  const traces = tracesOf(view, model);
  const [written, write] = useWritten(view);
  const { plan, repeats, mean, result, results, own_reading, sketch, group, adopted, thermometer, alkali_temperature_c, bench } = view;
  // A sample a second must not lay the paper out afresh.
  const known = [plan, repeats, mean, result, results, own_reading, sketch, group, adopted, thermometer, alkali_temperature_c, bench.name];
  const sheet = useMemo(() => ({ view, traces, day, written }), [...known, day, traces, written]);
  const answers = useMemo(() => ({ view, traces, lines, day }), [...known, lines, day, traces]);
  const shown = results.shown && result !== null;
  return (
    <div class="record prints">
      <section class="record-tools">
        <h2>{phrase("page-record-title")}</h2>
        <div class="answers">
          <button type="button" class="strong prints-the-sheet" onClick={() => printed("sheet")}>
            {phrase("page-record-print")}
          </button>
          {shown && (
            <button type="button" class="prints-the-answers" onClick={() => printed("answers")}>
              {phrase("page-sheet-print-answers")}
            </button>
          )}
        </div>
        <p class="remark">{shown ? phrase("page-sheet-hint-shown") : phrase("page-sheet-hint")}</p>
        {!bench.read_only && <Downloads />}
      </section>
      <article class="sheet" data-testid="sheet">
        <HandIn {...sheet} write={write} />
      </article>
      <article class="sheet sheet-answers">
        {useMemo(
          () => (
            <>
              <h2>{phrase("page-sheet-answers")}</h2>
              <RecordSheet {...answers} />
            </>
          ),
          [answers],
        )}
      </article>
      {useMemo(
        () => (
          <>
            <Paper name="sheet" of={sheet}>{() => <HandIn {...sheet} write={null} />}</Paper>
            <Paper name="answers" of={answers}>{(notes) => <RecordSheet {...answers} paper={{ notes }} />}</Paper>
          </>
        ),
        [sheet, answers],
      )}
    </div>
  );
}

// What a group can take away, as links to files: first what a group works on with, then files for programs.

const COMMA = "?decimal=comma";
const FILES = {
  sheet: ["/record.xlsx", ".xlsx"],
  table: ["/table.csv", ".csv"],
  readings: ["/readings.csv", ".csv"],
  record: ["/record.csv", ".csv"],
  readingsComma: [`/readings.csv${COMMA}`, ".csv"],
  recordComma: [`/record.csv${COMMA}`, ".csv"],
  journal: ["/journal.jsonl", ".jsonl"],
} as const;
type FileName = keyof typeof FILES;

function Files({ names, comma }: { names: readonly FileName[]; comma: boolean }) {
  return (
    <ul>
      {names.map((name) => {
        const [path, ending] = FILES[name];
        return (
          <li key={name}>
            <a href={`${base()}${name === "table" && comma ? `${path}${COMMA}` : path}`} download>
              {phrase("page-record-files", { which: name })} <small>{ending}</small>
            </a>
          </li>
        );
      })}
    </ul>
  );
}

function Downloads() {
  // A spreadsheet reads numbers as the reader's language writes them.
  const comma = decimal("0.5") !== "0.5";
  return (
    <section class="downloads">
      <h2>{phrase("page-record-downloads")}</h2>
      <Files names={["sheet", "table", comma ? "recordComma" : "record"]} comma={comma} />
      <details>
        <summary>{phrase("page-record-for-programs")}</summary>
        <Files names={["readings", "readingsComma", comma ? "record" : "recordComma", "journal"]} comma={comma} />
      </details>
      <p class="remark">{phrase("page-record-downloads-hint")}</p>
    </section>
  );
}
