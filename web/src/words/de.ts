// The German words, topic by topic. Fetched when they are asked for.

import type { Language, Words } from ".";
import { bench } from "./bench.de";
import { charts } from "./charts.de";
import { corrections } from "./corrections.de";
import { doing } from "./doing.de";
import { guide } from "./guide.de";
import { mistakes } from "./mistakes.de";
import { once } from "./once.de";
import { results } from "./results.de";
import { settings } from "./settings.de";
import { german as translate } from "./station";
import { table } from "./table.de";

const de: Words = {
  ...bench,
  ...charts,
  ...results,
  ...once,
  ...table,
  ...corrections,
  doing,
  guide,
  mistakes,
  settings,
};

export const german: Language = { tag: "de", catalogue: de, translate, decimalSign: "," };
