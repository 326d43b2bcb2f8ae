// What there is to see below the instrument, by the kind of practical.

import type { Acting } from "../live/acts";
import { type Message, type PortionsView, type View, isOnce } from "../live/contract";
import type { Model } from "../live/model";
import { later } from "../page/shared";
import { After, CurveFigure } from "./curves";
import { Readings } from "./readings";

interface SeeingProps {
  view: View;
  model: Model;
  acting: Acting;
  take: (message: Message) => void;
}

const SeeingOnce = later(async () => (await import("./once")).SeeingOnce);

export function Seeing({ view, model, acting, take }: SeeingProps) {
  if (isOnce(view)) return <SeeingOnce view={view} model={model} acting={acting} />;
  const portions = view as PortionsView;
  return (
    <>
      <CurveFigure view={portions} model={model} acting={acting} take={take} />
      <Readings view={view} />
      <After view={portions} />
    </>
  );
}
