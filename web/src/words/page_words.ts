// Words of the pages of staff: each page has a catalogue of its own, so that the students' page carries none of it.
//
//   const words = pageWords(english, async () => (await import("./plan.de")).plan);
//   words().title
//
// with `./plan.en.ts` and `./plan.de.ts` as topics are (see ./index). Sentences that the station sends only to these
// pages get their German in staff.de.json; `said()` finds them.

import { type LanguageCode, dress, follow, speaking, wordsVersion } from ".";
import { dressed } from "./dress";
import type { Translated } from "./translated";

/** Reads a page's words in the language now spoken: call it while drawing. */
export function pageWords<Topic extends object>(
  english: Topic,
  german: () => Promise<Translated<Topic>>,
): () => Translated<Topic> {
  const known: Partial<Record<LanguageCode, Translated<Topic>>> = { en: english as Translated<Topic> };
  let [version, told] = [-1, english as Translated<Topic>];
  follow(async (code) => {
    if (code === "de") known.de ??= (await Promise.all([german(), staffSentences()]))[0];
  });
  return () => {
    if (version !== wordsVersion()) {
      version = wordsVersion();
      told = dressed(known[speaking().language] ?? (english as Translated<Topic>), dress);
    }
    return told;
  };
}

async function staffSentences(): Promise<void> {
  const [{ german }, { germanOfStaff }] = await Promise.all([import("./de"), import("./staff")]);
  german.translate = germanOfStaff;
}
