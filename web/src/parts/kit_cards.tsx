// Staff make the cards of further benches: two files in, one zip out.

import { useState } from "preact/hooks";
import { told, words } from "./kit_looking";

const LARGEST_KB = 15;
const ANSWER_MS = 600_000;

/** The text of a chosen file; throws the words that say why not. A byte order mark is dropped. */
async function textOf(file: File): Promise<string> {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(await file.arrayBuffer());
  } catch {
    throw new Error(words().notText(file.name));
  }
}

async function zipOf(kits: File, plan: File | null): Promise<Blob> {
  if (kits.size + (plan?.size ?? 0) > LARGEST_KB * 1000) throw new Error(words().tooLarge(LARGEST_KB));
  const body = { kits_toml: await textOf(kits), plan_toml: plan && (await textOf(plan)) };
  const abort = new AbortController();
  const timer = setTimeout(() => abort.abort(), ANSWER_MS);
  try {
    const answer = await fetch("/api/kit/cards", {
      method: "POST",
      headers: { "Content-Type": "application/json" },
      body: JSON.stringify(body),
      signal: abort.signal,
    }).catch(() => null);
    if (answer?.ok) return await answer.blob();
    const problem = (await answer?.json().catch(() => null)) as { detail?: string } | null;
    throw new Error(problem?.detail ? told(problem.detail) : words().noAnswer);
  } finally {
    clearTimeout(timer);
  }
}

function save(zip: Blob): void {
  const link = document.createElement("a");
  link.href = URL.createObjectURL(zip);
  link.download = "cards.zip";
  link.click();
  setTimeout(() => URL.revokeObjectURL(link.href), 60_000);
}

export function MakeCards({ lack }: { lack: string | null }) {
  const [kits, chooseKits] = useState<File | null>(null);
  const [plan, choosePlan] = useState<File | null>(null);
  const [busy, wait] = useState(false);
  const [said, say] = useState({ text: "", wrong: false });
  const submit = async (event: Event) => {
    event.preventDefault();
    if (busy) return;
    if (!kits) return say({ text: words().chooseTable, wrong: true });
    wait(true);
    say({ text: words().sending, wrong: false });
    try {
      save(await zipOf(kits, plan));
      say({ text: words().made, wrong: false });
    } catch (error) {
      say({ text: error instanceof Error ? error.message : words().noAnswer, wrong: true });
    }
    wait(false);
  };
  return (
    <section class="kit-part">
      <h2>{words().cards}</h2>
      <p>{words().cardsWhy}</p>
      <p>{words().cardsSecret}</p>
      {lack && <p class="kit-lack">{told(lack)}</p>}
      <form class="kit-cards" onSubmit={(event) => void submit(event)}>
        <FileField label={words().kitsFile} choose={chooseKits} />
        <FileField label={words().planFile} choose={choosePlan} />
        <p class={said.wrong ? "why-not" : "told"} aria-live="assertive">
          {said.text}
        </p>
        <button type="submit" class="in-head" aria-disabled={busy}>
          {busy ? words().sending : words().makeCards}
        </button>
      </form>
    </section>
  );
}

function FileField({ label, choose }: { label: string; choose: (file: File | null) => void }) {
  return (
    <label>
      {label}
      <input
        type="file"
        accept=".toml,text/plain"
        onChange={(event) => choose(event.currentTarget.files?.[0] ?? null)}
      />
    </label>
  );
}
