// The students' own calculation, one step after another: try a number, check it, or have it shown. A step comes when the
// one before it is done.

import { useState } from "preact/hooks";
import { keptTogether, typedNumber } from "../format";
import type { OwnStep } from "../live/contract";
import { dress, phrase, said } from "../words";
import { symbols } from "./working";

/** A number carried on unrounded may differ by so much of itself, or by one in the last figure. */
const SAME_SHARE = 0.01;

/** Whether a typed number is the step's, whatever rounding it was carried on with. */
export function isRight(typed: number, written: string): boolean {
  const value = Number(written);
  const last = 10 ** -(written.split(".")[1]?.length ?? 0);
  return Math.abs(typed - value) <= Math.max(SAME_SHARE * Math.abs(value), 1.001 * last);
}

type Done = "right" | "shown";

export function OwnWorking({ steps }: { steps: readonly OwnStep[] }) {
  const [done, setDone] = useState<readonly Done[]>([]);
  const seen = steps.slice(0, done.length + 1);
  return (
    <div class="own-working">
      <p>{phrase("page-own-working-task")}</p>
      <ol>
        {seen.map((step, index) => (
          <li key={index}>
            <Step step={step} done={done[index] ?? null} end={(how) => setDone([...done, how])} />
          </li>
        ))}
      </ol>
      {done.length < steps.length ? (
        <p class="remark">{phrase("page-own-working-place", { step: seen.length, of: steps.length })}</p>
      ) : (
        <p class="remark" role="status">
          {phrase("page-own-working-over")}
        </p>
      )}
      {done.length > 0 && (
        <button type="button" class="plain" onClick={() => setDone([])}>
          {phrase("page-own-working-again")}
        </button>
      )}
    </div>
  );
}

interface StepProps {
  step: OwnStep;
  done: Done | null;
  end: (how: Done) => void;
}

function Step({ step: { text, formula, working, written, unit }, done, end }: StepProps) {
  const [typed, type] = useState("");
  const [wrong, setWrong] = useState<"" | "no-number" | "other">("");
  const check = (event: Event) => {
    event.preventDefault();
    const number = typedNumber(typed);
    if (number !== null && isRight(number, written)) end("right");
    else setWrong(number === null ? "no-number" : "other");
  };
  const name = said(text);
  return (
    <>
      <p class="own-step-name">{name}</p>
      <p class="formula">{symbols(formula)}</p>
      {done ? (
        <div role="status">
          {done === "right" && <p class="right">{phrase("page-own-working-right")}</p>}
          <p class="working">{symbols(working)}</p>
          <p class="working">
            = <b>{keptTogether(dress(`${symbols(written)} ${unit}`))}</b>
          </p>
        </div>
      ) : (
        <form onSubmit={check}>
          <label>
            {phrase("page-own-working-try", { unit })}
            <input
              type="text"
              inputMode="text"
              autocomplete="off"
              value={typed}
              aria-invalid={wrong !== ""}
              onInput={(event) => {
                type(event.currentTarget.value);
                setWrong("");
              }}
            />
          </label>
          {wrong !== "" && (
            <p class="trouble" role="alert">
              {phrase("page-own-working-wrong", { which: wrong })}
            </p>
          )}
          <div class="answers">
            <button type="submit" class="strong">
              {phrase("page-own-working-check")}
            </button>
            <button type="button" onClick={() => end("shown")}>
              {phrase("page-own-working-show")}
            </button>
          </div>
        </form>
      )}
    </>
  );
}
