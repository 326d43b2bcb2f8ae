// The curve of a practical in portions: against volume, or against time; or the students' own lines in its place.
// Under it stand the results, or what they wait for.

import { useRef, useState } from "preact/hooks";
import { VolumeFigure } from "../chart/volume_figure";
import type { Acting } from "../live/acts";
import type { Message, PortionsView, View } from "../live/contract";
import type { Model } from "../live/model";
import { later, laterStill } from "../page/shared";
import { phrase } from "../words";
import { isTyped } from "./live_trace";
import { Answer, Compared, ResultWords, Waiting } from "./results";

interface Props {
  view: PortionsView;
  model: Model;
  acting: Acting;
  take: (message: Message) => void;
}

type Axis = "volume" | "time";

const Doubtful = laterStill(async () => (await import("./doubtful")).Doubtful);
const TraceFigure = later(async () => (await import("../chart/trace_figure")).TraceFigure);
const SketchPart = later(async () => (await import("./sketch/sketch")).SketchPart);
const OwnLines = later(async () => (await import("./own/own_lines")).OwnLines);
const Differ = laterStill(async () => (await import("./why/why")).Differ);
export const After = laterStill(async () => (await import("./after")).After);

/** Whether a repeat has just ended; only then are refusals and remarks of a method news. */
export function isOver(view: View): boolean {
  return view.state === "rinse" || view.state === "done";
}

/** Whether the students may still read by themselves, before the results. */
export function mayRead(view: View): boolean {
  return view.other_acts.includes("own_reading") && !view.results.shown && !view.bench.read_only;
}

/** Samples are of the bench's own probe, and of its own readings. */
function hasTrace(view: View): boolean {
  return view.repeats.length > 0 && view.thermometer.kind === "probe" && view.adopted === null;
}

export function CurveFigure({ view, model, acting, take }: Props) {
  const [axis, setAxis] = useState<Axis>("volume");
  const [again, setAgain] = useState(false);
  const [redraws, setRedraws] = useState(false);
  const placing = mayRead(view) && (view.own_reading === null || again);
  const maySketch = view.other_acts.includes("sketch") && !view.bench.read_only;
  const sketching = maySketch && (view.instruction.code === "set_up_sketch" || redraws);
  const timed = axis === "time" && hasTrace(view) && !sketching;
  const heading = useRef<HTMLHeadingElement>(null);
  // The form is gone with its button: go on reading where its place was.
  const done = () => {
    setAgain(false);
    setRedraws(false);
    heading.current?.focus();
  };
  return (
    <>
      {view.state === "done" && <Doubtful view={view} acting={acting} />}
      {view.results.shown && isOver(view) && <Answer view={view} />}
      <section class={`figure${view.state === "done" ? " figure-large" : ""}`} data-testid={isTyped(view) ? undefined : "curve"}>
        <h2 ref={heading} tabIndex={-1}>{sketching ? phrase("page-sketch-title") : timed ? phrase("page-once-chart") : placing ? phrase("page-own-lines-title") : phrase("page-volume-chart")}</h2>
        {hasTrace(view) && !sketching && <Views axis={axis} choose={setAxis} />}
        <div class="room-chart">
          {sketching ? (
            <SketchPart view={view} acting={acting} done={done} />
          ) : timed ? (
            <TraceFigure view={view} traces={model.traces} take={take} />
          ) : placing ? (
            <OwnLines view={view} acting={acting} steps={{ step_cm3: view.plan.portions.volume_cm3, count: view.plan.portions.count }} done={done} />
          ) : (
            <VolumeFigure view={view} large={view.state === "done"} />
          )}
        </div>
        {maySketch && !sketching && (
          <button type="button" class="plain" onClick={() => setRedraws(true)}>
            {view.sketch ? phrase("page-sketch-again") : phrase("page-sketch-first")}
          </button>
        )}
        {view.sketch && view.state === "done" && <p class="sketch-question">{phrase("page-sketch-question")}</p>}
        {view.results.shown ? (
          <Found view={view} />
        ) : (
          !placing && <Waiting view={view} change={mayRead(view) ? () => setAgain(true) : null} />
        )}
      </section>
    </>
  );
}

/** The results, how far the own reading is off them, and why the two differ. */
function Found({ view }: { view: PortionsView }) {
  const { result, repeats, state } = view;
  return (
    <>
      <ResultWords view={view} result={result} repeats={repeats} over={isOver(view)} />
      {state === "done" && (
        <>
          <Compared view={view} />
          {result?.straight_lines && result.heat_balance && <Differ view={view} />}
        </>
      )}
    </>
  );
}

function Views({ axis, choose }: { axis: Axis; choose: (axis: Axis) => void }) {
  const names: readonly [Axis, string][] = [
    ["volume", phrase("page-seeing-against-volume")],
    ["time", phrase("page-seeing-against-time")],
  ];
  return (
    <div class="choice views" role="group" aria-label={phrase("page-seeing-views")}>
      {names.map(([name, text]) => (
        <button key={name} type="button" class="plain" aria-pressed={axis === name} onClick={() => choose(name)}>
          {text}
        </button>
      ))}
    </div>
  );
}
