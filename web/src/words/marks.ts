// Words that explain themselves: in a catalogue <mean>mean</mean>; in a text of the page a character that no text has
// stands before the word and one behind it (web/words.mjs puts them there). `phrase` and `said` leave them out.

const MARKS = /[\ufdd0-\ufdef]/g;
const MARKED = /([\ufdd0-\ufdee])([^\ufdef]*)\ufdef/g;
const FIRST_MARK = 0xfdd0;

/** The words of the glossary, in the order of the variants of `page-glossary-word`. */
export const TERMS = [
  "neutralisation",
  "end-point",
  "best-fit",
  "uncertainty",
  "mean",
  "anomalous",
  "exothermic",
  "concentration",
  "mole",
  "heat-balance",
] as const;

export type Term = (typeof TERMS)[number];

/** A stretch of text; with the word of the glossary that it is, else null. */
export interface Stretch {
  text: string;
  term: Term | null;
}

/** The text alone. */
export const unmarked = (text: string): string => text.replace(MARKS, "");

/** A marked text cut at its marks. */
export function stretches(text: string): Stretch[] {
  const found: Stretch[] = [];
  let at = 0;
  const plain = (to: number) => to > at && found.push({ text: unmarked(text.slice(at, to)), term: null });
  for (const { 0: whole, 1: mark = "", 2: word = "", index } of text.matchAll(MARKED)) {
    plain(index);
    found.push({ text: unmarked(word), term: TERMS[mark.charCodeAt(0) - FIRST_MARK] ?? null });
    at = index + whole.length;
  }
  plain(text.length);
  return found;
}
