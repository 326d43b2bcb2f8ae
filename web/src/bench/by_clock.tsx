// An ordinary thermometer read by the clock, and the amount that is put in at once. Fetched when a plan mixes once.

import { useEffect, useRef, useState } from "preact/hooks";
import { decimal, minutesText, typedNumber } from "../format";
import { kindOf } from "../kinds";
import type { Act, Acting } from "../live/acts";
import type { View } from "../live/contract";
import { useMeant } from "../page/shared";
import { phrase, said } from "../words";
import { TemperatureField, stepOf } from "./typed";

type Clock = NonNullable<View["clock"]>;

/** Bench seconds since the repeat's start, `waited_ms` after the station told of its clock. */
export function clockNow({ now_s }: Clock, waited_ms: number, speed: number): number {
  return now_s + (waited_ms / 1000) * (speed || 1);
}

/** The mark to type for: the one that somebody has begun to type for, else the station's; it moves on with the time. */
export function markToType({ every_s, next_s }: Clock, now_s: number, begun_s: number | null): number {
  if (begun_s !== null) return begun_s;
  const newest_s = Math.floor((now_s + AHEAD_S) / every_s) * every_s;
  return Math.max(next_s, newest_s);
}

/** Somebody looks at the thermometer a little before the mark / s. */
const AHEAD_S = 5;
const TICK_MS = 250;

function useClock(view: View): number {
  const clock = view.clock;
  const heard = useRef({ clock, at_ms: performance.now() });
  if (heard.current.clock?.now_s !== clock?.now_s) heard.current = { clock, at_ms: performance.now() };
  const [, tick] = useState(0);
  useEffect(() => {
    const timer = setInterval(() => tick((count) => count + 1), TICK_MS);
    return () => clearInterval(timer);
  }, []);
  return clock ? clockNow(clock, performance.now() - heard.current.at_ms, view.speed) : 0;
}

/** When to read next, how long that is, and the field for it. */
export function ReadByClock({ view, acting }: { view: View; acting: Acting }) {
  const clock = view.clock;
  const now_s = useClock(view);
  const begun = useRef<number | null>(null);
  const [sent, count] = useState(0);
  if (!clock) return null;
  const at_s = markToType(clock, now_s, begun.current);
  const wait_s = Math.ceil((at_s - now_s) / (view.speed || 1));
  const give = async (temperature_c: number) => {
    if (!(await acting.send({ act: "reading", temperature_c, at_s }))) return;
    begun.current = null;
    count(sent + 1);
  };
  return (
    <div class="by-clock" data-testid="by-clock" onInput={() => (begun.current ??= at_s)}>
      <p>
        <span class="clock-now">{minutesText(now_s)}</span>{" "}
        <strong>{wait_s > 0 ? phrase("page-clock-wait", { seconds: wait_s }) : phrase("page-clock-now")}</strong>
      </p>
      <TemperatureField
        key={`${view.repeat} ${sent}`}
        step_c={stepOf(view)}
        before_c={null}
        busy={acting.busy}
        label={phrase("page-clock-temperature", { minutes: minutesText(at_s) })}
        give={(temperature_c) => void give(temperature_c)}
      />
    </div>
  );
}

/** An amount as it was typed: its number and how many decimals it has; null when it is none. */
export function typedAmount(text: string): { amount: number; places: number } | null {
  const amount = typedNumber(text);
  if (amount === null || amount <= 0) return null;
  return { amount, places: Math.min(4, /[.,](\d+)/.exec(text.trim())?.[1]?.length ?? 0) };
}

/** The press at the moment of mixing, with the mass or volume that was really taken; empty: as planned. */
export function MixNow({ view, acting }: { view: View; acting: Acting }) {
  const { act, portion, label } = view.instruction;
  const [text, type] = useState("");
  const [wrong, setWrong] = useState(false);
  const meant = useMeant(`${act} ${portion} ${view.repeat}`);
  const weighed = kindOf(view.plan).addsSolid(view.plan);
  const press = () => {
    if (!meant() || !act) return;
    const typed = text.trim() === "" ? null : typedAmount(text);
    setWrong(text.trim() !== "" && typed === null);
    if (text.trim() !== "" && typed === null) return;
    const taken = typed && { ...(weighed ? { mass_g: typed.amount } : { volume_cm3: typed.amount }), places: typed.places };
    const pressed: Act = { act, ...(portion === null ? {} : { portion }), ...taken };
    void acting.send(pressed);
  };
  return (
    <div class="mix-now">
      <label>
        {phrase("page-amount-taken", { what: weighed ? "mass" : "volume" })}
        <input
          type="text"
          inputMode="decimal"
          autocomplete="off"
          maxLength={10}
          value={text}
          placeholder={phrase("page-amount-as-planned")}
          aria-invalid={wrong}
          aria-describedby="amount-wrong"
          onInput={(event) => type(event.currentTarget.value)}
        />
      </label>
      <button type="button" class="done" data-testid="act" data-act={act} data-portion={portion} aria-disabled={acting.busy} onClick={press}>
        <span key={`${label} ${acting.busy}`}>{acting.busy ? phrase("page-sending") : said(label ?? act ?? "")}</span>
      </button>
      <p id="amount-wrong" class="why-not" aria-live="polite">
        {wrong ? phrase("page-amount-wrong", { example: decimal(weighed ? "4.02" : "39.5") }) : ""}
      </p>
    </div>
  );
}
