// What can be pressed or typed under the instruction, and how long a wait still lasts.

import type { Act } from "../acts";
import type { View } from "../contract";
import { addedWord, addsSolid, isOnce } from "../plan";
import { waitLeft } from "../wait";
import { said, words } from "../words";
import type { Acting } from "./acting";
import { later } from "./later";
import { useMeant } from "./meaning";

const Divisions = later(() => import("./typed").then((part) => part.Divisions));
const TypedReading = later(() => import("./typed").then((part) => part.TypedReading));

interface Props {
  view: View;
  poured_s: number | null;
  acting: Acting;
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

export function InstructionFoot({ view, poured_s, acting }: Props) {
  const { code, act } = view.instruction;
  const may = (name: string) => view.other_acts.includes(name);
  if (view.bench.read_only) return isWaiting(view) ? <Waiting view={view} poured_s={poured_s} /> : null;
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
