// The one instruction, drawn and in words, how long is left, and the one button. Every state keeps the same height.

import { useLayoutEffect, useRef } from "preact/hooks";
import type { Freshness } from "../age";
import { asksForSomething } from "../asks";
import { drawnRepeats } from "../chart_volume";
import type { View } from "../contract";
import { keptTogether } from "../format";
import { isOnce } from "../plan";
import { said, words } from "../words";
import type { Acting } from "./acting";
import { Drawing, drawnFor } from "./drawings";
import { useFitted } from "./fitted";
import { InstructionFoot } from "./instruction_foot";

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
        <InstructionFoot view={view} poured_s={poured_s} acting={acting} />
      </div>
      <p class="instruction-hint">
        {view.state === "ready" ? <a href="#guide">{words.doing.guideFirst}</a> : hint}
      </p>
    </section>
  );
}
