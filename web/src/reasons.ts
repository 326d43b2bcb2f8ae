// Reasons that go into the record. They are sent in English, whatever the reader's language.

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
