// The page as a whole: what stands where.

import { useEffect } from "preact/hooks";
import { age_s, freshness } from "./age";
import type { Message, View } from "./contract";
import { type Model, pouredAt, runningRepeat } from "./model";
import { Corrections } from "./parts/corrections";
import { Contact, Header } from "./parts/header";
import { InstructionCard } from "./parts/instruction";
import { Numbers } from "./parts/numbers";
import { Readings } from "./parts/readings";
import { TimeFigure } from "./parts/time_figure";
import { VolumeFigure } from "./parts/volume_figure";
import { useActing } from "./parts/acting";
import { words } from "./words";

interface Props {
  model: Model;
  now_ms: number;
  take: (message: Message) => void;
}

/** States in which the newest portion's curve is worth watching. */
const WATCHING: readonly View["state"][] = ["start", "pour", "settle", "paused"];

export function App({ model, now_ms, take }: Props) {
  const acting = useActing(take);
  const { view } = model;
  const text = view?.instruction.text;
  useEffect(() => {
    document.title = view ? `${text} · ${view.bench.name}` : words.station;
  }, [text, view?.bench.name]);
  if (!view) return <p class="connecting">{words.connecting}</p>;
  const heard = freshness(model.heard_ms === null ? null : age_s(model.heard_ms, now_ms));
  const poured_s = pouredAt(view);
  const running = runningRepeat(view);
  const watching = poured_s !== null && WATCHING.includes(view.state);
  return (
    <>
      <Header view={view} />
      <Contact heard={heard} />
      <main class={`state-${view.state} heard-${heard}`}>
        <div class="doing">
          <InstructionCard view={view} poured_s={poured_s} heard={heard} acting={acting} />
          <Numbers view={view} good={model.good} now_ms={now_ms} />
          <Corrections view={view} acting={acting} />
        </div>
        <div class="seeing">
          <VolumeFigure
            plan={view.plan}
            repeats={view.repeats}
            mean={view.mean}
            result={view.result}
            over={view.state === "rinse" || view.state === "done"}
          />
          {watching && (
            <TimeFigure samples={model.samples} poured_s={poured_s} portions={running?.portions} readings={running?.readings} />
          )}
          <Readings repeats={view.repeats} mean={view.mean} alkali_c={view.alkali_temperature_c} />
        </div>
      </main>
    </>
  );
}
