// Two liquids, or a weighed solid and a liquid, mixed once: what is said beyond the first view.

import type { OncePlan } from "../../live/contract";
import { onceNameText } from "../../phrases/bench";
import { inDoubtOnceText } from "../../phrases/reasons";
import { phrase } from "../../words";
import type { Details } from "../details";

/** Of a solution a mass is left out, of a weighed solid a volume and a concentration. */
const ADDITION = { solid: ["volume_cm3", "u_volume_cm3", "concentration_mol_dm3"], solution: ["mass_g", "u_mass_g"] };

export const details: Details<OncePlan> = {
  tables: ["liquid", "addition"],
  otherTables: ["timing"],
  leftOut: ({ solid, fields }) => [
    ...(fields["liquid.name"] === "water" ? ["liquid.concentration_mol_dm3"] : []),
    ...(solid ? ADDITION.solid : ADDITION.solution).map((key) => `addition.${key}`),
  ],
  planned: ({ repeats }) => phrase("page-record-planned-once", { repeats }),
  choice: (repeat, _, volume_cm3) => onceNameText(repeat, volume_cm3),
  noted: (repeat) => phrase("page-repeat-name", { repeat }),
  inDoubt: (_, reason) => inDoubtOnceText(reason),
  doubtOf: () => phrase("page-mistakes-doubt-title-once"),
  question: (which) => phrase("page-steps-questions-once", { which }),
};
