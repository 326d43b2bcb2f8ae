// Every number opens into the line that made it; the accepted value beside it; questions for the evaluation.

import { useState } from "preact/hooks";
import type { View } from "../contract";
import { keptTogether } from "../format";
import { isOnce } from "../plan";
import type { Accepted, Result, Steps, WorkedStep } from "../results";
import { said, words } from "../words";

export interface StepsProps {
  view: View;
  result: Result;
}

/** Steps of the mean and of every repeat that has some; null is the mean. */
function sets(result: Result): { repeat: number | null; steps: Steps }[] {
  const some = (steps: Steps | undefined): steps is Steps =>
    Boolean(steps?.straight_lines?.length || steps?.heat_balance?.length);
  const repeats = (result.repeats ?? []).flatMap(({ repeat, steps }) => (some(steps) ? [{ repeat, steps }] : []));
  return [...(some(result.steps) ? [{ repeat: null, steps: result.steps }] : []), ...repeats];
}

export function StepsPart({ view, result }: StepsProps) {
  const [chosen, choose] = useState<number | null | undefined>(undefined);
  const all = sets(result);
  const set = all.find(({ repeat }) => repeat === chosen) ?? all[0];
  return (
    <div class="steps">
      {set && <p class="remark">{words.steps.opens}</p>}
      {all.length > 1 && (
        <div class="choice" role="group" aria-label={words.steps.whose}>
          {all.map(({ repeat }) => (
            <button key={repeat} type="button" class="plain" aria-pressed={repeat === set?.repeat} onClick={() => choose(repeat)}>
              {repeat === null ? words.steps.ofMean : words.repeatName(repeat)}
            </button>
          ))}
        </div>
      )}
      <div class="steps-sides">
        <Lines name={words.steps.byLines} lines={set?.steps.straight_lines} />
        <Lines name={words.steps.byHeat} lines={set?.steps.heat_balance} />
      </div>
      {result.accepted && <AcceptedValue accepted={result.accepted} result={result} />}
      <h4>{words.steps.think}</h4>
      <ul class="think">
        {(isOnce(view) ? words.steps.questionsOnce : words.steps.questions).map((question) => (
          <li key={question}>{question}</li>
        ))}
      </ul>
    </div>
  );
}

function Lines({ name, lines }: { name: string; lines: readonly WorkedStep[] | undefined }) {
  if (!lines || lines.length === 0) return null;
  return (
    <div class="steps-side">
      <h4>{name}</h4>
      {lines.map((step) => (
        <Line key={step.text} step={step} />
      ))}
    </div>
  );
}

/** The station's symbols with a true minus sign. */
function symbols(text: string): string {
  return said(text).replace(/(^|[\s(=])-(?=[\s\d(a-zA-Z])/g, "$1\u2212");
}

function Line({ step: { text, formula, working, value, u, unit } }: { step: WorkedStep }) {
  const worked = keptTogether(words.steps.worked(value, u, unit));
  return (
    <details class="step">
      <summary>
        <span>{said(text)}</span> <b>{worked}</b>
      </summary>
      <p class="formula">{symbols(formula)}</p>
      <p class="working">{symbols(working)}</p>
      <p class="working">= {worked}</p>
    </details>
  );
}

function AcceptedValue({ accepted: { enthalpy_kj_mol, u, text, source }, result }: { accepted: Accepted; result: Result }) {
  const { enthalpy_kj_mol: own = null, u_enthalpy_kj_mol: u_own = null } = result.heat_balance ?? {};
  return (
    <div class="accepted">
      <h4>{words.steps.accepted}</h4>
      <p class="accepted-value">{keptTogether(words.steps.acceptedValue(enthalpy_kj_mol, u))}</p>
      {own !== null && u_own !== null && <p class="accepted-own">{keptTogether(words.steps.yours(own, u_own))}</p>}
      <p>{symbols(text)}</p>
      <p class="remark">{words.steps.source(source)}</p>
    </div>
  );
}
