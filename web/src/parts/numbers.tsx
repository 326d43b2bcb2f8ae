// The live temperature with its age, and where the practical stands.

import { age_s, freshness } from "../age";
import type { View } from "../contract";
import type { Measured } from "../model";
import { isOnce } from "../plan";
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
        <LiveTemperature {...props} />
        <Added view={view} />
      </dl>
      {view.probe !== "ok" && <p class="probe">{words.probe[view.probe]}</p>}
    </section>
  );
}
