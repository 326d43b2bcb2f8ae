// Sending an act, once: the same act keeps its key until the station has answered, so that pressing again after a
// lost answer cannot add a portion twice.

import type { PlacedLine, State } from "./contract";

export interface Act {
  act: string;
  repeat?: number;
  portion?: number;
  volume_cm3?: number;
  temperature_c?: number;
  reason?: string;
  question?: string;
  answer?: string;
  /** Of an ordinary thermometer; null goes back to the probe. */
  division_c?: number | null;
  end_point_cm3?: number | null;
  change_c?: number | null;
  before?: PlacedLine | null;
  after?: PlacedLine | null;
  label?: string;
  text?: string;
  note?: number;
  csv?: string;
}

/** `code` is the station's own word for why, for programs. */
export type Outcome =
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
  const body: unknown = await answer.json().catch(() => null);
  if (answer.ok && body) return { kind: "accepted", state: (body as { state: State }).state };
  const problem = (body ?? {}) as Problem;
  if (answer.status >= 500 || answer.ok) return { kind: "unanswered" };
  const words = problem.detail ?? problem.title ?? `${answer.status} ${answer.statusText}`;
  return { kind: "refused", code: problem.code ?? null, words, state: problem.state ?? null };
}

/** Send one act and wait for its answer. */
export async function sendAct(act: Act, keys: Keys): Promise<Outcome> {
  const abort = new AbortController();
  const timer = setTimeout(() => abort.abort(), ANSWER_MS);
  try {
    const answer = await fetch("/api/acts", {
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
