// Big numbers and the curve for the projector: instruction, temperature, how long is left. Nothing to press, no names.

import { VolumeChartLive } from "../chart/volume_figure";
import { type Freshness, ageParts, age_s, fixed, freshness, keptTogether, short } from "../format";
import { kindOf } from "../kinds";
import type { PortionsView, View } from "../live/contract";
import { type Measured, type Model, pouredAt } from "../live/model";
import { useFitted } from "../page/shared";
import { timeLeftText } from "../phrases/bench";
import { phrase, said } from "../words";
import { Drawing, drawnFor } from "./drawings";
import { LiveTrace, isTraced } from "./live_trace";
import { PROBE_DECIMALS } from "./readings";
import { isWaiting, standing, waitLeft } from "./instruction";

interface Props {
  view: View;
  samples: Model["samples"];
  good: Measured | null;
  now_ms: number;
  heard: Freshness;
}

function BigTemperature({ good, now_ms }: Pick<Props, "good" | "now_ms">) {
  const age = good ? age_s(good.measured_ms, now_ms) : null;
  const fresh = freshness(age);
  const value = good ? phrase("page-celsius", { temperature: fixed(good.temperature_c, PROBE_DECIMALS) }) : "–";
  return (
    <div class={`big-number big-temperature is-${fresh}`}>
      <dt>{phrase("page-temperature")}</dt>
      <dd>
        {good && fresh === "frozen" ? <s class="value">{value}</s> : <span class="value">{value}</span>}
        <span class="age">{age === null ? phrase("page-no-temperature") : phrase(fresh === "frozen" ? "page-frozen" : "page-age", ageParts(age))}</span>
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

/** The curve so far; before there is one, and where everything is mixed at once, the trace as it grows. */
function BigCurve({ view, samples }: Pick<Props, "view" | "samples">) {
  const read = view.repeats.some(({ readings }) => readings.length > 1);
  if (kindOf(view.plan).inPortions && read) {
    return (
      <section class="big-curve" aria-label={phrase("page-volume-chart")}>
        <VolumeChartLive view={view as PortionsView} />
      </section>
    );
  }
  return (
    <div class="big-curve">
      {isTraced(view) && <LiveTrace view={view} samples={samples} />}
    </div>
  );
}

export function BigView({ view, samples, good, now_ms, heard }: Props) {
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
      <BigCurve view={view} samples={samples} />
    </section>
  );
}
