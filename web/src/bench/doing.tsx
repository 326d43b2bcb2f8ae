// What stands about the instruction: a question, the numbers, the way to corrections.

import { useEffect, useRef, useState } from "preact/hooks";
import { ageParts, age_s, fixed, freshness, keptTogether } from "../format";
import { kindOf } from "../kinds";
import type { Acting } from "../live/acts";
import type { View } from "../live/contract";
import { type Measured, runningRepeat } from "../live/model";
import { later, useFitted, useMeant } from "../page/shared";
import { phrase, said } from "../words";
import { PROBE_DECIMALS, decimalsOf } from "./readings";

// What only a person can know: one question at a time, calm, each answer one tap. It takes the instruction's place until
// it is answered or put off; put off, a button brings it back.

/** Which question is asked now, and how those that were put off come back. */
export interface Asking {
  asked: View["questions"][number] | null;
  /** How many wait besides. */
  more: number;
  /** Whether some wait only because they were put off. */
  waits: boolean;
  putOff: (id: string) => void;
  bringBack: () => void;
}

export function useAsking({ questions, bench }: View): Asking {
  const [away, setAway] = useState<readonly string[]>([]);
  // Who may only look is asked nothing.
  const open = bench.read_only ? [] : questions.filter(({ id }) => !away.includes(id));
  return {
    asked: open[0] ?? null,
    more: Math.max(0, open.length - 1),
    waits: !bench.read_only && open.length < questions.length && open.length === 0,
    putOff: (id) => setAway([...away, id]),
    bringBack: () => setAway([]),
  };
}

/** The same reading once more: a slip is mended where it is asked about. */
const TypedAgain = later(() => import("./typed").then((part) => part.TypedAgain));

export function Question({ asking: { asked, more, putOff }, view, acting }: { asking: Asking; view: View; acting: Acting }) {
  const place = useRef<HTMLElement>(null);
  const held = useRef(false);
  const meant = useMeant(asked?.id ?? "");
  const words = asked ? keptTogether(said(asked.text)) : "";
  const fitted = useFitted(words);
  useEffect(() => {
    // The button that was pressed is gone: keep the keyboard's place near by.
    if (held.current) (asked ? place.current : place.current?.parentElement?.querySelector<HTMLElement>(".done"))?.focus();
    held.current = false;
  }, [asked?.id]);
  const press = (then: () => void) => {
    if (!meant()) return;
    held.current = place.current?.contains(document.activeElement) ?? false;
    then();
  };
  // The live region is always there, so that the words are announced when they come, and once.
  return (
    <section class={`question${asked ? " question-asked" : ""}`} ref={place} tabIndex={-1} aria-label={asked ? phrase("page-question") : undefined} data-testid={asked ? "question" : undefined}>
      <div class="question-words" ref={fitted} aria-live="polite" aria-atomic="true">
        {asked && <p key={asked.id}>{words}</p>}
      </div>
      {asked && (
        <div class="answers" key={asked.id}>
          {asked.answers.map(({ answer: given, label }) => (
            <button type="button" key={given} aria-disabled={acting.busy} onClick={() => press(() => void acting.send({ act: "answer", question: asked.id, answer: given }))}>
              {said(label)}
            </button>
          ))}
          <button type="button" class="plain" onClick={() => press(() => putOff(asked.id))}>
            {phrase("page-question-later")}
          </button>
        </div>
      )}
      {asked?.code === "slip" && <TypedAgain key={asked.id} of={asked} view={view} acting={acting} />}
      {more > 0 && <p class="question-more">{phrase("page-more-questions", { more })}</p>}
    </section>
  );
}

// The live temperature with its age, and where the practical stands.

interface Props {
  view: View;
  good: Measured | null;
  now_ms: number;
}

function LiveTemperature({ good, now_ms }: Props) {
  const age = good ? age_s(good.measured_ms, now_ms) : null;
  const fresh = freshness(age);
  const value = good ? phrase("page-celsius", { temperature: fixed(good.temperature_c, PROBE_DECIMALS) }) : phrase("page-no-temperature");
  return (
    <div class={`number temperature is-${fresh}`} data-testid="temperature">
      <dt>{phrase("page-temperature")}</dt>
      <dd>
        {good && fresh === "frozen" ? <s class="value">{value}</s> : <span class={good ? "value" : "value value-none"}>{value}</span>}
        <span class="age">{age === null ? "" : phrase(fresh === "frozen" ? "page-frozen" : "page-age", ageParts(age))}</span>
      </dd>
    </div>
  );
}

/** On a bench with an ordinary thermometer: what was typed last. */
function TypedTemperature({ view }: { view: View }) {
  const newest = view.repeats[view.repeats.length - 1];
  const last = newest?.clocked?.[newest.clocked.length - 1] ?? runningRepeat(view)?.readings.filter(({ temperature_c }) => temperature_c !== null).pop();
  return (
    <div class="number temperature" data-testid="temperature">
      <dt>{phrase("page-doing-last-reading")}</dt>
      <dd>
        <span class="value">{last?.temperature_c == null ? phrase("page-missing") : phrase("page-celsius", { temperature: fixed(last.temperature_c, decimalsOf(view.repeats)) })}</span>
      </dd>
    </div>
  );
}

function Added({ view }: { view: View }) {
  const [name, amount] = kindOf(view.plan).addedSoFar(view.plan, view);
  return (
    <div class="number total" data-testid="total">
      <dt>{name}</dt>
      <dd>
        <span class="value">{amount}</span>
      </dd>
    </div>
  );
}

export function Numbers(props: Props) {
  const { view } = props;
  return (
    <section class="numbers">
      <dl>
        {view.thermometer.kind === "typed" ? <TypedTemperature view={view} /> : <LiveTemperature {...props} />}
        <Added view={view} />
      </dl>
    </section>
  );
}

// Corrections in words, behind one button: what is possible now travels only when it is opened.

const Panel = later(() => import("./corrections/panel").then((part) => part.CorrectionsPanel));

export function Corrections({ view, acting }: { view: View; acting: Acting }) {
  const [open, setOpen] = useState(false);
  const toggle = useRef<HTMLButtonElement>(null);
  const panel = useRef<HTMLDivElement>(null);
  const { code, portion } = view.instruction;
  useEffect(() => {
    // What is asked for next must not lie under it; whoever is filling something in is left to finish.
    if (!panel.current?.querySelector("select, input, textarea")) setOpen(false);
  }, [code, portion, view.repeat]);
  if (view.other_acts.length === 0) return null;
  const close = () => {
    setOpen(false);
    toggle.current?.focus();
  };
  return (
    <section class="corrections" onKeyDown={(event) => event.key === "Escape" && open && close()}>
      <button
        type="button"
        class="plain toggle"
        ref={toggle}
        aria-label={open ? undefined : phrase("page-corrections")}
        aria-expanded={open}
        aria-controls="corrections"
        onClick={() => (open ? close() : setOpen(true))}
      >
        {open ? phrase("page-corrections-close") : phrase("page-corrections-short")}
      </button>
      <div id="corrections" ref={panel} hidden={!open}>
        {open && <Panel view={view} acting={acting} close={close} />}
      </div>
    </section>
  );
}
