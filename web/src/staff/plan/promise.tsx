// What a plan promises: numbers, curve, how well each method will know, warnings.

import { parts as forms } from "@kinds/form";
import { useState } from "preact/hooks";
import { rounded, short } from "../../format";
import { eitherOf } from "../../phrases/plan";
import { capital } from "../../phrases/quantities";
import { phrase, said } from "../../words";
import type { Hazardous, PlanChecked, Promised as PromisedPlan, Warning } from "../contract";
import { HazardLabel } from "./fields";
import { Number } from "./promised";

function Warnings({ warnings }: { warnings: readonly Warning[] }) {
  if (warnings.length === 0) return null;
  return (
    <div class="plan-warnings">
      <h3>{phrase("page-plan-warnings")}</h3>
      <ul class="cautions">
        {warnings.map(({ text }) => (
          <li key={text}>{said(text)}</li>
        ))}
      </ul>
    </div>
  );
}

function Minutes({ minutes, left_min }: { minutes: Record<string, number>; left_min: Record<string, number> }) {
  const total = minutes.total ?? 0;
  const lessons = Object.keys(left_min);
  const fit = lessons.filter((lesson) => (left_min[lesson] ?? 0) >= 0);
  const long = lessons.filter((lesson) => !fit.includes(lesson));
  const told = [...(fit.length > 0 ? [phrase("page-plan-fits", { lessons: eitherOf(fit) })] : []), ...(long.length > 0 ? [phrase("page-plan-too-long", { lessons: eitherOf(long) })] : [])];
  return (
    <dl class="promise-numbers">
      <Number name={phrase("page-plan-at-bench")} value={phrase("page-plan-minutes", { total: rounded(total, 0) })} more={told.join("; ")} />
    </dl>
  );
}

export function Hazards({ hazards }: { hazards: readonly Hazardous[] }) {
  return (
    <section class="figure plan-hazards">
      <h2>{phrase("page-plan-hazards")}</h2>
      <p>{phrase("page-plan-hazards-first")}</p>
      <div class="substances">
        {hazards.map((each) => (
          <div class="substance" key={`${each.name} ${each.mass_g}`}>
            <h3>
              {capital(said(each.name))}{" "}
              <small>{each.mass_g === null ? phrase("page-plan-strength", { concentration: short(each.concentration_mol_dm3 ?? 0, 4) }) : phrase("page-plan-grams", { mass: short(each.mass_g, 3) })}</small>
            </h3>
            <HazardLabel label={each.label} />
            {each.near_edge && <p class="remark">{phrase("page-plan-near-edge")}</p>}
            {each.assumed && <p class="remark">{phrase("page-plan-taken-as", { concentration: short(each.concentration_mol_dm3 ?? 0, 4) })}</p>}
          </div>
        ))}
      </div>
    </section>
  );
}

interface PlanPromiseProps {
  checked: PlanChecked | null;
  promise: PromisedPlan | null;
  /** Whether a newer one is being computed. */
  busy: boolean;
  refused: string;
  compare: () => Promise<boolean>;
}

export function PlanPromise({ checked, promise, busy, refused, compare }: PlanPromiseProps) {
  const [, redraw] = useState(0);
  const ask = async () => {
    const there = await compare();
    redraw((count) => count + 1);
    return there;
  };
  const bad = checked !== null && checked.problems.length > 0;
  const shown = bad ? null : promise;
  const Promised = shown && forms[shown.kind].Promised;
  return (
    <section class={`figure plan-promise${busy ? " is-computing" : ""}`}>
      <h2>{phrase("page-plan-promise")}</h2>
      <p class="plan-busy" role="status">
        {bad ? phrase("page-plan-mend") : refused || (busy ? phrase("page-plan-computing") : "")}
      </p>
      {!bad && <Warnings warnings={(busy ? checked : (shown ?? checked))?.warnings ?? []} />}
      {!bad && checked?.minutes && <Minutes minutes={checked.minutes} left_min={checked.left_min ?? {}} />}
      {shown?.refused.curve && <p>{said(shown.refused.curve)}</p>}
      {shown && Promised && <Promised promise={shown} plan={checked?.plan ?? {}} compare={ask} />}
      {shown && (
        <details class="basis">
          <summary>{phrase("page-plan-assumed")}</summary>
          <ul class="cautions">
            {shown.assumed.map((line) => (
              <li key={line}>{said(line)}</li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}
