// The forms behind the corrections: what is asked before an act is sent.

import { useState } from "preact/hooks";
import type { Act } from "../acts";
import type { View } from "../contract";
import { addedWord, addsSolid, isOnce, portionWord } from "../plan";
import { typedNumber } from "../typed";
import { words } from "../words";

export interface FormProps {
  act: string;
  view: View;
  busy: boolean;
  send: (act: Act) => void;
  close: () => void;
}

interface Choice {
  repeat: number;
  portion: number;
  volume_cm3: number;
}

/** Every portion that can be corrected, the newest first. */
export function choices(view: View): Choice[] {
  const all = view.repeats
    .filter((repeat) => repeat.status !== "set aside")
    .flatMap(({ repeat, portions }) => portions.map(({ portion, volume_cm3 }) => ({ repeat, portion, volume_cm3 })));
  return all.reverse();
}

interface ChoiceProps {
  from: Choice[];
  once: boolean;
  value: number;
  choose: (index: number) => void;
}

function PortionChoice({ from, once, value, choose }: ChoiceProps) {
  return (
    <label>
      {once ? words.whichRepeat : words.whichPortion}
      <select value={value} onChange={(event) => choose(Number(event.currentTarget.value))}>
        {from.map(({ repeat, portion, volume_cm3 }, index) => (
          <option key={`${repeat} ${portion}`} value={index}>
            {once ? words.onceName(repeat, volume_cm3) : words.portionName(repeat, portion, volume_cm3)}
          </option>
        ))}
      </select>
    </label>
  );
}

function NumberField({ label, value, change }: { label: string; value: string; change: (text: string) => void }) {
  return (
    <label>
      {label}
      <input
        type="text"
        inputMode="decimal"
        autocomplete="off"
        value={value}
        onInput={(event) => change(event.currentTarget.value)}
      />
    </label>
  );
}

function Buttons({ act, busy, close, ready = true }: { act: string; busy: boolean; close: () => void; ready?: boolean }) {
  return (
    <div class="answers">
      <button type="submit" class="strong" disabled={busy || !ready}>
        {words.yes[act]}
      </button>
      <button type="button" class="plain" onClick={close}>
        {words.no}
      </button>
    </div>
  );
}

function PortionForm({ act, view, busy, send, close }: FormProps) {
  // What was there when the form opened: a portion added meanwhile must not shift the choice.
  const [from] = useState(() => choices(view));
  const [index, choose] = useState(0);
  const [volume, type] = useState("");
  const volume_cm3 = typedNumber(volume);
  const needsVolume = act === "portion_volume";
  const chosen = from[index];
  const submit = (event: Event) => {
    event.preventDefault();
    if (!chosen) return;
    const meant = { act, repeat: chosen.repeat, portion: chosen.portion };
    if (!needsVolume) send(meant);
    else if (volume_cm3 !== null) send({ ...meant, volume_cm3 });
  };
  return (
    <form onSubmit={submit}>
      <PortionChoice from={from} once={isOnce(view)} value={index} choose={choose} />
      {needsVolume && <NumberField label={words.realVolume} value={volume} change={type} />}
      <Buttons act={act} busy={busy} close={close} ready={Boolean(chosen) && (!needsVolume || volume_cm3 !== null)} />
    </form>
  );
}

function RestartForm({ act, view, busy, send, close }: FormProps) {
  const reasons = isOnce(view) ? words.reasonsOnce : words.reasons;
  const [choice, choose] = useState<string>(reasons[0]);
  const [own, type] = useState("");
  const reason = choice === words.otherReason ? own.trim() : choice;
  const submit = (event: Event) => {
    event.preventDefault();
    if (reason) send({ act, reason });
  };
  return (
    <form onSubmit={submit}>
      <p>{words.ask.repeat_restarted(view.repeat)}</p>
      <label>
        {words.reasonLabel}
        <select value={choice} onChange={(event) => choose(event.currentTarget.value)}>
          {[...reasons, words.otherReason].map((text) => (
            <option key={text} value={text}>
              {text}
            </option>
          ))}
        </select>
      </label>
      {choice === words.otherReason && (
        <label>
          {words.reasonText}
          <input type="text" maxLength={200} value={own} onInput={(event) => type(event.currentTarget.value)} />
        </label>
      )}
      <Buttons act={act} busy={busy} close={close} ready={reason !== ""} />
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
  return (
    <form onSubmit={submit}>
      {view.state !== "alkali" && !addsSolid(view.plan) && (
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

const FORMS: Record<string, (props: FormProps) => preact.JSX.Element> = {
  portion_volume: PortionForm,
  portion_unsure: PortionForm,
  repeat_restarted: RestartForm,
  alkali_temperature: AlkaliForm,
};

/** The form that belongs to an act; a plain question where there is none of its own. */
export function formFor(act: string): (props: FormProps) => preact.JSX.Element {
  return FORMS[act] ?? ConfirmForm;
}
