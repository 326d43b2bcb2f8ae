// The group's own: notes for the record, and a label.

import { useState } from "preact/hooks";
import type { Note } from "../contract";
import { choices } from "../corrections";
import { isOnce } from "../plan";
import { words } from "../words";
import { Back, Buttons, type FormProps, TextField } from "./form_parts";

function aboutOf({ repeat, portion }: Pick<Note, "repeat" | "portion">): string {
  if (repeat === null) return words.mistakes.aboutAll;
  return portion === null ? words.repeatName(repeat) : `${words.repeatName(repeat)}, ${words.portion(portion)}`;
}

function Notes({ notes, busy, withdraw }: { notes: readonly Note[]; busy: boolean; withdraw: (note: number) => void }) {
  return (
    <ul class="notes">
      {notes.map((note) => (
        <li key={note.id}>
          {note.withdrawn ? (
            <p>
              <s>{words.mistakes.noteOf(aboutOf(note), note.text)}</s> ({words.mistakes.noteWithdrawn})
            </p>
          ) : (
            <>
              <p>{words.mistakes.noteOf(aboutOf(note), note.text)}</p>
              <button
                type="button"
                class="plain"
                aria-label={`${words.mistakes.noteWithdraw}: ${note.text}`}
                disabled={busy}
                onClick={() => withdraw(note.id)}
              >
                {words.mistakes.noteWithdraw}
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
    const where = { ...(repeat ? { repeat } : {}), ...(portion && !isOnce(view) ? { portion } : {}) };
    if (await keep([{ act, text: text.trim(), ...where }])) type("");
  };
  return (
    <>
      <Notes notes={view.notes} busy={busy} withdraw={(note) => void keep([{ act: "note_withdrawn", note }])} />
      <form onSubmit={(event) => void submit(event)}>
        <TextField label={words.mistakes.noteText} longest={200} value={text} change={type} />
        <label>
          {words.mistakes.noteAbout}
          <select value={about} onChange={(event) => choose(event.currentTarget.value)}>
            <option value="">{words.mistakes.aboutAll}</option>
            {portions.map(({ repeat, portion, volume_cm3 }) => (
              <option key={`${repeat} ${portion}`} value={`${repeat} ${portion}`}>
                {isOnce(view) ? words.repeatName(repeat) : words.portionName(repeat, portion, volume_cm3)}
              </option>
            ))}
          </select>
        </label>
        <button type="submit" class="strong" disabled={busy || text.trim() === ""}>
          {words.mistakes.noteKeep}
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
      <TextField label={words.mistakes.groupLabel} longest={24} value={label} change={type} />
      <Buttons act={act} busy={busy} close={close} yes={words.mistakes.groupKeep} />
    </form>
  );
}
