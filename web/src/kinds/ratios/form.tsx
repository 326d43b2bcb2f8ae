// A plan of mixing ratios as staff choose it, and what it promises.

import { Sized } from "../../chart/axes";
import { type Point, frame, padded } from "../../chart/frame";
import { decimal, fixed, short, signed } from "../../format";
import type { RatiosMethods, RatiosPromise } from "../../live/contract.generated";
import type { Promised as PromisedPlan } from "../../staff/contract";
import { type ChoicesProps, FieldChoice, NumberOf, Part, reagentOptions } from "../../staff/plan/fields";
import { Drawn, Number, Rows } from "../../staff/plan/promised";
import { TableFrame } from "../../page/shared";
import { dress, phrase } from "../../words";
import type { PlanForm, PromiseProps } from "../form";
import { ratioText } from "./view";

function Ingredients(props: ChoicesProps) {
  const { plans, problems } = props;
  const solution = (table: "acid" | "alkali", title: string) => (
    <Part title={title} table={table} problems={problems}>
      <FieldChoice
        {...props}
        path={`${table}.name`}
        label={phrase("page-plan-reagent")}
        options={reagentOptions(plans.reagents.filter((each) => (table === "acid" ? each.acid : each.alkali && !each.gas)))}
      />
      <NumberOf {...props} path={`${table}.concentration_mol_dm3`} label={phrase("page-plan-concentration")} />
    </Part>
  );
  return (
    <>
      {solution("acid", phrase("page-plan-acid"))}
      {solution("alkali", phrase("page-plan-alkali"))}
      <Part title={phrase("page-ratios-mixtures")} table="mixtures" problems={problems}>
        <NumberOf {...props} path="mixtures.total_cm3" label={phrase("page-ratios-total")} />
        <NumberOf {...props} path="mixtures.first_cm3" label={phrase("page-ratios-first")} />
        <NumberOf {...props} path="mixtures.step_cm3" label={phrase("page-ratios-step")} />
        <NumberOf {...props} path="mixtures.count" label={phrase("page-ratios-count")} />
      </Part>
    </>
  );
}

function Timing(props: ChoicesProps) {
  return (
    <>
      <NumberOf {...props} path="timing.before_s" label={phrase("page-plan-before")} />
      <NumberOf {...props} path="timing.after_s" label={phrase("page-plan-after")} />
    </>
  );
}

type RatiosPromised = PromisedPlan & RatiosPromise;

function Promised({ promise }: PromiseProps<RatiosPromised>) {
  const { curve, rise_c, end_point_cm3, alkali_per_acid, methods } = promise;
  return (
    <>
      <dl class="promise-numbers">
        <Number name={phrase("page-ratios-expected")} value={phrase("page-ratios-ratio", { ratio: short(alkali_per_acid, 3) })} more={phrase("page-ratios-crosses-at", { volume: fixed(end_point_cm3, 1) })} />
        {rise_c !== null && <Number name={phrase("page-ratios-rise")} value={phrase("page-plan-celsius", { change: signed(rise_c, 1) })} />}
      </dl>
      {curve && <Curve promise={promise} />}
      {curve && (
        <Rows
          head={[phrase("page-ratios-across"), phrase("page-ratios-up")]}
          rows={curve.map(({ volume_cm3, rise_c: up_c }) => [decimal(short(volume_cm3)), decimal(fixed(up_c, 2))])}
        />
      )}
      {methods && <Methods methods={methods} />}
    </>
  );
}

const LEAST_SPAN_C = 2;

function Curve({ promise: { curve, end_point_cm3 } }: { promise: RatiosPromised }) {
  const points = curve ?? [];
  const most_cm3 = Math.max(end_point_cm3, ...points.map(({ volume_cm3 }) => volume_cm3));
  return (
    <Sized class="drawing" shape={0.45}>
      {(box) => {
        const laid = frame([0, most_cm3], padded(points.map(({ rise_c }) => rise_c), LEAST_SPAN_C), box);
        return (
          <Drawn
            laid={laid}
            box={box}
            points={points.map(({ volume_cm3, rise_c }): Point => [laid.x(volume_cm3), laid.y(rise_c)])}
            across={phrase("page-ratios-across")}
            text={phrase("page-plan-curve-of", { points: points.length })}
            marked={[end_point_cm3, phrase("page-plan-expected-end-point", { volume: fixed(end_point_cm3, 1) })]}
            marks
          />
        );
      }}
    </Sized>
  );
}

function Methods({ methods }: { methods: RatiosMethods }) {
  return (
    <>
      <h3 id="methods">{phrase("page-ratios-methods")}</h3>
      <TableFrame name={phrase("page-ratios-methods")}>
        <table class="plan-table" aria-labelledby="methods">
          <thead>
            <tr>
              <th scope="col">{phrase("page-plan-method")}</th>
              <th scope="col">{phrase("page-plan-off-by")}</th>
              <th scope="col">±</th>
            </tr>
          </thead>
          <tbody>
            {(["straight_lines", "heat_balance"] as const).map((name) => {
              const found = methods[name];
              return (
                <tr key={name}>
                  <th scope="row">{name === "straight_lines" ? phrase("page-plan-lines") : phrase("page-plan-heat")}</th>
                  <td>{found ? dress(signed(found.bias_ratio, 2)) : phrase("page-plan-refuses")}</td>
                  <td>{found ? dress(ratioText(found.u_alkali_per_acid, found.u_alkali_per_acid)) : "–"}</td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </TableFrame>
    </>
  );
}

export const form: PlanForm<RatiosPromised> = { Ingredients, Timing, Promised };
