// Preparing a class's practical: which plan, how many benches, and the sheet to print.

import { useEffect, useRef, useState } from "preact/hooks";
import { lowered, rounded, short, typedNumber } from "../format";
import { type Session, useSession } from "../live/session";
import { capital } from "../phrases/quantities";
import { phrase, said } from "../words";
import type { Bottle, Lesson, Plans, Section, Sheet } from "./contract";
import { Frame, startPage } from "./frame";
import { compute, planToBegin, usePlans } from "./plan/computed";
import { ChoiceOf, HazardLabel, type Option } from "./plan/fields";
import { type Values, formOf, valuesOf } from "./plan/form";
import { StaffSignIn } from "./sign_in";

const PAUSE_MS = 250;
const BENCHES = "8";
const LESSONS_MIN = [50, 60] as const;

const plain = (plan: Values) => valuesOf(formOf(plan));

/** Where the plan may come from: this tab's planning page first, then the bench, then what ships. */
function sources(plans: Plans, staff: boolean): readonly { name: string; text: string; plan: Values }[] {
  const begun = planToBegin(plans, staff);
  const tab = begun === plans.bench ? [] : [{ name: "tab", text: phrase("page-prepare-tab-plan"), plan: begun }];
  const ready = plans.ready.map(({ name, plan }) => ({ name, text: said(typeof plan.title === "string" ? plan.title : name), plan }));
  return [...tab, { name: "bench", text: phrase("page-prepare-bench-plan"), plan: plans.bench }, ...ready];
}

/** The sheet, asked for again whenever something changes; the words say why there is none. */
function useSheet(plan: Values, benches: string, stocks: Record<string, string>): { sheet: Sheet | null; why: string } {
  const [sheet, show] = useState<Sheet | null>(null);
  const [why, say] = useState("");
  const newest = useRef(0);
  const question = {
    plan: plain(plan),
    benches: typedNumber(benches) ?? benches,
    stocks: Object.fromEntries(Object.entries(stocks).flatMap(([name, text]) => (text.trim() === "" ? [] : [[name, typedNumber(text) ?? text]]))),
  };
  const key = JSON.stringify(question);
  useEffect(() => {
    newest.current += 1;
    const turn = newest.current;
    const ask = async () => {
      const answer = await compute<Sheet>("/api/preparation", question);
      if (turn !== newest.current) return;
      show(answer.found);
      say(answer.found ? "" : said(answer.words ?? "") || phrase("page-prepare-no-answer"));
    };
    const timer = setTimeout(() => void ask(), PAUSE_MS);
    return () => clearTimeout(timer);
  }, [key]);
  return { sheet, why };
}

function NumberField({ id, label, hint, value, change }: { id: string; label: string; hint?: string; value: string; change: (text: string) => void }) {
  return (
    <div class="plan-field">
      <label for={id}>{label}</label>
      <input id={id} type="text" inputMode="decimal" autocomplete="off" maxLength={8} value={value} onInput={(event) => change(event.currentTarget.value)} />
      {hint && <small>{hint}</small>}
    </div>
  );
}

function Preparing({ plans, staff, session }: { plans: Plans; staff: boolean; session: Session }) {
  const all = sources(plans, staff);
  const [name, choose] = useState(all[0]?.name ?? "bench");
  const [benches, type] = useState(BENCHES);
  const [lesson_min, last] = useState<number>(LESSONS_MIN[0]);
  const [stocks, stock] = useState<Record<string, string>>({});
  const plan = (all.find((each) => each.name === name) ?? all[0])?.plan ?? plans.bench;
  const { sheet, why } = useSheet(plan, benches, stocks);
  return (
    <>
      <div class="not-printed preparing">
        <p>{phrase("page-prepare-intro")}</p>
        <div class="plan-part">
          <ChoiceOf path="source" label={phrase("page-prepare-plan")} value={name} options={all.map((each): Option => [each.name, each.text])} choose={choose} />
          <NumberField id="benches" label={phrase("page-prepare-benches")} value={benches} change={type} />
          <ChoiceOf
            path="lesson"
            label={phrase("page-prepare-lesson")}
            value={String(lesson_min)}
            options={LESSONS_MIN.map((each): Option => [String(each), phrase("page-prepare-minutes", { minutes: each })])}
            choose={(chosen) => last(Number(chosen))}
          />
          {sheet?.from_stock.map((each) => (
            <NumberField
              key={each}
              id={`stock ${each}`}
              label={phrase("page-prepare-stock", { name: said(each) })}
              hint={phrase("page-prepare-stock-empty")}
              value={stocks[each] ?? ""}
              change={(text) => stock((old) => ({ ...old, [each]: text }))}
            />
          ))}
          <button type="button" class="strong" disabled={!sheet} onClick={() => window.print()}>
            {phrase("page-prepare-print")}
          </button>
        </div>
        <p class="field-problem" role="status">
          {why || (sheet ? "" : phrase("page-prepare-computing"))}
        </p>
        <p>
          <a href="/plan">{phrase("page-prepare-to-plan")}</a>
        </p>
      </div>
      {sheet && <PrepareSheet sheet={sheet} lesson_min={lesson_min} />}
      {!staff && (
        <section class="settings-part not-printed">
          <p>{phrase("page-prepare-secret")}</p>
          <StaffSignIn session={session} />
        </section>
      )}
    </>
  );
}

function PreparePage() {
  const session = useSession();
  const { known, silent } = usePlans(session);
  useEffect(() => document.body.classList.add("prints-preparation"), []);
  return (
    <Frame here="/prepare">
      {silent && <p class="connecting">{phrase("page-prepare-no-answer")}</p>}
      {known && <Preparing key={known.staff ? "staff" : "all"} {...known} session={session} />}
    </Frame>
  );
}

// The sheet of a preparation: for the screen and for paper.

function Part({ section }: { section: Section }) {
  const { head, steps, lines, labels } = section;
  return (
    <section class="sheet-part">
      <h3>{capital(said(head))}</h3>
      {steps.length > 0 && (
        <ol>
          {steps.map((step) => (
            <li key={step}>{said(step)}</li>
          ))}
        </ol>
      )}
      {lines.length > 0 && (
        <ul class="cautions">
          {lines.map((line) => (
            <li key={line}>{said(line)}</li>
          ))}
        </ul>
      )}
      {labels.length > 0 && (
        <div class="sheet-labels">
          {labels.map((label) => (
            <div key={label.of}>
              <h4>{said(label.of)}</h4>
              <HazardLabel label={label} />
            </div>
          ))}
        </div>
      )}
    </section>
  );
}

function Timetable({ lesson }: { lesson: Lesson }) {
  return (
    <section class="sheet-part">
      <h3>{said(lesson.head)}</h3>
      <table class="timetable">
        <tbody>
          {lesson.parts.map(({ part, minutes }) => (
            <tr key={part}>
              <th scope="row">{said(part)}</th>
              <td>{rounded(minutes, 0)} min</td>
            </tr>
          ))}
        </tbody>
      </table>
      <p>{said(lesson.left)}</p>
    </section>
  );
}

function BottleLabel({ bottle }: { bottle: Bottle }) {
  const { name, formula, concentration_mol_dm3, label, store } = bottle;
  return (
    <div class="bottle-label">
      <p>
        <b>{capital(said(name))}</b> {lowered(formula)}
      </p>
      <p>{concentration_mol_dm3 === null ? said({ id: "label-to-find", text: "concentration to be found" }) : phrase("page-prepare-strength", { concentration: short(concentration_mol_dm3, 4) })}</p>
      {store && <p>{said({ id: "label-staff-only", text: "Store bottle, for staff only" })}</p>}
      <HazardLabel label={label} />
      <p class="made">{said({ id: "label-made-on", text: "Made on: ________ by: ________" })}</p>
    </div>
  );
}

/** Every label as often as it is wanted on paper; on the screen one of each with how often. */
function Labels({ bottles }: { bottles: readonly Bottle[] }) {
  if (bottles.length === 0) return null;
  return (
    <section class="bottle-labels">
      <h3>{phrase("page-prepare-labels")}</h3>
      <p class="not-printed">{phrase("page-prepare-labels-why")}</p>
      {bottles.map((bottle) => (
        <div class="bottle-kind" key={`${bottle.name} ${bottle.store}`}>
          <p class="not-printed">{phrase("page-prepare-count", { count: bottle.count })}</p>
          {Array.from({ length: bottle.count }, (_, index) => (
            <BottleLabel key={index} bottle={bottle} />
          ))}
        </div>
      ))}
    </section>
  );
}

function PrepareSheet({ sheet, lesson_min }: { sheet: Sheet; lesson_min: number }) {
  return (
    <article class="preparation figure">
      <h2>{phrase("page-prepare-title", { practical: said(sheet.practical), benches: sheet.benches })}</h2>
      <p class="sheet-first">{said(sheet.first)}</p>
      {sheet.sections.map((section) => (
        <Part key={section.head} section={section} />
      ))}
      {sheet.lessons
        .filter(({ minutes }) => minutes === lesson_min)
        .map((lesson) => (
          <Timetable key={lesson.minutes} lesson={lesson} />
        ))}
      <Labels bottles={sheet.bottles} />
    </article>
  );
}

startPage(PreparePage);
