// All sheets of a class: printed in one go, one side of A4 for each bench, or taken away as one zip.

import { useEffect, useMemo, useState } from "preact/hooks";
import { HandIn } from "../bench/record/hand_in";
import { Paper } from "../bench/record/paper";
import { kindOf } from "../kinds";
import { get } from "../live/ask";
import type { View } from "../live/contract";
import type { Traces } from "../live/model";
import { lessonText } from "../phrases/room";
import { phrase } from "../words";
import type { ClassSheets } from "./contract";
import { moment } from "./lessons";

const NOTHING_WRITTEN = {};

export function SheetsPage() {
  const [known, know] = useState<ClassSheets | null>(null);
  const [none, tell] = useState(false);
  const lesson = new URLSearchParams(location.search).get("lesson");
  const query = lesson === null ? "" : `?lesson=${encodeURIComponent(lesson)}`;
  useEffect(() => void get<ClassSheets>(`/api/room/sheets${query}`).then(know, () => tell(true)), []);
  useEffect(() => {
    document.body.classList.add("prints-record");
    return () => document.body.classList.remove("prints-record");
  }, []);
  if (none) return <p>{phrase("page-room-no-lessons")}</p>;
  if (!known) return <p class="connecting">{phrase("page-room-connecting")}</p>;
  const { sheets } = known;
  const day = new Date(known.lesson.began);
  return (
    <>
      <section class="kit-part">
        <h2>{lessonText(known.lesson.label, moment(known.lesson.began))}</h2>
        <p>{phrase("page-sheets-count", { count: sheets.length })}</p>
        <div class="kits-buttons">
          <button type="button" class="strong" disabled={sheets.length === 0} onClick={() => print()}>
            {phrase("page-sheets-print")}
          </button>
          <a class="plain" href={`/api/room/sheets.zip${query}`} download>
            {phrase("page-sheets-zip")}
          </a>
        </div>
        <p class="remark">{phrase("page-sheets-why")}</p>
        <ul class="sheets-list">
          {sheets.map(({ view }) => (
            <li key={view.bench.name}>{[view.bench.name, view.group].filter(Boolean).join(" · ")}</li>
          ))}
        </ul>
      </section>
      {sheets.map((sheet) => (
        <BenchSheet key={sheet.view.bench.name} sheet={sheet} day={day} />
      ))}
    </>
  );
}

function tracesOf(view: View, { traces }: ClassSheets["sheets"][number]): Traces {
  const drawn = kindOf(view.plan).drawsTraces ? traces : [];
  const started = new Map(view.repeats.map(({ repeat, started_s }) => [repeat, started_s] as const));
  return new Map(drawn.map(({ repeat, samples }) => [repeat, { started_s: started.get(repeat) ?? 0, samples, whole: true, closed: true }] as const));
}

function BenchSheet({ sheet, day }: { sheet: ClassSheets["sheets"][number]; day: Date }) {
  const view: View = useMemo(() => ({ ...sheet.view }) as View, [sheet]);
  const traces = useMemo(() => tracesOf(view, sheet), [sheet]);
  return (
    <Paper name="sheet" of={view}>
      {() => <HandIn view={view} traces={traces} day={day} written={NOTHING_WRITTEN} write={null} />}
    </Paper>
  );
}
