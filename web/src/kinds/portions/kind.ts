// Portions of an alkali to an acid.

import { short } from "../../format";
import type { PortionsPlan } from "../../live/contract";
import { amountText } from "../../phrases/quantities";
import { inDoubtText } from "../../phrases/reasons";
import { phrase, said } from "../../words";
import type { Kind } from "../kind";

const choice = (repeat: number, portion: number, volume_cm3: number) =>
  phrase("page-portion-name", { repeat, portion, volume: short(volume_cm3) });

export const portions: Kind<PortionsPlan> = {
  inPortions: true,
  drawsTraces: false,
  tables: ["acid", "alkali", "portions"],
  otherTables: [],
  reasons: ["spilled", "lost count of the portions", "the probe was out of the cup", "wrong volume in the cup"],
  practical: ({ acid, alkali, portions: { volume_cm3 } }) =>
    phrase("page-practical", {
      acid: amountText(acid),
      alkali: said(alkali.name),
      concentration: short(alkali.concentration_mol_dm3, 4),
      portion: short(volume_cm3),
    }),
  planned: ({ portions: { count }, repeats }) => phrase("page-record-planned", { portions: count, repeats }),
  // A class knows the alkali.
  added: () => phrase("page-alkali"),
  portion: (_, portion) => phrase("page-portion", { portion }),
  portion_cm3: ({ portions: { volume_cm3 } }) => volume_cm3,
  addsSolid: () => false,
  findsConcentration: ({ acid: { concentration_mol_dm3 } }) => concentration_mol_dm3 === null,
  choice,
  noted: choice,
  inDoubt: inDoubtText,
  doubtOf: (portion) => phrase("page-mistakes-doubt-title", { portion }),
  question: (which) => phrase("page-steps-questions", { which }),
};
