// A plan that mixes once as staff choose it, and what it promises.

import { Sized } from "../../chart/axes";
import { type Point, frame, padded } from "../../chart/frame";
import { decimal, fixed, signed } from "../../format";
import { capital } from "../../phrases/quantities";
import type { OncePromise } from "../../staff/contract";
import { ChoiceOf, type ChoicesProps, FieldChoice, NumberOf, type Option, Part, reagentOptions } from "../../staff/plan/fields";
import type { Values } from "../../staff/plan/form";
import { OnceMethodsTable } from "../../staff/plan/methods";
import { Drawn, LEAST_SPAN_C, Number, Rows } from "../../staff/plan/promised";
import { phrase, said } from "../../words";
import type { PlanForm, PromiseProps } from "../form";

function Ingredients(props: ChoicesProps) {
  const { plans, form, change, problems } = props;
  const soluble = plans.reagents.filter((each) => !each.sparingly_soluble);
  const water: Option = ["water", capital(said("water"))];
  return (
    <>
      <Part title={phrase("page-plan-liquid")} table="liquid" problems={problems}>
        <FieldChoice {...props} path="liquid.name" label={phrase("page-plan-reagent")} options={[water, ...reagentOptions(soluble)]} />
        <NumberOf {...props} path="liquid.volume_cm3" label={phrase("page-plan-volume")} />
        {form.fields["liquid.name"] !== "water" && <NumberOf {...props} path="liquid.concentration_mol_dm3" label={phrase("page-plan-concentration")} />}
      </Part>
      <Part title={phrase("page-plan-addition")} table="addition" problems={problems}>
        <ChoiceOf
          path="form"
          label={phrase("page-plan-form")}
          value={form.solid ? "solid" : "solution"}
          options={(["solid", "solution"] as const).map((each): Option => [each, phrase("page-plan-forms", { which: each })])}
          choose={(chosen) => change({ solid: chosen === "solid" })}
        />
        <FieldChoice {...props} path="addition.name" label={phrase("page-plan-reagent")} options={reagentOptions(form.solid ? plans.reagents.filter((each) => each.solid) : soluble)} />
        {form.solid ? (
          <NumberOf {...props} path="addition.mass_g" label={phrase("page-plan-mass")} />
        ) : (
          <>
            <NumberOf {...props} path="addition.volume_cm3" label={phrase("page-plan-volume")} />
            <NumberOf {...props} path="addition.concentration_mol_dm3" label={phrase("page-plan-concentration")} />
          </>
        )}
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

function mixedAt_s({ timing }: Values): number {
  const before_s = typeof timing === "object" && timing !== null ? timing.before_s : null;
  return typeof before_s === "number" ? before_s : 120;
}

function Promised({ promise, plan }: PromiseProps<OncePromise>) {
  const { curve, change_c, enthalpy_kj_mol, enthalpy_of } = promise;
  return (
    <>
      {change_c !== null && (
        <dl class="promise-numbers">
          <Number name={phrase("page-plan-change")} value={phrase("page-plan-celsius", { change: signed(change_c, 1) })} />
          {enthalpy_kj_mol !== null && (
            <Number
              name={enthalpy_of ? phrase("page-enthalpy-of", { what: said(enthalpy_of) }) : phrase("page-record-enthalpy")}
              value={phrase("page-enthalpy", { enthalpy: signed(enthalpy_kj_mol, 1) })}
            />
          )}
        </dl>
      )}
      {curve && <Curve promise={promise} mixed_s={mixedAt_s(plan)} />}
      {curve && (
        <Rows
          head={[phrase("page-plan-time"), phrase("page-plan-temperature")]}
          rows={curve.map(({ time_s, temperature_c }) => [fixed(time_s, 0), decimal(fixed(temperature_c, 2))])}
        />
      )}
      {promise.methods && <OnceMethodsTable methods={promise.methods} />}
    </>
  );
}

function Curve({ promise, mixed_s }: { promise: OncePromise; mixed_s: number }) {
  const curve = promise.curve ?? [];
  const last_s = curve[curve.length - 1]?.time_s ?? 0;
  return (
    <Sized class="drawing" shape={0.45}>
      {(box) => {
        const laid = frame([0, Math.max(last_s, mixed_s)], padded(curve.map(({ temperature_c }) => temperature_c), LEAST_SPAN_C), box);
        return (
          <Drawn
            laid={laid}
            box={box}
            points={curve.map(({ time_s, temperature_c }): Point => [laid.x(time_s), laid.y(temperature_c)])}
            across={phrase("page-since-repeat-axis")}
            text={phrase("page-plan-once-curve-of", { change: phrase("page-plan-celsius", { change: signed(promise.change_c ?? 0, 1) }) })}
            marked={[mixed_s, phrase("page-plan-mixed")]}
            marks={false}
          />
        );
      }}
    </Sized>
  );
}

export const form: PlanForm<OncePromise> = { Ingredients, Timing, Promised };
