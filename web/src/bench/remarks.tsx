// Remarks of plausibility and of the fit, in the station's own words, each thing once.

import { keptTogether } from "../format";
import type { Repeat, View } from "../live/contract";
import type { RepeatRemarks, Result } from "../live/results";
import { inRepeatsText } from "../phrases/results";
import { phrase, said } from "../words";
import { doubtsNamed, isNamed } from "./doubts";

/** Without the doubts that are named with their buttons already. */
export function Remarks({ view, result, repeats }: { view: View; result: Result; repeats: readonly Repeat[] }) {
  const ended = repeats.filter(({ status }) => status === "ended").map(({ repeat }) => repeat);
  const counted = repeats.filter(({ status }) => status !== "set aside").length;
  const doubts = doubtsNamed(view);
  const remarks = remarksOn(result, ended, (text, repeat) => isNamed(doubts, text, repeat));
  if (remarks.length === 0) return null;
  return (
    <div class="remarks">
      <h3>{phrase("page-remarks")}</h3>
      <ul>
        {remarks.map((remark) => {
          const text = keptTogether(sentence(remark, counted));
          return <li key={text}>{text}</li>;
        })}
      </ul>
    </div>
  );
}

// What is said beside the numbers, each thing once: the station's notes, and why single repeats gave no number.

/** A remark and the repeats it is about; none when it is about all together. */
interface Remark {
  repeats: readonly number[];
  text: string;
}

type Method = "straight_lines" | "heat_balance";

/** Without what `isSaid` elsewhere. `refused` repeats are told only where the others gave a number: else the refusal of the mean says it already. */
export function remarksOn(result: Result, ended: readonly number[], isSaid: (text: string, repeat: number | null) => boolean = () => false): Remark[] {
  const repeats: readonly RepeatRemarks[] = result.repeats ?? [];
  const told: Remark[] = (result.notes ?? []).filter((text) => !isSaid(text, null)).map((text) => ({ repeats: [], text }));
  for (const { repeat, notes = [], refused = {} } of repeats) {
    for (const text of notes) if (!isSaid(text, repeat)) add(told, repeat, text);
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
  if (method === "heat_balance") return phrase("page-refused-heat", { reason: said(reason) });
  const change = result.straight_lines !== null && "change_c" in result.straight_lines;
  return change ? phrase("page-refused-change", { reason: said(reason) }) : phrase("page-refused", { reason: said(reason) });
}

/** A remark as a sentence, with its repeats in front; `of` is how many repeats there are. */
export function sentence({ repeats, text }: Remark, of: number): string {
  const told = said(text);
  return repeats.length === 0 || of < 2 ? told : phrase("page-remark-of", { where: inRepeatsText(repeats), remark: said(told) });
}
