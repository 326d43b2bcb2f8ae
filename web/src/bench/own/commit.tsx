// "This is our reading" asks once, for it cannot be changed when results follow; a number without lines is given a reason.

import { useEffect, useRef } from "preact/hooks";
import { useMeant } from "../../page/shared";
import { keyed, phrase } from "../../words";
import { REASONS_NO_LINES } from "../names";

interface Props {
  /** The reading in words. */
  reading: string;
  /** Whether it comes from lines, or needs none. */
  drawn: boolean;
  busy: boolean;
  /** `reason`: how it was read without lines. */
  commit: (reason: string | null) => void;
  back: () => void;
}

export function AskOnce({ reading, drawn, busy, commit, back }: Props) {
  const group = useRef<HTMLDivElement>(null);
  // The second press of a double tap is no answer.
  const meant = useMeant(reading);
  useEffect(() => group.current?.querySelector("button")?.focus({ preventScroll: true }), []);
  const question = drawn ? phrase("page-own-lines-ask", { reading }) : phrase("page-own-lines-ask-without", { reading });
  const give = (reason: string | null) => meant() && !busy && commit(reason);
  return (
    <div class="own-ask" role="group" aria-label={question} ref={group}>
      <p role="status">{question}</p>
      <div class="answers">
        {drawn ? (
          <button type="button" class="strong" aria-disabled={busy} onClick={() => give(null)}>
            {busy ? phrase("page-sending") : phrase("page-own-lines-ask-yes")}
          </button>
        ) : (
          REASONS_NO_LINES.map((reason) => (
            <button type="button" key={reason} aria-disabled={busy} onClick={() => give(reason)}>
              {phrase("page-reason", { reason: keyed(reason) })}
            </button>
          ))
        )}
        <button type="button" class="plain" onClick={back}>
          {phrase("page-own-lines-ask-no")}
        </button>
      </div>
    </div>
  );
}
