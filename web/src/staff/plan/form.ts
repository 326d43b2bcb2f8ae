// A plan as it is being chosen: every field the text that stands in it, by table and key ("acid.volume_cm3").
// What is wrong with it the station says; nothing is checked here.

import { parts as details } from "@kinds/details";
import { decimal, typedNumber } from "../../format";
import { CODES, type KindCode, USUAL } from "../../kinds";
import type { Chosen } from "../../kinds/details";

/** What the class is told of the acid: nothing, its concentration, or nothing of what staff made up. */
export type Told = Chosen["told"];

export interface Form extends Chosen {
  kind: KindCode;
}

type Scalar = string | number | boolean | null;
export type Values = Record<string, Scalar | Record<string, Scalar>>;

const SHARED = ["cup", "surroundings"];
const TEXTS = /(^|\.)(title|pace|results|prompts|name|glassware)$/;

/** Yes or no. */
const FLAGS = /^predict_first$/;

const isTable = (value: unknown): value is Record<string, Scalar> => typeof value === "object" && value !== null;

function written(value: Scalar): string {
  if (value === null) return "";
  return typeof value === "number" ? decimal(String(value)) : String(value);
}

/** The form of a plan; what `before` holds for the other kind of practical stays. */
export function formOf(values: Values, before: Form | null = null): Form {
  const fields: Record<string, string> = {};
  const kind = CODES.find((code) => code === values.kind) ?? USUAL;
  const other = CODES.filter((code) => code !== kind).flatMap((code) => details[code].tables);
  for (const [path, text] of Object.entries(before?.fields ?? {})) {
    if (other.includes(path.split(".")[0] ?? "")) fields[path] = text;
  }
  for (const [key, value] of Object.entries(values)) {
    if (key === "kind") continue;
    if (isTable(value)) for (const [inner, each] of Object.entries(value)) fields[`${key}.${inner}`] = written(each);
    else fields[key] = written(value);
  }
  const acid = isTable(values.acid) ? values.acid : {};
  const told = (acid.prepared_mol_dm3 ?? null) !== null ? "prepared" : (acid.concentration_mol_dm3 ?? null) !== null ? "known" : "unknown";
  const addition = isTable(values.addition) ? values.addition : null;
  return {
    kind,
    told: isTable(values.acid) || !before ? told : before.told,
    solid: addition ? (addition.mass_g ?? null) !== null : (before?.solid ?? true),
    fields,
  };
}

/** The plan's values as the station takes them; a field that is empty is left out, one that is no number sent as it is. */
export function valuesOf(form: Form): Values {
  const values: Values = form.kind === USUAL ? {} : { kind: form.kind };
  const own = details[form.kind];
  const out = own.leftOut(form);
  const tables = [...own.tables, ...own.otherTables, ...SHARED];
  const foreign = CODES.flatMap((code) => [...details[code].tables, ...details[code].otherTables]).filter((table) => !tables.includes(table));
  for (const table of own.tables) values[table] = {};
  for (const [path, text] of Object.entries(form.fields)) {
    const [first = "", key] = path.split(".");
    if (text.trim() === "" || out.includes(path) || foreign.includes(first)) continue;
    const value = FLAGS.test(path) ? text.trim() === "true" : TEXTS.test(path) ? text.trim() : (typedNumber(text) ?? text.trim());
    if (key === undefined) values[first] = value;
    else {
      const table = values[first];
      values[first] = { ...(isTable(table) ? table : {}), [key]: value };
    }
  }
  return Object.fromEntries(Object.entries(values).filter(([key, value]) => !isTable(value) || tables.includes(key) || Object.keys(value).length > 0));
}

/** The same plan without these keys. */
export function without(values: Values, keys: readonly (readonly string[])[]): Values {
  return keys.reduce((left, [table = "", key]) => {
    const { [table]: found, ...others } = left;
    if (key === undefined || !isTable(found)) return others;
    const { [key]: _, ...rest } = found;
    return { ...others, [table]: rest };
  }, values);
}

/** The same plan without what only staff may know. */
export function withoutPrepared(values: Values): Values {
  if (!isTable(values.acid)) return values;
  const { prepared_mol_dm3: _, ...acid } = values.acid;
  return { ...values, acid };
}
