// What the station finds when it looks at its kit; asked for once at the start, and whenever somebody wants it again.

import { useEffect, useState } from "preact/hooks";
import { kit as english, type Colour } from "../words/kit.en";
import { said, translated } from "../words";
import { pageWords } from "../words/page_words";

export const words = pageWords(english, async () => (await import("../words/kit.de")).kit);

/** A sentence of the check; addresses and versions keep their dots. */
export const told = (text: string): string => (/\d\.\d+\.\d|\/|python/i.test(text) ? translated(text) : said(text));

export interface Finding {
  name: string;
  colour: Colour;
  text: string;
  remedy: string;
  values: Readonly<Record<string, unknown>>;
}

export interface Kit {
  status: Exclude<Colour, "unknown">;
  findings: readonly Finding[];
  age_s: number;
  bench: string;
  addresses: readonly string[];
  panel: string;
  /** What cards made here would lack; null when nothing. */
  cards_lack: string | null;
}

export interface Looking {
  /** Null until the station has looked. */
  kit: Kit | null;
  busy: boolean;
  failed: boolean;
  again: () => void;
}

/** A look takes as long as the record is long: the station itself gives up after a minute. */
const ANSWER_MS = 70_000;

async function asked(): Promise<Kit> {
  const abort = new AbortController();
  const timer = setTimeout(() => abort.abort(), ANSWER_MS);
  try {
    const answer = await fetch("/api/kit", { cache: "no-store", signal: abort.signal });
    if (!answer.ok) throw new Error(`status ${answer.status}`);
    return (await answer.json()) as Kit;
  } finally {
    clearTimeout(timer);
  }
}

export function useKit(): Looking {
  const [kit, found] = useState<Kit | null>(null);
  const [busy, wait] = useState(true);
  const [failed, fail] = useState(false);
  const look = async () => {
    wait(true);
    try {
      found(await asked());
      fail(false);
    } catch {
      fail(true);
    }
    wait(false);
  };
  useEffect(() => void look(), []);
  return { kit, busy, failed, again: () => void look() };
}
