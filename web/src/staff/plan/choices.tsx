// What is chosen for a practical, part by part.

import { parts as forms } from "@kinds/form";
import { CODES, type KindCode } from "../../kinds";
import { keyed, phrase } from "../../words";
import { ChoiceOf, type ChoicesProps, FieldChoice, NumberOf, Part, TextOf, optionsOf } from "./fields";

const PROMPTERS = ["station", "own judgement"] as const;
const SEEN = ["at once", "after own reading", "when shown"] as const;

export function Choices(props: ChoicesProps) {
  const { form, change, problems } = props;
  const { Ingredients, Timing } = forms[form.kind];
  return (
    <>
      <Part title={phrase("page-plan-kind")} problems={problems}>
        <ChoiceOf path="kind" label={phrase("page-plan-kind")} value={form.kind} options={optionsOf(CODES, (key) => phrase("page-plan-kinds", { which: key }))} choose={(kind) => change({ kind: kind as KindCode })} />
        <TextOf {...props} path="title" label={phrase("page-plan-title")} />
      </Part>
      <Ingredients {...props} />
      <Part title={phrase("page-plan-how-it-goes")} table="timing" problems={problems}>
        <NumberOf {...props} path="repeats" label={phrase("page-plan-repeats")} />
        <Timing {...props} />
        <FieldChoice {...props} path="prompts" label={phrase("page-plan-prompts")} options={optionsOf(PROMPTERS, (key) => phrase("page-plan-prompters", { which: keyed(key) }))} />
        <FieldChoice {...props} path="results" label={phrase("page-plan-results")} options={optionsOf(SEEN, (key) => phrase("page-plan-seen", { which: keyed(key) }))} />
      </Part>
      <Part title={phrase("page-plan-setting")} problems={problems}>
        <NumberOf {...props} path="surroundings.room_c" label={phrase("page-plan-room")} hint={phrase("page-plan-room-empty")} />
        <NumberOf {...props} path="cup.heat_capacity_j_k" label={phrase("page-plan-cup-heat")} />
        <NumberOf {...props} path="cup.u_heat_capacity_j_k" label={phrase("page-plan-cup-u")} />
      </Part>
    </>
  );
}
