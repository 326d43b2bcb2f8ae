// The class result: plots, mean with what it says in words, table, what stands off, files, a sheet to print.

import { useEffect, useState } from "preact/hooks";
import { get } from "../../live/ask";
import { phrase, said } from "../../words";
import type { ClassAnswer, ClassResult } from "../contract";
import { useRoom } from "../feed";
import { moment } from "../lessons";
import { ClassCurve, ClassPlot } from "./drawings";
import { ClassSheet, ClassTable, namesOf, oddOf } from "./sheet";

const AGAIN_MS = 4000;

const FILES = [
  ["sheet", "class.xlsx", ".xlsx"],
  ["results", "class.csv", ".csv"],
  ["resultsComma", "class.csv?decimal=comma", ".csv"],
  ["readings", "readings.csv", ".csv"],
  ["readingsComma", "readings.csv?decimal=comma", ".csv"],
  ["events", "lesson.jsonl", ".jsonl"],
] as const;

/** The lesson that the address asks for; null: the newest. */
const lessonAsked = (): number | null => Number(new URLSearchParams(location.search).get("lesson")) || null;

/** The class result, asked for anew whenever `version` says that it changed. */
function useClass(lesson: number | null, version: string): ClassAnswer | null {
  const [answer, know] = useState<ClassAnswer | null>(null);
  useEffect(() => {
    let timer = 0;
    let gone = false;
    const ask = () => {
      get<ClassAnswer>(`/api/room/class${lesson === null ? "" : `?lesson=${lesson}`}`).then(
        (found) => {
          if (!gone) know(found);
          if (!gone && found.computing) timer = window.setTimeout(ask, AGAIN_MS);
        },
        () => {
          if (!gone) timer = window.setTimeout(ask, AGAIN_MS);
        },
      );
    };
    ask();
    return () => {
      gone = true;
      clearTimeout(timer);
    };
  }, [lesson, version]);
  return answer;
}

function Files({ lesson, shown }: { lesson: number; shown: boolean }) {
  const files = FILES.filter(([name]) => shown || (name !== "results" && name !== "resultsComma"));
  return (
    <section class="record-tools downloads">
      <h2>{phrase("page-room-files")}</h2>
      <ul>
        {files.map(([name, path, ending]) => (
          <li key={name}>
            <a href={`/api/room/${path}${path.includes("?") ? "&" : "?"}lesson=${lesson}`} download>
              {phrase("page-room-file-names", { which: name })} <small>{ending}</small>
            </a>
          </li>
        ))}
      </ul>
    </section>
  );
}

function Odd({ result }: { result: ClassResult }) {
  return (
    <section class="settings-part class-anomalies">
      <h2>{phrase("page-room-odd-title")}</h2>
      {result.anomalies.length === 0 && <p>{phrase("page-room-no-odd")}</p>}
      {result.anomalies.map((each) => (
        <div key={each.bench}>
          <p>
            <b>▲ {said(each.text)}</b>
          </p>
          <ul>
            {each.reasons.map((reason) => (
              <li key={reason}>{said(reason)}</li>
            ))}
          </ul>
        </div>
      ))}
      <p class="remark">{phrase("page-room-odd-why")}</p>
    </section>
  );
}

function Found({ answer, result }: { answer: ClassAnswer; result: ClassResult }) {
  const [names, odd] = [namesOf(result), oddOf(result)];
  return (
    <>
      <section class="settings-part class-meaning">
        <h2>{phrase("page-room-meaning")}</h2>
        <ul class="class-words">
          {result.words.map((line) => (
            <li key={line}>{said(line)}</li>
          ))}
        </ul>
      </section>
      <div class="class-figures">
        {result.quantities.map((quantity) => (
          <ClassPlot key={`${quantity.quantity} ${quantity.method}`} quantity={quantity} names={names} odd={odd} />
        ))}
        <ClassCurve curve={result.curve} />
      </div>
      <p class="remark">{phrase("page-room-plot-why")}</p>
      <ClassTable result={result} />
      <Odd result={result} />
      <section class="record-tools">
        <button type="button" class="strong" onClick={() => print()}>
          {phrase("page-room-print")}
        </button>
        <p class="remark">{phrase("page-room-print-hint")}</p>
      </section>
      {answer.lesson && <ClassSheet lesson={answer.lesson} result={result} />}
    </>
  );
}

function Withheld({ answer, name }: { answer: ClassAnswer; name: (bench: string) => string }) {
  const waits = answer.waits_for.map(name);
  return (
    <section class="settings-part">
      <p>{answer.taking_part === 0 ? phrase("page-room-nobody") : phrase("page-room-withheld")}</p>
      {waits.length > 0 && <p>{phrase("page-room-waits-for", { benches: waits.join(", ") })}</p>}
    </section>
  );
}

export function ClassPage() {
  const { known } = useRoom();
  const lesson = lessonAsked();
  const standing = known ? JSON.stringify(known.room.class) : "";
  const answer = useClass(lesson, standing);
  if (!answer) return <p class="connecting">{phrase("page-room-calculating")}</p>;
  const name = (bench: string) => known?.room.tiles[bench]?.name ?? bench;
  const about = answer.lesson && [answer.lesson.label, moment(answer.lesson.began)].filter(Boolean).join(" · ");
  return (
    <>
      {about && <p class="lesson-now">{about}</p>}
      {answer.result && answer.computing && <p role="status">{phrase("page-room-calculating")}</p>}
      {answer.result && !(answer.computing && answer.result.benches.length === 0) ? (
        <Found answer={answer} result={answer.result} />
      ) : answer.computing ? (
        <p class="connecting">{phrase("page-room-calculating")}</p>
      ) : (
        <Withheld answer={answer} name={name} />
      )}
      {answer.lesson && <Files lesson={answer.lesson.lesson} shown={answer.shown} />}
    </>
  );
}
