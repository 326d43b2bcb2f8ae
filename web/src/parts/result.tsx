// The end-point by each method, with its uncertainty; or why it cannot be read.

import type { ComponentChildren } from "preact";
import type { EndPoint, Result } from "../contract";
import { words } from "../words";

interface MethodProps {
  name: string;
  method: string;
  value: EndPoint;
  /** While a repeat runs: the number and its interval, nothing that pushes the curve off the screen. */
  brief: boolean;
  children: ComponentChildren;
}

function Method({ name, method, value, brief, children }: MethodProps) {
  const u_cm3 = value.u_end_point_cm3;
  const [low, high] = value.interval_95_cm3;
  return (
    <div class={`result result-${method}${brief ? " result-brief" : ""}`}>
      <h3>{name}</h3>
      <p class="end-point">{words.endPoint(value.end_point_cm3, u_cm3)}</p>
      <p class="interval">
        {words.interval(low, high, u_cm3)}
        {!brief && <br />}
        {!brief && words.plusMinus(u_cm3)}
      </p>
      {!brief && children}
    </div>
  );
}

function Remark({ text }: { text: string | null }) {
  return text === null ? null : <p class="remark">{text}</p>;
}

/** `over` tells whether a repeat has just ended; only then are refusals and remarks news. */
export function ResultWords({ result, over }: { result: Result | null; over: boolean }) {
  if (!result) return null;
  const { straight_lines: lines, heat_balance: heat, refused } = result;
  return (
    <div class="results">
      {lines && (
        <Method name={words.byStraightLines} method="lines" value={lines} brief={!over}>
          <Remark text={words.scatterOnly(lines.predicted_bias_cm3 ?? null)} />
        </Method>
      )}
      {heat && (
        <Method name={words.byHeatBalance} method="heat" value={heat} brief={!over}>
          <Remark text={heat.describes_trace ? words.heatBalanceKnows : words.notDescribed} />
        </Method>
      )}
      {over && !lines && refused.straight_lines && <Remark text={words.refused(refused.straight_lines)} />}
      {over && !heat && refused.heat_balance && <Remark text={words.refusedHeat(refused.heat_balance)} />}
    </div>
  );
}
