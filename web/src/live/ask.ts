// Asking the station and sending to it: addresses, GET, POST, random names.

import { remember } from "../words";

// Where the page asks: the station itself, the room, which serves the same for each bench that it knows, or a practice
// cup, of which a station serves many.

const ELSEWHERE = /^\/(room\/bench|practise)\/[\w.-]+$/;

/** What all paths of this page's bench begin with. */
export const base = (): string => {
  const here = typeof location === "undefined" ? "" : location.pathname;
  return ELSEWHERE.test(here) ? `/api${here}` : "/api";
};

/** What an answer holds; null where that is no JSON. */
export async function answered<Answer>(answer: Response | null | undefined): Promise<Answer | null> {
  const held: unknown = await answer?.json().catch(() => null);
  remember(held);
  return (held ?? null) as Answer | null;
}

const ANSWER_MS = 4000;

/** GET an object, or reject when the station does not answer in time. */
export async function get<Answer>(path: string): Promise<Answer> {
  const abort = new AbortController();
  const timer = setTimeout(() => abort.abort(), ANSWER_MS);
  try {
    const answer = await fetch(path, { cache: "no-store", signal: abort.signal });
    if (!answer.ok) throw new Error(`status ${answer.status}`);
    const held = (await answer.json()) as Answer;
    remember(held);
    return held;
  } finally {
    clearTimeout(timer);
  }
}

/** POST an object; null when no answer came in time. */
export async function post(path: string, body: object, within_ms: number): Promise<Response | null> {
  const abort = new AbortController();
  const timer = setTimeout(() => abort.abort(), within_ms);
  try {
    return await fetch(path, {
      method: "POST",
      headers: { "Content-Type": "application/json" },
      body: JSON.stringify(body),
      signal: abort.signal,
    });
  } catch {
    return null;
  } finally {
    clearTimeout(timer);
  }
}

// Random names that need no secure context: plain http has no crypto.randomUUID.

/** 128 random bits as 32 hexadecimal digits. */
export function randomId(): string {
  const bytes = crypto.getRandomValues(new Uint8Array(16));
  return Array.from(bytes, (byte) => byte.toString(16).padStart(2, "0")).join("");
}
