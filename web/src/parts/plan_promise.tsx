// What a plan promises: numbers, curve, how well each method will know, warnings.

import { useState } from "preact/hooks";
import { decimal, fixed } from "../format";
import type { Checked, Hazardous, OncePromise, PortionsPromise, Promised } from "../planning";
import { said } from "../words";
import { planWords as words } from "../words/plan_topic";
import { capital } from "../words/quantities";
import { HazardLabel } from "./hazard_label";
import { Comparison, MethodsTable, OnceMethodsTable } from "./plan_methods";
import { OnceCurve, PortionsCurve } from "./plan_curve";
import { TableFrame } from "./table_frame";

function Number({ name, value, more }: { name: string; value: string; more?: string }) {
  return (
    <div class="promised">
      <dt>{name}</dt>
      <dd>
        <b>{value}</b> {more && <small>{more}</small>}
      </dd>
    </div>
  );
}

function Rows({ head, rows }: { head: readonly [string, string]; rows: readonly (readonly [string, string])[] }) {
  return (
    <details class="basis">
      <summary>{words().table}</summary>
      <TableFrame name={words().table}>
        <table>
          <thead>
            <tr>
              <th scope="col">{head[0]}</th>
              <th scope="col">{head[1]}</th>
            </tr>
          </thead>
          <tbody>
            {rows.map(([at, temperature]) => (
              <tr key={at}>
                <th scope="row">{at}</th>
                <td>{temperature}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableFrame>
    </details>
  );
}

function Portions({ promise, repeats, compare }: { promise: PortionsPromise; repeats: number; compare: () => Promise<boolean> }) {
  const { acid, points, curve } = promise;
  const range = acid.range_mol_dm3;
  return (
    <>
      <dl class="promise-numbers">
        <Number name={words().endPoint} value={words().expectedEndPoint(promise.end_point_cm3)} more={words().taken(acid.concentration_mol_dm3)} />
        {promise.rise_c !== null && <Number name={words().rise} value={words().celsius(promise.rise_c)} />}
        <Number name={words().arms} value={words().armsOf(points.before, points.after)} />
      </dl>
      {range && <p>{words().resolves(range[0], range[1])}</p>}
      {curve && <PortionsCurve promise={promise} />}
      {curve && (
        <Rows
          head={[words().added, words().temperature]}
          rows={curve.map(({ volume_cm3, temperature_c }) => [decimal(fixed(volume_cm3, 2)), decimal(fixed(temperature_c, 2))])}
        />
      )}
      {promise.methods && <MethodsTable methods={promise.methods} repeats={repeats} />}
      {curve && <Comparison rows={promise.comparison} ask={compare} />}
    </>
  );
}

function Once({ promise, before_s }: { promise: OncePromise; before_s: number }) {
  const { curve, change_c } = promise;
  return (
    <>
      {change_c !== null && (
        <dl class="promise-numbers">
          <Number name={words().change} value={words().celsius(change_c)} />
        </dl>
      )}
      {curve && <OnceCurve promise={promise} mixed_s={before_s} />}
      {curve && (
        <Rows
          head={[words().time, words().temperature]}
          rows={curve.map(({ time_s, temperature_c }) => [fixed(time_s, 0), decimal(fixed(temperature_c, 2))])}
        />
      )}
      {promise.methods && <OnceMethodsTable methods={promise.methods} />}
    </>
  );
}

function Lines({ title, lines, warn = false }: { title: string; lines: readonly string[]; warn?: boolean }) {
  if (lines.length === 0) return null;
  return (
    <div class={warn ? "plan-warnings" : undefined}>
      <h3>{title}</h3>
      <ul class="cautions">
        {lines.map((line) => (
          <li key={line}>{said(line)}</li>
        ))}
      </ul>
    </div>
  );
}

function Minutes({ minutes, left_min }: { minutes: Record<string, number>; left_min: Record<string, number> }) {
  const total = minutes.total ?? 0;
  const lessons = Object.keys(left_min);
  const fit = lessons.filter((lesson) => (left_min[lesson] ?? 0) >= 0);
  const long = lessons.filter((lesson) => !fit.includes(lesson));
  const told = [...(fit.length > 0 ? [words().fits(fit)] : []), ...(long.length > 0 ? [words().tooLong(long)] : [])];
  return (
    <dl class="promise-numbers">
      <Number name={words().atBench} value={words().minutes(total)} more={told.join("; ")} />
    </dl>
  );
}

export function Hazards({ hazards }: { hazards: readonly Hazardous[] }) {
  return (
    <section class="figure plan-hazards">
      <h2>{words().hazards}</h2>
      <p>{words().hazardsFirst}</p>
      <div class="substances">
        {hazards.map((each) => (
          <div class="substance" key={`${each.name} ${each.mass_g}`}>
            <h3>
              {capital(said(each.name))}{" "}
              <small>{each.mass_g === null ? words().strength(each.concentration_mol_dm3 ?? 0) : words().grams(each.mass_g)}</small>
            </h3>
            <HazardLabel label={each.label} />
            {each.near_edge && <p class="remark">{words().nearEdge}</p>}
            {each.assumed && <p class="remark">{words().takenAs(each.concentration_mol_dm3 ?? 0)}</p>}
          </div>
        ))}
      </div>
    </section>
  );
}

interface PromiseProps {
  checked: Checked | null;
  promise: Promised | null;
  /** Whether a newer one is being computed. */
  busy: boolean;
  refused: string;
  compare: () => Promise<boolean>;
}

const tableOf = (checked: Checked | null, name: string) => {
  const table = checked?.plan?.[name];
  return typeof table === "object" && table !== null ? table : {};
};

export function PlanPromise({ checked, promise, busy, refused, compare }: PromiseProps) {
  const [, redraw] = useState(0);
  const ask = async () => {
    const there = await compare();
    redraw((count) => count + 1);
    return there;
  };
  const bad = checked !== null && checked.problems.length > 0;
  const shown = bad ? null : promise;
  const repeats = typeof checked?.plan?.repeats === "number" ? checked.plan.repeats : 1;
  const before_s = tableOf(checked, "timing").before_s;
  return (
    <section class={`figure plan-promise${busy ? " is-computing" : ""}`}>
      <h2>{words().promise}</h2>
      <p class="plan-busy" role="status">
        {bad ? words().mend : refused || (busy ? words().computing : "")}
      </p>
      {!bad && checked?.minutes && <Minutes minutes={checked.minutes} left_min={checked.left_min ?? {}} />}
      {shown && <Lines title={words().warnings} lines={shown.warnings} warn />}
      {shown?.refused.curve && <p>{said(shown.refused.curve)}</p>}
      {shown?.kind === "portions" && <Portions promise={shown} repeats={repeats} compare={ask} />}
      {shown?.kind === "once" && <Once promise={shown} before_s={typeof before_s === "number" ? before_s : 120} />}
      {shown && (
        <details class="basis">
          <summary>{words().assumed}</summary>
          <ul class="cautions">
            {shown.assumed.map((line) => (
              <li key={line}>{said(line)}</li>
            ))}
          </ul>
        </details>
      )}
    </section>
  );
}
