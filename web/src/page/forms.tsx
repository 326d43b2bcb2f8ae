// Parts of forms: fields, buttons, a reason, the text of a chosen file.

import { parts as details } from "@kinds/details";
import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";
import type { Choice } from "../bench/corrections/possible";
import { REASONS_UNREAD } from "../bench/names";
import { typedNumber } from "../format";
import { kindOf } from "../kinds";
import type { Reason as ReasonCode } from "../kinds/kind";
import type { Act } from "../live/acts";
import type { Plan, View } from "../live/contract";
import { keyed, phrase } from "../words";

// What the forms of the corrections are made of.

export interface FormProps {
  act: string;
  view: View;
  busy: boolean;
  /** Send acts in their order; when all are taken, the corrections close. */
  send: (...acts: Act[]) => void;
  /** The same, and the form stays; true when all were taken. */
  keep: (acts: readonly Act[]) => Promise<boolean>;
  /** Back to the list. */
  close: () => void;
}

interface PortionChoiceProps {
  from: readonly Choice[];
  plan: Plan;
  value: number;
  choose: (index: number) => void;
}

export function PortionChoice({ from, plan, value, choose }: PortionChoiceProps) {
  return (
    <label>
      {kindOf(plan).inPortions ? phrase("page-which-portion") : phrase("page-which-repeat")}
      <select value={value} onChange={(event) => choose(Number(event.currentTarget.value))}>
        {from.map(({ repeat, portion, volume_cm3 }, index) => (
          <option key={`${repeat} ${portion}`} value={index}>
            {details[plan.kind].choice(repeat, portion, volume_cm3)}
          </option>
        ))}
      </select>
    </label>
  );
}

interface TypedNumber {
  text: string;
  type: (text: string) => void;
  /** Why it is none; empty while there is nothing to say. */
  why: string;
  /** The number; null, and said so, when it is none. */
  read: () => number | null;
}

export function useNumber(): TypedNumber {
  const [text, type] = useState("");
  const [why, say] = useState("");
  const read = () => {
    const value = typedNumber(text);
    say(value === null ? phrase("page-not-anumber") : "");
    return value;
  };
  return { text, type, why, read };
}

interface NumberProps {
  label: string;
  value: string;
  change: (text: string) => void;
  why?: string;
}

export function NumberField({ label, value, change, why = "" }: NumberProps) {
  return (
    <>
      <label>
        {label}
        <input
          type="text"
          inputMode="decimal"
          autocomplete="off"
          maxLength={12}
          value={value}
          aria-invalid={why !== ""}
          onInput={(event) => change(event.currentTarget.value)}
        />
      </label>
      {why !== "" && (
        <p class="why-not" role="alert">
          {why}
        </p>
      )}
    </>
  );
}

interface TextProps {
  label: string;
  value: string;
  longest: number;
  change: (text: string) => void;
}

export function TextField({ label, value, longest, change }: TextProps) {
  return (
    <label>
      {label}
      <input
        type="text"
        autocomplete="off"
        maxLength={longest}
        value={value}
        onInput={(event) => change(event.currentTarget.value)}
      />
    </label>
  );
}

interface ButtonsProps {
  act: string;
  busy: boolean;
  close: () => void;
  ready?: boolean;
  yes?: string;
}

export function Buttons({ act, busy, close, ready = true, yes }: ButtonsProps) {
  return (
    <div class="answers">
      <button type="submit" class="strong" disabled={busy || !ready}>
        {yes ?? phrase("page-yes", { which: act })}
      </button>
      <button type="button" class="plain" onClick={close}>
        {phrase("page-no")}
      </button>
    </div>
  );
}

/** Choices that are each one tap. */
export function Taps({ title, children }: { title: string; children: ComponentChildren }) {
  return (
    <fieldset class="taps">
      <legend>{title}</legend>
      <div class="answers">{children}</div>
    </fieldset>
  );
}

export function Back({ close }: { close: () => void }) {
  return (
    <button type="button" class="plain" onClick={close}>
      {phrase("page-mistakes-back")}
    </button>
  );
}

// A reason for the record: one of a few, or the person's own words. None is chosen beforehand, for it would be recorded.

/** Why a repeat does not count, or why nothing could be read off it. */
type About = "repeat" | "reading";

interface Reason {
  /** What goes into the record; empty while nothing was said. */
  told: string;
  /** The reasons to choose from, in the reader's language. */
  known: readonly string[];
  choice: number | null;
  choose: (index: number) => void;
  own: string;
  type: (text: string) => void;
}

const codesOf = (plan: Plan, about: About): readonly ReasonCode[] => (about === "reading" ? REASONS_UNREAD : kindOf(plan).reasons);
const textsOf = (plan: Plan, about: About): readonly string[] =>
  codesOf(plan, about).map((code) => phrase("page-reason", { reason: keyed(code) }));

export function useReason(plan: Plan, about: About = "repeat"): Reason {
  const [choice, choose] = useState<number | null>(null);
  const [own, type] = useState("");
  const told = choice === null ? "" : (codesOf(plan, about)[choice] ?? own.trim());
  return { told, known: textsOf(plan, about), choice, choose, own, type };
}

export function ReasonField({ reason: { known, choice, choose, own, type } }: { reason: Reason }) {
  return (
    <>
      <label>
        {phrase("page-reason-label")}
        <select value={choice ?? ""} onChange={(event) => choose(Number(event.currentTarget.value))}>
          <option value="" disabled>
            {phrase("page-choose-reason")}
          </option>
          {[...known, phrase("page-other-reason")].map((text, index) => (
            <option key={text} value={index}>
              {text}
            </option>
          ))}
        </select>
      </label>
      {choice === known.length && (
        <label>
          {phrase("page-reason-text")}
          <input type="text" maxLength={200} value={own} onInput={(event) => type(event.currentTarget.value)} />
        </label>
      )}
    </>
  );
}

// What is in a file that somebody chose.

/** The text of a file, by the oldest way that browsers know. */
export function textOf(file: File): Promise<string> {
  return new Promise((resolve, reject) => {
    const reader = new FileReader();
    reader.onload = () => resolve(String(reader.result));
    reader.onerror = () => reject(reader.error);
    reader.readAsText(file);
  });
}
