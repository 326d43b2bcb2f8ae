// The own reading and both computed results side by side, with their ±; or what they wait for.

import type { View } from "../contract";
import { keptTogether } from "../format";
import { type OnceView, type PortionsView, isOnce } from "../plan";
import type { Change, EndPoint } from "../results";
import { said, words } from "../words";

interface Column {
  name: string;
  number: string;
  interval: string | null;
  /** Quantities that follow from it. */
  more: readonly (readonly [string, string])[];
  remark: string | null;
}

type Known = number | null | undefined;

function followed(name: string, value: Known, u: Known, write: (value: number, u: number) => string): [string, string][] {
  return value === null || value === undefined || u === null || u === undefined ? [] : [[name, write(value, u)]];
}

const enthalpy = (kj_mol: number, u: number) => words.steps.worked(kj_mol, u, "kJ/mol");
const concentration = (mol_dm3: number, u: number) => words.steps.worked(mol_dm3, u, "mol/dm³");

function refused(name: string, why: string | undefined): Column[] {
  return why === undefined ? [] : [{ name, number: words.missing, interval: null, more: [], remark: said(why) }];
}

function endPoint(name: string, found: EndPoint, more: Column["more"], remark: string): Column {
  const { end_point_cm3, u_end_point_cm3, interval_95_cm3 } = found;
  return {
    name,
    number: words.record.endPoint(end_point_cm3, u_end_point_cm3),
    interval: words.interval(interval_95_cm3, u_end_point_cm3),
    more,
    remark,
  };
}

function columnsOfPortions({ result }: PortionsView): Column[] {
  if (!result) return [];
  const { straight_lines: lines, heat_balance: heat } = result;
  const found = heat
    ? [
        ...followed(words.record.acid, heat.acid_mol_dm3, heat.u_acid_mol_dm3, concentration),
        ...followed(words.record.enthalpy, heat.enthalpy_kj_mol, heat.u_enthalpy_kj_mol, enthalpy),
      ]
    : [];
  return [
    ...(lines
      ? [endPoint(words.record.straight, lines, [], words.scatterOnly(lines.predicted_bias_cm3 ?? null))]
      : refused(words.record.straight, result.refused.straight_lines)),
    ...(heat
      ? [endPoint(words.record.heat, heat, found, heat.describes_trace ? words.heatBalanceKnows : words.notDescribed)]
      : refused(words.record.heat, result.refused.heat_balance)),
  ];
}

function change(name: string, found: Change): Column {
  const { change_c, u_change_c, interval_95_c, heat_j, u_heat_j, enthalpy_kj_mol, u_enthalpy_kj_mol } = found;
  return {
    name,
    number: words.change(change_c, u_change_c),
    interval: `${words.changePlusMinus(u_change_c)}; ${words.changeInterval(interval_95_c, u_change_c)}`,
    more: [
      [words.heat(heat_j), `${words.joules(heat_j, u_heat_j)} (${words.joulesPlusMinus(u_heat_j)})`],
      ...followed(words.record.enthalpy, enthalpy_kj_mol, u_enthalpy_kj_mol, enthalpy),
    ],
    remark: null,
  };
}

function columnsOfOnce({ result }: OnceView): Column[] {
  if (!result) return [];
  const { straight_lines: lines, heat_balance: heat } = result;
  return [
    ...(lines ? [change(words.byExtendedLines, lines)] : refused(words.byExtendedLines, result.refused.straight_lines)),
    ...(heat ? [change(words.record.heat, heat)] : refused(words.record.heat, result.refused.heat_balance)),
  ];
}

function own({ own_reading: read }: View): Column[] {
  if (read === null) return [];
  const { record } = words;
  const number = read.end_point_cm3 !== null ? record.ownVolume(read.end_point_cm3)
    : read.change_c !== null ? record.ownChange(read.change_c)
    : record.ownNothing;
  return [{ name: record.ownReading, number, interval: null, more: [], remark: null }];
}

function Accepted({ view }: { view: View }) {
  const accepted = view.result?.accepted;
  if (!accepted) return null;
  return (
    <p class="record-accepted">
      {words.steps.accepted}: {keptTogether(words.steps.acceptedValue(accepted.enthalpy_kj_mol, accepted.u))}.{" "}
      {said(accepted.text)} {words.steps.source(accepted.source)}
    </p>
  );
}

export function RecordResults({ view }: { view: View }) {
  const { results } = view;
  const found = !results.shown ? [] : isOnce(view) ? columnsOfOnce(view) : columnsOfPortions(view as PortionsView);
  return (
    <section class="record-results">
      <h3>{words.record.results}</h3>
      <div class="record-columns">
        {[...own(view), ...found].map(({ name, number, interval, more, remark }) => (
          <div key={name}>
            <h4>{name}</h4>
            <p class="record-number">{keptTogether(number)}</p>
            {interval && <p>{keptTogether(interval)}</p>}
            {more.map(([quantity, value]) => (
              <p key={quantity}>
                {quantity}: <b>{keptTogether(value)}</b>
              </p>
            ))}
            {remark && <p class="record-remark">{keptTogether(remark)}</p>}
          </div>
        ))}
      </div>
      {!results.shown && results.waits_for && <p>{words.ownLines.waits[results.waits_for]}</p>}
      {found.length > 0 && <p class="record-remark">{words.record.plusMinusIs}</p>}
      {results.shown && <Accepted view={view} />}
    </section>
  );
}
