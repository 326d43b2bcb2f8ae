// A button whose meaning changes under the finger.

import { useLayoutEffect, useRef } from "preact/hooks";

/** A press this soon after a button took on a new meaning was meant for the old one / ms. */
const OLD_MEANING_MS = 600;

/** Tells whether a press now is meant: false for a moment after `meaning` has changed. */
export function useMeant(meaning: string): () => boolean {
  const since_ms = useRef(0);
  useLayoutEffect(() => {
    since_ms.current = performance.now();
  }, [meaning]);
  return () => performance.now() - since_ms.current >= OLD_MEANING_MS;
}
