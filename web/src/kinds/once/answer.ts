// How the temperature changed, and how much heat a mole gave, in one or two sentences.

import { rounded, signed } from "../../format";
import type { OnceView } from "../../live/contract";
import { celsiusPlaces } from "../../phrases/quantities";
import { worked } from "../../phrases/steps";
import { marked, phrase, said as told } from "../../words";
import { type Answering, whyWorthMore, worthMore } from "../answer";

function sentences(view: OnceView): string[] {
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

export const answer: Answering<OnceView> = { sentences, worth: (view) => whyWorthMore(view, marked("page-worth-heat-once")) };
