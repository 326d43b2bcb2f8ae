// What the forms of the corrections are made of.

import type { ComponentChildren } from "preact";
import type { Act } from "../acts";
import type { View } from "../contract";
import type { Choice } from "../corrections";
import { words } from "../words";

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
  once: boolean;
  value: number;
  choose: (index: number) => void;
}

export function PortionChoice({ from, once, value, choose }: PortionChoiceProps) {
  return (
    <label>
      {once ? words.whichRepeat : words.whichPortion}
      <select value={value} onChange={(event) => choose(Number(event.currentTarget.value))}>
        {from.map(({ repeat, portion, volume_cm3 }, index) => (
          <option key={`${repeat} ${portion}`} value={index}>
            {once ? words.onceName(repeat, volume_cm3) : words.portionName(repeat, portion, volume_cm3)}
          </option>
        ))}
      </select>
    </label>
  );
}

export function NumberField({ label, value, change }: { label: string; value: string; change: (text: string) => void }) {
  return (
    <label>
      {label}
      <input
        type="text"
        inputMode="decimal"
        autocomplete="off"
        maxLength={12}
        value={value}
        onInput={(event) => change(event.currentTarget.value)}
      />
    </label>
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
        {yes ?? words.yes[act]}
      </button>
      <button type="button" class="plain" onClick={close}>
        {words.no}
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
      {words.mistakes.back}
    </button>
  );
}
