// What comes after the table once results are shown: how every number was made, and what the own judgement cost.

import type { View } from "../contract";
import { words } from "../words";
import { later } from "./later";
import { Opened } from "./opened";

const Steps = later(async () => (await import("./steps")).StepsPart);
const JudgementPart = later(async () => (await import("./judgement")).JudgementPart);

export function After({ view }: { view: View }) {
  const { result, results, state } = view;
  if (state !== "done" || !results.shown || !result) return null;
  return (
    <>
      {result.judgement && (
        <section class="figure">
          <JudgementPart judgement={result.judgement} />
        </section>
      )}
      <section class="figure">
        <Opened id="steps" name={words.steps.open}>
          <Steps view={view} result={result} />
        </Opened>
      </section>
    </>
  );
}
