// The quick guide: what is in the cup, what is added, their hazards, how it goes; and how to clear up.

import type { GuideSubstance, View } from "../contract";
import { keptTogether } from "../format";
import { isOnce } from "../plan";
import { said, words } from "../words";
import { type Drawn, Drawing } from "./drawings";
import { Hazards } from "./hazards";

const STEPS = ["fill", "pour", "lid", "stir", "rinse"] as const satisfies readonly Drawn[];

function Substance({ of }: { of: GuideSubstance }) {
  const strength = of.concentration_mol_dm3 === null ? "" : `, ${words.guide.strength(of.concentration_mol_dm3)}`;
  return (
    <li class="substance">
      <p>
        <strong>{said(of.name)}</strong>
        <span>{keptTogether(`${said(of.amount)}${strength}`)}</span>
      </p>
      {of.pictograms.length === 0 && of.hazards.length === 0 ? <p>{words.guide.noPictogram}</p> : <Hazards of={of} />}
      {of.assumed_mol_dm3 !== null && <p class="remark">{keptTogether(words.guide.assumed(of.assumed_mol_dm3))}</p>}
      {of.basis !== "" && (
        <details class="basis">
          <summary>{words.guide.basis}</summary>
          <p class="remark">{said(of.basis)}</p>
        </details>
      )}
    </li>
  );
}

/** Without a heading where something else names it. */
export function Guide({ view }: { view: View }) {
  const { guide } = view;
  if (!guide) return null;
  return (
    <section class="guide">
      <h2>{words.guide.title}</h2>
      <p class="first">{said(guide.first)}</p>
      <div class="substances">
        <div>
          <h3>{words.guide.inCup}</h3>
          <ul>{guide.in_cup.map((each) => <Substance key={each.name} of={each} />)}</ul>
        </div>
        <div>
          <h3>{words.guide.added}</h3>
          <ul>{guide.added.map((each) => <Substance key={each.name} of={each} />)}</ul>
        </div>
      </div>
      <h3>{words.guide.cautions}</h3>
      <ul class="cautions">{guide.cautions.map((each) => <li key={each}>{said(each)}</li>)}</ul>
      {!isOnce(view) && (
        <>
          <h3>{words.guide.how}</h3>
          <ol class="how">
            {STEPS.map((step) => (
              <li key={step}>
                <div class="how-drawing">
                  <Drawing of={step} />
                </div>
                <span>{words.guide.steps[step]}</span>
              </li>
            ))}
          </ol>
        </>
      )}
    </section>
  );
}

export function ClearingUp({ view }: { view: View }) {
  if (!view.guide) return null;
  return (
    <section class="guide clearing-up">
      <h2>{words.guide.clearingUp}</h2>
      <ol>{view.guide.clearing_up.map((each) => <li key={each}>{said(each)}</li>)}</ol>
    </section>
  );
}

/** The guide as a view of its own. */
export function GuideView({ view }: { view: View }) {
  return (
    <>
      <Guide view={view} />
      <ClearingUp view={view} />
    </>
  );
}
