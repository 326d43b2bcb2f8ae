// Results of both methods, their comparison, remarks on them, and what they wait for.

import type { ComponentChildren } from "preact";
import { keptTogether, lowered, rounded, short, signed } from "../format";
import { type OwnReading, type Repeat, type View, isOnce } from "../live/contract";
import type { EndPoint, OnceResult, PortionsResult, RepeatRemarks, Result } from "../live/results";
import { TableFrame } from "../page/shared";
import { Explained } from "../page/terms";
import { answerText, worthText } from "../phrases/answer";
import { offChangeText, offText } from "../phrases/own_lines";
import { celsiusPlaces, cm3Places, plusMinus } from "../phrases/quantities";
import { committedNothingText } from "../phrases/reasons";
import { inRepeatsText, intervalText, scatterText } from "../phrases/results";
import { keyed, marked, phrase, said } from "../words";
import { doubtsNamed, isNamed } from "./doubts";
import { reasonInWords } from "./names";

// The answer comes first: the question's own quantity, in a sentence, and the reaction that it follows from.

export function Answer({ view }: { view: View }) {
  const text = answerText(view);
  if (text === "") return null;
  return (
    <section class="answer">
      <h2>{phrase("page-answer-title")}</h2>
      <p class="answer-text" data-testid="answer"><Explained text={keptTogether(text).replace(/ (.?±.?) /g, "\u00a0$1\u00a0")} /></p>
      {view.reaction && <p class="answer-reaction"><Explained text={marked("page-answer-reaction", { equation_text: lowered(view.reaction.equation) })} /></p>}
    </section>
  );
}

// The end-point by each method, with its uncertainty; or why it cannot be read.

function inWords(value: EndPoint) {
  const u_cm3 = value.u_end_point_cm3;
  return {
    number: phrase("page-end-point", { volume: rounded(value.end_point_cm3, cm3Places(u_cm3)) }),
    interval: intervalText(value.interval_95_cm3, u_cm3),
    plusMinus: marked("page-plus-minus", { u: plusMinus(u_cm3, cm3Places(u_cm3)) }),
  };
}

interface ResultWordsProps {
  view: View;
  result: PortionsResult | null;
  repeats: readonly Repeat[];
  /** Whether a repeat has just ended; only then are refusals and remarks of a method news. */
  over: boolean;
}

export function ResultWords({ view, result, repeats, over }: ResultWordsProps) {
  if (!result) return over ? <p class="remark">{phrase("page-own-lines-computing")}</p> : null;
  const { straight_lines: lines, heat_balance: heat, refused } = result;
  return (
    <>
      <div class="results">
        {lines && (
          <MethodCard name={marked("page-by-straight-lines")} method="lines" {...inWords(lines)} brief={!over}>
            <RemarkLine text={scatterText(lines.predicted_bias_cm3 ?? null)} />
          </MethodCard>
        )}
        {heat && (
          <MethodCard name={marked("page-by-heat-balance")} method="heat" {...inWords(heat)} brief={!over}>
            <RemarkLine text={heat.describes_trace ? phrase("page-heat-balance-knows") : phrase("page-not-described")} />
          </MethodCard>
        )}
        {over && !lines && refused.straight_lines && <RemarkLine text={phrase("page-refused", { reason: said(refused.straight_lines) })} />}
        {over && !heat && refused.heat_balance && <RemarkLine text={phrase("page-refused-heat", { reason: said(refused.heat_balance) })} />}
      </div>
      <Remarks view={view} result={result} repeats={repeats} />
    </>
  );
}

// One method's card: its name, its number, its interval, and what stands beside it.

interface MethodCardProps {
  name: string;
  method: "lines" | "heat";
  number: string;
  interval: string;
  plusMinus: string;
  /** While a repeat runs: the number and its interval, nothing that pushes the curve off the screen. */
  brief: boolean;
  children: ComponentChildren;
}

export function MethodCard({ name, method, number, interval, plusMinus, brief, children }: MethodCardProps) {
  return (
    <div class={`result result-${method}${brief ? " result-brief" : ""}`}>
      <h3><Explained text={name} /></h3>
      <p class="end-point">{keptTogether(number)}</p>
      <p class="interval">
        {keptTogether(interval)}
      </p>
      {!brief && (
        <details class="more-about">
          <summary>{phrase("page-more-about")}</summary>
          <p class="plus-minus"><Explained text={keptTogether(plusMinus)} /></p>
        </details>
      )}
      {!brief && children}
    </div>
  );
}

export function RemarkLine({ text }: { text: string }) {
  return <p class="remark">{keptTogether(text)}</p>;
}

// Remarks of plausibility and of the fit, in the station's own words.

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

// How far the students' own reading is off the computed ones.

interface Row {
  name: string;
  value: string;
  off: string;
}

function volumes({ end_point_cm3, before }: OwnReading, result: PortionsResult): Row[] {
  if (end_point_cm3 === null) return [];
  const { straight_lines: lines, heat_balance: heat } = result;
  const row = (name: string, found: { end_point_cm3: number; u_end_point_cm3: number } | null | undefined): Row[] =>
    found
      ? [{
          name,
          value: phrase("page-own-lines-own-volume", { volume: rounded(found.end_point_cm3, cm3Places(found.u_end_point_cm3)) }),
          off: offText(end_point_cm3, found.end_point_cm3),
        }]
      : [];
  return [
    { name: before ? phrase("page-own-lines-you") : phrase("page-own-lines-you-typed"), value: phrase("page-own-lines-own-volume", { volume: short(end_point_cm3) }), off: "" },
    ...row(phrase("page-own-lines-lines"), lines),
    ...row(phrase("page-own-lines-heat"), heat),
  ];
}

function changes({ change_c }: OwnReading, result: OnceResult): Row[] {
  if (change_c === null) return [];
  const row = (name: string, found: { change_c: number; u_change_c: number } | null): Row[] =>
    found
      ? [{
          name,
          value: phrase("page-own-lines-own-change", { change: signed(found.change_c, celsiusPlaces(found.u_change_c)) }),
          off: offChangeText(change_c, found.change_c),
        }]
      : [];
  return [
    { name: phrase("page-own-lines-you-typed"), value: phrase("page-own-lines-own-change", { change: signed(change_c, 2) }), off: "" },
    ...row(phrase("page-own-lines-lines-once"), result.straight_lines),
    ...row(phrase("page-own-lines-heat"), result.heat_balance),
  ];
}

/** The own reading beside the computed values, and which of these is worth more. */
export function Compared({ view }: { view: View }) {
  const { own_reading, result } = view;
  if (!result) return null;
  const rows = !own_reading ? [] : isOnce(view) ? changes(own_reading, result as OnceResult) : volumes(own_reading, result as PortionsResult);
  const worth = worthText(view);
  if (rows.length < 2) return <WorthMore text={worth} />;
  return (
    <>
      <TableFrame name={phrase("page-own-lines-compared")}>
        <table class="compared">
          <caption>{phrase("page-own-lines-compared")}</caption>
          <thead>
            <tr>
              <th scope="col">{phrase("page-own-lines-which")}</th>
              <th scope="col">{phrase("page-own-lines-value")}</th>
              <th scope="col">{phrase("page-own-lines-how-far")}</th>
            </tr>
          </thead>
          <tbody>
            {rows.map(({ name, value, off }) => (
              <tr key={name}>
                <th scope="row">{name}</th>
                <td>{keptTogether(value)}</td>
                <td>{keptTogether(off)}</td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableFrame>
      <WorthMore text={worth} />
    </>
  );
}

function WorthMore({ text }: { text: string }) {
  return text === "" ? null : <p class="worth-more"><Explained text={text} /></p>;
}

// Results that are not shown yet: what they wait for, and what the students have read themselves.

export function ownInWords({ end_point_cm3, change_c, reason = null }: OwnReading): string {
  if (end_point_cm3 !== null) return phrase("page-own-lines-committed", { volume: short(end_point_cm3) });
  if (change_c !== null) return phrase("page-own-lines-committed-change", { change: signed(change_c, 2) });
  return committedNothingText(reasonInWords(reason));
}

function whatFor({ rule, waits_for }: View["results"]): string {
  if (waits_for === null) return phrase("page-own-lines-computing");
  return waits_for === "end" ? phrase("page-own-lines-waits-end-first", { which: keyed(rule) }) : phrase("page-own-lines-waits", { which: keyed(waits_for) });
}

/** `change` opens the own reading again; null when there is nothing to change. */
export function Waiting({ view, change }: { view: View; change: (() => void) | null }) {
  const { own_reading, repeats } = view;
  if (repeats.length === 0) return null;
  return (
    <div class="waiting-results">
      {own_reading && <p class="own-committed" data-testid="own-reading">{ownInWords(own_reading)}</p>}
      <p class="remark">{whatFor(view.results)}</p>
      {own_reading && change && (
        <button type="button" class="plain" onClick={change}>
          {phrase("page-own-lines-change")}
        </button>
      )}
    </div>
  );
}
