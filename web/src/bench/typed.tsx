// A bench with an ordinary thermometer: which one, and what it says.

import { useId, useRef, useState } from "preact/hooks";
import { decimal, short, typedNumber } from "../format";
import type { Acting } from "../live/acts";
import { kindOf } from "../kinds";
import type { View } from "../live/contract";
import { runningRepeat } from "../live/model";
import { farOffText } from "../phrases/bench";
import { phrase } from "../words";

/** Thermometers as schools own them: between two lines of the scale, or a step of the last digit / °C. */
const SCALES = [
  { digital: false, steps_c: [1, 0.5, 0.2, 0.1] },
  { digital: true, steps_c: [1, 0.1] },
];

/** Which thermometer: one tap. */
export function Divisions({ acting, title }: { acting: Acting; title: string }) {
  return (
    <div class="divisions" role="group" aria-label={title}>
      <p>{title}</p>
      <div class="scales">
        {SCALES.map(({ digital, steps_c }) => (
          <div key={String(digital)} class="scale" role="group" aria-label={phrase("page-doing-scale", { digital: digital ? "true" : "false" })}>
            <p aria-hidden="true">{phrase("page-doing-scale", { digital: digital ? "true" : "false" })}</p>
            <div class="steps">
              {steps_c.map((division_c) => (
                <button
                  type="button"
                  class="done"
                  key={division_c}
                  {...(digital ? { "data-digit": division_c } : { "data-division": division_c })}
                  aria-label={phrase("page-doing-division-of", { division: short(division_c, 1) })}
                  aria-disabled={acting.busy}
                  onClick={() => void acting.send({ act: "thermometer", division_c, ...(digital ? { digital } : {}) })}
                >
                  {decimal(short(division_c, 1))}
                </button>
              ))}
            </div>
          </div>
        ))}
      </div>
    </div>
  );
}

/** The same in one row, where a lost probe leaves little room. */
export function OwnThermometer({ acting }: { acting: Acting }) {
  const choices = SCALES.flatMap(({ digital, steps_c }) => steps_c.map((division_c) => ({ digital, division_c })));
  const [index, choose] = useState(0);
  const go = () => {
    const chosen = choices[index];
    if (chosen) void acting.send({ act: "thermometer", division_c: chosen.division_c, ...(chosen.digital ? { digital: true } : {}) });
  };
  return (
    <div class="own-thermometer">
      <label>
        {phrase("page-doing-go-on-typing")}
        <select value={index} onChange={(event) => choose(Number(event.currentTarget.value))}>
          {choices.map(({ digital, division_c }, at) => (
            <option key={at} value={at}>
              {phrase("page-record-thermometer", { division: short(division_c, 1), digital: digital ? "true" : "false" })}
            </option>
          ))}
        </select>
      </label>
      <button type="button" class="done" aria-disabled={acting.busy} onClick={go}>
        {phrase("page-doing-use-thermometer")}
      </button>
    </div>
  );
}

/** Why a reading is not taken as it was typed, or asked again; empty when it is fine. */
function whyNot(typed: Typed): string {
  if (typed.kind === "nonsense") return phrase("page-doing-not-anumber");
  if (typed.kind === "out of range") return phrase("page-doing-out-of-range", { low: short(LOWEST_C), high: short(HIGHEST_C) });
  if (typed.kind === "fine") return "";
  const { doubt } = typed;
  return doubt.code === "far off" ? farOffText(doubt.change_c) : phrase("page-doing-too-fine", { near: short(doubt.near_c) });
}

interface FieldProps {
  /** The smallest step that can be read / °C. */
  step_c: number;
  before_c: number | null;
  busy: boolean;
  label: string;
  give: (temperature_c: number) => void;
}

/** A field for one temperature: what cannot be is refused, what is unlikely is asked again. */
export function TemperatureField({ step_c, before_c, busy, label, give }: FieldProps) {
  const [text, type] = useState("");
  const [why, say] = useState("");
  const asked = useRef<string | null>(null);
  const field = useRef<HTMLInputElement>(null);
  const whyNotId = useId();
  const submit = (event: Event) => {
    event.preventDefault();
    const typed = judged(text, { step_c, before_c });
    const sure = typed.kind === "fine" || (typed.kind === "doubtful" && asked.current === text);
    asked.current = text;
    say(sure ? "" : whyNot(typed));
    if (sure) give(typed.temperature_c);
    else field.current?.focus();
  };
  return (
    <form class="reading-form" onSubmit={submit}>
      <label>
        {label}
        <input
          ref={field}
          type="text"
          inputMode="decimal"
          autocomplete="off"
          maxLength={12}
          value={text}
          aria-describedby={whyNotId}
          aria-invalid={why !== ""}
          onInput={(event) => type(event.currentTarget.value)}
        />
      </label>
      <button type="submit" class="done" aria-disabled={busy}>
        {phrase("page-doing-record")}
      </button>
      <p id={whyNotId} class="why-not" aria-live="polite">
        {why}
      </p>
    </form>
  );
}

/** The reading that the bench waits for. */
export function TypedReading({ view, acting }: { view: View; acting: Acting }) {
  const before = runningRepeat(view)?.readings.filter((each) => each.temperature_c !== null).slice(-1)[0];
  const give = (temperature_c: number) => {
    const portion = view.instruction.portion;
    void acting.send({ act: "reading", temperature_c, ...(portion === null ? {} : { portion }) });
  };
  return (
    <TemperatureField
      step_c={stepOf(view)}
      before_c={kindOf(view.plan).inPortions ? (before?.temperature_c ?? null) : null}
      busy={acting.busy}
      label={phrase("page-doing-typed-temperature")}
      give={give}
    />
  );
}

/** A reading that does not fit, read or typed once more. */
export function TypedAgain({ of: { repeat, portion }, view, acting }: { of: View["questions"][number]; view: View; acting: Acting }) {
  return (
    <TemperatureField
      step_c={stepOf(view)}
      before_c={null}
      busy={acting.busy}
      label={phrase("page-mistakes-right-reading")}
      give={(temperature_c) => void acting.send({ act: "reading", repeat, portion, temperature_c })}
    />
  );
}

/** The temperature of what will be added, before the cup is filled. */
export function TypedAlkali({ view, acting }: { view: View; acting: Acting }) {
  return (
    <TemperatureField
      step_c={stepOf(view)}
      before_c={null}
      busy={acting.busy}
      label={phrase("page-doing-typed-temperature")}
      give={(temperature_c) => void acting.send({ act: "alkali_temperature", temperature_c })}
    />
  );
}

// A temperature as it was typed from an ordinary thermometer: what is refused, and what is asked again.

/** The smallest step that can be read off the thermometer in use / °C: half a division, or one of the last digit. */
export function stepOf({ thermometer }: View): number {
  if (thermometer.kind !== "typed" || thermometer.division_c === null) return 0.05;
  return thermometer.digital ? thermometer.division_c : thermometer.division_c / 2;
}

/** What the station takes / °C. */
const LOWEST_C = -5;
const HIGHEST_C = 60;
/** A portion seldom changes the temperature by more: common practice, no source. */
const FAR_C = 10;

type Doubt = { code: "too fine"; near_c: number } | { code: "far off"; change_c: number };

type Typed =
  | { kind: "nonsense" }
  | { kind: "out of range" }
  | { kind: "doubtful"; temperature_c: number; doubt: Doubt }
  | { kind: "fine"; temperature_c: number };

interface Against {
  /** The smallest step that can be read / °C. */
  step_c: number;
  /** The reading before it / °C; null when there is none to compare with. */
  before_c: number | null;
}

/** Judge what was typed. */
export function judged(text: string, { step_c, before_c }: Against): Typed {
  const temperature_c = typedNumber(text.replace(/\s*°?\s*C$/i, ""));
  if (temperature_c === null) return { kind: "nonsense" };
  if (temperature_c < LOWEST_C || temperature_c > HIGHEST_C) return { kind: "out of range" };
  const steps = temperature_c / step_c;
  if (Math.abs(steps - Math.round(steps)) > 1e-6) {
    const near_c = Number((Math.round(steps) * step_c).toFixed(2));
    return { kind: "doubtful", temperature_c, doubt: { code: "too fine", near_c } };
  }
  if (before_c !== null && Math.abs(temperature_c - before_c) > FAR_C) {
    return { kind: "doubtful", temperature_c, doubt: { code: "far off", change_c: temperature_c - before_c } };
  }
  return { kind: "fine", temperature_c };
}
