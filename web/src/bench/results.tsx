// Results of both methods, and what they wait for; their comparison and remarks on them are parts of their own.

import type { ComponentChildren } from "preact";
import { keptTogether, rounded, short, signed } from "../format";
import type { OwnReading, Repeat, View } from "../live/contract";
import type { EndPoint, PortionsResult } from "../live/results";
import { laterStill } from "../page/shared";
import { Explained } from "../page/terms";
import { cm3Places, plusMinus } from "../phrases/quantities";
import { committedNothingText } from "../phrases/reasons";
import { intervalText, scatterText } from "../phrases/results";
import { keyed, marked, phrase, said } from "../words";
import { reasonInWords } from "./names";

// What is drawn only once a practical is over comes later.

export const Answer = laterStill(async () => (await import("./answer")).Answer);
export const Remarks = laterStill(async () => (await import("./remarks")).Remarks);
export const Compared = laterStill(async () => (await import("./compared")).Compared);

// The end-point by each method, with its uncertainty; or why it cannot be read.

function inWords(value: EndPoint) {
  const u_cm3 = value.u_end_point_cm3;
  return {
    number: phrase("page-end-point", { volume: rounded(value.end_point_cm3, cm3Places(u_cm3)) }),
    interval: intervalText(value.interval_95_cm3, u_cm3),
    plusMinus: marked("page-plus-minus", { u: plusMinus(u_cm3, cm3Places(u_cm3)) }),
  };
}

interface ResultWordsProps {
  view: View;
  result: PortionsResult | null;
  repeats: readonly Repeat[];
  /** Whether a repeat has just ended; only then are refusals and remarks of a method news. */
  over: boolean;
}

export function ResultWords({ view, result, repeats, over }: ResultWordsProps) {
  if (!result) return over ? <p class="remark">{phrase("page-own-lines-computing")}</p> : null;
  const { straight_lines: lines, heat_balance: heat, refused } = result;
  return (
    <>
      <div class="results">
        {lines && (
          <MethodCard name={marked("page-by-straight-lines")} method="lines" {...inWords(lines)} brief={!over}>
            <RemarkLine text={scatterText(lines.predicted_bias_cm3 ?? null)} />
          </MethodCard>
        )}
        {heat && (
          <MethodCard name={marked("page-by-heat-balance")} method="heat" {...inWords(heat)} brief={!over}>
            <RemarkLine text={heat.describes_trace ? phrase("page-heat-balance-knows") : phrase("page-not-described")} />
          </MethodCard>
        )}
        {over && !lines && refused.straight_lines && <RemarkLine text={phrase("page-refused", { reason: said(refused.straight_lines) })} />}
        {over && !heat && refused.heat_balance && <RemarkLine text={phrase("page-refused-heat", { reason: said(refused.heat_balance) })} />}
      </div>
      <Remarks view={view} result={result} repeats={repeats} />
    </>
  );
}

// One method's card: its name, its number, its interval, and what stands beside it.

interface MethodCardProps {
  name: string;
  method: "lines" | "heat";
  number: string;
  interval: string;
  plusMinus: string;
  /** While a repeat runs: the number and its interval, nothing that pushes the curve off the screen. */
  brief: boolean;
  children: ComponentChildren;
}

export function MethodCard({ name, method, number, interval, plusMinus, brief, children }: MethodCardProps) {
  return (
    <div class={`result result-${method}${brief ? " result-brief" : ""}`}>
      <h3><Explained text={name} /></h3>
      <p class="end-point">{keptTogether(number)}</p>
      <p class="interval">
        {keptTogether(interval)}
      </p>
      {!brief && (
        <details class="more-about">
          <summary>{phrase("page-more-about")}</summary>
          <p class="plus-minus"><Explained text={keptTogether(plusMinus)} /></p>
        </details>
      )}
      {!brief && children}
    </div>
  );
}

export function RemarkLine({ text }: { text: string }) {
  return <p class="remark">{keptTogether(text)}</p>;
}

// Results that are not shown yet: what they wait for, and what the students have read themselves.

export function ownInWords({ end_point_cm3, change_c, reason = null }: OwnReading): string {
  if (end_point_cm3 !== null) return phrase("page-own-lines-committed", { volume: short(end_point_cm3) });
  if (change_c !== null) return phrase("page-own-lines-committed-change", { change: signed(change_c, 2) });
  return committedNothingText(reasonInWords(reason));
}

function whatFor({ rule, waits_for }: View["results"]): string {
  if (waits_for === null) return phrase("page-own-lines-computing");
  return waits_for === "end" ? phrase("page-own-lines-waits-end-first", { which: keyed(rule) }) : phrase("page-own-lines-waits", { which: keyed(waits_for) });
}

/** `change` opens the own reading again; null when there is nothing to change. */
export function Waiting({ view, change }: { view: View; change: (() => void) | null }) {
  const { own_reading, repeats } = view;
  if (repeats.length === 0) return null;
  return (
    <div class="waiting-results">
      {own_reading && <p class="own-committed" data-testid="own-reading">{ownInWords(own_reading)}</p>}
      <p class="remark">{whatFor(view.results)}</p>
      {own_reading && change && (
        <button type="button" class="plain" onClick={change}>
          {phrase("page-own-lines-change")}
        </button>
      )}
    </div>
  );
}
