// The English words, topic by topic. It always travels with the page.

import { bench } from "./bench.en";
import { charts } from "./charts.en";
import { corrections } from "./corrections.en";
import { doing } from "./doing.en";
import { guide } from "./guide.en";
import { mistakes } from "./mistakes.en";
import { once } from "./once.en";
import { ownLines } from "./own_lines.en";
import { record } from "./record.en";
import { results } from "./results.en";
import { seeing } from "./seeing.en";
import { settings } from "./settings.en";
import { steps } from "./steps.en";
import { table } from "./table.en";
import { why } from "./why.en";

export const en = {
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
