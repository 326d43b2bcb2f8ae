// The end-point by each method, with its uncertainty; or why it cannot be read.

import type { Repeat } from "../contract";
import type { EndPoint, PortionsResult } from "../results";
import { words } from "../words";
import { Method, Remark } from "./method";
import { Remarks } from "./remarks";

function inWords(value: EndPoint) {
  const u_cm3 = value.u_end_point_cm3;
  return {
    number: words.endPoint(value.end_point_cm3, u_cm3),
    interval: words.interval(value.interval_95_cm3, u_cm3),
    plusMinus: words.plusMinus(u_cm3),
  };
}

interface Props {
  result: PortionsResult | null;
  repeats: readonly Repeat[];
  /** Whether a repeat has just ended; only then are refusals and remarks of a method news. */
  over: boolean;
}

export function ResultWords({ result, repeats, over }: Props) {
  if (!result) return over ? <p class="remark">{words.ownLines.computing}</p> : null;
  const { straight_lines: lines, heat_balance: heat, refused } = result;
  return (
    <>
      <div class="results">
        {lines && (
          <Method name={words.byStraightLines} method="lines" {...inWords(lines)} brief={!over}>
            <Remark text={words.scatterOnly(lines.predicted_bias_cm3 ?? null)} />
          </Method>
        )}
        {heat && (
          <Method name={words.byHeatBalance} method="heat" {...inWords(heat)} brief={!over}>
            <Remark text={heat.describes_trace ? words.heatBalanceKnows : words.notDescribed} />
          </Method>
        )}
        {over && !lines && refused.straight_lines && <Remark text={words.refused(refused.straight_lines)} />}
        {over && !heat && refused.heat_balance && <Remark text={words.refusedHeat(refused.heat_balance)} />}
      </div>
      <Remarks result={result} repeats={repeats} />
    </>
  );
}
