// A reason for the record: one of a few, or the students' own words.

import { useState } from "preact/hooks";
import { type Plan } from "../plan";
import { REASONS, REASONS_ONCE } from "../reasons";
import { words } from "../words";

export interface Reason {
  /** What goes into the record; empty while nothing was said. */
  told: string;
  plan: Plan;
  choice: number;
  choose: (index: number) => void;
  own: string;
  type: (text: string) => void;
}

const codes = (plan: Plan): readonly string[] => (plan.kind === "once" ? REASONS_ONCE : REASONS);

export function useReason(plan: Plan): Reason {
  const [choice, choose] = useState(0);
  const [own, type] = useState("");
  return { told: codes(plan)[choice] ?? own.trim(), plan, choice, choose, own, type };
}

export function ReasonField({ reason: { plan, choice, choose, own, type } }: { reason: Reason }) {
  const known = plan.kind === "once" ? words.reasonsOnce : words.reasons;
  return (
    <>
      <label>
        {words.reasonLabel}
        <select value={choice} onChange={(event) => choose(Number(event.currentTarget.value))}>
          {[...known, words.otherReason].map((text, index) => (
            <option key={text} value={index}>
              {text}
            </option>
          ))}
        </select>
      </label>
      {choice === known.length && (
        <label>
          {words.reasonText}
          <input type="text" maxLength={200} value={own} onInput={(event) => type(event.currentTarget.value)} />
        </label>
      )}
    </>
  );
}
