// What a check found, in words with ±.

import type { CheckKind, Found } from "../checks";
import { fixed, placesFor, rounded } from "../format";
import { checkWords as words } from "../words/checks_topic";

/** A value to the place of its u, and u to the same place. */
function both(value: number, u: number, most = 3): [string, string] {
  const places = placesFor(u, most);
  return [rounded(value, places), rounded(u, places)];
}

/** The sentences of a result; numbers are taken as they come from the station. */
export function sentences(check: CheckKind, found: Found): string[] {
  const of = (name: string) => found[name] ?? 0;
  if (check === "dip") {
    const [fast, uFast] = both(of("fast_s"), of("u_fast_s"), 1);
    const [slow, uSlow] = both(of("slow_s"), of("u_slow_s"), 1);
    return [
      words().dip(fast, uFast, slow, uSlow, Math.round(100 * of("fast_share"))),
      words().follows(fixed(of("t63_s"), 1), fixed(of("t90_s"), 0)),
    ];
  }
  if (check === "cup") {
    const [c, uC] = both(of("heat_capacity_j_k"), of("u_heat_capacity_j_k"), 1);
    const [loss, uLoss] = both(of("loss_w_k"), of("u_loss_w_k"));
    return [words().cup(c, uC, loss, uLoss), words().cupAssumes];
  }
  const [c, u] = both(Math.abs(of("correction_c")), of("u_correction_c"), 2);
  const off = Number(c) === 0 ? words().right(u) : of("correction_c") < 0 ? words().high(c, u) : words().low(c, u);
  const beyond = Math.abs(of("correction_c")) > 0.5 + 2 * of("u_correction_c") ? [words().beyond] : [];
  if (check !== "comparison") return [off, ...beyond];
  const [slope, uSlope] = both(-100 * of("slope"), 100 * of("u_slope"), 2);
  return [off, words().slope(slope, uSlope), ...beyond];
}

export function FoundWords({ check, found }: { check: CheckKind; found: Found }) {
  const capacity = fixed(found.heat_capacity_j_k ?? 0, 1);
  const u = fixed(found.u_heat_capacity_j_k ?? 0, 1);
  return (
    <>
      {sentences(check, found).map((sentence) => (
        <p key={sentence}>{sentence}</p>
      ))}
      {check === "cup" && (
        <>
          <p>{words().planLines}</p>
          <pre class="check-plan">{`[cup]\nheat_capacity_j_k = ${capacity}\nu_heat_capacity_j_k = ${u}`}</pre>
        </>
      )}
    </>
  );
}
