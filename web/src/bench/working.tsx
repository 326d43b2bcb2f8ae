// How a result comes about: the steps of the calculation, and the students' own judgement beside the station's.

import { parts as details } from "@kinds/details";
import { useState } from "preact/hooks";
import { fixed, keptTogether, signed } from "../format";
import type { View } from "../live/contract";
import type { Accepted, Judgement, Result, Steps, WorkedStep } from "../live/results";
import { TableFrame } from "../page/shared";
import { Explained } from "../page/terms";
import { worked } from "../phrases/steps";
import { dress, marked, phrase, said } from "../words";

// Every number opens into the line that made it; the accepted value beside it; questions for the evaluation.

const QUESTIONS = [0, 1, 2, 3, 4];

interface StepsProps {
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
      {set && <p class="remark">{phrase("page-steps-opens")} {phrase("page-steps-unrounded")}</p>}
      {all.length > 1 && (
        <div class="choice" role="group" aria-label={phrase("page-steps-whose")}>
          {all.map(({ repeat }) => (
            <button key={repeat} type="button" class="plain" aria-pressed={repeat === set?.repeat} onClick={() => choose(repeat)}>
              {repeat === null ? phrase("page-steps-of-mean") : phrase("page-repeat-name", { repeat })}
            </button>
          ))}
        </div>
      )}
      <div class="steps-sides">
        <Lines name={phrase("page-steps-by-lines")} lines={set?.steps.straight_lines} />
        <Lines name={marked("page-steps-by-heat")} lines={set?.steps.heat_balance} />
      </div>
      {result.accepted && <AcceptedValue accepted={result.accepted} result={result} />}
      <h4>{phrase("page-steps-think")}</h4>
      <ul class="think">
        {QUESTIONS.map((number) => (
          <li key={number}>{details[view.plan.kind].question(number)}</li>
        ))}
      </ul>
    </div>
  );
}

function Lines({ name, lines }: { name: string; lines: readonly WorkedStep[] | undefined }) {
  if (!lines || lines.length === 0) return null;
  return (
    <div class="steps-side">
      <h4><Explained text={name} /></h4>
      {lines.map((step) => (
        <Line key={step.text} step={step} />
      ))}
    </div>
  );
}

/** The station's symbols with a true minus sign. */
export function symbols(text: string): string {
  return said(text).replace(/(^|[\s(=])-(?=[\s\d(a-zA-Z])/g, "$1\u2212");
}

function Line({ step: { text, formula, working, value, u, unit } }: { step: WorkedStep }) {
  const told = keptTogether(dress(worked(value, u, unit)));
  return (
    <details class="step">
      <summary>
        <span>{said(text)}</span> <b>{told}</b>
      </summary>
      <p class="formula">{symbols(formula)}</p>
      <p class="working">{symbols(working)}</p>
      <p class="working">= {told}</p>
    </details>
  );
}

function AcceptedValue({ accepted: { enthalpy_kj_mol, u, text, source }, result }: { accepted: Accepted; result: Result }) {
  const { enthalpy_kj_mol: own = null, u_enthalpy_kj_mol: u_own = null } = result.heat_balance ?? {};
  return (
    <div class="accepted">
      <h4>{phrase("page-steps-accepted")}</h4>
      <p class="accepted-value"><Explained text={keptTogether(marked("page-steps-accepted-value", { enthalpy: signed(enthalpy_kj_mol, 1), u: fixed(u, 1) }))} /></p>
      {own !== null && u_own !== null && <p class="accepted-own">{keptTogether(phrase("page-steps-yours", { enthalpy: worked(own, u_own, "kJ/mol") }))}</p>}
      <p>{symbols(text)}</p>
      <p class="remark">{phrase("page-steps-source", { source })}</p>
    </div>
  );
}

// What the students decided by themselves, what the station would have said, and what the difference cost.

interface JudgementProps {
  judgement: Judgement;
}

type Portion = Judgement["repeats"][number]["portions"][number];

function Value({ value, write }: { value: number | null; write: (value: number) => string }) {
  if (value !== null) return <td>{write(value)}</td>;
  return (
    <td>
      <span aria-hidden="true">{phrase("page-missing")}</span>
      <span class="unseen">{phrase("page-no-reading")}</span>
    </td>
  );
}

function Row({ one }: { one: Portion }) {
  return (
    <tr>
      <th scope="row">{one.portion === 0 ? phrase("page-steps-start") : one.portion}</th>
      <Value value={one.own_s} write={(value) => dress(fixed(value, 0))} />
      <Value value={one.own_c} write={(value) => dress(fixed(value, 2))} />
      <Value value={one.station_s} write={(value) => dress(fixed(value, 0))} />
      <Value value={one.station_c} write={(value) => dress(fixed(value, 2))} />
    </tr>
  );
}

function Cost({ judgement: { own, station } }: JudgementProps) {
  return (
    <table class="cost">
      <caption>{phrase("page-steps-cost")}</caption>
      <thead>
        <tr>
          <td />
          <th scope="col">{phrase("page-steps-by-you")}</th>
          <th scope="col">{phrase("page-steps-by-station")}</th>
        </tr>
      </thead>
      <tbody>
        <tr>
          <th scope="row">{phrase("page-steps-time")}</th>
          <Value value={own.minutes} write={(value) => phrase("page-steps-minutes", { minutes: fixed(value, 1) })} />
          <Value value={station.minutes} write={(value) => phrase("page-steps-minutes", { minutes: fixed(value, 1) })} />
        </tr>
        {(own.end_point_cm3 !== null || station.end_point_cm3 !== null) && (
          <tr>
            <th scope="row">{phrase("page-steps-end-point")}</th>
            <Value value={own.end_point_cm3} write={(value) => phrase("page-steps-volume", { volume: fixed(value, 1) })} />
            <Value value={station.end_point_cm3} write={(value) => phrase("page-steps-volume", { volume: fixed(value, 1) })} />
          </tr>
        )}
      </tbody>
    </table>
  );
}

export function JudgementPart({ judgement }: JudgementProps) {
  const { repeats, words: told } = judgement;
  return (
    <div class="judgement">
      <h2>{phrase("page-steps-judgement")}</h2>
      <ul class="judgement-words">
        {told.map(said).map((text) => (
          <li key={text}>{text}</li>
        ))}
      </ul>
      <TableFrame name={phrase("page-steps-cost")}>
        <Cost judgement={judgement} />
      </TableFrame>
      {repeats.map(({ repeat, portions }) => (
        <TableFrame key={repeat} name={phrase("page-steps-repeat-title", { repeat })}>
          <table>
            <caption>{phrase("page-steps-repeat-title", { repeat })}</caption>
            <thead>
              <tr>
                <th scope="col">{phrase("page-steps-portion")}</th>
                <th scope="col">{phrase("page-steps-own-waited")}</th>
                <th scope="col">{phrase("page-steps-own-read")}</th>
                <th scope="col">{phrase("page-steps-station-waited")}</th>
                <th scope="col">{phrase("page-steps-station-read")}</th>
              </tr>
            </thead>
            <tbody>
              {portions.map((one) => (
                <Row key={one.portion} one={one} />
              ))}
            </tbody>
          </table>
        </TableFrame>
      ))}
    </div>
  );
}
