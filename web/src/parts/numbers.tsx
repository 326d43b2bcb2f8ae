// The live temperature with its age, and where the practical stands.

import { age_s, freshness } from "../age";
import type { View } from "../contract";
import type { Measured } from "../model";
import { words } from "../words";

interface Props {
  view: View;
  good: Measured | null;
  now_ms: number;
}

function LiveTemperature({ view, good, now_ms }: Props) {
  const age = good ? age_s(good.measured_ms, now_ms) : null;
  const fresh = freshness(age);
  const value = good ? words.celsius(good.temperature_c) : words.noTemperature;
  const bad = view.live?.bad;
  return (
    <div class={`number temperature is-${fresh}`}>
      <dt>{words.temperature}</dt>
      <dd>
        {good && fresh === "frozen" ? <s class="value">{value}</s> : <span class="value">{value}</span>}
        <span class="age">
          {age === null ? "" : words.age(age)}
          {good && fresh === "frozen" && <b>, {words.frozen}</b>}
        </span>
        {bad && <span class="age">{words.badSample(words.bad[bad] ?? bad)}</span>}
      </dd>
    </div>
  );
}

export function Numbers(props: Props) {
  const { view } = props;
  return (
    <section class="numbers">
      <dl>
        <LiveTemperature {...props} />
        <div class="number">
          <dt>{words.totalAdded}</dt>
          <dd>
            <span class="value">{words.volume(view.total_added_cm3)}</span>
          </dd>
        </div>
      </dl>
      {view.probe !== "ok" && <p class="probe">{words.probe[view.probe]}</p>}
    </section>
  );
}
