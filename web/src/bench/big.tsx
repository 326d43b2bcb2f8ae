// Big numbers for the projector: temperature, instruction, how long is left. Nothing to press, no names.

import { type Freshness, ageParts, age_s, fixed, freshness, keptTogether, short } from "../format";
import type { View } from "../live/contract";
import { type Measured, pouredAt } from "../live/model";
import { useFitted } from "../page/shared";
import { timeLeftText } from "../phrases/bench";
import { phrase, said } from "../words";
import { Drawing, drawnFor } from "./drawings";
import { isWaiting, standing, waitLeft } from "./instruction";

interface Props {
  view: View;
  good: Measured | null;
  now_ms: number;
  heard: Freshness;
}

function BigTemperature({ good, now_ms }: Pick<Props, "good" | "now_ms">) {
  const age = good ? age_s(good.measured_ms, now_ms) : null;
  const fresh = freshness(age);
  const value = good ? phrase("page-celsius", { temperature: fixed(good.temperature_c, 1) }) : "–";
  return (
    <div class={`big-number big-temperature is-${fresh}`}>
      <dt>{phrase("page-temperature")}</dt>
      <dd>
        {good && fresh === "frozen" ? <s class="value">{value}</s> : <span class="value">{value}</span>}
        <span class="age">{age === null ? phrase("page-no-temperature") : fresh === "frozen" ? phrase("page-frozen") : phrase("page-age", ageParts(age))}</span>
      </dd>
    </div>
  );
}

function BigNumber({ name, value }: { name: string; value: string }) {
  return (
    <div class="big-number">
      <dt>{name}</dt>
      <dd>
        <span class="value">{value}</span>
      </dd>
    </div>
  );
}

export function BigView({ view, good, now_ms, heard }: Props) {
  const text = keptTogether(said(view.instruction.text));
  const fitted = useFitted(text);
  const { whole, portion } = standing(view);
  const { left_s } = waitLeft(view, pouredAt(view));
  return (
    <section class={`big heard-${heard}`}>
      <p class="big-standing">
        {heard === "fresh" ? whole : phrase("page-doing-may-be-old")}
        {portion !== null && ` · ${phrase("page-portion-of", { portion, planned: view.portions_planned })}`}
      </p>
      <div class="big-drawing" key={`${view.instruction.code} ${portion}`}>
        <Drawing of={drawnFor(view.instruction.code)} />
      </div>
      <div class="big-words" ref={fitted} aria-live="polite" aria-atomic="true">
        <p>{text}</p>
      </div>
      <dl>
        {view.thermometer.kind === "probe" && <BigTemperature good={good} now_ms={now_ms} />}
        <BigNumber name={phrase("page-time-left")} value={!isWaiting(view) ? "–" : left_s === null ? phrase("page-left-unknown") : timeLeftText(left_s)} />
        <BigNumber name={phrase("page-total-added")} value={phrase("page-volume", { volume: short(view.total_added_cm3) })} />
      </dl>
    </section>
  );
}
