// How well each method will know the end-point or the change, and what other solutions and glassware would do.

import { useState } from "preact/hooks";
import { decimal, fixed } from "../format";
import type { Compared, MethodsPromised, OncePromise, PortionsPromise } from "../planning";
import { said } from "../words";
import { planWords as words } from "../words/plan_topic";
import { TableFrame } from "./table_frame";

function Cells({ of }: { of: MethodsPromised }) {
  const { straight_lines: lines, heat_balance: heat } = of;
  return (
    <>
      <td>{lines ? words().bias(lines.bias_cm3) : words().refuses}</td>
      <td>{lines ? words().cm3(lines.u_end_point_cm3) : "–"}</td>
      <td>{heat ? words().cm3(heat.u_end_point_cm3) : words().refuses}</td>
    </>
  );
}

function MethodHeads() {
  return (
    <>
      <th scope="col">{words().linesOff}</th>
      <th scope="col">{words().linesPlusMinus}</th>
      <th scope="col">{words().heatPlusMinus}</th>
    </>
  );
}

export function MethodsTable({ methods, repeats }: { methods: NonNullable<PortionsPromise["methods"]>; repeats: number }) {
  const heat = methods.probe.heat_balance;
  return (
    <>
      <h3 id="methods">{words().methods}</h3>
      <TableFrame name={words().methods}>
        <table class="plan-table" aria-labelledby="methods">
          <thead>
            <tr>
              <th scope="col">{words().readWith}</th>
              <MethodHeads />
            </tr>
          </thead>
          <tbody>
            {(["probe", "thermometer_0_1_c", "thermometer_1_c"] as const).map((name) => (
              <tr key={name}>
                <th scope="row">{words().thermometers[name]}</th>
                <Cells of={methods[name]} />
              </tr>
            ))}
          </tbody>
        </table>
      </TableFrame>
      {heat && <p class="remark">{words().whole(repeats, heat.u_mean_cm3, heat.u_acid_mol_dm3)}</p>}
    </>
  );
}

export function OnceMethodsTable({ methods }: { methods: NonNullable<OncePromise["methods"]> }) {
  return (
    <>
      <h3 id="methods">{words().methodsOnce}</h3>
      <TableFrame name={words().methodsOnce}>
        <table class="plan-table" aria-labelledby="methods">
          <thead>
            <tr>
              <th scope="col">{words().method}</th>
              <th scope="col">{words().offBy}</th>
              <th scope="col">±</th>
              <th scope="col">± kJ/mol</th>
            </tr>
          </thead>
          <tbody>
            {(["straight_lines", "heat_balance"] as const).map((name) => {
              const found = methods[name];
              return (
                <tr key={name}>
                  <th scope="row">{name === "straight_lines" ? words().lines : words().heat}</th>
                  <td>{found ? words().biasC(found.bias_c) : words().refuses}</td>
                  <td>{found ? words().plusMinusC(found.u_change_c) : "–"}</td>
                  <td>{found ? words().plusMinusKj(found.u_enthalpy_kj_mol) : "–"}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </TableFrame>
    </>
  );
}

/** Asked for only when wanted: it takes the station some seconds. */
export function Comparison({ rows, ask }: { rows: readonly Compared[] | null; ask: () => Promise<boolean> }) {
  const [busy, wait] = useState(false);
  const press = () => {
    if (busy) return;
    wait(true);
    void ask().then(() => wait(false));
  };
  return (
    <div class="plan-comparison">
      <h3>{words().compare}</h3>
      {rows === null ? (
        <button type="button" class="plain" onClick={press} aria-disabled={busy}>
          {busy ? words().computing : words().compareNow}
        </button>
      ) : (
        <TableFrame name={words().compare}>
          <table class="plan-table">
            <thead>
              <tr>
                <th scope="col">{words().strengthHead}</th>
                <th scope="col">{words().rise}</th>
                <th scope="col">{words().glassware}</th>
                <MethodHeads />
              </tr>
            </thead>
            <tbody>
              {rows.map((row) => (
                <tr key={`${row.factor} ${row.glassware}`}>
                  <th scope="row">{decimal(words().strengths(row.acid_mol_dm3, row.alkali_mol_dm3))}</th>
                  <td>{row.rise_c === null ? "–" : decimal(`${fixed(row.rise_c, 1)} °C`)}</td>
                  <td>{words().glasswareOf(said(row.glassware), row.u_portion_cm3)}</td>
                  <Cells of={row} />
                </tr>
              ))}
            </tbody>
          </table>
        </TableFrame>
      )}
    </div>
  );
}
