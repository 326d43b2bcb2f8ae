// The fields of a plan; what the station says of one stands beside it.

import type { ComponentChildren } from "preact";
import { lowered } from "../../format";
import { Hazards } from "../../page/hazards";
import { capital } from "../../phrases/quantities";
import { phrase, said } from "../../words";
import type { Label, Plans, Problem, Reagent } from "../contract";
import type { Form } from "./form";

export interface FieldsProps {
  form: Form;
  problems: readonly Problem[];
  set: (path: string, text: string) => void;
}

/** What the station says of a key, as a sentence; the table that it names first stands above the field already. */
export function problemText(text: string): string {
  const told = capital(said(text).replace(/^\[\w+\] /, ""));
  return told === "" || /[.?!]$/.test(told) ? told : `${told}.`;
}

/** What is wrong with one key. */
export function problemAt(problems: readonly Problem[], path: string): string {
  return problemText(problems.find(({ where }) => where.join(".") === path)?.text ?? "");
}

interface FieldProps extends FieldsProps {
  path: string;
  label: string;
  hint?: string;
}

function Frame({ path, label, problem, hint, children }: { path: string; label: string; problem: string; hint?: string | undefined; children: ComponentChildren }) {
  return (
    <div class="plan-field">
      <label for={path}>{label}</label>
      {children}
      {hint && <small>{hint}</small>}
      {problem && (
        <p class="field-problem" id={`${path}-problem`}>
          {problem}
        </p>
      )}
    </div>
  );
}

const told = (path: string, problem: string) => (problem ? { "aria-invalid": true, "aria-describedby": `${path}-problem` } : {});

export function NumberOf({ form, problems, set, path, label, hint }: FieldProps) {
  const problem = problemAt(problems, path);
  return (
    <Frame path={path} label={label} problem={problem} hint={hint}>
      <input
        id={path}
        type="text"
        inputMode="decimal"
        autocomplete="off"
        maxLength={12}
        value={form.fields[path] ?? ""}
        onInput={(event) => set(path, event.currentTarget.value)}
        {...told(path, problem)}
      />
    </Frame>
  );
}

export function TextOf({ form, problems, set, path, label }: FieldProps) {
  const problem = problemAt(problems, path);
  return (
    <Frame path={path} label={label} problem={problem}>
      <input
        id={path}
        type="text"
        autocomplete="off"
        maxLength={80}
        value={form.fields[path] ?? ""}
        onInput={(event) => set(path, event.currentTarget.value)}
        {...told(path, problem)}
      />
    </Frame>
  );
}

export type Option = readonly [value: string, text: string];

interface ChoiceProps {
  path: string;
  label: string;
  value: string;
  options: readonly Option[];
  choose: (value: string) => void;
  problem?: string;
}

export function ChoiceOf({ path, label, value, options, choose, problem = "" }: ChoiceProps) {
  return (
    <Frame path={path} label={label} problem={problem}>
      <select id={path} value={value} onChange={(event) => choose(event.currentTarget.value)} {...told(path, problem)}>
        {options.map(([each, text]) => (
          <option key={each} value={each}>
            {text}
          </option>
        ))}
      </select>
    </Frame>
  );
}

/** A choice that is a field of the plan itself; a value that is not among the options stays to be seen. */
export function FieldChoice({ form, problems, set, path, label, options }: FieldProps & { options: readonly Option[] }) {
  const value = form.fields[path] ?? "";
  const known = options.some(([each]) => each === value);
  return (
    <ChoiceOf
      path={path}
      label={label}
      value={value}
      options={known ? options : [[value, value], ...options]}
      choose={(chosen) => set(path, chosen)}
      problem={problemAt(problems, path)}
    />
  );
}

// What a bottle's label says of hazards, or that there is nothing to say.

export function HazardLabel({ label }: { label: Label }) {
  return label.classified ? <Hazards of={label} /> : <p>{phrase("page-plan-not-classified")}</p>;
}

// What the choices of every kind of practical are made of.

export interface ChoicesProps extends FieldsProps {
  plans: Plans;
  staff: boolean;
  change: (part: Partial<Form>) => void;
}

export function Part({ title, table, problems, children }: { title: string; table?: string; children: ComponentChildren } & Pick<FieldsProps, "problems">) {
  const problem = table ? problemAt(problems, table) : "";
  return (
    <fieldset class="plan-part">
      <legend>{title}</legend>
      {children}
      {problem && <p class="field-problem">{problem}</p>}
    </fieldset>
  );
}

export const reagentOptions = (reagents: readonly Reagent[]): Option[] =>
  reagents.map(({ name, formula, anhydrous }) => [
    name,
    `${capital(said(name))}${anhydrous ? ` (${phrase("page-plan-anhydrous")})` : ""}, ${lowered(formula)}`,
  ]);

export const optionsOf = <Key extends string>(keys: readonly Key[], told: (key: Key) => string): Option[] =>
  keys.map((key) => [key, told(key)]);
