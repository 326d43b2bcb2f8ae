// What there is to see, by the kind of practical.

import type { Message, View } from "../contract";
import { type Model, pouredAt, runningRepeat } from "../model";
import { type PortionsView, isOnce } from "../plan";
import type { Acting } from "./acting";
import { After } from "./after";
import { CurveFigure } from "./curve_figure";
import { later } from "./later";
import { Readings } from "./readings";
import { TimeFigure } from "./time_figure";

interface Props {
  view: View;
  model: Model;
  acting: Acting;
  take: (message: Message) => void;
}

const SeeingOnce = later(async () => (await import("./seeing_once")).SeeingOnce);

/** States in which the newest portion's curve is worth watching. */
const WATCHING: readonly View["state"][] = ["start", "pour", "settle", "paused"];

function Newest({ view, model }: { view: View; model: Model }) {
  const poured_s = pouredAt(view);
  const running = runningRepeat(view);
  if (poured_s === null || !WATCHING.includes(view.state) || view.thermometer.kind === "typed") return null;
  return (
    <TimeFigure samples={model.samples} poured_s={poured_s} portions={running?.portions} readings={running?.readings} />
  );
}

export function Seeing({ view, model, acting, take }: Props) {
  if (isOnce(view)) return <SeeingOnce view={view} model={model} acting={acting} />;
  const portions = view as PortionsView;
  return (
    <>
      <CurveFigure view={portions} model={model} acting={acting} take={take} />
      <Newest view={view} model={model} />
      <Readings view={view} />
      <After view={portions} />
    </>
  );
}
