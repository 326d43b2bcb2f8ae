// In which ratio acid and alkali react, in one or two sentences.

import { short } from "../../format";
import { marked, phrase } from "../../words";
import type { Answering } from "../answer";
import { type RatiosView, ratioAt, ratioText } from "./view";

/** A crossing read off a graph is worth two decimals of a ratio. */
const OWN_PLACES = 0.05;

function sentences(view: RatiosView): string[] {
  const { own_reading, result, plan, reaction } = view;
  const own_cm3 = own_reading?.end_point_cm3 ?? null;
  const { heat_balance: heat = null, straight_lines: lines = null } = result ?? {};
  const best = lines ?? heat;
  const said: string[] = [];
  if (own_cm3 !== null && own_cm3 < plan.mixtures.total_cm3) {
    said.push(phrase("page-ratios-answer-own", { volume: short(own_cm3), ratio: ratioText(ratioAt(plan, own_cm3), OWN_PLACES) }));
  }
  if (best) {
    const { alkali_per_acid, u_alkali_per_acid: u } = best;
    said.push(marked("page-ratios-answer-best", { ratio: ratioText(alkali_per_acid, u), u: ratioText(u, u) }));
  }
  if (best && reaction) said.push(phrase("page-ratios-answer-equation", { ratio: short(1 / reaction.acid_per_alkali, 2) }));
  return said;
}

export const answer: Answering<RatiosView> = { sentences, worth: () => marked("page-ratios-worth-lines") };
