// The class result: the answer, one picture of all benches, two plain sentences; then the table, and folded away the rest.

import type { ComponentChildren } from "preact";
import { useEffect, useState } from "preact/hooks";
import { short, typedNumber } from "../../format";
import { get } from "../../live/ask";
import { isStaff, useSession } from "../../live/session";
import { phrase, said } from "../../words";
import type { ClassAnswer, ClassResult, MadeUp, Quantity } from "../contract";
import { useRoom } from "../feed";
import { moment } from "../lessons";
import { useTelling } from "../telling";
import { ClassCurve, ClassPlot } from "./drawings";
import { ClassSheet, ClassTable, answering, clashing, namesOf, oddOf } from "./sheet";

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

/** What the bottle was made up to: for staff until they show it to the class. */
function MadeUpPart({ made_up, benches }: { made_up: MadeUp; benches: readonly string[] }) {
  const { told, send, busy } = useTelling();
  const { standing } = useSession();
  const [typed, type] = useState("");
  const { mol_dm3, to_find, seen } = made_up;
  const staff = standing !== null && isStaff(standing.role);
  if (mol_dm3 === null && !(staff && to_find)) return null;
  const keep = (event: Event) => {
    event.preventDefault();
    const value = typedNumber(typed);
    if (value !== null && value > 0) void send("/api/room/made-up", { mol_dm3: value });
  };
  return (
    <div class="made-up">
      {mol_dm3 !== null ? (
        <p>
          <b data-testid="made-up">{phrase("page-room-made-up", { mol: short(mol_dm3, 4) })}</b>{" "}
          <small>{phrase(seen ? "page-room-made-up-seen" : "page-room-made-up-only-you")}</small>
        </p>
      ) : (
        <form onSubmit={keep}>
          <label>
            {phrase("page-room-made-up-ask")}
            <input type="text" inputMode="decimal" autocomplete="off" value={typed} onInput={(event) => type(event.currentTarget.value)} />
          </label>
          <button type="submit" class="plain" disabled={busy || typedNumber(typed) === null}>
            {phrase("page-room-made-up-keep")}
          </button>
        </form>
      )}
      {staff && mol_dm3 !== null && !seen && (
        <button
          type="button"
          class="plain"
          disabled={busy || benches.length === 0}
          onClick={() => void send("/api/room/orders", { benches, act: { act: "show_results", shown: true, prepared_mol_dm3: mol_dm3 } })}
        >
          {phrase("page-room-made-up-show")}
        </button>
      )}
      <p class="told" role="status">
        {told}
      </p>
    </div>
  );
}

function Found({ answer, result, made_up }: { answer: ClassAnswer; result: ClassResult; made_up: ComponentChildren }) {
  const [names, odd] = [namesOf(result), oddOf(result)];
  const first = answering(result);
  const others = result.quantities.filter((each) => each !== first);
  const open = result.benches.filter((bench) => bench.open.length > 0);
  const plot = (quantity: Quantity) => <ClassPlot key={`${quantity.quantity} ${quantity.method}`} quantity={quantity} names={names} odd={odd} unsure={clashing(result)} />;
  return (
    <>
      <h2 class="unseen">{phrase("page-room-class-title")}</h2>
      <section class="class-first">
        <p class="class-answer" data-testid="class-answer">
          {said(result.answer ?? result.words[0] ?? "")}
        </p>
        {made_up}
      </section>
      {first && <div class="class-figures class-figures-one">{plot(first)}</div>}
      {result.plain.length > 0 && (
        <div class="class-plain">
          {result.plain.map((line) => (
            <p key={line}>{said(line)}</p>
          ))}
        </div>
      )}
      <ClassTable result={result} />
      {open.length > 0 && (
        <section class="settings-part">
          <h2>{phrase("page-room-open-questions")}</h2>
          <ul>
            {open.map(({ bench, name, open: asked }) => (
              <li key={bench}>
                <b>{name}</b> {asked.map(said).join(" ")}
              </li>
            ))}
          </ul>
        </section>
      )}
      <Odd result={result} />
      <details class="settings-part class-more">
        <summary>{phrase("page-room-statistics")}</summary>
        <ul class="class-words">
          {result.words.map((line) => (
            <li key={line}>{said(line)}</li>
          ))}
        </ul>
        <p class="remark">{phrase("page-room-plot-why")}</p>
      </details>
      <details class="settings-part class-more">
        <summary>{phrase("page-room-more-pictures")}</summary>
        <div class="class-figures">
          {others.map(plot)}
          <ClassCurve curve={result.curve} />
        </div>
      </details>
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

function Withheld({ answer, name, made_up }: { answer: ClassAnswer; name: (bench: string) => string; made_up: ComponentChildren }) {
  const waits = answer.waits_for.map(name);
  return (
    <section class="settings-part">
      <p>{answer.taking_part === 0 ? phrase("page-room-nobody") : phrase("page-room-withheld")}</p>
      {waits.length > 0 && <p>{phrase("page-room-waits-for", { benches: waits.join(", ") })}</p>}
      {made_up}
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
  const made_up = <MadeUpPart made_up={answer.made_up} benches={known?.room.order ?? []} />;
  const about = answer.lesson && [answer.lesson.label, moment(answer.lesson.began)].filter(Boolean).join(" · ");
  return (
    <>
      {about && <p class="lesson-now">{about}</p>}
      {answer.result && answer.computing && <p role="status">{phrase("page-room-calculating")}</p>}
      {answer.result && !(answer.computing && answer.result.benches.length === 0) ? (
        <Found answer={answer} result={answer.result} made_up={made_up} />
      ) : answer.computing ? (
        <p class="connecting">{phrase("page-room-calculating")}</p>
      ) : (
        <Withheld answer={answer} name={name} made_up={made_up} />
      )}
      {answer.lesson && <Files lesson={answer.lesson.lesson} shown={answer.shown} />}
    </>
  );
}
