// Results that are not shown yet: what they wait for, and what the students have read themselves.

import type { OwnReading, View } from "../contract";
import { words } from "../words";

export function ownInWords({ end_point_cm3, change_c }: OwnReading): string {
  if (end_point_cm3 !== null) return words.ownLines.committed(end_point_cm3);
  return change_c === null ? words.ownLines.committedNothing : words.ownLines.committedChange(change_c);
}

function reason({ rule, waits_for }: View["results"]): string {
  if (waits_for === null) return words.ownLines.computing;
  return waits_for === "end" ? words.ownLines.waitsEndFirst[rule] : words.ownLines.waits[waits_for];
}

/** `change` opens the own reading again; null when there is nothing to change. */
export function Waiting({ view, change }: { view: View; change: (() => void) | null }) {
  const { own_reading, repeats } = view;
  if (repeats.length === 0) return null;
  return (
    <div class="waiting-results">
      {own_reading && <p class="own-committed">{ownInWords(own_reading)}</p>}
      <p class="remark">{reason(view.results)}</p>
      {own_reading && change && (
        <button type="button" class="plain" onClick={change}>
          {words.ownLines.change}
        </button>
      )}
    </div>
  );
}
