// "Call the teacher": the room's board shows it at once; pressed again it is over.

import type { Acting } from "../live/acts";
import type { View } from "../live/contract";
import { phrase } from "../words";

export function CallButton({ view, acting }: { view: View; acting: Acting }) {
  const calls = view.other_acts.includes("call_over");
  return (
    <button
      type="button"
      class={`plain in-head call${calls ? " calls" : ""}`}
      data-testid="call"
      aria-pressed={calls}
      onClick={() => void acting.send({ act: calls ? "call_over" : "call_teacher" })}
    >
      <svg class="icon" viewBox="0 0 24 24" aria-hidden="true">
        <path d="M7 12V6a1.5 1.5 0 0 1 3 0v5V4a1.5 1.5 0 0 1 3 0v7V5a1.5 1.5 0 0 1 3 0v8q0 8-6 8-4 0-7-7a1.5 1.5 0 0 1 3-1z" />
      </svg>
      <span class="in-head-name">{phrase("page-call", { which: calls ? "calls" : "call" })}</span>
    </button>
  );
}
