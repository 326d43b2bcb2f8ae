// How well each method will know the end-point or the change, and what other solutions and glassware would do.

import { useState } from "preact/hooks";
import { decimal, fixed, short, signed } from "../../format";
import { TableFrame } from "../../page/shared";
import { celsiusPlaces, cm3Places, figures, kilojoulePlaces, plusMinus } from "../../phrases/quantities";
import { dress, phrase, said } from "../../words";
import type { Compared, MethodsPromised, OncePromise, PortionsPromise } from "../contract";

function Cells({ of }: { of: MethodsPromised }) {
  const { straight_lines: lines, heat_balance: heat } = of;
  return (
    <>
      <td>{lines ? dress(signed(lines.bias_cm3, 1)) : phrase("page-plan-refuses")}</td>
      <td>{lines ? dress(plusMinus(lines.u_end_point_cm3, cm3Places(lines.u_end_point_cm3))) : "–"}</td>
      <td>{heat ? dress(plusMinus(heat.u_end_point_cm3, cm3Places(heat.u_end_point_cm3))) : phrase("page-plan-refuses")}</td>
    </>
  );
}

function MethodHeads() {
  return (
    <>
      <th scope="col">{phrase("page-plan-lines-off")}</th>
      <th scope="col">{phrase("page-plan-lines-plus-minus")}</th>
      <th scope="col">{phrase("page-plan-heat-plus-minus")}</th>
    </>
  );
}

export function MethodsTable({ methods, repeats }: { methods: NonNullable<PortionsPromise["methods"]>; repeats: number }) {
  const heat = methods.probe.heat_balance;
  return (
    <>
      <h3 id="methods">{phrase("page-plan-methods")}</h3>
      <TableFrame name={phrase("page-plan-methods")}>
        <table class="plan-table" aria-labelledby="methods">
          <thead>
            <tr>
              <th scope="col">{phrase("page-plan-read-with")}</th>
              <MethodHeads />
            </tr>
          </thead>
          <tbody>
            {(["probe", "thermometer_0_1_c", "thermometer_1_c"] as const).map((name) => (
              <tr key={name}>
                <th scope="row">{phrase("page-plan-thermometers", { which: name })}</th>
                <Cells of={methods[name]} />
              </tr>
            ))}
          </tbody>
        </table>
      </TableFrame>
      {heat && <p class="remark">{phrase("page-plan-whole", { repeats: repeats, u: plusMinus(heat.u_mean_cm3, cm3Places(heat.u_mean_cm3)), uAcid: figures(heat.u_acid_mol_dm3, 2, 5) })}</p>}
    </>
  );
}

export function OnceMethodsTable({ methods }: { methods: NonNullable<OncePromise["methods"]> }) {
  return (
    <>
      <h3 id="methods">{phrase("page-plan-methods-once")}</h3>
      <TableFrame name={phrase("page-plan-methods-once")}>
        <table class="plan-table" aria-labelledby="methods">
          <thead>
            <tr>
              <th scope="col">{phrase("page-plan-method")}</th>
              <th scope="col">{phrase("page-plan-off-by")}</th>
              <th scope="col">±</th>
              <th scope="col">± kJ/mol</th>
            </tr>
          </thead>
          <tbody>
            {(["straight_lines", "heat_balance"] as const).map((name) => {
              const found = methods[name];
              return (
                <tr key={name}>
                  <th scope="row">{name === "straight_lines" ? phrase("page-plan-lines") : phrase("page-plan-heat")}</th>
                  <td>{found ? phrase("page-plan-bias-c", { bias: signed(found.bias_c, 2) }) : phrase("page-plan-refuses")}</td>
                  <td>{found ? phrase("page-plan-plus-minus-c", { u: plusMinus(found.u_change_c, celsiusPlaces(found.u_change_c)) }) : "–"}</td>
                  <td>{found ? phrase("page-plan-plus-minus-kj", { u: plusMinus(found.u_enthalpy_kj_mol, kilojoulePlaces(found.u_enthalpy_kj_mol)) }) : "–"}</td>
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
      <h3>{phrase("page-plan-compare")}</h3>
      {rows === null ? (
        <button type="button" class="plain" onClick={press} aria-disabled={busy}>
          {busy ? phrase("page-plan-computing") : phrase("page-plan-compare-now")}
        </button>
      ) : (
        <TableFrame name={phrase("page-plan-compare")}>
          <table class="plan-table">
            <thead>
              <tr>
                <th scope="col">{phrase("page-plan-strength-head")}</th>
                <th scope="col">{phrase("page-plan-rise")}</th>
                <th scope="col">{phrase("page-plan-glassware")}</th>
                <MethodHeads />
              </tr>
            </thead>
            <tbody>
              {rows.map((row) => (
                <tr key={`${row.factor} ${row.glassware}`}>
                  <th scope="row">{decimal(phrase("page-plan-strengths", { acid: short(row.acid_mol_dm3, 3), alkali: short(row.alkali_mol_dm3, 3) }))}</th>
                  <td>{row.rise_c === null ? "–" : decimal(`${fixed(row.rise_c, 1)} °C`)}</td>
                  <td>{phrase("page-plan-glassware-of", { name: said(row.glassware), u: short(row.u_portion_cm3, 2) })}</td>
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
