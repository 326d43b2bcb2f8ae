// The page as a whole: what stands where.

import { useEffect } from "preact/hooks";
import { age_s, freshness } from "./age";
import type { Message } from "./contract";
import { type Model, pouredAt } from "./model";
import { Corrections } from "./parts/corrections";
import { Contact, Header } from "./parts/header";
import { InstructionCard } from "./parts/instruction";
import { Numbers } from "./parts/numbers";
import { Question } from "./parts/question";
import { Seeing } from "./parts/seeing";
import { useActing } from "./parts/acting";
import { words } from "./words";

interface Props {
  model: Model;
  now_ms: number;
  take: (message: Message) => void;
}

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
  return (
    <>
      <Header view={view} />
      <Contact heard={heard} />
      <main class={`state-${view.state} heard-${heard}`}>
        <div class="doing">
          <InstructionCard view={view} poured_s={poured_s} heard={heard} acting={acting} />
          <Question view={view} acting={acting} />
          <Numbers view={view} good={model.good} now_ms={now_ms} />
          <Corrections view={view} acting={acting} />
        </div>
        <div class="seeing">
          <Seeing view={view} model={model} acting={acting} take={take} />
        </div>
      </main>
    </>
  );
}
