// Telling the room something; the answer's words say why it would not.

export type Outcome = { done: true } | { done: false; words: string | null };

const ANSWER_MS = 8000;

export async function tell(path: string, body: object): Promise<Outcome> {
  const abort = new AbortController();
  const timer = setTimeout(() => abort.abort(), ANSWER_MS);
  try {
    const answer = await fetch(path, {
      method: "POST",
      headers: { "Content-Type": "application/json" },
      body: JSON.stringify(body),
      signal: abort.signal,
    });
    if (answer.ok) return { done: true };
    const problem = (await answer.json().catch(() => null)) as { detail?: string } | null;
    return { done: false, words: problem?.detail ?? null };
  } catch {
    return { done: false, words: null };
  } finally {
    clearTimeout(timer);
  }
}
