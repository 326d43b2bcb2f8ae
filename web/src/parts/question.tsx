// What only a person can know: one question at a time, calm, each answer one tap. The instruction stays where it is.

import { useEffect, useRef } from "preact/hooks";
import type { View } from "../contract";
import { keptTogether } from "../format";
import { said, words } from "../words";
import type { Acting } from "./acting";
import { useMeant } from "./meaning";

export function Question({ view, acting }: { view: View; acting: Acting }) {
  const asked = view.questions[0];
  const place = useRef<HTMLElement>(null);
  const answered = useRef(false);
  const meant = useMeant(asked?.id ?? "");
  useEffect(() => {
    // The button that was pressed is gone: keep the keyboard's place near by.
    if (answered.current) place.current?.focus();
    answered.current = false;
  }, [asked?.id]);
  const answer = (question: string, given: string) => {
    if (!meant()) return;
    answered.current = place.current?.contains(document.activeElement) ?? false;
    void acting.send({ act: "answer", question, answer: given });
  };
  // The live region is always there, so that the words are announced when they come, and once.
  return (
    <section class={`question${asked ? " question-asked" : ""}`} ref={place} tabIndex={-1} aria-label={asked && words.question}>
      <div class="question-words" aria-live="polite" aria-atomic="true">
        {asked && <p key={asked.id}>{keptTogether(said(asked.text))}</p>}
      </div>
      {asked && (
        <div class="answers" key={asked.id}>
          {asked.answers.map(({ answer: given, label }) => (
            <button type="button" key={given} aria-disabled={acting.busy} onClick={() => answer(asked.id, given)}>
              {said(label)}
            </button>
          ))}
        </div>
      )}
      {view.questions.length > 1 && <p class="question-more">{words.moreQuestions(view.questions.length - 1)}</p>}
    </section>
  );
}
