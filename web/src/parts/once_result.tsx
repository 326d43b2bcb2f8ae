// What one mixing gave by each method: change of temperature, heat, enthalpy per mole; or why there is none.

import { keptTogether } from "../format";
import type { OnceView } from "../plan";
import type { Change, OnceRepeat } from "../results";
import { words } from "../words";
import { Method, Remark } from "./method";
import { Remarks } from "./remarks";

function inWords(value: Change) {
  return {
    number: words.change(value.change_c, value.u_change_c),
    interval: words.changeInterval(value.interval_95_c, value.u_change_c),
    plusMinus: words.changePlusMinus(value.u_change_c),
  };
}

function Worked({ value, of }: { value: Change; of: string | null }) {
  const { heat_j, u_heat_j, enthalpy_kj_mol, u_enthalpy_kj_mol } = value;
  return (
    <dl class="worked">
      <dt>{words.heat(heat_j)}</dt>
      <dd>
        <b class="heat">{keptTogether(words.joules(heat_j, u_heat_j))}</b>{" "}
        <span>{keptTogether(words.joulesPlusMinus(u_heat_j))}</span>
      </dd>
      {enthalpy_kj_mol !== null && u_enthalpy_kj_mol !== null && of !== null && (
        <>
          <dt>{words.enthalpyOf(of)}</dt>
          <dd>
            <b class="enthalpy">{keptTogether(words.enthalpy(enthalpy_kj_mol, u_enthalpy_kj_mol))}</b>{" "}
            <span>{keptTogether(words.enthalpyPlusMinus(u_enthalpy_kj_mol))}</span>
          </dd>
        </>
      )}
    </dl>
  );
}

/** What both had to guess; a weighed solid brings hardly any heat of its own along. */
function guessed({ plan, alkali_temperature_c }: OnceView): string[] {
  const { mass_g, temperature_c, name } = plan.addition;
  const known = mass_g !== null || alkali_temperature_c !== null || temperature_c !== null;
  return known ? [] : [words.addedUnknown(name)];
}

/** Mean over the repeats whose bias is known / °C. */
export function expectedBias(repeats: readonly OnceRepeat[]): number | null {
  const known = repeats.flatMap(({ straight_lines: lines }) => lines?.predicted_bias_c ?? []);
  return known.length === 0 ? null : known.reduce((sum, bias_c) => sum + bias_c, 0) / known.length;
}

/** `over` tells whether a repeat has just ended; only then are refusals and remarks of a method news. */
export function OnceResultWords({ view, over }: { view: OnceView; over: boolean }) {
  const { result } = view;
  if (!result) return over ? <p class="remark">{words.ownLines.computing}</p> : null;
  const { straight_lines: lines, heat_balance: heat, refused, repeats } = result;
  const found = repeats.flatMap((repeat) => repeat.heat_balance ?? []);
  const of = [...repeats.flatMap((repeat) => repeat.straight_lines ?? []), ...found][0]?.enthalpy_of ?? null;
  const described = found.every((balance) => balance.describes_trace);
  const guess = guessed(view);
  return (
    <>
      <div class="results">
        {lines && (
          <Method name={words.byExtendedLines} method="lines" {...inWords(lines)} brief={!over}>
            <Worked value={lines} of={of} />
            <Remark text={[words.linesKnow(lines.change_c, expectedBias(repeats)), ...guess].join(" ")} />
          </Method>
        )}
        {heat && (
          <Method name={words.byHeatBalance} method="heat" {...inWords(heat)} brief={!over}>
            <Worked value={heat} of={of} />
            <Remark text={[described ? words.heatOnceKnows : words.notDescribed, ...guess].join(" ")} />
          </Method>
        )}
        {over && !lines && refused.straight_lines && <Remark text={words.refusedChange(refused.straight_lines)} />}
        {over && !heat && refused.heat_balance && <Remark text={words.refusedHeat(refused.heat_balance)} />}
      </div>
      <Remarks result={result} repeats={view.repeats} />
    </>
  );
}
