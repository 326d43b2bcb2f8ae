// Words that explain themselves: dotted in the text, a button each. What one of them means travels when it is first
// pressed, and stands over the page until Escape, a second press or a press elsewhere.

import { useId } from "preact/hooks";
import { type Term, stretches } from "../words/marks";
import { ask, useAsked } from "./asked";
import { later } from "./shared";

function Word({ term, text }: { term: Term; text: string }) {
  const id = useId();
  const open = useAsked()?.by.id === id;
  return (
    <button
      type="button"
      class="term"
      id={id}
      aria-expanded={open}
      aria-controls="glossary"
      aria-describedby={open ? "glossary-means" : undefined}
      onClick={(event) => ask(open ? null : { term, by: event.currentTarget })}
    >
      {text}
    </button>
  );
}

/** A marked text (`marked`, `markedSaid`) with its words as buttons. */
export function Explained({ text }: { text: string }) {
  return <>{stretches(text).map(({ text: stretch, term }, index) => (term ? <Word key={index} term={term} text={stretch} /> : stretch))}</>;
}

const Meaning = later(() => import("./glossary").then((part) => part.Meaning));

/** The place of the explanation. It is always there, so that what comes into it is announced. */
export function Glossary() {
  const open = useAsked();
  return (
    <div id="glossary" aria-live="polite">
      {open && <Meaning key={open.by.id} asked={open} />}
    </div>
  );
}
