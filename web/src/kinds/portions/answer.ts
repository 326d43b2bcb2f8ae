// How strong the acid is, or where it ends, in one or two sentences.

import { rounded, short, significant } from "../../format";
import type { PortionsView, View } from "../../live/contract";
import { cm3Places } from "../../phrases/quantities";
import { worked } from "../../phrases/steps";
import { marked, phrase } from "../../words";
import { type Answering, type Found, whyWorthMore, worthMore } from "../answer";

/** A concentration that follows from a read volume has three figures, as in school. */
const OWN_DECIMALS = 3;

/** mol/dm³ of the acid for one cm³ of alkali; null where that is not asked, or cannot be said. */
function perCm3({ plan, reaction }: PortionsView): number | null {
  if (plan.acid.concentration_mol_dm3 !== null || !reaction) return null;
  return (plan.alkali.concentration_mol_dm3 * reaction.acid_per_alkali) / plan.acid.volume_cm3;
}

/** The end-point that is worth most. */
function bestVolume(view: PortionsView): Found | null {
  const { heat_balance: heat = null, straight_lines: lines = null } = view.result ?? {};
  const best = worthMore(view) === "heat" ? heat : lines;
  return best && { value: best.end_point_cm3, u: best.u_end_point_cm3 };
}

/** The concentration of the acid that the end-point of most worth gives; null where it is not asked. */
function bestAcid(view: PortionsView, volume: Found): Found | null {
  const { heat_balance: heat } = view.result ?? {};
  const each = perCm3(view);
  if (each === null) return null;
  const { acid_mol_dm3: value = null, u_acid_mol_dm3: u = null } = heat?.end_point_cm3 === volume.value ? heat : {};
  return value !== null && u !== null ? { value, u } : { value: each * volume.value, u: each * volume.u };
}

/** The concentration that the own calculation ends with. */
const ownAcid = ({ own_working }: View) => own_working.find(({ unit }) => unit === "mol/dm³")?.written ?? null;

function sentences(view: PortionsView): string[] {
  const own_cm3 = view.own_reading?.end_point_cm3 ?? null;
  const each = perCm3(view);
  const said: string[] = [];
  if (own_cm3 !== null) {
    const volume = short(own_cm3);
    said.push(each === null ? marked("page-answer-own-volume", { volume }) : marked("page-answer-own-acid", { volume, concentration: ownAcid(view) ?? rounded(each * own_cm3, OWN_DECIMALS) }));
  }
  const volume = bestVolume(view);
  const acid = volume && bestAcid(view, volume);
  if (acid) said.push(phrase("page-answer-best-acid", { value: worked(acid.value, acid.u, "mol/dm³") }));
  else if (volume) {
    const places = cm3Places(volume.u);
    said.push(marked("page-answer-best-volume", { volume: rounded(volume.value, places), u: rounded(volume.u, places) }));
  }
  const { prepared_mol_dm3 } = view.results;
  if (prepared_mol_dm3 !== null) said.push(phrase("page-answer-bottle", { concentration: significant(prepared_mol_dm3) }));
  return said;
}

export const answer: Answering<PortionsView> = { sentences, worth: (view) => whyWorthMore(view, marked("page-worth-heat")) };
