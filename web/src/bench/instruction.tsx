// The one instruction, drawn and in words, how long is left, and the one button. Every state keeps the same places: the
// head, the button's lower edge, the words' upper edge.

import { useLayoutEffect, useRef } from "preact/hooks";
import { type Freshness, keptTogether } from "../format";
import { kindOf } from "../kinds";
import type { Act, Acting } from "../live/acts";
import type { View } from "../live/contract";
import { asksForSomething } from "../live/model";
import { later, useFitted, useMeant } from "../page/shared";
import { Explained } from "../page/terms";
import { timeLeftText } from "../phrases/bench";
import { markedSaid, phrase, said } from "../words";
import { Corrections, Question, useAsking } from "./doing";
import { Drawing, drawnFor } from "./drawings";

interface InstructionCardProps {
  view: View;
  poured_s: number | null;
  heard: Freshness;
  acting: Acting;
}

/** More portions than this would be a row of specks. */
const MOST_MARKS = 25;

/** Where the practical stands: of the whole, and of this repeat. */
export function standing(view: View): { whole: string; portion: number | null } {
  if (view.state === "done") return { whole: phrase("page-finished"), portion: null };
  if (view.state === "paused") return { whole: phrase("page-paused-tag"), portion: null };
  if (view.state === "ready" || view.state === "alkali") return { whole: phrase("page-ready-tag"), portion: null };
  const { inPortions, whole } = kindOf(view.plan);
  const portion = view.instruction.portion ?? view.portion;
  return { whole: whole(view), portion: portion === 0 || view.state === "rinse" || !inPortions ? null : portion };
}

function Standing({ view, heard }: { view: View; heard: Freshness }) {
  const { whole, portion } = standing(view);
  const many = view.portions_planned;
  const marks = kindOf(view.plan).marks(view);
  return (
    <div class="instruction-standing" data-testid="place">
      <p class="instruction-tag">{heard === "fresh" ? whole : phrase("page-doing-may-be-old")}</p>
      <p class="instruction-portion">{portion !== null && phrase("page-portion-of", { portion, planned: many })}</p>
      <div class="portion-marks" aria-hidden="true">
        {marks &&
          marks.all <= MOST_MARKS &&
          Array.from({ length: marks.all }, (_, index) => <i key={index} class={index < marks.done ? "in" : ""} />)}
      </div>
    </div>
  );
}

/** The keyboard's place: when what was pressed gives way to the next thing to press, the focus goes there. */
function useKeptFocus(meaning: string) {
  const foot = useRef<HTMLDivElement>(null);
  const was = useRef(false);
  useLayoutEffect(() => {
    const note = (event: Event) => {
      was.current = foot.current?.contains(event.target as Node) ?? false;
    };
    document.addEventListener("focusin", note);
    return () => document.removeEventListener("focusin", note);
  }, []);
  useLayoutEffect(() => {
    const lost = document.activeElement === document.body || document.activeElement === foot.current;
    if (!was.current || !lost) return;
    (foot.current?.querySelector<HTMLElement>(".done, input") ?? foot.current)?.focus({ preventScroll: true });
  }, [meaning]);
  return foot;
}

export function InstructionCard({ view, poured_s, heard, acting }: InstructionCardProps) {
  const { code, portion } = view.instruction;
  // "portion 3:" stays on one line, too.
  const text = keptTogether(markedSaid(view.instruction.text)).replace(/ (\d+:)/, "\u00a0$1");
  const detail = view.instruction.detail && keptTogether(markedSaid(view.instruction.detail));
  const fitted = useFitted(`${text} ${detail}`);
  const foot = useKeptFocus(`${code} ${portion} ${view.repeat}`);
  const hint = view.bench.panel === "none" ? phrase("page-doing-dry-hands") : phrase("page-doing-at-the-cup");
  const asking = useAsking(view);
  const aside = asking.asked !== null;
  return (
    <section class={`instruction ${asksForSomething(view.instruction) ? "instruction-act" : "instruction-wait"} heard-${heard}`}>
      <div class="instruction-head">
        <div class="instruction-drawing" key={`${code} ${portion}`}>
          <Drawing of={drawnFor(code)} />
        </div>
        <Standing view={view} heard={heard} />
        {asking.waits && (
          <button type="button" class="plain question-again" aria-label={phrase("page-question-again")} onClick={asking.bringBack}>
            ?
          </button>
        )}
        <Corrections view={view} acting={acting} />
      </div>
      <div class={`instruction-body${aside ? " instruction-aside" : ""}`}>
        <div class="instruction-words" ref={fitted} aria-live="polite" aria-atomic="true">
          <h2 class="instruction-text" key={text} data-testid={aside ? undefined : "instruction"}>
            <Explained text={text} />
          </h2>
          <p class="instruction-detail" key={`${text} ${detail}`}>
            <Explained text={detail ?? ""} />
          </p>
        </div>
        <div class={`instruction-foot${pressesTwo(view) ? " foot-two" : ""}`} ref={foot} tabIndex={-1}>
          <InstructionFoot view={view} poured_s={poured_s} acting={acting} />
        </div>
        <Question asking={asking} view={view} acting={acting} />
      </div>
      <p class="instruction-hint">
        {view.state === "ready" ? <a href="#guide">{phrase("page-doing-guide-first")}</a> : hint}
      </p>
    </section>
  );
}

// What can be pressed or typed under the instruction, and how long a wait still lasts.

const Divisions = later(() => import("./typed").then((part) => part.Divisions));
const OwnThermometer = later(() => import("./typed").then((part) => part.OwnThermometer));
const TypedAlkali = later(() => import("./typed").then((part) => part.TypedAlkali));
const TypedReading = later(() => import("./typed").then((part) => part.TypedReading));

const ReadByClock = later(() => import("./by_clock").then((part) => part.ReadByClock));
const MixNow = later(() => import("./by_clock").then((part) => part.MixNow));

interface InstructionFootProps {
  view: View;
  poured_s: number | null;
  acting: Acting;
}

/** Whether the temperature of what will be added may be left out: it is a press of its own beside the one button. */
function mayLeaveOut({ instruction: { code }, other_acts }: View): boolean {
  return (code === "set_up_alkali" || code === "alkali") && other_acts.includes("alkali_left_out");
}

/** Whether the station can say how long a wait lasts: not without a probe, nor where the students judge. */
export const isWaiting = ({ settle, instruction: { code } }: View): boolean =>
  settle !== null && code !== "probe_lost" && (!code.startsWith("own_") || settle.left_s !== null);

function Waiting({ view, poured_s }: { view: View; poured_s: number | null }) {
  const { left_s, over } = waitLeft(view, poured_s);
  return (
    <div class="waiting">
      <p>
        <span>{phrase("page-time-left")}</span>
        <strong key={String(left_s === null)} class={left_s === null ? "left left-unknown" : "left"}>{left_s === null ? phrase("page-left-unknown") : timeLeftText(left_s)}</strong>
      </p>
      <progress aria-label={phrase("page-settling")} max={1} {...(over === null ? {} : { value: over })} />
    </div>
  );
}

function DoneButton({ view, acting }: { view: View; acting: Acting }) {
  const { act, portion, label } = view.instruction;
  const meant = useMeant(`${act} ${portion} ${view.repeat}`);
  if (!act) return null;
  const press = () => {
    if (!meant()) return;
    const pressed: Act = portion === null ? { act } : { act, portion };
    void acting.send(pressed);
  };
  return (
    <button type="button" class="done" data-testid="act" data-act={act} data-portion={portion} aria-disabled={acting.busy} onClick={press}>
      <span key={`${label} ${acting.busy}`}>{acting.busy ? phrase("page-sending") : said(label ?? act)}</span>
    </button>
  );
}

/** Own judgement: what went in without a reading before it is a fact, too. */
function Unread({ view, acting }: { view: View; acting: Acting }) {
  const portion = view.portion + 1;
  const meant = useMeant(`unread ${portion} ${view.repeat}`);
  return (
    <button
      type="button"
      class="plain"
      data-act="portion_added"
      onClick={() => meant() && void acting.send({ act: "portion_added", portion })}
    >
      {phrase("page-doing-added-unread", { portion })}
    </button>
  );
}

/** The curve that the group expects is drawn below, where there is room for it. */
function Sketching({ acting }: { acting: Acting }) {
  const meant = useMeant("set_up_sketch");
  return (
    <>
      <button type="button" class="plain" data-act="sketch_left_out" onClick={() => meant() && void acting.send({ act: "sketch_left_out" })}>
        {phrase("page-doing-without")}
      </button>
      <button type="button" class="done" data-act="draw" onClick={showSeeing}>
        <span>{phrase("page-sketch-draw")}</span>
      </button>
    </>
  );
}

/** Go to what stands below the instrument, with the keyboard, too. */
function showSeeing(): void {
  const seeing = document.querySelector<HTMLElement>(".seeing");
  const place = seeing?.querySelector<HTMLElement>(".sketching")?.closest<HTMLElement>(".figure") ?? seeing;
  place?.scrollIntoView();
  seeing?.focus({ preventScroll: true });
}

/** What comes after the cup: the own lines or the results, then the record. */
function Afterwards({ view, acting }: { view: View; acting: Acting }) {
  const meant = useMeant("over");
  if (view.turned === false && view.other_acts.includes("finish_undone")) {
    return (
      <>
        <button type="button" class="done" data-act="finish_undone" onClick={() => meant() && void acting.send({ act: "finish_undone" })}>
          <span>{phrase("page-doing-go-on-measuring")}</span>
        </button>
        <a class="button" href="#record">
          {phrase("page-doing-to-record")}
        </a>
      </>
    );
  }
  return (
    <>
      <button type="button" class="done" onClick={showSeeing}>
        <span>{view.results.waits_for !== "own reading" ? phrase("page-doing-to-results") : kindOf(view.plan).drawsLines ? phrase("page-doing-to-lines") : phrase("page-doing-to-reading")}</span>
      </button>
      <a class="button" href="#record">
        {phrase("page-doing-to-record")}
      </a>
    </>
  );
}

/** Own judgement: a portion may go in before anything is read. */
function readsLater(view: View): boolean {
  const { act } = view.instruction;
  return act === "read_now" && view.other_acts.includes("portion_added") && view.portion < view.portions_planned && kindOf(view.plan).inPortions;
}

/** Whether there are two things to press, side by side. */
const pressesTwo = (view: View): boolean =>
  !view.bench.read_only && ((view.state === "ready" && (mayLeaveOut(view) || view.instruction.code === "set_up_sketch")) || readsLater(view) || (view.instruction.code === "done" && view.instruction.act === null));

function InstructionFoot({ view, poured_s, acting }: InstructionFootProps) {
  const { code, act } = view.instruction;
  const may = (name: string) => view.other_acts.includes(name);
  if (view.bench.read_only) return isWaiting(view) ? <Waiting view={view} poured_s={poured_s} /> : null;
  if (code === "done" && act === null) return <Afterwards view={view} acting={acting} />;
  if (code === "set_up_sketch") return <Sketching acting={acting} />;
  if (code === "thermometer") return <Divisions acting={acting} title={phrase("page-doing-divisions")} />;
  if (code === "type_start" || code === "type_reading") {
    return <TypedReading key={`${view.repeat} ${view.portion}`} view={view} acting={acting} />;
  }
  const unread = readsLater(view);
  const byClock = view.clock !== null && may("reading");
  const mixes = act === "portion_added" && !kindOf(view.plan).inPortions;
  return (
    <>
      {isWaiting(view) && <Waiting view={view} poured_s={poured_s} />}
      {code === "probe_lost" && may("thermometer") && <OwnThermometer acting={acting} />}
      {code === "set_up_alkali_typed" && <TypedAlkali view={view} acting={acting} />}
      {mayLeaveOut(view) && (
        <button type="button" class="plain" data-act="alkali_left_out" onClick={() => void acting.send({ act: "alkali_left_out" })}>
          {phrase("page-doing-without")}
        </button>
      )}
      {unread && <Unread view={view} acting={acting} />}
      {byClock && <ReadByClock view={view} acting={acting} />}
      {mixes ? <MixNow view={view} acting={acting} /> : <DoneButton view={view} acting={acting} />}
    </>
  );
}

// How long a wait still lasts, in the time of the person who waits.

/** Wall seconds left of a wait, and the share of it that is over. */
export function waitLeft(view: View, poured_s: number | null): { left_s: number | null; over: number | null } {
  if (!view.settle || view.settle.left_s === null) return { left_s: null, over: null };
  const { left_s } = view.settle;
  const gone_s = poured_s === null ? 0 : Math.max(0, view.time_s - poured_s);
  return { left_s: left_s / (view.speed || 1), over: gone_s + left_s > 0 ? gone_s / (gone_s + left_s) : null };
}
