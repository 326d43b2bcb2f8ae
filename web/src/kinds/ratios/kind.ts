// Mixing ratios at a constant total volume: each mixture of acid and alkali is mixed once.

import { short } from "../../format";
import { phrase, said } from "../../words";
import type { Kind } from "../kind";
import type { RatiosPlan } from "./view";

export const kind: Kind<RatiosPlan> = {
  inPortions: false,
  drawsTraces: false,
  drawsLines: true,
  reasons: ["spilled", "added at the wrong moment", "the probe was out of the cup", "wrong amounts"],
  practical: ({ acid, alkali, mixtures: { count, total_cm3 } }) => phrase("page-ratios-practical", { acid: said(acid.name), alkali: said(alkali.name), count, total: short(total_cm3) }),
  added: () => phrase("page-alkali"),
  portion: ({ alkali }) => phrase("page-whole", { name: said(alkali.name) }),
  portion_cm3: ({ mixtures: { first_cm3, step_cm3, count } }) => first_cm3 + (step_cm3 * (count - 1)) / 2,
  addsSolid: () => false,
  whole: ({ repeat_of_planned, repeats_planned }) => phrase("page-ratios-of", { mixture: repeat_of_planned, planned: repeats_planned }),
  marks: ({ repeats, repeats_planned }) => ({ done: repeats.filter(({ status }) => status === "ended").length, all: repeats_planned }),
  addedSoFar: (_, { total_added_cm3 }) => [phrase("page-added"), phrase("page-volume", { volume: short(total_added_cm3) })],
  traceTitle: (portion) => (portion > 0 ? phrase("page-live-mixed") : phrase("page-live-unmixed")),
  findsConcentration: () => false,
};
