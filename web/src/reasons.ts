// Reasons that go into the record. They are sent in English, whatever the reader's language.

import { words } from "./words";

/** Why a portion is in doubt. */
export const DOUBTS = ["spilled", "stirred late", "lid off"] as const;
/** Why a repeat does not count; in the order of `words.reasons`. */
export const REASONS = [
  "spilled",
  "lost count of the portions",
  "the probe was out of the cup",
  "wrong volume in the cup",
] as const;
/** The same where everything is mixed at once; in the order of `words.reasonsOnce`. */
export const REASONS_ONCE = [
  "spilled",
  "added at the wrong moment",
  "the probe was out of the cup",
  "wrong amounts",
] as const;

/** A reason in the reader's language when it is one of ours; what a person wrote stays as it was written. */
export function reasonInWords(reason: string | null): string | null {
  const doubt = DOUBTS.find((each) => each === reason);
  if (doubt) return words.mistakes.doubts[doubt];
  const at = (all: readonly string[]) => (reason === null ? -1 : all.indexOf(reason));
  return words.reasons[at(REASONS)] ?? words.reasonsOnce[at(REASONS_ONCE)] ?? reason;
}
