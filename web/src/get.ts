// Asking the station.

const ANSWER_MS = 4000;

/** GET an object, or reject when the station does not answer in time. */
export async function get<Answer>(path: string): Promise<Answer> {
  const abort = new AbortController();
  const timer = setTimeout(() => abort.abort(), ANSWER_MS);
  try {
    const answer = await fetch(path, { cache: "no-store", signal: abort.signal });
    if (!answer.ok) throw new Error(`status ${answer.status}`);
    return (await answer.json()) as Answer;
  } finally {
    clearTimeout(timer);
  }
}
