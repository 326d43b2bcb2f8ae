// The German words, topic by topic. Fetched when they are asked for.

import type { Language, Words } from ".";
import { bench } from "./bench.de";
import { charts } from "./charts.de";
import { corrections } from "./corrections.de";
import { doing } from "./doing.de";
import { guide } from "./guide.de";
import { mistakes } from "./mistakes.de";
import { once } from "./once.de";
import { ownLines } from "./own_lines.de";
import { record } from "./record.de";
import { results } from "./results.de";
import { seeing } from "./seeing.de";
import { settings } from "./settings.de";
import { german as translate } from "./station";
import { steps } from "./steps.de";
import { table } from "./table.de";
import { why } from "./why.de";

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
  seeing,
  ownLines,
  why,
  record,
  steps,
};

export const german: Language = { tag: "de", catalogue: de, translate, decimalSign: "," };
