// What can be put right now: the newest portion's mishaps one tap away, the rest by what it is about. Whatever cannot
// be taken back is asked once more.

import { useEffect, useRef, useState } from "preact/hooks";
import type { Act } from "../acts";
import type { View } from "../contract";
import { type Choice, choices, possibleCorrections } from "../corrections";
import { addedWord, isOnce, portionWord } from "../plan";
import { DOUBTS, reasonInWords } from "../reasons";
import { words } from "../words";
import type { Acting } from "./acting";
import { formFor } from "./correction_forms";

interface Props {
  view: View;
  acting: Acting;
  close: () => void;
}

/** These need no question: each can be undone at once or loses nothing. */
const AT_ONCE: Record<string, Act> = {
  begin: { act: "begin" },
  rinsed: { act: "rinsed" },
  pause: { act: "pause" },
  resume: { act: "resume" },
  thermometer: { act: "thermometer", division_c: null },
};

function QuickDoubts({ newest, view, send }: { newest: Choice; view: View; send: (act: Act) => void }) {
  const { repeat, portion, unsure, reason } = newest;
  const once = isOnce(view);
  if (unsure) {
    const why = reasonInWords(reason);
    return (
      <div class="quick">
        <p>{once ? words.mistakes.inDoubtOnce(why) : words.mistakes.inDoubt(portion, why)}</p>
        <button type="button" class="plain" onClick={() => send({ act: "portion_sure", repeat, portion })}>
          {words.mistakes.sure}
        </button>
      </div>
    );
  }
  return (
    <div class="quick" role="group" aria-labelledby="quick-doubts">
      <h2 id="quick-doubts">{once ? words.mistakes.doubtTitleOnce : words.mistakes.doubtTitle(portion)}</h2>
      <div class="answers">
        {DOUBTS.map((doubt) => (
          <button
            type="button"
            key={doubt}
            onClick={() => send({ act: "portion_unsure", repeat, portion, reason: doubt })}
          >
            {words.mistakes.doubts[doubt]}
          </button>
        ))}
      </div>
    </div>
  );
}

function nameOf(view: View, name: string): string {
  if (name === "rinsed" && view.state === "done") return words.mistakes.oneMore;
  const own = words.mistakes.names[name as keyof typeof words.mistakes.names];
  if (own) return own;
  const portion = name === "portion_added" ? view.portion + 1 : view.portion;
  return words.correctionNames[name]?.(portionWord(view.plan, portion), addedWord(view.plan)) ?? name;
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
    <div ref={panel} class="correction">
      {newest && <QuickDoubts newest={newest} view={view} send={(act) => void acting.send(act)} />}
      {groups.map(({ group, names }) => (
        <section key={group} aria-labelledby={`about-${group}`}>
          <h2 id={`about-${group}`}>{words.mistakes.groups[group]}</h2>
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
