// Sentences of the room's page that depend on what is known.

import { placesFor, rounded, signed } from "../format";
import type { Quantity, Reason, Tile } from "../room/contract";
import { dress, phrase, said } from "../words";
import { capital } from "./quantities";

/** What a class's quantity is called on an axis or in a table, with its unit where it has one, as the reader writes it. */
export const namedWithUnit = ({ name, unit }: Pick<Quantity, "name" | "unit">): string => (unit === "" ? capital(said(name)) : `${capital(said(name))} / ${dress(unit)}`);

/** A class's or a bench's value with its uncertainty, without unit; a change has its sign. */
export function valueText({ places: most, signed: hasSign }: Pick<Quantity, "places" | "signed">, value: number, u: number): string {
  const places = placesFor(u, most);
  const write = hasSign ? signed : rounded;
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
