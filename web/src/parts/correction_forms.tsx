// The forms behind the corrections: what is asked before an act is sent.

import type { ComponentType } from "preact";
import { useState } from "preact/hooks";
import { addedWord, addsSolid, portionWord } from "../plan";
import { typedNumber } from "../typed";
import { words } from "../words";
import { Buttons, type FormProps, NumberField } from "./form_parts";
import { GroupForm, NotesForm } from "./group_forms";
import { later } from "./later";
import { DoubtForm, MoreForm, ReadingForm, VolumeForm } from "./portion_forms";
import { ReasonField, useReason } from "./reason";
import { RestoreForm, SetAsideForm } from "./repeat_forms";

const AdoptForm = later<FormProps>(() => import("./adopt").then((part) => part.AdoptForm));
const ReturnForm = later<FormProps>(() => import("./adopt").then((part) => part.ReturnForm));

function RestartForm({ act, view, busy, send, close }: FormProps) {
  const reason = useReason(view.plan);
  const submit = (event: Event) => {
    event.preventDefault();
    if (reason.told) send({ act, reason: reason.told });
  };
  return (
    <form onSubmit={submit}>
      <p>{words.ask.repeat_restarted(view.repeat)}</p>
      <ReasonField reason={reason} />
      <Buttons act={act} busy={busy} close={close} ready={reason.told !== ""} />
    </form>
  );
}

function AlkaliForm({ act, view, busy, send, close }: FormProps) {
  const [text, type] = useState("");
  const temperature_c = typedNumber(text);
  const submit = (event: Event) => {
    event.preventDefault();
    if (temperature_c !== null) send({ act, temperature_c });
  };
  const dips = view.state !== "alkali" && !addsSolid(view.plan) && view.thermometer.kind === "probe";
  return (
    <form onSubmit={submit}>
      {dips && (
        <button type="button" class="strong" disabled={busy} onClick={() => send({ act })}>
          {words.measureWithProbe}
        </button>
      )}
      <NumberField label={words.addedTemperature(addedWord(view.plan))} value={text} change={type} />
      <Buttons act={act} busy={busy} close={close} ready={temperature_c !== null} />
    </form>
  );
}

function ConfirmForm({ act, view, busy, send, close }: FormProps) {
  const last = view.portion;
  const question = act === "portion_undone" ? words.ask.portion_undone(portionWord(view.plan, last))
    : act === "portion_added" ? words.ask.portion_added(portionWord(view.plan, last + 1))
    : words.ask.finish;
  const submit = (event: Event) => {
    event.preventDefault();
    if (act === "portion_undone") send({ act, portion: last });
    else if (act === "portion_added") send({ act, portion: last + 1 });
    else send({ act });
  };
  return (
    <form onSubmit={submit}>
      <p>{question}</p>
      <Buttons act={act} busy={busy} close={close} />
    </form>
  );
}

const FORMS: Record<string, ComponentType<FormProps>> = {
  more: MoreForm,
  portion_volume: VolumeForm,
  portion_unsure: DoubtForm,
  reading: ReadingForm,
  repeat_restarted: RestartForm,
  repeat_set_aside: SetAsideForm,
  repeat_restored: RestoreForm,
  alkali_temperature: AlkaliForm,
  note: NotesForm,
  group: GroupForm,
  adopt: AdoptForm,
  adopt_returned: ReturnForm,
};

/** The form that belongs to a correction; a plain question where there is none of its own. */
export function formFor(name: string): ComponentType<FormProps> {
  return FORMS[name] ?? ConfirmForm;
}
