// Who this device is to the station: looking is free, operating may need the bench's code, staff have a passphrase.

import { base } from "./base";
import type { State } from "./contract";
import { get } from "./get";
import { randomId } from "./random";

export type Role = "looker" | "bench" | "teacher" | "technician";
export type Staff = Extract<Role, "teacher" | "technician">;

export interface Standing {
  role: Role;
  needs_code: boolean;
}

export type Credential = { code: string } | { role: Staff; passphrase: string } | { recovery: true };

/** `words` are the station's own; null when it did not answer. `wait_s` says when to try again. */
export type Admission = { admitted: true } | { admitted: false; words: string | null; wait_s: number | null };

type CheckAct = "check_begin" | "check_step" | "check_save" | "check_discard" | "check_withdraw";

export interface StaffAct {
  act: "show_results" | "set_aside" | "quiet" | "rename" | "choose_plan" | CheckAct;
  shown?: boolean;
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

export type StaffOutcome = { done: true; state: State } | { done: false; words: string | null };

const ANSWER_MS = 8000;

export const isStaff = (role: Role | undefined): role is Staff => role === "teacher" || role === "technician";

/** What this device may do; null when the station does not answer. */
export const standingNow = (): Promise<Standing | null> => get<Standing>(`${base()}/session`).catch(() => null);

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
  const problem = (await answer?.json().catch(() => null)) as { detail?: string } | null;
  return problem?.detail ?? null;
}

/** Sign this device in; the cookie comes with the answer. */
export async function signIn(credential: Credential): Promise<Admission> {
  const answer = await asked("/api/session", "POST", credential);
  if (answer?.ok) return { admitted: true };
  const wait_s = Number(answer?.headers.get("Retry-After")) || null;
  return { admitted: false, words: await wordsOf(answer), wait_s };
}

/** Sign this device out; false when the station did not answer. */
export const signOut = async (): Promise<boolean> => (await asked("/api/session", "DELETE"))?.ok ?? false;

/** Do what only staff may. */
export async function sendStaff(act: StaffAct): Promise<StaffOutcome> {
  const answer = await asked("/api/staff", "POST", { ...act, key: randomId() });
  if (!answer?.ok) return { done: false, words: await wordsOf(answer) };
  return { done: true, state: ((await answer.json()) as { state: State }).state };
}
