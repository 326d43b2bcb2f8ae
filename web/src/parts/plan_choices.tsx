// What is chosen for a practical, part by part.

import type { ComponentChildren } from "preact";
import { lowered } from "../formula";
import type { Form, Kind, Told } from "../plan_form";
import type { Plans, Reagent } from "../planning";
import { said } from "../words";
import { planWords as words } from "../words/plan_topic";
import { capital } from "../words/quantities";
import { ChoiceOf, FieldChoice, type FieldsProps, NumberOf, type Option, TextOf, problemAt } from "./plan_fields";

export interface ChoicesProps extends FieldsProps {
  plans: Plans;
  staff: boolean;
  change: (part: Partial<Form>) => void;
}

function Part({ title, table, problems, children }: { title: string; table?: string; children: ComponentChildren } & Pick<FieldsProps, "problems">) {
  const problem = table ? problemAt(problems, table) : "";
  return (
    <fieldset class="plan-part">
      <legend>{title}</legend>
      {children}
      {problem && <p class="field-problem">{problem}</p>}
    </fieldset>
  );
}

const reagentOptions = (reagents: readonly Reagent[]): Option[] =>
  reagents.map(({ name, formula }) => [name, `${capital(said(name))}, ${lowered(formula)}`]);

function Portions(props: ChoicesProps) {
  const { plans, form, staff, change, problems } = props;
  const tells: Told[] = staff || form.told === "prepared" ? ["unknown", "known", "prepared"] : ["unknown", "known"];
  const glassware = plans.glassware.map(({ name, u_portion_cm3 }): Option => [name, words().glasswareOf(said(name), u_portion_cm3)]);
  return (
    <>
      <Part title={words().acid} table="acid" problems={problems}>
        <FieldChoice {...props} path="acid.name" label={words().reagent} options={reagentOptions(plans.reagents.filter((each) => each.acid))} />
        <NumberOf {...props} path="acid.volume_cm3" label={words().volume} />
        <ChoiceOf
          path="told"
          label={words().told}
          value={form.told}
          options={tells.map((each): Option => [each, words().tells[each]])}
          choose={(told) => change({ told: told as Told })}
        />
        {form.told === "known" && <NumberOf {...props} path="acid.concentration_mol_dm3" label={words().concentration} />}
        {form.told === "prepared" && <NumberOf {...props} path="acid.prepared_mol_dm3" label={words().concentration} />}
      </Part>
      <Part title={words().alkali} table="alkali" problems={problems}>
        <FieldChoice {...props} path="alkali.name" label={words().reagent} options={reagentOptions(plans.reagents.filter((each) => each.alkali))} />
        <NumberOf {...props} path="alkali.concentration_mol_dm3" label={words().concentration} />
      </Part>
      <Part title={words().portions} table="portions" problems={problems}>
        <NumberOf {...props} path="portions.volume_cm3" label={words().portionVolume} />
        <NumberOf {...props} path="portions.count" label={words().count} />
        <FieldChoice {...props} path="portions.glassware" label={words().glassware} options={[["", words().noGlassware], ...glassware]} />
        <NumberOf {...props} path="portions.u_volume_cm3" label={words().ownU} />
      </Part>
    </>
  );
}

function Once(props: ChoicesProps) {
  const { plans, form, change, problems } = props;
  const soluble = plans.reagents.filter((each) => !each.sparingly_soluble);
  const water: Option = ["water", capital(said("water"))];
  return (
    <>
      <Part title={words().liquid} table="liquid" problems={problems}>
        <FieldChoice {...props} path="liquid.name" label={words().reagent} options={[water, ...reagentOptions(soluble)]} />
        <NumberOf {...props} path="liquid.volume_cm3" label={words().volume} />
        {form.fields["liquid.name"] !== "water" && <NumberOf {...props} path="liquid.concentration_mol_dm3" label={words().concentration} />}
      </Part>
      <Part title={words().addition} table="addition" problems={problems}>
        <ChoiceOf
          path="form"
          label={words().form}
          value={form.solid ? "solid" : "solution"}
          options={(["solid", "solution"] as const).map((each): Option => [each, words().forms[each]])}
          choose={(chosen) => change({ solid: chosen === "solid" })}
        />
        <FieldChoice {...props} path="addition.name" label={words().reagent} options={reagentOptions(form.solid ? plans.reagents : soluble)} />
        {form.solid ? (
          <NumberOf {...props} path="addition.mass_g" label={words().mass} />
        ) : (
          <>
            <NumberOf {...props} path="addition.volume_cm3" label={words().volume} />
            <NumberOf {...props} path="addition.concentration_mol_dm3" label={words().concentration} />
          </>
        )}
      </Part>
    </>
  );
}

const optionsOf = (named: Readonly<Record<string, string>>): Option[] => Object.entries(named);

export function Choices(props: ChoicesProps) {
  const { form, change, problems } = props;
  const once = form.kind === "once";
  return (
    <>
      <Part title={words().kind} problems={problems}>
        <ChoiceOf path="kind" label={words().kind} value={form.kind} options={optionsOf(words().kinds)} choose={(kind) => change({ kind: kind as Kind })} />
        <TextOf {...props} path="title" label={words().title} />
      </Part>
      {once ? <Once {...props} /> : <Portions {...props} />}
      <Part title={words().howItGoes} table="timing" problems={problems}>
        <NumberOf {...props} path="repeats" label={words().repeats} />
        {once ? (
          <>
            <NumberOf {...props} path="timing.before_s" label={words().before} />
            <NumberOf {...props} path="timing.after_s" label={words().after} />
          </>
        ) : (
          <FieldChoice {...props} path="pace" label={words().pace} options={optionsOf(words().paces)} />
        )}
        <FieldChoice {...props} path="prompts" label={words().prompts} options={optionsOf(words().prompters)} />
        <FieldChoice {...props} path="results" label={words().results} options={optionsOf(words().seen)} />
      </Part>
      <Part title={words().setting} problems={problems}>
        <NumberOf {...props} path="surroundings.room_c" label={words().room} hint={words().roomEmpty} />
        <NumberOf {...props} path="cup.heat_capacity_j_k" label={words().cupHeat} />
        <NumberOf {...props} path="cup.u_heat_capacity_j_k" label={words().cupU} />
      </Part>
    </>
  );
}
