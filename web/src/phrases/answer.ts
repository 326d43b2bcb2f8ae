// The answer to the question that the practical asks, in one or two sentences.

import { rounded, short, signed, significant } from "../format";
import { type OnceView, type PortionsView, type View, isOnce } from "../live/contract";
import type { OnceResult } from "../live/results";
import { marked, phrase, said as told } from "../words";
import { celsiusPlaces, cm3Places } from "./quantities";
import { worked } from "./steps";

/** A value with its standard uncertainty. */
interface Found {
  value: number;
  u: number;
}

/** A concentration that follows from a read volume has three figures, as in school. */
const OWN_DECIMALS = 3;

/** mol/dm³ of the acid for one cm³ of alkali; null where that is not asked, or cannot be said. */
function perCm3({ plan, reaction }: PortionsView): number | null {
  if (plan.acid.concentration_mol_dm3 !== null || !reaction) return null;
  return (plan.alkali.concentration_mol_dm3 * reaction.acid_per_alkali) / plan.acid.volume_cm3;
}

/** Which method's value is worth more: the heat balance's, unless it does not fit the trace and the lines gave one. */
function worthMore({ result }: View): "heat" | "lines" | null {
  const { heat_balance: heat = null, straight_lines: lines = null } = result ?? {};
  if (!heat) return lines && "lines";
  const fits = "describes_trace" in heat ? heat.describes_trace : (result as OnceResult).repeats.every(({ heat_balance: one }) => one?.describes_trace !== false);
  return fits || !lines ? "heat" : "lines";
}

/** Which of two values is worth more, and why, as marked text; empty where there is only one. */
export function worthText(view: View): string {
  const { heat_balance: heat = null, straight_lines: lines = null } = view.result ?? {};
  if (!heat || !lines) return "";
  if (worthMore(view) === "lines") return marked("page-worth-lines");
  return isOnce(view) ? marked("page-worth-heat-once") : marked("page-worth-heat");
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

function ofPortions(view: PortionsView): string[] {
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

function ofOnce(view: OnceView): string[] {
  const { own_reading, result } = view;
  const own_c = own_reading?.change_c ?? null;
  const { heat_balance: heat = null, straight_lines: lines = null } = result ?? {};
  const best = worthMore(view) === "heat" ? heat : lines;
  const said = own_c === null ? [] : [phrase("page-answer-own-change", { change: signed(own_c, 2) })];
  if (!best) return said;
  const places = celsiusPlaces(best.u_change_c);
  const [change, u] = [signed(best.change_c, places), rounded(best.u_change_c, places)];
  const { enthalpy_kj_mol: enthalpy, u_enthalpy_kj_mol: u_enthalpy } = best;
  said.push(
    enthalpy === null || u_enthalpy === null || best.enthalpy_of === null
      ? marked("page-answer-best-change", { change, u })
      : phrase("page-answer-best-enthalpy", { change, u, of: told(best.enthalpy_of), enthalpy: worked(enthalpy, u_enthalpy, "kJ/mol") }),
  );
  return said;
}

/** Marked text (`Explained`); empty while there is nothing to answer with. */
export function answerText(view: View): string {
  return (isOnce(view) ? ofOnce(view) : ofPortions(view as PortionsView)).join(" ");
}
