// Which word of the glossary is explained now.

import { useEffect, useState } from "preact/hooks";
import type { Term } from "../words/marks";

/** The word that is explained now, and the button that asked for it. */
export interface Asked {
  term: Term;
  by: HTMLElement;
}

let asked: Asked | null = null;
const listeners = new Set<() => void>();

/** Explain another word, or none. */
export function ask(next: Asked | null): void {
  asked = next;
  for (const listener of listeners) listener();
}

export function useAsked(): Asked | null {
  const [known, know] = useState(asked);
  useEffect(() => {
    const changed = () => know(asked);
    listeners.add(changed);
    return () => void listeners.delete(changed);
  }, []);
  return known;
}
