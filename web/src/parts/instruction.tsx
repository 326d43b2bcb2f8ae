// The one instruction, drawn and in words, how long is left, and the one button. Every state keeps the same height.

import { useLayoutEffect, useRef } from "preact/hooks";
import type { Act } from "../acts";
import type { Freshness } from "../age";
import { asksForSomething } from "../asks";
import { drawnRepeats } from "../chart_volume";
import type { View } from "../contract";
import { keptTogether } from "../format";
import { addedWord, addsSolid, isOnce } from "../plan";
import { waitLeft } from "../wait";
import { said, words } from "../words";
import type { Acting } from "./acting";
import { Drawing, drawnFor } from "./drawings";
import { useFitted } from "./fitted";
import { later } from "./later";
import { useMeant } from "./meaning";

const Divisions = later(() => import("./typed").then((part) => part.Divisions));
const TypedReading = later(() => import("./typed").then((part) => part.TypedReading));

interface Props {
  view: View;
  poured_s: number | null;
  heard: Freshness;
  acting: Acting;
}

/** More portions than this would be a row of specks. */
const MOST_MARKS = 25;

/** Where the practical stands: of the whole, and of this repeat. */
export function standing(view: View): { whole: string; portion: number | null } {
  if (view.state === "done") return { whole: words.finished, portion: null };
  if (view.state === "paused") return { whole: words.pausedTag, portion: null };
  if (view.state === "ready" || view.state === "alkali") return { whole: words.readyTag, portion: null };
  const whole = words.repeatOf(drawnRepeats(view.repeats).length, view.repeats_planned);
  const portion = view.instruction.portion ?? view.portion;
  return { whole, portion: portion === 0 || view.state === "rinse" || isOnce(view) ? null : portion };
}

function Standing({ view, heard }: { view: View; heard: Freshness }) {
  const { whole, portion } = standing(view);
  const many = view.portions_planned;
  return (
    <div class="instruction-standing">
      <p class="instruction-tag">{heard === "fresh" ? whole : words.doing.mayBeOld}</p>
      <p class="instruction-portion">{portion !== null && words.portionOf(portion, many)}</p>
      <div class="portion-marks" aria-hidden="true">
        {!isOnce(view) &&
          many <= MOST_MARKS &&
          Array.from({ length: many }, (_, index) => <i key={index} class={index < view.portion ? "in" : ""} />)}
      </div>
    </div>
  );
}

/** Whether the probe could take the temperature of what will be added. */
function dipsFirst(view: View): boolean {
  const unknown = view.state === "ready" && view.alkali_temperature_c === null && view.thermometer.kind === "probe";
  return unknown && !addsSolid(view.plan) && view.other_acts.includes("alkali_temperature");
}

/** Whether the station can say how long a wait lasts: not without a probe, nor where the students judge. */
export const isWaiting = ({ settle, instruction: { code } }: View): boolean =>
  settle !== null && code !== "probe_lost" && !code.startsWith("own_");

export function Waiting({ view, poured_s }: { view: View; poured_s: number | null }) {
  const { left_s, over } = waitLeft(view, poured_s);
  return (
    <div class="waiting">
      <p>
        <span>{words.timeLeft}</span>
        <strong key={String(left_s === null)} class={left_s === null ? "left left-unknown" : "left"}>{left_s === null ? words.leftUnknown : words.left(left_s)}</strong>
      </p>
      <progress aria-label={words.settling} max={1} {...(over === null ? {} : { value: over })} />
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
    <button type="button" class="done" data-act={act} data-portion={portion} aria-disabled={acting.busy} onClick={press}>
      <span key={`${label} ${acting.busy}`}>{acting.busy ? words.sending : said(label ?? act)}</span>
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
      {words.doing.addedUnread(portion)}
    </button>
  );
}

/** What comes after the cup: the own lines or the results, then the record. */
function Afterwards({ view }: { view: View }) {
  const { toLines, toResults, toRecord } = words.doing;
  const show = () => {
    const seeing = document.querySelector<HTMLElement>(".seeing");
    seeing?.scrollIntoView();
    seeing?.focus({ preventScroll: true });
  };
  return (
    <>
      <button type="button" class="done" onClick={show}>
        <span>{view.results.waits_for === "own reading" ? toLines : toResults}</span>
      </button>
      <a class="button" href="#record">
        {toRecord}
      </a>
    </>
  );
}

function FootOf({ view, poured_s, acting }: Omit<Props, "heard">) {
  const { code, act } = view.instruction;
  const may = (name: string) => view.other_acts.includes(name);
  if (code === "done" && act === null) return <Afterwards view={view} />;
  if (code === "thermometer") return <Divisions acting={acting} title={words.doing.divisions} />;
  if (code === "type_start" || code === "type_reading") {
    return <TypedReading key={`${view.repeat} ${view.portion}`} view={view} acting={acting} />;
  }
  const unread = act === "read_now" && may("portion_added") && view.portion < view.portions_planned && !isOnce(view);
  return (
    <>
      {isWaiting(view) && <Waiting view={view} poured_s={poured_s} />}
      {code === "probe_lost" && may("thermometer") && <Divisions acting={acting} title={words.doing.goOnTyping} />}
      {dipsFirst(view) && (
        <button type="button" class="plain" onClick={() => void acting.send({ act: "alkali_temperature" })}>
          {words.addedFirst(addedWord(view.plan))}
        </button>
      )}
      {unread && <Unread view={view} acting={acting} />}
      <DoneButton view={view} acting={acting} />
    </>
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

export function InstructionCard({ view, poured_s, heard, acting }: Props) {
  const { code, portion } = view.instruction;
  const text = keptTogether(said(view.instruction.text));
  const detail = view.instruction.detail && keptTogether(said(view.instruction.detail));
  const fitted = useFitted(`${text} ${detail}`);
  const foot = useKeptFocus(`${code} ${portion} ${view.repeat}`);
  const hint = view.bench.panel === "none" ? words.doing.dryHands : words.doing.atTheCup;
  return (
    <section class={`instruction ${asksForSomething(view.instruction) ? "instruction-act" : "instruction-wait"} heard-${heard}`}>
      <Standing view={view} heard={heard} />
      <div class="instruction-drawing" key={`${code} ${portion}`}>
        <Drawing of={drawnFor(code)} />
      </div>
      <div class="instruction-words" ref={fitted} aria-live="polite" aria-atomic="true">
        <p class="instruction-text" key={text}>
          {text}
        </p>
        <p class="instruction-detail" key={`${text} ${detail}`}>
          {detail}
        </p>
      </div>
      <div class="instruction-foot" ref={foot} tabIndex={-1}>
        <FootOf view={view} poured_s={poured_s} acting={acting} />
      </div>
      <p class="instruction-hint">
        {view.state === "ready" ? <a href="#guide">{words.doing.guideFirst}</a> : hint}
      </p>
    </section>
  );
}
