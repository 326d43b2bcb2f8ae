// The live temperature with its age, and where the practical stands.

import { age_s, freshness } from "../age";
import type { View } from "../contract";
import { type Measured, runningRepeat } from "../model";
import { isOnce } from "../plan";
import { words } from "../words";

interface Props {
  view: View;
  good: Measured | null;
  now_ms: number;
}

function LiveTemperature({ good, now_ms }: Props) {
  const age = good ? age_s(good.measured_ms, now_ms) : null;
  const fresh = freshness(age);
  const value = good ? words.celsius(good.temperature_c) : words.noTemperature;
  return (
    <div class={`number temperature is-${fresh}`}>
      <dt>{words.temperature}</dt>
      <dd>
        {good && fresh === "frozen" ? <s class="value">{value}</s> : <span class={good ? "value" : "value value-none"}>{value}</span>}
        <span class="age">
          {age === null ? "" : words.age(age)}
          {good && fresh === "frozen" && <b>, {words.frozen}</b>}
        </span>
      </dd>
    </div>
  );
}

/** On a bench with an ordinary thermometer: what was typed last. */
function TypedTemperature({ view }: { view: View }) {
  const last = runningRepeat(view)?.readings.filter(({ temperature_c }) => temperature_c !== null).pop();
  return (
    <div class="number temperature">
      <dt>{words.doing.lastReading}</dt>
      <dd>
        <span class="value">{last?.temperature_c == null ? words.missing : words.celsius(last.temperature_c)}</span>
      </dd>
    </div>
  );
}

function Added({ view }: { view: View }) {
  const once = isOnce(view);
  const value = !once ? words.volume(view.total_added_cm3)
    : view.portion === 0 ? words.nothingAdded
    : words.addedOnce(view.plan, view.total_added_cm3);
  return (
    <div class="number">
      <dt>{once ? words.added : words.totalAdded}</dt>
      <dd>
        <span class="value">{value}</span>
      </dd>
    </div>
  );
}

export function Numbers(props: Props) {
  const { view } = props;
  return (
    <section class="numbers">
      <dl>
        {view.thermometer.kind === "typed" ? <TypedTemperature view={view} /> : <LiveTemperature {...props} />}
        <Added view={view} />
      </dl>
    </section>
  );
}
