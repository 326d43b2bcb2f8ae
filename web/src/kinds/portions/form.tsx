// A plan of portions as staff choose it, and what it promises.

import { Sized } from "../../chart/axes";
import { type Point, frame, padded } from "../../chart/frame";
import { decimal, fixed, short, signed } from "../../format";
import { figures } from "../../phrases/quantities";
import type { PortionsPromise } from "../../staff/contract";
import { ChoiceOf, type ChoicesProps, FieldChoice, NumberOf, type Option, Part, optionsOf, reagentOptions } from "../../staff/plan/fields";
import type { Told } from "../../staff/plan/form";
import { Comparison, MethodsTable } from "../../staff/plan/methods";
import { Drawn, LEAST_SPAN_C, Number, Rows } from "../../staff/plan/promised";
import { phrase, said } from "../../words";
import type { PlanForm, PromiseProps } from "../form";

function Ingredients(props: ChoicesProps) {
  const { plans, form, staff, change, problems } = props;
  const tells: Told[] = staff || form.told === "prepared" ? ["unknown", "known", "prepared"] : ["unknown", "known"];
  const glassware = plans.glassware.map(({ name, u_portion_cm3 }): Option => [name, phrase("page-plan-glassware-of", { name: said(name), u: short(u_portion_cm3, 2) })]);
  return (
    <>
      <Part title={phrase("page-plan-acid")} table="acid" problems={problems}>
        <FieldChoice {...props} path="acid.name" label={phrase("page-plan-reagent")} options={reagentOptions(plans.reagents.filter((each) => each.acid))} />
        <NumberOf {...props} path="acid.volume_cm3" label={phrase("page-plan-volume")} />
        <ChoiceOf
          path="told"
          label={phrase("page-plan-told")}
          value={form.told}
          options={tells.map((each): Option => [each, phrase("page-plan-tells", { which: each })])}
          choose={(told) => change({ told: told as Told })}
        />
        {form.told === "known" && <NumberOf {...props} path="acid.concentration_mol_dm3" label={phrase("page-plan-concentration")} />}
        {form.told === "prepared" && <NumberOf {...props} path="acid.prepared_mol_dm3" label={phrase("page-plan-concentration")} />}
      </Part>
      <Part title={phrase("page-plan-alkali")} table="alkali" problems={problems}>
        <FieldChoice {...props} path="alkali.name" label={phrase("page-plan-reagent")} options={reagentOptions(plans.reagents.filter((each) => each.alkali && !each.gas))} />
        <NumberOf {...props} path="alkali.concentration_mol_dm3" label={phrase("page-plan-concentration")} />
      </Part>
      <Part title={phrase("page-plan-portions")} table="portions" problems={problems}>
        <NumberOf {...props} path="portions.volume_cm3" label={phrase("page-plan-portion-volume")} />
        <NumberOf {...props} path="portions.count" label={phrase("page-plan-count")} />
        <FieldChoice {...props} path="portions.glassware" label={phrase("page-plan-glassware")} options={[["", phrase("page-plan-no-glassware")], ...glassware]} />
        <NumberOf {...props} path="portions.u_volume_cm3" label={phrase("page-plan-own-u")} />
      </Part>
    </>
  );
}

const PACES = ["graph", "quick"] as const;

const PREDICTS = ["false", "true"] as const;

function Timing(props: ChoicesProps) {
  return (
    <>
      <FieldChoice {...props} path="pace" label={phrase("page-plan-pace")} options={optionsOf(PACES, (key) => phrase("page-plan-paces", { which: key }))} />
      <FieldChoice {...props} path="predict_first" label={phrase("page-plan-predict")} options={optionsOf(PREDICTS, (key) => phrase("page-plan-predicts", { which: key }))} />
    </>
  );
}

function Promised({ promise, plan: { repeats }, compare }: PromiseProps<PortionsPromise>) {
  const { acid, points, curve } = promise;
  const range = acid.range_mol_dm3;
  return (
    <>
      <dl class="promise-numbers">
        <Number name={phrase("page-plan-end-point")} value={phrase("page-plan-expected-end-point", { volume: fixed(promise.end_point_cm3, 1) })} more={phrase("page-plan-taken", { concentration: figures(acid.concentration_mol_dm3, 3, 4) })} />
        {promise.rise_c !== null && <Number name={phrase("page-plan-rise")} value={phrase("page-plan-celsius", { change: signed(promise.rise_c, 1) })} />}
        <Number name={phrase("page-plan-arms")} value={phrase("page-plan-arms-of", { before: points.before, after: points.after })} />
      </dl>
      {range && <p>{phrase("page-plan-resolves", { low: figures(range[0], 3, 4), high: figures(range[1], 3, 4) })}</p>}
      {curve && <Curve promise={promise} />}
      {curve && (
        <Rows
          head={[phrase("page-plan-added"), phrase("page-plan-temperature")]}
          rows={curve.map(({ volume_cm3, temperature_c }) => [decimal(fixed(volume_cm3, 2)), decimal(fixed(temperature_c, 2))])}
        />
      )}
      {promise.methods && <MethodsTable methods={promise.methods} repeats={typeof repeats === "number" ? repeats : 1} />}
      {curve && <Comparison rows={promise.comparison} ask={compare} />}
    </>
  );
}

function Curve({ promise }: { promise: PortionsPromise }) {
  const curve = promise.curve ?? [];
  const most_cm3 = Math.max(promise.end_point_cm3, ...curve.map(({ volume_cm3 }) => volume_cm3));
  return (
    <Sized class="drawing" shape={0.45}>
      {(box) => {
        const laid = frame([0, most_cm3], padded(curve.map(({ temperature_c }) => temperature_c), LEAST_SPAN_C), box);
        return (
          <Drawn
            laid={laid}
            box={box}
            points={curve.map(({ volume_cm3, temperature_c }): Point => [laid.x(volume_cm3), laid.y(temperature_c)])}
            across={phrase("page-volume-axis")}
            text={phrase("page-plan-curve-of", { points: curve.length })}
            marked={[promise.end_point_cm3, phrase("page-plan-expected-end-point", { volume: fixed(promise.end_point_cm3, 1) })]}
            marks
          />
        );
      }}
    </Sized>
  );
}

export const form: PlanForm<PortionsPromise> = { Ingredients, Timing, Promised };
