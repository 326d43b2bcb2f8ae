// What is said beside the numbers, each thing once: the station's notes, and why single repeats gave no number.

import type { RepeatRemarks, Result } from "./results";
import { said, words } from "./words";

/** A remark and the repeats it is about; none when it is about all together. */
export interface Remark {
  repeats: readonly number[];
  text: string;
}

type Method = "straight_lines" | "heat_balance";

/** `refused` repeats are told only where the others gave a number: else the refusal of the mean says it already. */
export function remarksOn(result: Result, ended: readonly number[]): Remark[] {
  const repeats: readonly RepeatRemarks[] = result.repeats ?? [];
  const told: Remark[] = (result.notes ?? []).map((text) => ({ repeats: [], text }));
  for (const { repeat, notes = [], refused = {} } of repeats) {
    for (const text of notes) add(told, repeat, text);
    if (!ended.includes(repeat)) continue;
    for (const method of ["straight_lines", "heat_balance"] as const) {
      const reason = refused[method];
      if (reason && result[method]) add(told, repeat, refusalWords(result, method, reason));
    }
  }
  return told;
}

function add(told: Remark[], repeat: number, text: string): void {
  const index = told.findIndex((one) => one.text === text && one.repeats.length > 0);
  const same = told[index];
  if (same) told[index] = { ...same, repeats: [...same.repeats, repeat] };
  else told.push({ repeats: [repeat], text });
}

function refusalWords(result: Result, method: Method, reason: string): string {
  if (method === "heat_balance") return words.refusedHeat(reason);
  const change = result.straight_lines !== null && "change_c" in result.straight_lines;
  return change ? words.refusedChange(reason) : words.refused(reason);
}

/** A remark as a sentence, with its repeats in front; `of` is how many repeats there are. */
export function sentence({ repeats, text }: Remark, of: number): string {
  const told = said(text);
  return repeats.length === 0 || of < 2 ? told : words.remarkOf(words.inRepeats(repeats), told);
}
