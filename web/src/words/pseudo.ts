// Not a language: English with every word accented and longer, to see what does not come from the catalogue, and
// what breaks when words are longer than the English ones.

import { english } from "@words";
import type { Language } from "./fluent";

const PLAIN = "ABCDEFGHIJKLMNOPQRSTUVWXYZabcdefghijklmnopqrstuvwxyz";
const ACCENTED = "ÅƁÇÐÉƑĜĤÎĴĶĻṀÑÖÞǪŔŠŢÛṼŴẊÝŽåƀçðéƒĝĥîĵķļɱñöþǫŕšţûṽŵẋýž";
const VOWELS = /[aeiou]/g;

/** Idempotent: what is accented already stays as it is. */
export function accented(text: string): string {
  return text.replace(VOWELS, "$&$&").replace(/[A-Za-z]/g, (letter) => ACCENTED[PLAIN.indexOf(letter)] ?? letter);
}

export const pseudo: Language = {
  ...english,
  tag: "en-x-pseudo",
  decimalSign: "·",
  accent: accented,
};
