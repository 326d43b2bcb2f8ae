// Portions of an alkali to an acid: what is said beyond the first view.

import { short } from "../../format";
import type { PortionsPlan } from "../../live/contract";
import { inDoubtText } from "../../phrases/reasons";
import { phrase } from "../../words";
import type { Details } from "../details";

const choice = (repeat: number, portion: number, volume_cm3: number) =>
  phrase("page-portion-name", { repeat, portion, volume: short(volume_cm3) });

export const details: Details<PortionsPlan> = {
  tables: ["acid", "alkali", "portions"],
  otherTables: [],
  leftOut: ({ told }) => [...(told === "known" ? [] : ["acid.concentration_mol_dm3"]), ...(told === "prepared" ? [] : ["acid.prepared_mol_dm3"])],
  planned: ({ portions: { count }, repeats }) => phrase("page-record-planned", { portions: count, repeats }),
  // A class knows the alkali.
  choice,
  noted: choice,
  inDoubt: inDoubtText,
  doubtOf: (portion) => phrase("page-mistakes-doubt-title", { portion }),
  question: (which) => phrase("page-steps-questions", { which }),
};
