// What a kind of practical is to the pages that know of all kinds: facts and words. What is said
// and known only later stands in its `details.ts`; what it draws in `seeing.tsx`, `sheet.tsx` (the record) and `form.tsx`
// (staff choose a plan).

import type { Plan, View } from "../live/contract";
import type { phrase } from "../words";

type Spaced<Key> = Key extends `${infer Before}-${infer After}` ? `${Before} ${Spaced<After>}` : Key;
/** A reason that the catalogues have words for, as it goes into the record: in English. */
export type Reason = Spaced<Parameters<typeof phrase<"page-reason">>[1]["reason"]>;

export interface Kind<Of extends Plan = Plan> {
  /** Whether portion follows portion; else everything is added at one moment. */
  inPortions: boolean;
  /** Whether the whole trace of every repeat is drawn; else only that of the one that a person opens. */
  drawsTraces: boolean;
  /** Whether an end-point is read off two lines that the group draws; else a change of temperature. */
  drawsLines: boolean;
  /** Why a repeat does not count. */
  reasons: readonly Reason[];
  /** The practical in one line. */
  practical(plan: Of): string;
  /** What is added, in a word. */
  added(plan: Of): string;
  /** What a correction is about. */
  portion(plan: Of, portion: number): string;
  /** The volume of a portion as planned / cm³; 0 for a weighed solid. */
  portion_cm3(plan: Of): number;
  addsSolid(plan: Of): boolean;
  /** Where the practical stands: of how many repeats. */
  whole(view: View): string;
  /** How much has been done of what can be counted at a glance; null where there is nothing to count. */
  marks(view: View): { done: number; all: number } | null;
  /** What has been added, for the instrument: its name and the amount. */
  addedSoFar(plan: Of, view: View): readonly [name: string, amount: string];
  /** What the trace since then is of; portion 0: the start. */
  traceTitle(portion: number): string;
  /** Whether a concentration is what is to be found. */
  findsConcentration(plan: Of): boolean;
}
