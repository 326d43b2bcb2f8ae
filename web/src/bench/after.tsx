// What comes after the table once results are shown: how every number was made, and what the own judgement cost.

import type { View } from "../live/contract";
import { Opened, later, laterStill } from "../page/shared";
import { phrase } from "../words";

const OwnWorking = laterStill(async () => (await import("./own_working")).OwnWorking);
const Steps = later(async () => (await import("./working")).StepsPart);
const JudgementPart = later(async () => (await import("./working")).JudgementPart);

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
      {view.own_working.length > 0 && (
        <section class="figure">
          <h2>{phrase("page-own-working-title")}</h2>
          <OwnWorking steps={view.own_working} />
        </section>
      )}
      <section class="figure">
        <Opened id="steps" name={phrase("page-steps-open")}>
          <Steps view={view} result={result} />
        </Opened>
      </section>
    </>
  );
}
