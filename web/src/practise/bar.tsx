// The practice controls, in a bar of their own at the lower edge: a syringe to read, to fill and to empty by holding and
// letting go; stirring, lid, probe and fresh acid.

import { useEffect, useState } from "preact/hooks";
import { fixed } from "../format";
import type { Practice, View } from "../live/contract";
import { phrase, said } from "../words";
import { type Holding, useHands } from "./hands";

/** A second press within this time means it / ms. */
const SURE_MS = 4000;
const PLACES = ["out", "alkali", "cup"] as const satisfies readonly Practice["hands"]["probe"][];

export function PractiseBar({ view }: { view: View }) {
  const hands = useHands(`${view.boot} ${view.state} ${view.repeat} ${view.portion} ${view.results.shown}`);
  useEffect(() => {
    // The instrument has what room the bar leaves.
    const root = document.documentElement;
    root.classList.add("practising");
    return () => root.classList.remove("practising");
  }, []);
  const { practice } = hands;
  if (!practice) return null;
  return (
    <section class="practise-bar" aria-label={phrase("page-practise-hands")}>
      <SyringeDrawn hands={hands} of={practice.hands} />
      <div class="practise-controls">
        <Hold hands={hands} way="draw" />
        <Hold hands={hands} way="push" />
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
function Hold({ hands, way }: { hands: Holding; way: "draw" | "push" }) {
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
      {phrase("page-practise-hold", { which: way })}
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

// The syringe lies with its tip on the left; its scale counts what is in it.

const WIDE = 320;
const HIGH = 44;
const [LEFT, RIGHT] = [14, 296];

function SyringeDrawn({ hands, of }: { hands: Holding; of: Practice["hands"] }) {
  const { capacity_cm3, division_cm3 } = of.syringe;
  const in_cm3 = Math.max(0, hands.syringe.drawn_cm3 - hands.syringe.pushed_cm3);
  const x = (volume_cm3: number) => LEFT + ((RIGHT - LEFT) * volume_cm3) / capacity_cm3;
  const count = Math.round(capacity_cm3 / division_cm3);
  const [fifth, tenth] = [5, 10];
  const marks = Array.from({ length: count + 1 }, (_, index) => {
    const length = index % tenth === 0 ? 13 : index % fifth === 0 ? 9 : 5;
    return `M${x(index * division_cm3).toFixed(2)} 8v${length}`;
  });
  const read = fixed(Math.round(in_cm3 / division_cm3) * division_cm3, division_cm3 < 1 ? 1 : 0);
  return (
    <div
      class="syringe"
      role="meter"
      aria-label={phrase("page-practise-syringe", { reagent: said(of.alkali) })}
      aria-valuemin={0}
      aria-valuemax={capacity_cm3}
      aria-valuenow={Number(in_cm3.toFixed(1))}
      aria-valuetext={phrase("page-volume", { volume: read })}
    >
      <svg viewBox={`0 0 ${WIDE} ${HIGH}`} aria-hidden="true" preserveAspectRatio="xMidYMid meet">
        <path class="syringe-liquid" d={`M${LEFT} 8H${x(in_cm3).toFixed(2)}V32H${LEFT}z`} />
        <path class="syringe-barrel" d={`M2 17h${LEFT - 2}v-9H${RIGHT + 4}M2 23h${LEFT - 2}v9H${RIGHT + 4}M${RIGHT + 4} 3v34`} />
        <path class="syringe-marks" d={marks.join("")} />
        <path class="syringe-plunger" d={`M${x(in_cm3).toFixed(2)} 9h5v22h-5zM${(x(in_cm3) + 5).toFixed(2)} 20H${WIDE - 4}`} />
        {marks.flatMap((_, index) =>
          index % tenth === 0 ? [<text key={index} x={x(index * division_cm3)} y={42}>{Math.round(index * division_cm3)}</text>] : [],
        )}
      </svg>
    </div>
  );
}
