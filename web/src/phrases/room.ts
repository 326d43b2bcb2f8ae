// Sentences of the room's page that depend on what is known.

import { placesFor, rounded, signed } from "../format";
import type { QuantityName, Reason, Tile } from "../room/contract";
import { dress, phrase, said } from "../words";

const UNITS = { end_point_cm3: "cm³", enthalpy_kj_mol: "kJ/mol", change_c: "°C" } satisfies Record<QuantityName, string>;

/** "40 s", "3 min" */
function lasting(seconds: number): string {
  return seconds < 90 ? `${Math.round(seconds)} s` : `${Math.round(seconds / 60)} min`;
}

/** The unit of a class's quantity, as the reader writes it. */
export const unitOf = (quantity: QuantityName): string => dress(UNITS[quantity]);

/** A class's or a bench's value with its uncertainty, without unit; a change has its sign. */
export function valueText(quantity: QuantityName, value: number, u: number): string {
  const places = placesFor(u, 2);
  const write = quantity === "end_point_cm3" ? rounded : signed;
  return dress(`${write(value, places)} ± ${rounded(u, places)}`);
}

export function lessonText(label: string, began: string): string {
  return label ? phrase("page-room-lesson", { label, began }) : phrase("page-room-lesson-unnamed", { began });
}

export function countsText(help: number, look: number, all: number): string {
  return help + look === 0 ? phrase("page-room-all-well", { all }) : phrase("page-room-counts", { help, look, all });
}

export function tileWhereText({ repeat, repeats_planned, portion, portions_planned }: Tile): string {
  return phrase("page-room-where", { repeat, repeats: repeats_planned, portion, portions: portions_planned });
}

/** How long a bench has been at its step, beside what the class takes; null where that is not known. */
export function waitsText(waits_s: number, usual_s: number | null): string {
  const waits = lasting(waits_s);
  return usual_s === null ? dress(waits) : phrase("page-room-waits", { waits, usual: lasting(usual_s) });
}

/** Why a bench wants a look. A reason that a person typed stays as it is. */
export function roomReasonText({ code, text = "", seconds = 0, count = 0 }: Omit<Reason, "need">): string {
  const told = code === "set_aside" ? text : said(text);
  return phrase("page-room-reason", { code, text: told, lasting: lasting(seconds), count });
}
