// What there is to see of one mixing. Fetched when the plan mixes once: most practicals go in portions.

import type { Model } from "../model";
import type { OnceView } from "../plan";
import type { Acting } from "./acting";
import { After } from "./after";
import { OnceFigure } from "./once_figure";
import { OnceNumbers } from "./once_table";

interface Props {
  view: OnceView;
  model: Model;
  acting: Acting;
}

export function SeeingOnce({ view, model, acting }: Props) {
  return (
    <>
      <OnceFigure view={view} traces={model.traces} acting={acting} />
      <OnceNumbers view={view} />
      <After view={view} />
    </>
  );
}
