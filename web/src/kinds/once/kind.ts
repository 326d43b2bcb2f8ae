// Two liquids, or a weighed solid and a liquid, mixed once.

import type { OncePlan } from "../../live/contract";
import { addedOnceText } from "../../phrases/bench";
import { amountText } from "../../phrases/quantities";
import { phrase, said } from "../../words";
import type { Kind } from "../kind";

export const kind: Kind<OncePlan> = {
  inPortions: false,
  drawsTraces: true,
  drawsLines: false,
  reasons: ["spilled", "added at the wrong moment", "the probe was out of the cup", "wrong amounts"],
  practical: ({ liquid, addition }) =>
    phrase("page-practical-once", { liquid: amountText(liquid), addition: amountText(addition) }),
  added: ({ addition }) => addition.name,
  portion: ({ addition }) => phrase("page-whole", { name: said(addition.name) }),
  portion_cm3: ({ addition: { volume_cm3 } }) => volume_cm3 ?? 0,
  addsSolid: ({ addition: { mass_g } }) => mass_g !== null,
  whole: ({ repeat_of_planned, repeats_planned }) => phrase("page-repeat-of", { repeat: repeat_of_planned, planned: repeats_planned }),
  marks: () => null,
  addedSoFar: (plan, { total_added_cm3, portion, repeats }) => [phrase("page-added"), addedOnceText(plan, total_added_cm3, portion > 0 ? repeats[repeats.length - 1]?.portions[0] : undefined)],
  traceTitle: (portion) => (portion > 0 ? phrase("page-live-mixed") : phrase("page-live-unmixed")),
  findsConcentration: () => false,
};
