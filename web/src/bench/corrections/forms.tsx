// The forms that correct portions, repeats and the group.

import { parts as details } from "@kinds/details";
import { useState } from "preact/hooks";
import { minutesText, short } from "../../format";
import { kindOf } from "../../kinds";
import type { Note, View } from "../../live/contract";
import {
  Back,
  Buttons,
  type FormProps,
  NumberField,
  PortionChoice,
  ReasonField,
  Taps,
  TextField,
  useNumber,
  useReason,
} from "../../page/forms";
import { inDoubtText, restoreNameText } from "../../phrases/reasons";
import { dress, phrase } from "../../words";
import { reasonInWords } from "../names";
import { TemperatureField, stepOf } from "../typed";
import { choices, clockedReadings, endedRepeats, likelyVolumes, moreThan, restorableRepeats, typedReadings } from "./possible";

// What may be wrong with a portion: how many went in, how much, a doubt, a typed reading.

/** "We added 6": every portion up to it is recorded, one by one. */
export function MoreForm({ view, busy, send, close }: FormProps) {
  const from = view.portion;
  const added = (count: number) => {
    const portions = Array.from({ length: count - from }, (_, index) => from + 1 + index);
    send(...portions.map((portion) => ({ act: "portion_added", portion })));
  };
  return (
    <form>
      <Taps title={phrase("page-mistakes-more-title")}>
        {moreThan(view).map((count) => (
          <button type="button" key={count} data-count={count} disabled={busy} onClick={() => added(count)}>
            {dress(short(count))}
          </button>
        ))}
      </Taps>
      <Back close={close} />
    </form>
  );
}

export function VolumeForm({ act, view, busy, send, close }: FormProps) {
  // What was there when the form opened: a portion added meanwhile must not shift the choice.
  const [from] = useState(() => choices(view));
  const [index, choose] = useState(0);
  const typed = useNumber();
  const chosen = from[index];
  const planned_cm3 = kindOf(view.plan).portion_cm3(view.plan);
  const correct = (to_cm3: number) =>
    chosen && send({ act, repeat: chosen.repeat, portion: chosen.portion, volume_cm3: to_cm3 });
  const submit = (event: Event) => {
    event.preventDefault();
    const volume_cm3 = typed.read();
    if (volume_cm3 !== null) correct(volume_cm3);
  };
  return (
    <form onSubmit={submit}>
      <PortionChoice from={from} plan={view.plan} value={index} choose={choose} />
      <Taps title={phrase("page-mistakes-quick-volume")}>
        {likelyVolumes(planned_cm3, chosen?.volume_cm3 ?? planned_cm3).map((likely_cm3) => (
          <button type="button" key={likely_cm3} disabled={busy} onClick={() => correct(likely_cm3)}>
            {likely_cm3 === planned_cm3 ? phrase("page-mistakes-as-planned", { volume: short(likely_cm3) }) : phrase("page-mistakes-volume-of", { volume: short(likely_cm3) })}
          </button>
        ))}
      </Taps>
      <NumberField label={phrase("page-real-volume")} value={typed.text} change={typed.type} why={typed.why} />
      <Buttons act={act} busy={busy} close={close} ready={chosen !== undefined && typed.text.trim() !== ""} />
    </form>
  );
}

/** A doubt about any portion, and the way back. */
export function DoubtForm({ act, view, busy, send, close }: FormProps) {
  const [from] = useState(() => choices(view));
  const [index, choose] = useState(0);
  const [reason, type] = useState("");
  const chosen = from[index];
  const now = choices(view).find(({ repeat, portion }) => repeat === chosen?.repeat && portion === chosen?.portion);
  const submit = (event: Event) => {
    event.preventDefault();
    if (!now) return;
    const { repeat, portion } = now;
    if (now.unsure) send({ act: "portion_sure", repeat, portion });
    else send({ act, repeat, portion, ...(reason.trim() ? { reason: reason.trim() } : {}) });
  };
  return (
    <form onSubmit={submit}>
      <PortionChoice from={from} plan={view.plan} value={index} choose={choose} />
      {now?.unsure ? (
        <p>{inDoubtText(now.portion, reasonInWords(now.reason))}</p>
      ) : (
        <TextField label={phrase("page-mistakes-other-doubt")} longest={200} value={reason} change={type} />
      )}
      <Buttons
        act={act}
        busy={busy}
        close={close}
        ready={now !== undefined}
        {...(now?.unsure ? { yes: phrase("page-mistakes-sure") } : {})}
      />
    </form>
  );
}

/** Typed readings by their place: of a portion, or of the clock. */
function toCorrect(view: View): { name: string; temperature_c: number; place: { repeat: number; portion?: number; at_s?: number } }[] {
  const ofPortions = typedReadings(view).map(({ repeat, portion, temperature_c }) => ({
    name: phrase("page-mistakes-reading-name", { portion, repeat, temperature: short(temperature_c) }),
    temperature_c,
    place: { repeat, portion },
  }));
  const byClock = clockedReadings(view).map(({ repeat, at_s, temperature_c }) => ({
    name: phrase("page-mistakes-clock-reading", { repeat, minutes: minutesText(at_s), temperature: short(temperature_c) }),
    temperature_c,
    place: { repeat, at_s },
  }));
  return [...byClock, ...ofPortions];
}

/** An earlier typed reading was misread or mistyped. */
export function ReadingForm({ act, view, busy, send, close }: FormProps) {
  const [from] = useState(() => toCorrect(view));
  const [index, choose] = useState(0);
  const chosen = from[index];
  return (
    <>
      <label>
        {phrase("page-mistakes-which-reading")}
        <select value={index} onChange={(event) => choose(Number(event.currentTarget.value))}>
          {from.map(({ name }, each) => (
            <option key={name} value={each}>
              {name}
            </option>
          ))}
        </select>
      </label>
      <TemperatureField
        step_c={stepOf(view)}
        before_c={chosen?.temperature_c ?? null}
        busy={busy}
        label={phrase("page-mistakes-right-reading")}
        give={(temperature_c) => chosen && send({ act, temperature_c, ...chosen.place })}
      />
      <Back close={close} />
    </>
  );
}

// A repeat that does not count, and one that counts again: only a person decides, and says why.

export function SetAsideForm({ act, view, busy, send, close }: FormProps) {
  const ended = endedRepeats(view);
  const [chosen, choose] = useState(ended[ended.length - 1]?.repeat ?? 1);
  const reason = useReason(view.plan);
  const submit = (event: Event) => {
    event.preventDefault();
    if (reason.told) send({ act, repeat: chosen, reason: reason.told });
  };
  return (
    <form onSubmit={submit}>
      <p>{phrase("page-mistakes-set-aside-why")}</p>
      <label>
        {phrase("page-which-repeat")}
        <select value={chosen} onChange={(event) => choose(Number(event.currentTarget.value))}>
          {ended.map(({ repeat }) => (
            <option key={repeat} value={repeat}>
              {phrase("page-repeat-name", { repeat })}
            </option>
          ))}
        </select>
      </label>
      <ReasonField reason={reason} />
      <Buttons act={act} busy={busy} close={close} ready={reason.told !== ""} yes={phrase("page-mistakes-set-aside")} />
    </form>
  );
}

export function RestoreForm({ act, view, busy, send, close }: FormProps) {
  return (
    <form>
      <Taps title={phrase("page-mistakes-restore-why")}>
        {restorableRepeats(view).map(({ repeat, reason }) => (
          <button type="button" key={repeat} disabled={busy} onClick={() => send({ act, repeat })}>
            {restoreNameText(repeat, reasonInWords(reason))}
          </button>
        ))}
      </Taps>
      <Back close={close} />
    </form>
  );
}

// The group's own: notes for the record, and a label.

function aboutOf({ repeat, portion }: Pick<Note, "repeat" | "portion">): string {
  if (repeat === null) return phrase("page-mistakes-about-all");
  return portion === null ? phrase("page-repeat-name", { repeat }) : `${phrase("page-repeat-name", { repeat })}, ${phrase("page-portion", { portion })}`;
}

function Notes({ notes, busy, withdraw }: { notes: readonly Note[]; busy: boolean; withdraw: (note: number) => void }) {
  return (
    <ul class="notes">
      {notes.map((note) => (
        <li key={note.id}>
          {note.withdrawn ? (
            <p>
              <s>{phrase("page-mistakes-note-of", { about: aboutOf(note), text: note.text })}</s> ({phrase("page-mistakes-note-withdrawn")})
            </p>
          ) : (
            <>
              <p>{phrase("page-mistakes-note-of", { about: aboutOf(note), text: note.text })}</p>
              <button
                type="button"
                class="plain"
                aria-label={`${phrase("page-mistakes-note-withdraw")}: ${note.text}`}
                disabled={busy}
                onClick={() => withdraw(note.id)}
              >
                {phrase("page-mistakes-note-withdraw")}
              </button>
            </>
          )}
        </li>
      ))}
    </ul>
  );
}

export function NotesForm({ act, view, busy, keep, close }: FormProps) {
  const [text, type] = useState("");
  const [about, choose] = useState("");
  const portions = choices(view);
  const submit = async (event: Event) => {
    event.preventDefault();
    const [repeat, portion] = about === "" ? [] : about.split(" ").map(Number);
    const where = { ...(repeat ? { repeat } : {}), ...(portion && kindOf(view.plan).inPortions ? { portion } : {}) };
    if (await keep([{ act, text: text.trim(), ...where }])) type("");
  };
  return (
    <>
      <Notes notes={view.notes} busy={busy} withdraw={(note) => void keep([{ act: "note_withdrawn", note }])} />
      <form onSubmit={(event) => void submit(event)}>
        <TextField label={phrase("page-mistakes-note-text")} longest={200} value={text} change={type} />
        <label>
          {phrase("page-mistakes-note-about")}
          <select value={about} onChange={(event) => choose(event.currentTarget.value)}>
            <option value="">{phrase("page-mistakes-about-all")}</option>
            {portions.map(({ repeat, portion, volume_cm3 }) => (
              <option key={`${repeat} ${portion}`} value={`${repeat} ${portion}`}>
                {details[view.plan.kind].noted(repeat, portion, volume_cm3)}
              </option>
            ))}
          </select>
        </label>
        <button type="submit" class="strong" disabled={busy || text.trim() === ""}>
          {phrase("page-mistakes-note-keep")}
        </button>
      </form>
      <Back close={close} />
    </>
  );
}

export function GroupForm({ act, view, busy, send, close }: FormProps) {
  const [label, type] = useState(view.group ?? "");
  const submit = (event: Event) => {
    event.preventDefault();
    send({ act, label: label.trim() });
  };
  return (
    <form onSubmit={submit}>
      <TextField label={phrase("page-mistakes-group-label")} longest={24} value={label} change={type} />
      <Buttons act={act} busy={busy} close={close} yes={phrase("page-mistakes-group-keep")} />
    </form>
  );
}
