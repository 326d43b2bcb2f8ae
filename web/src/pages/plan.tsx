// Planning a practical: what is chosen on one side, what the station computes from it on the other.

import { useEffect, useState } from "preact/hooks";
import { Frame, startPage } from "../frame_staff";
import { Choices } from "../parts/plan_choices";
import { problemText } from "../parts/plan_fields";
import { Keep } from "../parts/plan_keep";
import { Hazards, PlanPromise } from "../parts/plan_promise";
import { PlanSource } from "../parts/plan_source";
import { useComputed } from "../parts/plan_computed";
import { usePlans } from "../parts/plan_known";
import { type Session, useSession } from "../parts/signing";
import { type Form, formOf, valuesOf } from "../plan_form";
import { type Plans, keepPlan, planToBegin } from "../planning";
import { planWords as words } from "../words/plan_topic";

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
  const tables = ["acid", "alkali", "portions", "liquid", "addition", "timing"];
  const elsewhere = problems.filter(({ where }) => !hasField(where) && !tables.includes(where.join(".")));
  return (
    <>
      <p>{words().intro}</p>
      <div class="planning">
        <div class="plan-choices">
          <PlanSource plans={plans} fill={(chosen) => fill((old) => formOf(chosen, old))} />
          {elsewhere.map(({ where, text }) => (
            <p class="field-problem" key={where.join(".")}>
              {words().elsewhere} {where.join(".")} {problemText(text)}
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
      {silent && <p class="connecting">{words().noAnswer}</p>}
      {known && <Planning key={known.staff ? "staff" : "all"} {...known} session={session} />}
    </Frame>
  );
}

startPage(PlanPage);
