// Sending an act, once: the same act keeps its key until the station has answered, so that pressing again after a
// lost answer cannot add a portion twice.

import { useRef, useState } from "preact/hooks";
import { phrase, said } from "../words";
import { answered, base, randomId } from "./ask";
import type { Message, PlacedLine, State } from "./contract";
import type { Admission, Session } from "./session";

export interface Act {
  act: string;
  repeat?: number;
  portion?: number;
  volume_cm3?: number;
  /** What a balance said of a solid. */
  mass_g?: number;
  /** With how many decimals the amount was typed. */
  places?: number;
  /** Into the repeat, of a temperature that the clock asked for / s. */
  at_s?: number;
  temperature_c?: number;
  reason?: string;
  question?: string;
  answer?: string;
  /** Of an ordinary thermometer; null goes back to the probe. */
  division_c?: number | null;
  /** Whether `division_c` is a step of its last digit. */
  digital?: boolean;
  end_point_cm3?: number | null;
  change_c?: number | null;
  before?: PlacedLine | null;
  after?: PlacedLine | null;
  /** Of a sketched curve: total volume added / cm³ and temperature / °C. */
  points?: [number, number][];
  label?: string;
  text?: string;
  note?: number;
  csv?: string;
  /** A value that the station asked again is right. */
  sure?: boolean;
}

/** `code` is the station's own word for why, for programs. */
type Outcome =
  | { kind: "accepted"; state: State }
  | { kind: "refused"; code: string | null; words: string; state: State | null }
  | { kind: "unanswered" };

interface Problem {
  code?: string;
  title?: string;
  detail?: string;
  state?: State;
}

const ANSWER_MS = 8000;

/** Keys of acts that have no answer yet. */
export class Keys {
  private readonly open = new Map<string, string>();

  constructor(private readonly random: () => string) {}

  /** The key of this act: a new one, unless the same act still waits for its answer. */
  of(act: Act): string {
    const name = JSON.stringify(act);
    const key = this.open.get(name) ?? this.random();
    this.open.set(name, key);
    return key;
  }

  answered(act: Act): void {
    this.open.delete(JSON.stringify(act));
  }
}

/** Read an answer; a refusal carries the station's own words. */
export async function readAnswer(answer: Response): Promise<Outcome> {
  const body = await answered<unknown>(answer);
  if (answer.ok && body) return { kind: "accepted", state: (body as { state: State }).state };
  const problem = (body ?? {}) as Problem;
  if (answer.status >= 500 || answer.ok) return { kind: "unanswered" };
  const words = problem.detail ?? problem.title ?? `${answer.status} ${answer.statusText}`;
  return { kind: "refused", code: problem.code ?? null, words, state: problem.state ?? null };
}

/** Send one act and wait for its answer. */
async function sendAct(act: Act, keys: Keys): Promise<Outcome> {
  const abort = new AbortController();
  const timer = setTimeout(() => abort.abort(), ANSWER_MS);
  try {
    const answer = await fetch(`${base()}/acts`, {
      method: "POST",
      headers: { "Content-Type": "application/json" },
      body: JSON.stringify({ ...act, key: keys.of(act) }),
      signal: abort.signal,
    });
    const outcome = await readAnswer(answer);
    if (outcome.kind !== "unanswered") keys.answered(act);
    return outcome;
  } catch {
    return { kind: "unanswered" };
  } finally {
    clearTimeout(timer);
  }
}

// One act at a time: sends it, keeps the words of a refusal, hands the new state on. An act of a device that has not
// given the bench's code yet is held until it has.

export interface Acting {
  busy: boolean;
  /** Why the last act was not taken, in words; null when there is nothing to say. */
  trouble: string | null;
  /** Send an act; true when the station took it. A press while another act is under way does nothing. */
  send: (act: Act) => Promise<boolean>;
  dismiss: () => void;
  /** True while an act waits for the bench's code. */
  asksCode: boolean;
  /** Give the code; the act that waits is done when it is right. */
  giveCode: (code: string) => Promise<Admission>;
  /** Leave the act that waits undone. */
  leaveCode: () => void;
}

interface Held {
  act: Act;
  settle: (taken: boolean) => void;
}

export function useActing(take: (message: Message) => void, session: Session): Acting {
  const keys = useRef<Keys>(new Keys(randomId));
  const sending = useRef(false);
  const held = useRef<Held | null>(null);
  /** The act whose value the station finds unlikely: pressed again, it is meant. */
  const doubted = useRef<string | null>(null);
  const [busy, setBusy] = useState(false);
  const [asksCode, askCode] = useState(false);
  const [trouble, setTrouble] = useState<string | null>(null);

  function hold(act: Act): Promise<boolean> {
    held.current?.settle(false);
    askCode(true);
    return new Promise((settle) => {
      held.current = { act, settle };
    });
  }

  async function transmit(act: Act): Promise<boolean> {
    if (sending.current) return false;
    sending.current = true;
    setBusy(true);
    setTrouble(null);
    const sure = doubted.current === JSON.stringify(act);
    const outcome = await sendAct(sure ? { ...act, sure } : act, keys.current);
    if (outcome.kind !== "unanswered") {
      doubted.current = outcome.kind === "refused" && outcome.code === "doubtful" ? JSON.stringify(act) : null;
    }
    sending.current = false;
    setBusy(false);
    if (outcome.kind !== "unanswered" && outcome.state) take({ kind: "state", data: outcome.state });
    if (outcome.kind === "refused" && outcome.code === "needs_code") {
      session.refresh();
      return hold(act);
    }
    if (outcome.kind === "refused") setTrouble(said(outcome.words));
    if (outcome.kind === "unanswered") setTrouble(phrase("page-unanswered"));
    return outcome.kind === "accepted";
  }

  async function giveCode(code: string): Promise<Admission> {
    const admission = await session.signIn({ code });
    const waiting = held.current;
    if (admission.admitted && waiting) {
      held.current = null;
      askCode(false);
      waiting.settle(await transmit(waiting.act));
    }
    return admission;
  }

  return {
    busy,
    trouble,
    send: (act) => (session.standing?.needs_code ? hold(act) : transmit(act)),
    dismiss: () => setTrouble(null),
    asksCode,
    giveCode,
    leaveCode: () => {
      held.current?.settle(false);
      held.current = null;
      askCode(false);
    },
  };
}
