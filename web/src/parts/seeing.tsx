// What there is to see, by the kind of practical.

import type { Message, View } from "../contract";
import { type Model, pouredAt, runningRepeat } from "../model";
import { type OnceView, type PortionsView, isOnce } from "../plan";
import type { Acting } from "./acting";
import { OnceFigure } from "./once_figure";
import { OnceNumbers } from "./once_table";
import { Readings } from "./readings";
import { TimeFigure } from "./time_figure";
import { VolumeFigure } from "./volume_figure";

/** States in which the newest portion's curve is worth watching. */
const WATCHING: readonly View["state"][] = ["start", "pour", "settle", "paused"];

function isOver(view: View): boolean {
  return view.state === "rinse" || view.state === "done";
}

function SeeingPortions({ view, model }: { view: PortionsView; model: Model }) {
  const poured_s = pouredAt(view);
  const running = runningRepeat(view);
  return (
    <>
      <VolumeFigure
        plan={view.plan}
        repeats={view.repeats}
        mean={view.mean}
        result={view.result}
        over={isOver(view)}
      />
      {poured_s !== null && WATCHING.includes(view.state) && (
        <TimeFigure samples={model.samples} poured_s={poured_s} portions={running?.portions} readings={running?.readings} />
      )}
      <Readings view={view} />
    </>
  );
}

function SeeingOnce({ view, model }: { view: OnceView; model: Model }) {
  return (
    <>
      <OnceFigure view={view} traces={model.traces} over={isOver(view)} />
      <OnceNumbers view={view} />
    </>
  );
}

interface Props {
  view: View;
  model: Model;
  acting: Acting;
  take: (message: Message) => void;
}

export function Seeing({ view, model }: Props) {
  return isOnce(view) ? <SeeingOnce view={view} model={model} /> : <SeeingPortions view={view as PortionsView} model={model} />;
}
