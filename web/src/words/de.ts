// The German words, topic by topic. Fetched when they are asked for.

import type { Language, Words } from ".";
import { bench } from "./bench.de";
import { charts } from "./charts.de";
import { corrections } from "./corrections.de";
import { once } from "./once.de";
import { results } from "./results.de";
import { german as translate } from "./station";
import { table } from "./table.de";

const de: Words = {
  ...bench,
  ...charts,
  ...results,
  ...once,
  ...table,
  ...corrections,
};

export const german: Language = { tag: "de", catalogue: de, translate, decimalSign: "," };
