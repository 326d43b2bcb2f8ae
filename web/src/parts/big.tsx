// Big numbers for the projector: temperature, instruction, how long is left. Nothing to press, no names.

import { type Freshness, age_s, freshness } from "../age";
import type { View } from "../contract";
import { keptTogether } from "../format";
import { type Measured, pouredAt } from "../model";
import { waitLeft } from "../wait";
import { said, words } from "../words";
import { Drawing, drawnFor } from "./drawings";
import { useFitted } from "./fitted";
import { standing } from "./instruction";
import { isWaiting } from "./instruction_foot";

interface Props {
  view: View;
  good: Measured | null;
  now_ms: number;
  heard: Freshness;
}

function BigTemperature({ good, now_ms }: Pick<Props, "good" | "now_ms">) {
  const age = good ? age_s(good.measured_ms, now_ms) : null;
  const fresh = freshness(age);
  const value = good ? words.celsius(good.temperature_c) : "–";
  return (
    <div class={`big-number big-temperature is-${fresh}`}>
      <dt>{words.temperature}</dt>
      <dd>
        {good && fresh === "frozen" ? <s class="value">{value}</s> : <span class="value">{value}</span>}
        <span class="age">{age === null ? words.noTemperature : fresh === "frozen" ? words.frozen : words.age(age)}</span>
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
        {heard === "fresh" ? whole : words.doing.mayBeOld}
        {portion !== null && ` · ${words.portionOf(portion, view.portions_planned)}`}
      </p>
      <div class="big-drawing" key={`${view.instruction.code} ${portion}`}>
        <Drawing of={drawnFor(view.instruction.code)} />
      </div>
      <div class="big-words" ref={fitted} aria-live="polite" aria-atomic="true">
        <p>{text}</p>
      </div>
      <dl>
        {view.thermometer.kind === "probe" && <BigTemperature good={good} now_ms={now_ms} />}
        <BigNumber name={words.timeLeft} value={!isWaiting(view) ? "–" : left_s === null ? words.leftUnknown : words.left(left_s)} />
        <BigNumber name={words.totalAdded} value={words.volume(view.total_added_cm3)} />
      </dl>
    </section>
  );
}
