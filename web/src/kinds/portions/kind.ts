// Portions of an alkali to an acid.

import { short } from "../../format";
import type { PortionsPlan } from "../../live/contract";
import { amountText } from "../../phrases/quantities";
import { phrase, said } from "../../words";
import type { Kind } from "../kind";

export const kind: Kind<PortionsPlan> = {
  inPortions: true,
  drawsTraces: false,
  drawsLines: true,
  reasons: ["spilled", "lost count of the portions", "the probe was out of the cup", "wrong volume in the cup"],
  practical: ({ acid, alkali, portions: { volume_cm3 } }) =>
    phrase("page-practical", {
      acid: amountText(acid),
      alkali: said(alkali.name),
      concentration: short(alkali.concentration_mol_dm3, 4),
      portion: short(volume_cm3),
    }),
  // A class knows the alkali.
  added: () => phrase("page-alkali"),
  portion: (_, portion) => phrase("page-portion", { portion }),
  portion_cm3: ({ portions: { volume_cm3 } }) => volume_cm3,
  addsSolid: () => false,
  whole: ({ repeat_of_planned, repeats_planned }) => phrase("page-repeat-of", { repeat: repeat_of_planned, planned: repeats_planned }),
  marks: ({ portion, portions_planned }) => ({ done: portion, all: portions_planned }),
  addedSoFar: (_, { total_added_cm3 }) => [phrase("page-total-added"), phrase("page-volume", { volume: short(total_added_cm3) })],
  traceTitle: (portion) => phrase("page-time-chart", { portion }),
  findsConcentration: ({ acid: { concentration_mol_dm3 } }) => concentration_mol_dm3 === null,
};
