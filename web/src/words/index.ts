// Every word that the page says, in the reader's language, units and decimal sign.
//
// How to use it
//   import { phrase, said } from "./words";
//   phrase("page-close"), phrase("page-volume", { volume: short(4.5) })
//                                 the page's own words: messages of station/words/*.ftl whose ids begin with page-
//   said(view.instruction.text)   words that come from the station: instructions, questions and their answers, refusals,
//                                 notes, guide, steps, names of reagents. English in, the reader's language out. What a
//                                 person typed (notes, group, bench name) is never passed.
//   said({ id, values, text })    the same for a message that the station names; `text` is its English.
//   marked(id, values), markedSaid(text)
//                                 the same with the marks of words that explain themselves, for `Explained` of ../page/terms
//   remember(answer)              takes in which texts of an answer are messages: each answer has `messages`, id and values
//                                 by English text. Whatever is received goes through it (../live/ask does for answers).
// Call them while drawing, never keep their text in a constant of a module. The page is drawn afresh, root and all, when
// language or units change, so a memoised part need not ask.
// Numbers are given as text with as many decimals as they deserve (`fixed`, `short`, `rounded` of ../format), with a dot;
// a number that chooses between one and several is given as a number. Texts that are put together from numbers and units
// alone go through `dress`, chart ticks through `decimal` of ../format; what is typed may have a comma or a dot in every
// language (../typed). Units are written "cm³" and "mol/dm³": what is said has those that the reader chose.
// Which language and units are spoken follows from ./choice: `chooseLanguage`, `chooseUnits`.
// A reason, act or other code that is sent to the station stays English in the message: show `said(code)`, send `code`.
//
// How to add words: a message in every station/words/*.ftl, with the same values (`npm test` names what is missing); then
// `npm run check` knows its id and values. A message chosen by a code has a selector, and its variants are the codes
// (`keyed` turns the spaces of a code into hyphens). How to add a language: DEVELOPERS.md, "Page".

import { english, languages } from "@words";
import { setDecimalSign } from "../format";
import { type Units, unitsOf } from "./dress";
import { type GivenValues, type Language, type Value, formatted } from "./fluent";
import { unmarked } from "./marks";
import type { Values } from "./messages";

export type { Units } from "./dress";
export { type Language, keyed } from "./fluent";

/** The code of a language that has a catalogue, or "pseudo". */
export type LanguageCode = string;
export type MessageId = keyof Values;
/** The codes that a message has words for. */
export type Which<Id extends MessageId> = Values[Id] extends { which: infer Code } ? Code : never;

/** A message of the station: `text` is what it says in English. */
export interface Said {
  id?: string | null | undefined;
  values?: Readonly<Record<string, Value | Said>> | null | undefined;
  text: string;
}

/** Names of the languages to choose from, each in itself, by their codes. */
export const LANGUAGES: Readonly<Record<LanguageCode, string>> = Object.fromEntries(
  Object.entries(languages).map(([code, { name }]) => [code, name]),
);

/** Everything but English travels only when it is asked for. */
const load = async (code: LanguageCode): Promise<Language> =>
  code === "pseudo" ? (await import("./pseudo")).pseudo : (await languages[code]?.load()) ?? english;

/** More different sentences than a page shows; typed or counted ones must not pile up for a whole day. */
const MOST_REMEMBERED = 2000;

/** Values of the station that are names, addresses or what a person typed: their digits and units stay as they are. */
const AS_IT_IS = /(^|_)(name|text|typed|path|file|version|address|date|time)$/;
/** What stands for them until the rest is dressed: characters that no language uses. */
const PLACE = 0xe000;
const PLACES = /[\ue000-\uf8ff]/g;

let current = english;
let plurals = new Intl.PluralRules(english.tag);
let units: Units = "cm3";
let spoken: LanguageCode = english.tag;
let wanted: LanguageCode = english.tag;
let version = 0;
/** Sentences of the station, and messages without values. */
const remembered = new Map<string, string>();
const plain = new Map<string, string>();
/** Messages of the station by their English text. */
const named = new Map<string, Omit<Said, "text">>();
const listeners = new Set<() => void>();

/** The values that a message wants. */
type Wanted<Id extends MessageId> = Values[Id] extends null ? [] : [values: Values[Id]];

/** A message of the page, with its values. */
export const phrase = <Id extends MessageId>(id: Id, ...values: Wanted<Id>): string => unmarked(marked(id, ...values));

/** The same with the marks of the words that explain themselves. */
export function marked<Id extends MessageId>(id: Id, ...[values]: Wanted<Id>): string {
  if (values) return message(id, values) ?? id;
  let told = plain.get(id);
  if (told === undefined) {
    told = message(id, {}) ?? id;
    plain.set(id, told);
  }
  return told;
}

/** So long after a language came all of its words are there, asked for or not / ms. */
const REST_MS = 2000;

/** The rest of each language that comes in two parts. */
const rests = new Map<Language, Promise<void>>();

/** All words of the language now spoken: whatever is drawn after the first view waits for them. Where they cannot come,
 * what is missing is said in English. */
export function allWords(): Promise<void> {
  const language = current;
  if (!language.rest) return Promise.resolve();
  const known = rests.get(language) ?? language.rest().then(
    (rest) => {
      language.catalogue = { ...language.catalogue, ...rest };
      delete language.rest;
      if (language === current) forget();
    },
    () => undefined,
  );
  rests.set(language, known);
  return known;
}

/** Whether the language spoken has this message; one that it lacks is fetched with all the others. */
function has(id: string): boolean {
  if (current.catalogue[id] !== undefined) return true;
  void allWords();
  return false;
}

function message(id: string, values: GivenValues): string | null {
  if (current !== english) has(id);
  const pattern = current.catalogue[id] ?? english.catalogue[id];
  return pattern === undefined ? null : dress(formatted(pattern, values, plurals));
}

/** A sentence of the station in the reader's language, units and decimal sign; English where it is not known. */
export const said = (told: string | Said): string => unmarked(markedSaid(told));

/** The same with the marks of the words that explain themselves. */
export function markedSaid(told: string | Said): string {
  if (typeof told === "string") return sentence(told);
  const { id, values, text } = told;
  if (!id || !has(id)) return sentence(text);
  const names: string[] = [];
  const filled = Object.entries(values ?? {}).map(([name, value]): [string, Value] => {
    if (typeof value === "object") return [name, markedSaid(value)];
    if (!AS_IT_IS.test(name)) return [name, value];
    names.push(String(value));
    return [name, String.fromCharCode(PLACE + names.length - 1)];
  });
  const dressed = message(id, Object.fromEntries(filled)) ?? sentence(text);
  return dressed.replace(PLACES, (place) => names[place.charCodeAt(0) - PLACE] ?? "");
}

/** Take in which texts of an answer of the station are messages. */
export function remember(answer: unknown): void {
  const messages = (answer as { messages?: Record<string, Omit<Said, "text">> } | null)?.messages;
  for (const [text, of] of Object.entries(messages ?? {})) {
    if (named.has(text)) continue;
    if (named.size >= MOST_REMEMBERED) named.clear();
    named.set(text, of);
    remembered.delete(text);
  }
}

/** The message that this text of the station is, to compare ids by; null where it is none. */
export const messageOf = (text: string): Omit<Said, "text"> | null => named.get(text) ?? null;

function sentence(text: string): string {
  const known = remembered.get(text);
  if (known !== undefined) return known;
  if (remembered.size >= MOST_REMEMBERED) remembered.clear();
  const of = named.get(text);
  const isKnown = of?.id && has(of.id);
  const told = isKnown ? markedSaid({ ...of, text }) : dress(text);
  remembered.set(text, told);
  return told;
}

/** What is done last to everything that is said: units, decimal sign, accents of the pseudo-locale. */
export function dress(text: string): string {
  const dressed = unitsOf(units, text, current.decimalSign);
  return current.accent ? current.accent(dressed) : dressed;
}

/** Whose dates are written, as a BCP 47 tag. */
export const languageOfDates = (): string => current.dates;

/** What was said with fewer words is said again at the next drawing. */
function forget(): void {
  remembered.clear();
  plain.clear();
  for (const listener of listeners) listener();
}

function change(): void {
  version += 1;
  plurals = new Intl.PluralRules(current.tag);
  setDecimalSign(current.decimalSign);
  if (typeof document !== "undefined") document.documentElement.lang = current.tag;
  forget();
}

/** Speak `code` from now on. False when its words could not be fetched: the old language stays. */
export async function setLanguage(code: LanguageCode): Promise<boolean> {
  wanted = code;
  try {
    const language = await load(code);
    // Asked for another one meanwhile: that one comes by itself.
    if (wanted !== code || language === current) return true;
    [current, spoken] = [language, code];
    change();
    if (language.rest) setTimeout(() => void allWords(), REST_MS);
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

/** The language and units now spoken. */
export const speaking = (): { language: LanguageCode; units: Units } => ({ language: spoken, units });

/** Changes whenever language or units do: the `key` of the page's root. */
export const wordsVersion = (): number => version;

/** Call `listener` after every change of language or units; returns how to stop. */
export function onWords(listener: () => void): () => void {
  listeners.add(listener);
  return () => listeners.delete(listener);
}
