// A bench with an ordinary thermometer: which one, and what it says.

import { useRef, useState } from "preact/hooks";
import type { View } from "../contract";
import { runningRepeat } from "../model";
import { isOnce } from "../plan";
import { HIGHEST_C, LOWEST_C, type Typed, judged } from "../reading";
import { words } from "../words";
import type { Acting } from "./acting";

const DIVISIONS_C = [1, 0.1];

/** Which thermometer: one tap. */
export function Divisions({ acting, title }: { acting: Acting; title: string }) {
  return (
    <div class="divisions" role="group" aria-label={title}>
      <p aria-hidden="true">{title}</p>
      <div class="answers">
        {DIVISIONS_C.map((division_c) => (
          <button
            type="button"
            class="done"
            key={division_c}
            data-division={division_c}
            aria-disabled={acting.busy}
            onClick={() => void acting.send({ act: "thermometer", division_c })}
          >
            {words.doing.divisionOf(division_c)}
          </button>
        ))}
      </div>
    </div>
  );
}

/** Why a reading is not taken as it was typed, or asked again; empty when it is fine. */
function whyNot(typed: Typed): string {
  if (typed.kind === "nonsense") return words.doing.notANumber;
  if (typed.kind === "out of range") return words.doing.outOfRange(LOWEST_C, HIGHEST_C);
  if (typed.kind === "fine") return "";
  const { doubt } = typed;
  return doubt.code === "far off" ? words.doing.farOff(doubt.change_c) : words.doing.tooFine(doubt.near_c);
}

interface FieldProps {
  division_c: number;
  before_c: number | null;
  busy: boolean;
  label: string;
  give: (temperature_c: number) => void;
}

/** A field for one temperature: what cannot be is refused, what is unlikely is asked again. */
export function TemperatureField({ division_c, before_c, busy, label, give }: FieldProps) {
  const [text, type] = useState("");
  const [why, say] = useState("");
  const asked = useRef<string | null>(null);
  const field = useRef<HTMLInputElement>(null);
  const submit = (event: Event) => {
    event.preventDefault();
    const typed = judged(text, { division_c, before_c });
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
          aria-describedby="why-not"
          aria-invalid={why !== ""}
          onInput={(event) => type(event.currentTarget.value)}
        />
      </label>
      <button type="submit" class="done" aria-disabled={busy}>
        {words.doing.record}
      </button>
      <p id="why-not" class="why-not" aria-live="polite">
        {why}
      </p>
    </form>
  );
}

/** The reading that the bench waits for. */
export function TypedReading({ view, acting }: { view: View; acting: Acting }) {
  const division_c = (view.thermometer.kind === "typed" && view.thermometer.division_c) || 1;
  const before = runningRepeat(view)?.readings.filter((each) => each.temperature_c !== null).slice(-1)[0];
  const give = (temperature_c: number) => {
    const portion = view.instruction.portion;
    void acting.send({ act: "reading", temperature_c, ...(portion === null ? {} : { portion }) });
  };
  return (
    <TemperatureField
      division_c={division_c}
      before_c={isOnce(view) ? null : (before?.temperature_c ?? null)}
      busy={acting.busy}
      label={words.doing.typedTemperature}
      give={give}
    />
  );
}
