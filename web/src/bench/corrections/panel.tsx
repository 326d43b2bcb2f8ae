// What can be put right now: the newest portion's mishaps one tap away, the rest by what it is about. Whatever cannot
// be taken back is asked once more.

import { parts as details } from "@kinds/details";
import type { ComponentType } from "preact";
import { useEffect, useRef, useState } from "preact/hooks";
import type { Act, Acting } from "../../live/acts";
import { kindOf } from "../../kinds";
import type { View } from "../../live/contract";
import { Buttons, type FormProps, NumberField, ReasonField, useNumber, useReason } from "../../page/forms";
import { later } from "../../page/shared";
import { capital } from "../../phrases/quantities";
import { keyed, phrase, said } from "../../words";
import { DOUBTS, addedWord, portionWord, reasonInWords } from "../names";
import { DoubtForm, GroupForm, MoreForm, NotesForm, ReadingForm, RestoreForm, SetAsideForm, VolumeForm } from "./forms";
import { type Choice, choices, possibleCorrections } from "./possible";

interface Props {
  view: View;
  acting: Acting;
  close: () => void;
}

/** These need no question: each can be undone at once or loses nothing. */
const AT_ONCE: Record<string, Act> = {
  begin: { act: "begin" },
  rinsed: { act: "rinsed" },
  one_more: { act: "one_more" },
  pause: { act: "pause" },
  resume: { act: "resume" },
  thermometer: { act: "thermometer", division_c: null },
};

function QuickDoubts({ newest, view, send }: { newest: Choice; view: View; send: (act: Act) => void }) {
  const { repeat, portion, unsure, reason } = newest;
  const told = details[view.plan.kind];
  if (unsure) {
    const why = reasonInWords(reason);
    return (
      <div class="quick">
        <p>{told.inDoubt(portion, why)}</p>
        <button type="button" class="plain" onClick={() => send({ act: "portion_sure", repeat, portion })}>
          {phrase("page-mistakes-sure")}
        </button>
      </div>
    );
  }
  return (
    <div class="quick" role="group" aria-labelledby="quick-doubts">
      <h2 id="quick-doubts">{told.doubtOf(portion)}</h2>
      <div class="answers">
        {DOUBTS.map((doubt) => (
          <button
            type="button"
            key={doubt}
            onClick={() => send({ act: "portion_unsure", repeat, portion, reason: doubt })}
          >
            {phrase("page-mistakes-doubts", { which: keyed(doubt) })}
          </button>
        ))}
      </div>
    </div>
  );
}

function nameOf(view: View, name: string): string {
  if (name === "one_more") return phrase("page-mistakes-one-more");
  const portion = name === "portion_added" ? view.portion + 1 : view.portion;
  const what = capital(portionWord(view.plan, portion));
  return phrase("page-correction-name", { name, what, added: said(addedWord(view.plan)) });
}

export function CorrectionsPanel({ view, acting, close }: Props) {
  const [chosen, choose] = useState<string | null>(null);
  const panel = useRef<HTMLDivElement>(null);
  const groups = possibleCorrections(view);
  const asked = groups.some(({ names }) => names.includes(chosen ?? "")) ? chosen : null;
  useEffect(() => {
    // A form that is still on its way has nothing to focus: the panel itself keeps the keyboard's place.
    if (asked) (panel.current?.querySelector<HTMLElement>("select, input, button") ?? panel.current)?.focus();
  }, [asked]);
  const transmit = async (acts: readonly Act[]) => {
    for (const act of acts) {
      if (!(await acting.send(act))) return false;
    }
    return true;
  };
  const send = (...acts: Act[]) => void transmit(acts).then((taken) => taken && close());
  const Form = asked === null ? null : formFor(asked);
  const newest = view.other_acts.includes("portion_unsure") ? choices(view)[0] : undefined;
  if (Form && asked) {
    return (
      <div ref={panel} class="correction" tabIndex={-1}>
        <h2>{nameOf(view, asked)}</h2>
        <Form act={asked} view={view} busy={acting.busy} send={send} keep={transmit} close={() => choose(null)} />
      </div>
    );
  }
  return (
    <div ref={panel} class="correction correction-groups">
      {newest && <QuickDoubts newest={newest} view={view} send={(act) => void acting.send(act)} />}
      {groups.map(({ group, names }) => (
        <section key={group} aria-labelledby={`about-${group}`}>
          <h2 id={`about-${group}`}>{phrase("page-mistakes-groups", { which: group })}</h2>
          <ul>
            {names.map((name) => {
              const act = AT_ONCE[name];
              return (
                <li key={name}>
                  <button type="button" class="plain" onClick={() => (act ? send(act) : choose(name))}>
                    {nameOf(view, name)}
                  </button>
                </li>
              );
            })}
          </ul>
        </section>
      ))}
    </div>
  );
}

// The forms behind the corrections: what is asked before an act is sent.

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
      <p>{phrase("page-ask-repeat-restarted", { repeat: view.repeat })}</p>
      <ReasonField reason={reason} />
      <Buttons act={act} busy={busy} close={close} ready={reason.told !== ""} />
    </form>
  );
}

function AlkaliForm({ act, view, busy, send, close }: FormProps) {
  const typed = useNumber();
  const submit = (event: Event) => {
    event.preventDefault();
    const temperature_c = typed.read();
    if (temperature_c !== null) send({ act, temperature_c });
  };
  const dips = view.state !== "alkali" && !kindOf(view.plan).addsSolid(view.plan) && view.thermometer.kind === "probe";
  return (
    <form onSubmit={submit}>
      {dips && (
        <button type="button" class="strong" disabled={busy} onClick={() => send({ act })}>
          {phrase("page-measure-with-probe")}
        </button>
      )}
      <NumberField
        label={phrase("page-added-temperature", { added: said(addedWord(view.plan)) })}
        value={typed.text}
        change={typed.type}
        why={typed.why}
      />
      <Buttons act={act} busy={busy} close={close} ready={typed.text.trim() !== ""} />
    </form>
  );
}

function ConfirmForm({ act, view, busy, send, close }: FormProps) {
  const last = view.portion;
  const question = act === "portion_undone" ? phrase("page-ask-portion-undone", { what: portionWord(view.plan, last) })
    : act === "portion_added" ? phrase("page-ask-portion-added", { what: portionWord(view.plan, last + 1) })
    : act === "finish_undone" ? phrase("page-ask-finish-undone")
    : view.turned === false ? phrase("page-ask-finish-before-turn")
    : phrase("page-ask-finish");
  const submit = (event: Event) => {
    event.preventDefault();
    if (act === "portion_undone") send({ act, portion: last });
    else if (act === "portion_added") send({ act, portion: last + 1 });
    else send({ act });
  };
  return (
    <form onSubmit={submit}>
      <p>{question}</p>
      {act === "finish" && view.turned === false ? (
        <div class="answers">
          <button type="button" class="strong" onClick={() => send()}>
            {phrase("page-ask-finish-go-on")}
          </button>
          <button type="submit" class="plain" disabled={busy}>
            {phrase("page-yes", { which: act })}
          </button>
        </div>
      ) : (
        <Buttons act={act} busy={busy} close={close} />
      )}
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
function formFor(name: string): ComponentType<FormProps> {
  return FORMS[name] ?? ConfirmForm;
}
