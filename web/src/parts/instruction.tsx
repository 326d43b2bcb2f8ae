// The one instruction, how long is left, and the one button.

import type { Act } from "../acts";
import type { Freshness } from "../age";
import { drawnRepeats } from "../chart_volume";
import type { View } from "../contract";
import { keptTogether } from "../format";
import { addedWord, addsSolid, isOnce } from "../plan";
import { waitLeft } from "../wait";
import { words } from "../words";
import type { Acting } from "./acting";
import { useMeant } from "./meaning";

interface Props {
  view: View;
  poured_s: number | null;
  heard: Freshness;
  acting: Acting;
}

/** Where the practical stands. */
function standing(view: View): string {
  if (view.state === "done") return words.finished;
  if (view.state === "paused") return words.pausedTag;
  if (view.state === "ready") return words.readyTag;
  const repeat = words.repeatOf(drawnRepeats(view.repeats).length, view.repeats_planned);
  const portion = view.instruction.portion ?? view.portion;
  if (portion === 0 || view.state === "rinse" || isOnce(view)) return repeat;
  return `${repeat} · ${words.portionOf(portion, view.portions_planned)}`;
}

/** Whether the probe could take the temperature of what will be added. */
function dipsFirst(view: View): boolean {
  const unknown = view.state === "ready" && view.alkali_temperature_c === null;
  return unknown && !addsSolid(view.plan) && view.other_acts.includes("alkali_temperature");
}

function Waiting({ view, poured_s }: { view: View; poured_s: number | null }) {
  const { left_s, over } = waitLeft(view, poured_s);
  return (
    <div class="waiting">
      <p>
        <span>{words.timeLeft}: </span>
        <strong class="left">{left_s === null ? words.leftUnknown : words.left(left_s)}</strong>
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
    <button
      type="button"
      class="done"
      data-act={act}
      data-portion={portion}
      aria-disabled={acting.busy}
      onClick={press}
    >
      {acting.busy ? words.sending : (label ?? act)}
    </button>
  );
}

export function InstructionCard({ view, poured_s, heard, acting }: Props) {
  const { text, detail, act } = view.instruction;
  return (
    <section class={`instruction ${act ? "instruction-act" : "instruction-wait"} heard-${heard}`}>
      <p class="instruction-tag">{standing(view)}</p>
      <div class="instruction-words" aria-live="polite" aria-atomic="true">
        <p class="instruction-text">{keptTogether(text)}</p>
        <p class="instruction-detail">{detail && keptTogether(detail)}</p>
      </div>
      <div class="instruction-foot">
        {view.settle && <Waiting view={view} poured_s={poured_s} />}
        {dipsFirst(view) && (
          <button type="button" class="plain" onClick={() => void acting.send({ act: "alkali_temperature" })}>
            {words.addedFirst(addedWord(view.plan))}
          </button>
        )}
        <DoneButton view={view} acting={acting} />
      </div>
      {view.fault && (
        <p class="fault" role="alert">
          {words.fault(view.fault)}
        </p>
      )}
      {acting.trouble && (
        <div class="trouble" role="alert">
          <p>{acting.trouble}</p>
          <button type="button" class="plain" onClick={acting.dismiss}>
            {words.close}
          </button>
        </div>
      )}
    </section>
  );
}
