// Sending JSON.

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
