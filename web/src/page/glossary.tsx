// What one word of the glossary means: a note beside the word, over the page.

import { useEffect, useLayoutEffect, useRef } from "preact/hooks";
import { phrase } from "../words";
import { type Asked, ask } from "./asked";

/** Left free between the note and the word, and the note and the edge of the screen / px. */
const FREE_PX = 8;

/** Beside the word: below it, or above it where more of the screen is. */
function place(note: HTMLElement, by: HTMLElement): void {
  const word = by.getBoundingClientRect();
  const { clientWidth, clientHeight } = document.documentElement;
  const most = clientWidth - note.offsetWidth - FREE_PX;
  const below = word.top + word.bottom < clientHeight;
  const top = below ? word.bottom + FREE_PX : word.top - FREE_PX - note.offsetHeight;
  note.style.left = `${scrollX + Math.max(FREE_PX, Math.min(word.left, most))}px`;
  note.style.top = `${scrollY + top}px`;
}

export function Meaning({ asked: { term, by } }: { asked: Asked }) {
  const note = useRef<HTMLDivElement>(null);
  useLayoutEffect(() => {
    if (note.current) place(note.current, by);
  });
  useEffect(() => {
    const leave = () => ask(null);
    const escape = (event: KeyboardEvent) => event.key === "Escape" && leave();
    const elsewhere = ({ target }: Event) => {
      if (!note.current?.contains(target as Node) && !by.contains(target as Node)) leave();
    };
    const look = () => (by.isConnected ? note.current && place(note.current, by) : leave());
    // The page is drawn afresh while one reads: without its word the note goes, too.
    const drawn = new MutationObserver(look);
    drawn.observe(document.body, { childList: true, subtree: true });
    addEventListener("keydown", escape);
    addEventListener("resize", look);
    document.addEventListener("pointerdown", elsewhere);
    return () => {
      drawn.disconnect();
      removeEventListener("keydown", escape);
      removeEventListener("resize", look);
      document.removeEventListener("pointerdown", elsewhere);
    };
  }, [by]);
  const close = () => {
    ask(null);
    by.focus();
  };
  return (
    <div class="meaning" ref={note} role="group" aria-label={phrase("page-glossary")}>
      <p class="meaning-word">{phrase("page-glossary-word", { which: term })}</p>
      <p id="glossary-means">{phrase("page-glossary-means", { which: term })}</p>
      <button type="button" class="plain" aria-label={phrase("page-glossary-close")} onClick={close}>
        ×
      </button>
    </div>
  );
}
