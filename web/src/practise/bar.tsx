// The practice controls, in a bar of their own at the lower edge: a syringe or measuring cylinder to read, to fill and to
// empty by holding and letting go; stirring, lid, probe and fresh acid.

import { useEffect, useState } from "preact/hooks";
import type { Practice, View } from "../live/contract";
import { phrase } from "../words";
import { type Holding, type Way, useHands } from "./hands";
import { Glassware } from "./ware";

/** A second press within this time means it / ms. */
const SURE_MS = 4000;
const PLACES = ["out", "alkali", "cup"] as const satisfies readonly Practice["hands"]["probe"][];

export function PractiseBar({ view }: { view: View }) {
  const hands = useHands(`${view.boot} ${view.state} ${view.repeat} ${view.portion} ${view.results.shown}`);
  const { practice } = hands;
  const ware = practice?.hands.ware.ware;
  useEffect(() => {
    // The instrument has what room the bar leaves.
    const { classList } = document.documentElement;
    classList.add("practising");
    classList.toggle("practising-cylinder", ware === "cylinder");
    return () => classList.remove("practising", "practising-cylinder");
  }, [ware]);
  if (!practice) return null;
  return (
    <section class="practise-bar" aria-label={phrase("page-practise-hands")}>
      <Glassware measured={hands.measured} of={practice.hands} />
      <div class="practise-controls">
        <Hold hands={hands} way="draw" ware={practice.hands.ware.ware} />
        <Hold hands={hands} way="pour" ware={practice.hands.ware.ware} />
        <Stir hands={hands} of={practice.hands} speed={view.speed} />
        <button type="button" aria-pressed={practice.hands.lid} onClick={() => hands.act({ hand: "lid", on: !practice.hands.lid })}>
          {phrase("page-practise-lid", { which: practice.hands.lid ? "on" : "off" })}
        </button>
        <ProbePlaces hands={hands} of={practice.hands} />
        <Fill hands={hands} of={practice.hands} view={view} />
      </div>
      <p class="practise-refused" role="alert">
        {hands.refused}
      </p>
    </section>
  );
}

/** A press and what it means until it is let go; a screen reader's press holds until the next. */
function Hold({ hands, way, ware }: { hands: Holding; way: Way; ware: Practice["hands"]["ware"]["ware"] }) {
  const [held, setHeld] = useState(false);
  const begin = () => {
    setHeld(true);
    hands.hold(way);
  };
  const end = () => {
    if (!held) return;
    setHeld(false);
    hands.hold(null);
  };
  const isKey = ({ key }: KeyboardEvent) => key === " " || key === "Enter";
  return (
    <button
      type="button"
      class={`hold${held ? " hold-held" : ""}`}
      data-hand={way}
      aria-pressed={held}
      onPointerDown={(event) => {
        if (event.button !== 0) return;
        event.currentTarget.setPointerCapture(event.pointerId);
        begin();
      }}
      onPointerUp={end}
      onPointerCancel={end}
      onContextMenu={(event) => event.preventDefault()}
      onKeyDown={(event) => {
        if (!isKey(event)) return;
        event.preventDefault();
        if (!event.repeat) begin();
      }}
      onKeyUp={(event) => {
        if (!isKey(event)) return;
        event.preventDefault();
        end();
      }}
      onBlur={end}
      onClick={(event) => {
        // Neither a pointer nor a key of ours: a screen reader presses, and presses again to let go.
        if (event.detail === 0) (held ? end : begin)();
      }}
    >
      {phrase("page-practise-hold", { which: way === "draw" ? way : ware })}
    </button>
  );
}

function Stir({ hands, of, speed }: { hands: Holding; of: Practice["hands"]; speed: number }) {
  const [stirring, stir] = useState(false);
  useEffect(() => {
    stir(of.stirred_for_s > 0);
    const timer = setTimeout(() => stir(false), (1000 * of.stirred_for_s) / speed);
    return () => clearTimeout(timer);
  }, [of]);
  return (
    <button type="button" class={stirring ? "is-stirring" : ""} onClick={() => hands.act({ hand: "stir" })}>
      {phrase("page-practise-stir", { which: stirring ? "stirring" : "still" })}
    </button>
  );
}

function ProbePlaces({ hands, of }: { hands: Holding; of: Practice["hands"] }) {
  return (
    <label class="practise-probe">
      <span>{phrase("page-practise-probe")}</span>
      <select
        value={of.probe}
        onChange={({ currentTarget }) => hands.act({ hand: "probe", place: PLACES[currentTarget.selectedIndex] ?? "out" })}
      >
        {PLACES.map((place) => (
          <option key={place} value={place} selected={place === of.probe}>
            {phrase("page-practise-places", { which: place })}
          </option>
        ))}
      </select>
    </label>
  );
}

/** Pouring a cup away that is in use takes a second press. */
function Fill({ hands, of, view }: { hands: Holding; of: Practice["hands"]; view: View }) {
  const [asked, ask] = useState(false);
  useEffect(() => {
    if (!asked) return undefined;
    const timer = setTimeout(() => ask(false), SURE_MS);
    return () => clearTimeout(timer);
  }, [asked]);
  const inUse = of.filled && view.repeats.some(({ status }) => status === "running");
  const press = () => {
    if (inUse && !asked) {
      ask(true);
      return;
    }
    ask(false);
    hands.act({ hand: "fill" });
  };
  return (
    <button type="button" data-hand="fill" onClick={press}>
      {phrase("page-practise-fill", { which: asked ? "sure" : of.filled ? "again" : "empty" })}
    </button>
  );
}
