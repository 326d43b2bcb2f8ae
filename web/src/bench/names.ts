// What things are called: what is added, a portion, the reasons that go into the record.

import { CODES, KINDS, kindOf } from "../kinds";
import type { Plan } from "../live/contract";
import { keyed, phrase } from "../words";

/** What is added, in a word: a class knows the alkali, anything else goes by its name. */
export function addedWord(plan: Plan): string {
  return kindOf(plan).added(plan);
}

/** What a correction is about. */
export function portionWord(plan: Plan, portion: number): string {
  return kindOf(plan).portion(plan, portion);
}

// Reasons that go into the record. They are sent in English, whatever the reader's language.

/** Why a portion is in doubt. */
export const DOUBTS = ["spilled", "stirred late", "lid off"] as const;
/** Why nothing could be read off the own lines. */
export const REASONS_UNREAD = [
  "too few readings",
  "the readings scatter too much",
  "the temperature has not turned",
] as const;
/** How a volume was read without lines on the page. */
export const REASONS_NO_LINES = ["lines drawn on paper", "read off the points", "read in another way"] as const;

const OURS = [...CODES.flatMap((code) => KINDS[code].reasons), ...REASONS_UNREAD, ...REASONS_NO_LINES, "differs from the other repeat" as const];

/** A reason in the reader's language when it is one of ours; what a person wrote stays as it was written. */
export function reasonInWords(reason: string | null): string | null {
  const doubt = DOUBTS.find((each) => each === reason);
  if (doubt) return phrase("page-mistakes-doubts", { which: keyed(doubt) });
  const ours = OURS.find((each) => each === reason);
  return ours ? phrase("page-reason", { reason: keyed(ours) }) : reason;
}
