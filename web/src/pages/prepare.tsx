// Preparing a class's practical: which plan, how many benches, and the sheet to print.

import { useEffect, useRef, useState } from "preact/hooks";
import { Frame, startPage } from "../frame_staff";
import { ChoiceOf, type Option } from "../parts/plan_fields";
import { usePlans } from "../parts/plan_known";
import { PrepareSheet, prepareWords as words } from "../parts/prepare_sheet";
import { type Session, useSession } from "../parts/signing";
import { StaffSignIn } from "../parts/staff_sign_in";
import { type Values, formOf, valuesOf } from "../plan_form";
import { type Plans, compute, planToBegin } from "../planning";
import type { Sheet } from "../preparing";
import { said } from "../words";
import { typedNumber } from "../typed";

const PAUSE_MS = 250;
const BENCHES = "8";
const LESSONS_MIN = [50, 60] as const;

const plain = (plan: Values) => valuesOf(formOf(plan));

/** Where the plan may come from: this tab's planning page first, then the bench, then what ships. */
function sources(plans: Plans, staff: boolean): readonly { name: string; text: string; plan: Values }[] {
  const begun = planToBegin(plans, staff);
  const tab = begun === plans.bench ? [] : [{ name: "tab", text: words().tabPlan, plan: begun }];
  const ready = plans.ready.map(({ name, plan }) => ({ name, text: said(typeof plan.title === "string" ? plan.title : name), plan }));
  return [...tab, { name: "bench", text: words().benchPlan, plan: plans.bench }, ...ready];
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
      say(answer.found ? "" : said(answer.words ?? "") || words().noAnswer);
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
        <p>{words().intro}</p>
        <div class="plan-part">
          <ChoiceOf path="source" label={words().plan} value={name} options={all.map((each): Option => [each.name, each.text])} choose={choose} />
          <NumberField id="benches" label={words().benches} value={benches} change={type} />
          <ChoiceOf
            path="lesson"
            label={words().lesson}
            value={String(lesson_min)}
            options={LESSONS_MIN.map((each): Option => [String(each), words().minutes(each)])}
            choose={(chosen) => last(Number(chosen))}
          />
          {sheet?.from_stock.map((each) => (
            <NumberField
              key={each}
              id={`stock ${each}`}
              label={words().stock(said(each))}
              hint={words().stockEmpty}
              value={stocks[each] ?? ""}
              change={(text) => stock((old) => ({ ...old, [each]: text }))}
            />
          ))}
          <button type="button" class="strong" disabled={!sheet} onClick={() => window.print()}>
            {words().print}
          </button>
        </div>
        <p class="field-problem" role="status">
          {why || (sheet ? "" : words().computing)}
        </p>
        <p>
          <a href="/plan">{words().toPlan}</a>
        </p>
      </div>
      {sheet && <PrepareSheet sheet={sheet} lesson_min={lesson_min} />}
      {!staff && (
        <section class="settings-part not-printed">
          <p>{words().secret}</p>
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
      {silent && <p class="connecting">{words().noAnswer}</p>}
      {known && <Preparing key={known.staff ? "staff" : "all"} {...known} session={session} />}
    </Frame>
  );
}

startPage(PreparePage);
