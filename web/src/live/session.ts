// Who this device is to the station: looking is free, operating may need the bench's code, staff have a passphrase.

import { useEffect, useState } from "preact/hooks";
import { answered, base, get, randomId } from "./ask";
import type { Role, Staff, Standing, State } from "./contract";


type Credential = { code: string } | { role: Staff; passphrase: string } | { recovery: true };

/** `words` are the station's own; null when it did not answer. `wait_s` says when to try again. */
export type Admission = { admitted: true } | { admitted: false; words: string | null; wait_s: number | null };

type CheckAct = "check_begin" | "check_step" | "check_save" | "check_discard" | "check_withdraw";

export interface StaffAct {
  act: "show_results" | "set_aside" | "restore" | "pause" | "resume" | "quiet" | "rename" | "choose_plan" | CheckAct;
  shown?: boolean;
  prepared_mol_dm3?: number;
  silent?: boolean;
  repeat?: number;
  reason?: string;
  name?: string | null;
  /** The text of a plan.toml. */
  plan_toml?: string;
  /** The values of a plan. */
  plan?: object;
  /** Of a check: its kind, a step of it, what was typed, the number of a saved one. */
  check?: string;
  step?: string;
  values?: object;
  number?: number;
  /** Solutions above 1.0 mol/dm³ are confirmed. */
  confirmed?: boolean;
}

type StaffOutcome = { done: true; state: State } | { done: false; words: string | null };

const ANSWER_MS = 8000;

export const isStaff = (role: Role | undefined): role is Staff => role === "teacher" || role === "technician";

/** What this device may do; null when the station does not answer. */
const standingNow = (): Promise<Standing | null> => get<Standing>(`${base()}/session`).catch(() => null);

async function asked(path: string, method: string, body?: object): Promise<Response | null> {
  const abort = new AbortController();
  const timer = setTimeout(() => abort.abort(), ANSWER_MS);
  const content = body ? { headers: { "Content-Type": "application/json" }, body: JSON.stringify(body) } : {};
  try {
    return await fetch(path, { method, signal: abort.signal, ...content });
  } catch {
    return null;
  } finally {
    clearTimeout(timer);
  }
}

async function wordsOf(answer: Response | null): Promise<string | null> {
  const problem = await answered<{ detail?: string }>(answer);
  return problem?.detail ?? null;
}

/** Sign this device in; the cookie comes with the answer. */
async function signIn(credential: Credential): Promise<Admission> {
  const answer = await asked(`${base()}/session`, "POST", credential);
  if (answer?.ok) return { admitted: true };
  const wait_s = Number(answer?.headers.get("Retry-After")) || null;
  return { admitted: false, words: await wordsOf(answer), wait_s };
}

/** Sign this device out; false when the station did not answer. */
const signOut = async (): Promise<boolean> => (await asked(`${base()}/session`, "DELETE"))?.ok ?? false;

/** Do what only staff may. */
export async function sendStaff(act: StaffAct): Promise<StaffOutcome> {
  const answer = await asked(`${base()}/staff`, "POST", { ...act, key: randomId() });
  if (!answer?.ok) return { done: false, words: await wordsOf(answer) };
  const kept = await answered<{ state: State }>(answer);
  return kept ? { done: true, state: kept.state } : { done: false, words: await wordsOf(null) };
}

// What this device may do, asked once at the start and again whenever it may have changed.

export interface Session {
  /** Null until the station has said. */
  standing: Standing | null;
  refresh: () => void;
  signIn: (credential: Credential) => Promise<Admission>;
  signOut: () => Promise<boolean>;
}

export function useSession(): Session {
  const [standing, stand] = useState<Standing | null>(null);
  const refresh = async () => {
    const now = await standingNow();
    if (now) stand(now);
  };
  useEffect(() => void refresh(), []);
  return {
    standing,
    refresh: () => void refresh(),
    signIn: async (credential) => {
      const admission = await signIn(credential);
      if (admission.admitted) await refresh();
      return admission;
    },
    signOut: async () => {
      const gone = await signOut();
      await refresh();
      return gone;
    },
  };
}
