// What is said and known of a kind of practical beyond the first view: corrections, the record, a plan's form.

import type { Plan } from "../live/contract";

/** What is chosen in a plan's form beside its fields: what the class is told of the acid, and a solid or a solution. */
export interface Chosen {
  told: "unknown" | "known" | "prepared";
  solid: boolean;
  fields: Readonly<Record<string, string>>;
}

export interface Details<Of extends Plan = Plan> {
  /** A plan's own tables: those that it must have, and others. */
  tables: readonly string[];
  otherTables: readonly string[];
  /** Keys of a plan that the choices in its form leave out. */
  leftOut(form: Chosen): readonly string[];
  /** How much of it is planned, for the record. */
  planned(plan: Of): string;
  /** A portion to choose among those of all repeats, with its volume where there is one; in a note without it. */
  choice(repeat: number, portion: number, volume_cm3: number): string;
  noted(repeat: number, portion: number, volume_cm3: number): string;
  inDoubt(portion: number, reason: string | null): string;
  doubtOf(portion: number): string;
  /** A question to think about, beside the steps. */
  question(which: number): string;
}
