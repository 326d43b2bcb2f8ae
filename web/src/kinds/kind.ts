// What a kind of practical is to the pages that know of all kinds: facts and words. What it draws is in `sheets.ts` (the
// record) and `forms.ts` (staff choose a plan).

import type { Plan } from "../live/contract";
import type { phrase } from "../words";

type Spaced<Key> = Key extends `${infer Before}-${infer After}` ? `${Before} ${Spaced<After>}` : Key;
/** A reason that the catalogues have words for, as it goes into the record: in English. */
export type Reason = Spaced<Parameters<typeof phrase<"page-reason">>[1]["reason"]>;

export interface Kind<Of extends Plan = Plan> {
  /** Whether portion follows portion; else everything is added at one moment. */
  inPortions: boolean;
  /** Whether the whole trace of every repeat is drawn; else only that of the one that a person opens. */
  drawsTraces: boolean;
  /** A plan's own tables: those that it must have, and others. */
  tables: readonly string[];
  otherTables: readonly string[];
  /** Why a repeat does not count. */
  reasons: readonly Reason[];
  /** The practical in one line. */
  practical(plan: Of): string;
  /** How much of it is planned, for the record. */
  planned(plan: Of): string;
  /** What is added, in a word. */
  added(plan: Of): string;
  /** What a correction is about. */
  portion(plan: Of, portion: number): string;
  /** The volume of a portion as planned / cm³; 0 for a weighed solid. */
  portion_cm3(plan: Of): number;
  addsSolid(plan: Of): boolean;
  /** Whether a concentration is what is to be found. */
  findsConcentration(plan: Of): boolean;
  /** A portion to choose among those of all repeats, with its volume where there is one; in a note without it. */
  choice(repeat: number, portion: number, volume_cm3: number): string;
  noted(repeat: number, portion: number, volume_cm3: number): string;
  inDoubt(portion: number, reason: string | null): string;
  doubtOf(portion: number): string;
  /** A question to think about, beside the steps. */
  question(which: number): string;
}
