// The English words, topic by topic. It always travels with the page.

import { bench } from "./bench.en";
import { charts } from "./charts.en";
import { corrections } from "./corrections.en";
import { doing } from "./doing.en";
import { guide } from "./guide.en";
import { mistakes } from "./mistakes.en";
import { once } from "./once.en";
import { results } from "./results.en";
import { settings } from "./settings.en";
import { table } from "./table.en";

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
};
