// Corrections in words: what is possible now, one question before anything that cannot be taken back.

import { useEffect, useRef, useState } from "preact/hooks";
import type { Act } from "../acts";
import type { View } from "../contract";
import { addedWord, addsSolid, portionWord } from "../plan";
import { words } from "../words";
import type { Acting } from "./acting";
import { formFor } from "./correction_forms";

/** The order they stand in: small and frequent first, what ends something last. */
const ORDER = [
  "portion_added",
  "portion_unsure",
  "portion_volume",
  "portion_undone",
  "alkali_temperature",
  "begin",
  "rinsed",
  "resume",
  "pause",
  "repeat_restarted",
  "finish",
];
/** These need no question: each can be undone at once or loses nothing. */
const AT_ONCE = ["begin", "rinsed", "pause", "resume"];

/** What can be corrected now; a weighed solid has no volume. */
export function possibleCorrections(view: View): string[] {
  const solid = addsSolid(view.plan);
  return ORDER.filter((act) => view.other_acts.includes(act) && !(solid && act === "portion_volume"));
}

export function Corrections({ view, acting }: { view: View; acting: Acting }) {
  const [open, setOpen] = useState(false);
  const [chosen, choose] = useState<string | null>(null);
  const panel = useRef<HTMLDivElement>(null);
  const toggle = useRef<HTMLButtonElement>(null);
  const possible = possibleCorrections(view);
  const asked = chosen !== null && possible.includes(chosen) ? chosen : null;
  useEffect(() => {
    if (asked) panel.current?.querySelector<HTMLElement>("select, input, button")?.focus();
  }, [asked]);
  if (possible.length === 0) return null;
  const close = () => {
    choose(null);
    setOpen(false);
    toggle.current?.focus();
  };
  const send = (act: Act) => void acting.send(act).then((taken) => taken && close());
  const Form = asked === null ? null : formFor(asked);
  const name = (act: string) => {
    const portion = act === "portion_added" ? view.portion + 1 : view.portion;
    return words.correctionNames[act]?.(portionWord(view.plan, portion), addedWord(view.plan));
  };
  return (
    <section class="corrections" onKeyDown={(event) => event.key === "Escape" && open && close()}>
      <button
        type="button"
        class="plain toggle"
        ref={toggle}
        aria-expanded={open}
        aria-controls="corrections"
        onClick={() => (open ? close() : setOpen(true))}
      >
        {words.corrections}
      </button>
      <div id="corrections" ref={panel} hidden={!open}>
        {Form && asked ? (
          <>
            <h2>{name(asked)}</h2>
            <Form act={asked} view={view} busy={acting.busy} send={send} close={() => choose(null)} />
          </>
        ) : (
          <ul>
            {possible.map((act) => (
              <li key={act}>
                <button
                  type="button"
                  class="plain"
                  onClick={() => (AT_ONCE.includes(act) ? send({ act }) : choose(act))}
                >
                  {name(act)}
                </button>
              </li>
            ))}
          </ul>
        )}
      </div>
    </section>
  );
}
