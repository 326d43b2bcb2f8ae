// Telling the room something; the answer's words say why it would not.

import { post } from "../post";

export type Outcome = { done: true } | { done: false; words: string | null };

const ANSWER_MS = 8000;

export async function tell(path: string, body: object): Promise<Outcome> {
  const answer = await post(path, body, ANSWER_MS);
  if (answer?.ok) return { done: true };
  const problem = (await answer?.json().catch(() => null)) as { detail?: string } | null;
  return { done: false, words: problem?.detail ?? null };
}
