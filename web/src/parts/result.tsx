// The volume read off where the two lines cross, with its uncertainty; or why it cannot be read.

import type { Result } from "../contract";
import { words } from "../words";

/** `over` tells whether a repeat has just ended: while it runs, lines that do not cross yet are no news. */
export function ResultWords({ result, over }: { result: Result | null; over: boolean }) {
  if (!result) return null;
  const crossing = result.straight_lines;
  if (!crossing) {
    const reason = result.refused.straight_lines;
    return reason && over ? <p class="refused">{words.refused(reason)}</p> : null;
  }
  const u_cm3 = crossing.u_end_point_cm3;
  const [low, high] = crossing.interval_95_cm3;
  return (
    <div class="result">
      <h3>
        {words.result} <small>({words.byStraightLines})</small>
      </h3>
      <p class="end-point">{words.endPoint(crossing.end_point_cm3, u_cm3)}</p>
      <p class="interval">
        {words.interval(low, high, u_cm3)}
        <br />
        {words.plusMinus(u_cm3)}
      </p>
    </div>
  );
}
