// Mixing ratios at a constant total volume: what is said beyond the first view.

import { onceNameText } from "../../phrases/bench";
import { inDoubtOnceText } from "../../phrases/reasons";
import { phrase } from "../../words";
import type { Details } from "../details";
import type { RatiosPlan } from "./view";

/** Keys of the same tables that other kinds of practical have. */
const OF_OTHERS = ["acid.volume_cm3", "acid.u_volume_cm3", "acid.prepared_mol_dm3"];

export const details: Details<RatiosPlan> = {
  tables: ["acid", "alkali", "mixtures"],
  otherTables: ["timing"],
  leftOut: () => OF_OTHERS,
  planned: ({ mixtures: { count }, repeats }) => phrase("page-ratios-planned", { mixtures: count, repeats }),
  choice: (repeat, _, volume_cm3) => onceNameText(repeat, volume_cm3),
  noted: (repeat) => phrase("page-repeat-name", { repeat }),
  inDoubt: (_, reason) => inDoubtOnceText(reason),
  doubtOf: () => phrase("page-mistakes-doubt-title-once"),
  question: (which) => phrase("page-ratios-questions", { which }),
};
