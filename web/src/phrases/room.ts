// Sentences of the room's page that depend on what is known.

import { placesFor, rounded, signed } from "../format";
import type { QuantityName, Reason, Tile } from "../room/contract";
import { dress, phrase, said } from "../words";

const UNITS = { end_point_cm3: "cm³", enthalpy_kj_mol: "kJ/mol", change_c: "°C", acid_mol_dm3: "mol/dm³" } satisfies Record<QuantityName, string>;

/** The unit of a class's quantity, as the reader writes it. */
export const unitOf = (quantity: QuantityName): string => dress(UNITS[quantity]);

/** With how many places a quantity is told at the most. */
export const mostPlaces = (quantity: QuantityName): number => (quantity === "acid_mol_dm3" ? 4 : 2);

/** A class's or a bench's value with its uncertainty, without unit; a change has its sign. */
export function valueText(quantity: QuantityName, value: number, u: number): string {
  const places = placesFor(u, mostPlaces(quantity));
  const write = quantity === "change_c" || quantity === "enthalpy_kj_mol" ? signed : rounded;
  return dress(`${write(value, places)} ± ${rounded(u, places)}`);
}

export function lessonText(label: string, began: string): string {
  return label ? phrase("page-room-lesson", { label, began }) : phrase("page-room-lesson-unnamed", { began });
}

export function tileWhereText({ repeat, repeats_planned, portion, portions_planned }: Tile): string {
  return phrase("page-room-where", { repeat, repeats: repeats_planned, portion, portions: portions_planned });
}

/** "0:07", "12:40", "1:02:05": as a clock counts on. */
export function lasted(seconds: number): string {
  const whole = Math.max(0, Math.floor(seconds));
  const [hours, minutes, rest] = [Math.floor(whole / 3600), Math.floor(whole / 60) % 60, whole % 60];
  const two = (value: number) => String(value).padStart(2, "0");
  return hours > 0 ? `${hours}:${two(minutes)}:${two(rest)}` : `${minutes}:${two(rest)}`;
}

/** Why a bench wants a look. A reason that a person typed stays as it is. */
export function roomReasonText({ code, text = "", count = 0 }: Omit<Reason, "need">): string {
  const told = code === "set_aside" ? text : said(text);
  return phrase("page-room-reason", { code, text: told, count });
}

/** Who needs somebody and why, in six words. */
export const needText = (name: string, { code }: Omit<Reason, "need">): string => phrase("page-room-need", { name, code });
