// The one catalogue of every word that the page says, in the reader's language, units and decimal sign.
//
// How to use it
//   import { words, said } from "./words";
//   words.close, words.volume(4.5)      the page's own words
//   said(view.instruction.text)         words that come from the station: instructions, questions and their answers,
//                                       refusals, notes, guide, steps, names of reagents. English in, the reader's
//                                       language out. What a person typed (notes, group, bench name) is never passed.
// `words` is a live binding: read it while drawing (`words.close` in a component), never keep it in a constant of a
// module. The page is drawn afresh, root and all, when language or units change, so a memoised part need not ask.
// Numbers that stand alone on the screen and in no sentence (chart ticks, table cells) go through `decimal(text)` of
// ../format; what is typed may have a comma or a dot in every language (../typed).
// Write units as "cm³" and "mol/dm³" and decimals with a dot: the catalogue turns them into what the reader chose.
// Which language and units are spoken follows from ./choice: `chooseLanguage`, `chooseUnits`.
// A reason, act or other code that is sent to the station stays English in the message: show `said(code)`, send `code`.
//
// How to add words: one file per topic and language.
//   1. words/own_lines.en.ts:  export const ownLines = { title: "Your lines", off: (v: number) => `${v} cm³ off` };
//   2. words/own_lines.de.ts:  import type { ownLines as en } from "./own_lines.en";
//                              import type { Translated } from "./translated";
//                              export const ownLines: Translated<typeof en> = { title: "Deine Geraden", … };
//                              (a word that is missing, or one too many, does not compile). Text of the station that
//                              a word has inside goes through `german(text)` of ./station.
//   3. one line each in words/en.ts and words/de.ts; then `words.ownLines.title` is there.
// Sentences of the station get their German in station.de.json (see ./station).

import { setDecimalSign } from "../format";
import { dressed, type Units, unitsOf } from "./dress";
import { en } from "./en";
import type { Translated } from "./translated";

export type { Units } from "./dress";
export type Words = Translated<typeof en>;
export type LanguageCode = "en" | "de" | "pseudo";

/** What one language brings. */
export interface Language {
  /** For `<html lang>`. */
  tag: string;
  catalogue: Words;
  /** A sentence of the station in this language; unchanged where it is not known. */
  translate: (text: string) => string;
  decimalSign: string;
  /** Done last to everything that is said: only the pseudo-locale has one. */
  accent?: (text: string) => string;
}

const english: Language = { tag: "en", catalogue: en, translate: (text) => text, decimalSign: "." };

/** Everything but English travels only when it is asked for. */
const loaders: Record<LanguageCode, () => Promise<Language>> = {
  en: () => Promise.resolve(english),
  de: async () => (await import("./de")).german,
  pseudo: async () => (await import("./pseudo")).pseudo,
};

/** More different sentences than a page shows; typed or counted ones must not pile up for a whole day. */
const MOST_REMEMBERED = 2000;

let current: Language = english;
let units: Units = "cm3";
let spoken: LanguageCode = "en";
let wanted: LanguageCode = "en";
let version = 0;
const remembered = new Map<string, string>();
const listeners = new Set<() => void>();
const followers: ((code: LanguageCode) => Promise<void>)[] = [];

/** The page's own words. A live binding: another object after every change of language or units. */
export let words: Words = en;

/** A sentence of the station in the reader's language, units and decimal sign; English where it is not known. */
export function said(text: string): string {
  const known = remembered.get(text);
  if (known !== undefined) return known;
  if (remembered.size >= MOST_REMEMBERED) remembered.clear();
  const told = dress(current.translate(text));
  remembered.set(text, told);
  return told;
}

/** The same with its digits as they are: what names addresses or versions. */
export const translated = (text: string): string => current.translate(text);

/** What is done last to everything that is said: units, decimal sign, accents of the pseudo-locale. */
export function dress(text: string): string {
  const dressedUp = unitsOf(units, text, current.decimalSign);
  return current.accent ? current.accent(dressedUp) : dressedUp;
}

function change(): void {
  version += 1;
  remembered.clear();
  setDecimalSign(current.decimalSign);
  words = dressed(current.catalogue, dress);
  if (typeof document !== "undefined") document.documentElement.lang = current.tag;
  for (const listener of listeners) listener();
}

/** Speak `code` from now on. False when its words could not be fetched: the old language stays. */
export async function setLanguage(code: LanguageCode): Promise<boolean> {
  wanted = code;
  try {
    const [language] = await Promise.all([loaders[code](), ...followers.map((fetch) => fetch(code))]);
    // Asked for another one meanwhile: that one comes by itself.
    if (wanted !== code || language === current) return true;
    [current, spoken] = [language, code];
    change();
    return true;
  } catch {
    return false;
  }
}

/** Say volumes and concentrations in `chosen` from now on. */
export function setUnits(chosen: Units): void {
  if (chosen === units) return;
  units = chosen;
  change();
}

/** Fetch further words, those of a page of its own, before a language is spoken. */
export const follow = (fetch: (code: LanguageCode) => Promise<void>): unknown => followers.push(fetch);

/** The language and units now spoken. */
export const speaking = (): { language: LanguageCode; units: Units } => ({ language: spoken, units });

/** Changes whenever language or units do: the `key` of the page's root. */
export const wordsVersion = (): number => version;

/** Call `listener` after every change of language or units; returns how to stop. */
export function onWords(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}
