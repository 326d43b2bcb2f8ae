// What a kind of practical puts on the record sheet, and what the kinds have in common there.

import type { ComponentChildren } from "preact";
import type { View } from "../live/contract";
import type { Traces } from "../live/model";
import { worked } from "../phrases/steps";
import { dress, phrase, said } from "../words";

/** What was found by one method. */
export interface Column {
  name: string;
  number: string;
  interval: string | null;
  /** Quantities that follow from it. */
  more: readonly (readonly [string, string])[];
  remark: string | null;
}

export interface GraphProps<Of extends View> {
  view: Of;
  traces: Traces;
  /** The width on paper / CSS px; null takes the width there is. */
  paper_px: number | null;
  /** On paper: high enough to read from and to draw on. */
  tall?: boolean;
}

export interface NumbersProps<Of extends View> {
  view: Of;
  paper: boolean;
}

export interface Sheet<Of extends View = View> {
  columns(view: Of): Column[];
  Graph(props: GraphProps<Of>): ComponentChildren;
  Numbers(props: NumbersProps<Of>): ComponentChildren;
}

type Known = number | null | undefined;

export function followed(name: string, value: Known, u: Known, write: (value: number, u: number) => string): [string, string][] {
  return value === null || value === undefined || u === null || u === undefined ? [] : [[name, write(value, u)]];
}

export const enthalpy = (kj_mol: number, u: number) => dress(worked(kj_mol, u, "kJ/mol"));
export const concentration = (mol_dm3: number, u: number) => dress(worked(mol_dm3, u, "mol/dm³"));

export function refused(name: string, why: string | undefined): Column[] {
  return why === undefined ? [] : [{ name, number: phrase("page-missing"), interval: null, more: [], remark: said(why) }];
}
