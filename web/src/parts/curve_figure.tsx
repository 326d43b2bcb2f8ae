// The curve of a practical in portions: against volume, or against time; or the students' own lines in its place.
// Under it stand the results, or what they wait for.

import { useRef, useState } from "preact/hooks";
import type { Message, View } from "../contract";
import type { Model } from "../model";
import type { PortionsView } from "../plan";
import { words } from "../words";
import type { Acting } from "./acting";
import { Compared } from "./compared";
import { later } from "./later";
import { Opened } from "./opened";
import { ResultWords } from "./result";
import { VolumeFigure } from "./volume_figure";
import { Waiting } from "./waiting";

interface Props {
  view: PortionsView;
  model: Model;
  acting: Acting;
  take: (message: Message) => void;
}

type Axis = "volume" | "time";

const TraceFigure = later(async () => (await import("./trace_figure")).TraceFigure);
const OwnLines = later(async () => (await import("./own_lines")).OwnLines);
const Why = later(async () => (await import("./why")).Why);

/** Whether a repeat has just ended; only then are refusals and remarks of a method news. */
export function isOver(view: View): boolean {
  return view.state === "rinse" || view.state === "done";
}

/** Whether the students may still read by themselves. */
export function mayRead(view: View): boolean {
  return view.state === "done" && !view.results.shown && view.mean.length > 0 && !view.bench.read_only;
}

/** Samples are of the bench's own probe, and of its own readings. */
function hasTrace(view: View): boolean {
  return view.repeats.length > 0 && view.thermometer.kind === "probe" && view.adopted === null;
}

export function CurveFigure({ view, model, acting, take }: Props) {
  const [axis, setAxis] = useState<Axis>("volume");
  const [again, setAgain] = useState(false);
  const placing = mayRead(view) && (view.own_reading === null || again);
  const timed = axis === "time" && hasTrace(view);
  const heading = useRef<HTMLHeadingElement>(null);
  // The form is gone with its button: go on reading where its place was.
  const done = () => {
    setAgain(false);
    heading.current?.focus();
  };
  return (
    <section class="figure">
      <h2 ref={heading} tabIndex={-1}>{timed ? words.onceChart : placing ? words.ownLines.title : words.volumeChart}</h2>
      {hasTrace(view) && <Views axis={axis} choose={setAxis} />}
      <div class="room-chart">
        {timed ? (
          <TraceFigure view={view} traces={model.traces} take={take} />
        ) : placing ? (
          <OwnLines view={view} acting={acting} done={done} />
        ) : (
          <VolumeFigure view={view} />
        )}
      </div>
      {view.results.shown ? (
        <Found view={view} />
      ) : (
        !placing && <Waiting view={view} change={mayRead(view) ? () => setAgain(true) : null} />
      )}
    </section>
  );
}

/** The results, how far the own reading is off them, and why the two differ. */
function Found({ view }: { view: PortionsView }) {
  const { result, repeats, state } = view;
  const low = (result?.straight_lines?.end_point_cm3 ?? 0) < (result?.heat_balance?.end_point_cm3 ?? 0);
  return (
    <>
      <ResultWords result={result} repeats={repeats} over={isOver(view)} />
      {state === "done" && (
        <>
          <Compared view={view} />
          {result?.straight_lines && result.heat_balance && (
            <Opened id="why" name={low ? words.why.openLow : words.why.open} class="opened-why">
              <Why view={view} />
            </Opened>
          )}
        </>
      )}
    </>
  );
}

function Views({ axis, choose }: { axis: Axis; choose: (axis: Axis) => void }) {
  const names: readonly [Axis, string][] = [
    ["volume", words.seeing.againstVolume],
    ["time", words.seeing.againstTime],
  ];
  return (
    <div class="choice views" role="group" aria-label={words.seeing.views}>
      {names.map(([name, text]) => (
        <button key={name} type="button" class="plain" aria-pressed={axis === name} onClick={() => choose(name)}>
          {text}
        </button>
      ))}
    </div>
  );
}
