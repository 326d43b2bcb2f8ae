// Planning a practical: what is chosen on one side, what the station computes from it on the other.

import { parts as details } from "@kinds/details";
import { useEffect, useState } from "preact/hooks";
import { CODES } from "../../kinds";
import { type Session, useSession } from "../../live/session";
import { textOf } from "../../page/forms";
import { phrase, said } from "../../words";
import type { PlanChecked, Plans } from "../contract";
import { Frame, startPage } from "../frame";
import { Choices } from "./choices";
import { compute, keepPlan, planToBegin, useComputed, usePlans } from "./computed";
import { problemText } from "./fields";
import { type Form, type Values, formOf, valuesOf, without } from "./form";
import { Keep } from "./keep";
import { Hazards, PlanPromise } from "./promise";

/** What stands beside a field already. */
const hasField = (where: readonly string[]) => where.length > 0 && document.getElementById(where.join(".")) !== null;

function Planning({ plans, staff, session }: { plans: Plans; staff: boolean; session: Session }) {
  const [form, fill] = useState<Form>(() => formOf(planToBegin(plans, staff)));
  const values = valuesOf(form);
  const { checked, promise, busy, refused, compare } = useComputed(values, staff);
  useEffect(() => keepPlan(values, staff), [JSON.stringify(values), staff]);
  const problems = checked?.problems ?? [];
  const change = (part: Partial<Form>) => fill((old) => ({ ...old, ...part }));
  const set = (path: string, text: string) => fill((old) => ({ ...old, fields: { ...old.fields, [path]: text } }));
  const tables = CODES.flatMap((code) => [...details[code].tables, ...details[code].otherTables]);
  const elsewhere = problems.filter(({ where }) => !hasField(where) && !tables.includes(where.join(".")));
  return (
    <>
      <p>{phrase("page-plan-intro")}</p>
      <div class="planning">
        <div class="plan-choices">
          <PlanSource plans={plans} fill={(chosen) => fill((old) => formOf(chosen, old))} />
          {elsewhere.map(({ where, text }) => (
            <p class="field-problem" key={where.join(".")}>
              {phrase("page-plan-elsewhere")} {where.join(".")} {problemText(text)}
            </p>
          ))}
          <Choices form={form} problems={problems} set={set} plans={plans} staff={staff} change={change} />
        </div>
        <div class="plan-outcome">
          <PlanPromise checked={checked} promise={promise} busy={busy} refused={refused} compare={compare} />
          {checked?.hazards && <Hazards hazards={checked.hazards} />}
          <Keep checked={checked} session={session} />
        </div>
      </div>
    </>
  );
}

function PlanPage() {
  const session = useSession();
  const { known, silent } = usePlans(session);
  return (
    <Frame here="/plan">
      {silent && <p class="connecting">{phrase("page-plan-no-answer")}</p>}
      {known && <Planning key={known.staff ? "staff" : "all"} {...known} session={session} />}
    </Frame>
  );
}

// Where a plan starts from: this bench's, one that ships, or a file.

/** The station takes a body of 16 KiB; a plan has hundreds of letters. */
const LONGEST_PLAN = 12_000;

const titleOf = (plan: Values, name: string) => (typeof plan.title === "string" ? plan.title : name);

function PlanSource({ plans, fill }: { plans: Plans; fill: (values: Values) => void }) {
  const [told, tell] = useState("");
  const choose = (name: string) => {
    const ready = plans.ready.find((each) => each.name === name);
    if (name === "bench") fill(plans.bench);
    else if (ready) fill({ ...ready.plan, title: said(titleOf(ready.plan, name)) });
    tell("");
  };
  const pick = async (input: HTMLInputElement) => {
    const file = input.files?.[0];
    if (!file) return;
    const text = file.size > LONGEST_PLAN ? null : await textOf(file).catch(() => null);
    input.value = "";
    const answer = text === null ? null : await compute<PlanChecked>("/api/plan", { plan_toml: text });
    if (!answer?.found) {
      tell(said(answer?.words ?? "") || phrase("page-plan-no-file"));
      return;
    }
    const unknown = answer.found.problems.filter((each) => each.unknown).map(({ where }) => where);
    fill(answer.found.plan ?? without(answer.found.values, unknown));
    tell(unknown.length === 0 ? phrase("page-plan-opened") : phrase("page-plan-opened-without", { keys: unknown.map((where) => where.join(".")).join(", ") }));
  };
  return (
    <div class="plan-source">
      <label>
        {phrase("page-plan-start-from")}
        <select value="" onChange={(event) => choose(event.currentTarget.value)}>
          <option value="">{phrase("page-plan-as-chosen")}</option>
          <option value="bench">{phrase("page-plan-bench-plan")}</option>
          {plans.ready.map(({ name, plan }) => (
            <option key={name} value={name}>
              {said(titleOf(plan, name))}
            </option>
          ))}
        </select>
      </label>
      <label>
        {phrase("page-plan-open-file")}
        <input type="file" accept=".toml,text/plain" onChange={(event) => void pick(event.currentTarget)} />
      </label>
      <p class="told" role="status">
        {told}
      </p>
    </div>
  );
}

startPage(PlanPage);
