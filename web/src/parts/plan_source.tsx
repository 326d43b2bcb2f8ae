// Where a plan starts from: this bench's, one that ships, or a file.

import { useState } from "preact/hooks";
import { type Values, without } from "../plan_form";
import { type Checked, type Plans, compute } from "../planning";
import { textOf } from "../text_of";
import { said } from "../words";
import { planWords as words } from "../words/plan_topic";

/** The station takes a body of 16 KiB; a plan has hundreds of letters. */
const LONGEST_PLAN = 12_000;

const titleOf = (plan: Values, name: string) => (typeof plan.title === "string" ? plan.title : name);

export function PlanSource({ plans, fill }: { plans: Plans; fill: (values: Values) => void }) {
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
    const answer = text === null ? null : await compute<Checked>("/api/plan", { plan_toml: text });
    if (!answer?.found) {
      tell(said(answer?.words ?? "") || words().noFile);
      return;
    }
    const unknown = answer.found.problems.filter((each) => each.unknown).map(({ where }) => where);
    fill(answer.found.plan ?? without(answer.found.values, unknown));
    tell(unknown.length === 0 ? words().opened : words().openedWithout(unknown.map((where) => where.join(".")).join(", ")));
  };
  return (
    <div class="plan-source">
      <label>
        {words().startFrom}
        <select value="" onChange={(event) => choose(event.currentTarget.value)}>
          <option value="">{words().asChosen}</option>
          <option value="bench">{words().benchPlan}</option>
          {plans.ready.map(({ name, plan }) => (
            <option key={name} value={name}>
              {said(titleOf(plan, name))}
            </option>
          ))}
        </select>
      </label>
      <label>
        {words().openFile}
        <input type="file" accept=".toml,text/plain" onChange={(event) => void pick(event.currentTarget)} />
      </label>
      <p class="told" role="status">
        {told}
      </p>
    </div>
  );
}
