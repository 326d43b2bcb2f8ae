// The quick guide: what is in the cup, what is added, their hazards, how it goes; and how to clear up.

import { keptTogether, short } from "../format";
import { kindOf } from "../kinds";
import type { GuideSubstance, View } from "../live/contract";
import { Hazards } from "../page/hazards";
import { Explained } from "../page/terms";
import { marked, phrase, said } from "../words";
import { Drawing, type Drawn } from "./drawings";

const STEPS = ["fill", "pour", "lid", "stir", "rinse"] as const satisfies readonly Drawn[];

function Substance({ of }: { of: GuideSubstance }) {
  const strength = of.concentration_mol_dm3 === null ? "" : `, ${phrase("page-guide-strength", { concentration: short(of.concentration_mol_dm3, 4) })}`;
  return (
    <li class="substance">
      <p>
        <strong>{said(of.name)}</strong>
        <span>{keptTogether(`${said(of.amount)}${strength}`)}</span>
      </p>
      {of.pictograms.length === 0 && of.hazards.length === 0 ? <p>{phrase("page-guide-no-pictogram")}</p> : <Hazards of={of} />}
      {of.assumed_mol_dm3 !== null && <p class="remark"><Explained text={keptTogether(marked("page-guide-assumed", { concentration: short(of.assumed_mol_dm3, 4) }))} /></p>}
      {of.basis !== "" && (
        <details class="basis">
          <summary>{phrase("page-guide-basis")}</summary>
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
      <h2>{phrase("page-guide-title")}</h2>
      <p class="first">{said(guide.first)}</p>
      <div class="substances">
        <div>
          <h3>{phrase("page-guide-in-cup")}</h3>
          <ul>{guide.in_cup.map((each) => <Substance key={each.name} of={each} />)}</ul>
        </div>
        <div>
          <h3>{phrase("page-guide-added")}</h3>
          <ul>{guide.added.map((each) => <Substance key={each.name} of={each} />)}</ul>
        </div>
      </div>
      <h3>{phrase("page-guide-cautions")}</h3>
      <ul class="cautions">{guide.cautions.map((each) => <li key={each}>{said(each)}</li>)}</ul>
      {kindOf(view.plan).inPortions && (
        <>
          <h3>{phrase("page-guide-how")}</h3>
          <ol class="how">
            {STEPS.filter((step) => step !== "lid" || guide.lid).map((step) => (
              <li key={step}>
                <div class="how-drawing">
                  <Drawing of={step} />
                </div>
                <span>{phrase("page-guide-steps", { which: step })}</span>
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
      <h2>{phrase("page-guide-clearing-up")}</h2>
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
