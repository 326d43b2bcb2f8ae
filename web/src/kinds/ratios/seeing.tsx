// What there is to see of mixing ratios: the rises, the own lines, the ratio by both methods.

import { useRef, useState } from "preact/hooks";
import { After, isOver, mayRead } from "../../bench/curves";
import { Answer, Compared, MethodCard, RemarkLine, Remarks, Waiting } from "../../bench/results";
import { keptTogether, rounded, signed } from "../../format";
import { later } from "../../page/shared";
import { cm3Places, kilojoulePlaces, plusMinus } from "../../phrases/quantities";
import { marked, phrase, said } from "../../words";
import type { SeeingProps } from "../seeing";
import { RisesFigure, RisesTable, axisNames } from "./drawing";
import { type Found, type RatiosView, ratioText } from "./view";

const OwnLines = later(async () => (await import("../../bench/own/own_lines")).OwnLines);

/** Handles of the own lines stand at tenths of the axis. */
const STEPS = 10;

export function Seeing({ view, acting }: SeeingProps<RatiosView>) {
  const [again, setAgain] = useState(false);
  const heading = useRef<HTMLHeadingElement>(null);
  const placing = mayRead(view) && (view.own_reading === null || again);
  const { results, state, plan } = view;
  // The form is gone with its button: go on reading where its place was.
  const done = () => {
    setAgain(false);
    heading.current?.focus();
  };
  return (
    <>
      {results.shown && isOver(view) && <Answer view={view} />}
      <section class={`figure${state === "done" ? " figure-large" : ""}`} data-testid="curve">
        <h2 ref={heading} tabIndex={-1}>{placing ? phrase("page-own-lines-title") : phrase("page-ratios-chart")}</h2>
        <div class="room-chart">
          {placing ? (
            <OwnLines view={view} acting={acting} steps={{ step_cm3: plan.mixtures.total_cm3 / STEPS, count: STEPS }} names={axisNames()} done={done} />
          ) : (
            <RisesFigure view={view} width={null} large={state === "done"} />
          )}
        </div>
        {results.shown ? <RatioWords view={view} over={isOver(view)} /> : !placing && <Waiting view={view} change={mayRead(view) ? () => setAgain(true) : null} />}
      </section>
      <RisesTable view={view} />
      <After view={view} />
    </>
  );
}

function inWords({ alkali_per_acid, u_alkali_per_acid: u, interval_95_ratio: [low, high] }: Found) {
  return {
    number: phrase("page-ratios-ratio", { ratio: ratioText(alkali_per_acid, u) }),
    interval: phrase("page-ratios-interval", { low: ratioText(low, u), high: ratioText(high, u) }),
    plusMinus: marked("page-ratios-plus-minus", { u: ratioText(u, u) }),
  };
}

function Worked({ found }: { found: Found }) {
  const { end_point_cm3, u_end_point_cm3: u_cm3, enthalpy_kj_mol: enthalpy, u_enthalpy_kj_mol: u, enthalpy_of: of } = found;
  const places = cm3Places(u_cm3);
  return (
    <dl class="worked">
      <dt>{phrase("page-ratios-crossing")}</dt>
      <dd>
        <b>{keptTogether(phrase("page-end-point", { volume: rounded(end_point_cm3, places) }))}</b> <span>± {plusMinus(u_cm3, places)}</span>
      </dd>
      {enthalpy !== null && u !== null && of !== null && (
        <>
          <dt>{phrase("page-enthalpy-of", { what: said(of) })}</dt>
          <dd>
            <b class="enthalpy">{keptTogether(phrase("page-enthalpy", { enthalpy: signed(enthalpy, kilojoulePlaces(u)) }))}</b>{" "}
            <span>{keptTogether(phrase("page-enthalpy-plus-minus", { u: plusMinus(u, kilojoulePlaces(u)) }))}</span>
          </dd>
        </>
      )}
    </dl>
  );
}

/** `over` tells whether a mixture has just ended; only then are refusals and remarks of a method news. */
function RatioWords({ view, over }: { view: RatiosView; over: boolean }) {
  const { result } = view;
  if (!result) return over ? <p class="remark">{phrase("page-own-lines-computing")}</p> : null;
  const { straight_lines: lines, heat_balance: heat, refused } = result;
  return (
    <>
      <div class="results">
        {lines && (
          <MethodCard name={phrase("page-ratios-by-lines")} method="lines" {...inWords(lines)} brief={!over}>
            <Worked found={lines} />
            <RemarkLine text={phrase("page-ratios-scatter-only")} />
          </MethodCard>
        )}
        {heat && (
          <MethodCard name={marked("page-ratios-by-heat")} method="heat" {...inWords(heat)} brief={!over}>
            <Worked found={heat} />
            <RemarkLine text={heat.describes_trace === false ? phrase("page-not-described") : phrase("page-heat-once-knows")} />
          </MethodCard>
        )}
        {over && !lines && refused.straight_lines && <RemarkLine text={phrase("page-refused", { reason: said(refused.straight_lines) })} />}
        {over && !heat && refused.heat_balance && <RemarkLine text={phrase("page-refused-heat", { reason: said(refused.heat_balance) })} />}
      </div>
      {view.state === "done" && <Compared view={view} />}
      <Remarks view={view} result={result} repeats={view.repeats} />
    </>
  );
}
