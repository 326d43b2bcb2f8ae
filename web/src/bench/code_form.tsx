// The bench's code, asked once, over whatever is on the screen; then the act that waited for it is done.

import { useEffect, useRef, useState } from "preact/hooks";
import type { Acting } from "../live/acts";
import { phrase, said } from "../words";

/** Keep the Tab key among what stands in `place`. */
function keepTab(event: KeyboardEvent, place: HTMLElement | null): void {
  const stops = [...(place?.querySelectorAll<HTMLElement>("input, button") ?? [])];
  const [first, last] = [stops[0], stops[stops.length - 1]];
  if (event.key !== "Tab" || !first || !last) return;
  const [from, to] = event.shiftKey ? [first, last] : [last, first];
  if (document.activeElement !== from) return;
  event.preventDefault();
  to.focus();
}

export function CodeForm({ acting }: { acting: Acting }) {
  const [code, type] = useState("");
  const [why, say] = useState("");
  const [busy, wait] = useState(false);
  const place = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const before = document.activeElement as HTMLElement | null;
    place.current?.querySelector("input")?.focus();
    return () => before?.focus?.();
  }, []);
  const submit = async (event: Event) => {
    event.preventDefault();
    if (busy || code.trim() === "") return;
    wait(true);
    const admission = await acting.giveCode(code.trim());
    wait(false);
    if (admission.admitted) return;
    say(said(admission.words ?? "") || phrase("page-doing-no-answer"));
    place.current?.querySelector("input")?.focus();
  };
  const key = (event: KeyboardEvent) => {
    if (event.key === "Escape") acting.leaveCode();
    keepTab(event, place.current);
  };
  return (
    <div class="over">
      <div class="code-form" ref={place} role="dialog" aria-modal="true" aria-labelledby="code-title" onKeyDown={key}>
        <h2 id="code-title">{phrase("page-doing-code-title")}</h2>
        <p id="code-why">{phrase("page-doing-code-why")}</p>
        <form onSubmit={(event) => void submit(event)}>
          <label>
            {phrase("page-doing-code")}
            <input
              type="text"
              autocomplete="off"
              autocapitalize="off"
              spellcheck={false}
              maxLength={80}
              value={code}
              aria-describedby="code-why code-refused"
              onInput={(event) => type(event.currentTarget.value)}
            />
          </label>
          <p id="code-refused" class="why-not" aria-live="assertive">
            {why}
          </p>
          <div class="answers">
            <button type="submit" class="strong" aria-disabled={busy}>
              {busy ? phrase("page-sending") : phrase("page-doing-give-code")}
            </button>
            <button type="button" class="plain" onClick={acting.leaveCode}>
              {phrase("page-doing-leave-code")}
            </button>
          </div>
        </form>
      </div>
    </div>
  );
}
