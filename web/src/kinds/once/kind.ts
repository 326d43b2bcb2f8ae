// Two liquids, or a weighed solid and a liquid, mixed once.

import type { OncePlan } from "../../live/contract";
import { onceNameText } from "../../phrases/bench";
import { amountText } from "../../phrases/quantities";
import { inDoubtOnceText } from "../../phrases/reasons";
import { phrase, said } from "../../words";
import type { Kind } from "../kind";

export const once: Kind<OncePlan> = {
  inPortions: false,
  drawsTraces: true,
  tables: ["liquid", "addition"],
  otherTables: ["timing"],
  reasons: ["spilled", "added at the wrong moment", "the probe was out of the cup", "wrong amounts"],
  practical: ({ liquid, addition }) =>
    phrase("page-practical-once", { liquid: amountText(liquid), addition: amountText(addition) }),
  planned: ({ repeats }) => phrase("page-record-planned-once", { repeats }),
  added: ({ addition }) => addition.name,
  portion: ({ addition }) => phrase("page-whole", { name: said(addition.name) }),
  portion_cm3: ({ addition: { volume_cm3 } }) => volume_cm3 ?? 0,
  addsSolid: ({ addition: { mass_g } }) => mass_g !== null,
  findsConcentration: () => false,
  choice: (repeat, _, volume_cm3) => onceNameText(repeat, volume_cm3),
  noted: (repeat) => phrase("page-repeat-name", { repeat }),
  inDoubt: (_, reason) => inDoubtOnceText(reason),
  doubtOf: () => phrase("page-mistakes-doubt-title-once"),
  question: (which) => phrase("page-steps-questions-once", { which }),
};
