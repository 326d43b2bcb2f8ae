// A plan as it is being chosen: every field the text that stands in it, by table and key ("acid.volume_cm3").
// What is wrong with it the station says; nothing is checked here.

import { decimal } from "./format";
import { typedNumber } from "./typed";

export type Kind = "portions" | "once";
/** What the class is told of the acid: nothing, its concentration, or nothing of what staff made up. */
export type Told = "unknown" | "known" | "prepared";

export interface Form {
  kind: Kind;
  told: Told;
  solid: boolean;
  fields: Readonly<Record<string, string>>;
}

export type Scalar = string | number | boolean | null;
export type Values = Record<string, Scalar | Record<string, Scalar>>;

const TABLES: Record<Kind, readonly string[]> = { portions: ["acid", "alkali", "portions"], once: ["liquid", "addition"] };
const SHARED = ["cup", "surroundings", "timing"];
const TEXTS = /(^|\.)(title|pace|results|prompts|name|glassware)$/;

const isTable = (value: unknown): value is Record<string, Scalar> => typeof value === "object" && value !== null;

function written(value: Scalar): string {
  if (value === null) return "";
  return typeof value === "number" ? decimal(String(value)) : String(value);
}

/** The form of a plan; what `before` holds for the other kind of practical stays. */
export function formOf(values: Values, before: Form | null = null): Form {
  const fields: Record<string, string> = {};
  const kind: Kind = values.kind === "once" ? "once" : "portions";
  const other = [...TABLES[kind === "once" ? "portions" : "once"]];
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
    told: kind === "once" && before ? before.told : told,
    solid: addition ? (addition.mass_g ?? null) !== null : (before?.solid ?? true),
    fields,
  };
}

/** Keys that the choices leave out. */
function leftOut({ told, solid, fields }: Form): ReadonlySet<string> {
  const out = new Set<string>();
  if (told !== "known") out.add("acid.concentration_mol_dm3");
  if (told !== "prepared") out.add("acid.prepared_mol_dm3");
  if (fields["liquid.name"] === "water") out.add("liquid.concentration_mol_dm3");
  for (const key of solid ? ["volume_cm3", "u_volume_cm3", "concentration_mol_dm3"] : ["mass_g", "u_mass_g"]) out.add(`addition.${key}`);
  return out;
}

/** The plan's values as the station takes them; a field that is empty is left out, one that is no number sent as it is. */
export function valuesOf(form: Form): Values {
  const values: Values = form.kind === "once" ? { kind: "once" } : {};
  const out = leftOut(form);
  const tables = [...TABLES[form.kind], ...SHARED];
  for (const table of TABLES[form.kind]) values[table] = {};
  for (const [path, text] of Object.entries(form.fields)) {
    const [first = "", key] = path.split(".");
    const foreign = TABLES[form.kind === "once" ? "portions" : "once"].includes(first) || (first === "timing" && form.kind !== "once");
    if (text.trim() === "" || out.has(path) || foreign) continue;
    const value = TEXTS.test(path) ? text.trim() : (typedNumber(text) ?? text.trim());
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
