// The page of the kit: is it ready, what is to be mended next, where it is found; and what staff do with it.

import { useEffect, useState } from "preact/hooks";
import { answered } from "../live/ask";
import type { KitShown as Kit } from "./contract";
import { phrase, said } from "../words";
import { Machine } from "./machine";
import { Frame, StaffOnly, startPage } from "./frame";

function KitPage() {
  const looking = useKit();
  return (
    <Frame here="/kit">
      <KitFindings looking={looking} />
      {looking.kit && <KitAddress kit={looking.kit} />}
      <StaffOnly>
        {() => (
          <>
            {looking.kit?.panel !== "none" && <LampsTest />}
            <MakeCards lack={looking.kit?.cards_lack ?? null} />
            <AllRecords />
            <Machine />
          </>
        )}
      </StaffOnly>
    </Frame>
  );
}

// What the station finds when it looks at its kit; asked for once at the start, and whenever somebody wants it again.

type Finding = Kit["findings"][number];

interface Looking {
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
    return (await answered<Kit>(answer)) ?? Promise.reject(new Error("no answer"));
  } finally {
    clearTimeout(timer);
  }
}

function useKit(): Looking {
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

// Is the kit ready: the verdict, then what is to be mended, worst first; what is in order is folded away.

const nameOf = (name: string): string => phrase("page-kit-names", { which: name });

function KitFindings({ looking }: { looking: Looking }) {
  const { kit, busy, failed } = looking;
  const of = (colour: Finding["colour"]) => kit?.findings.filter((each) => each.colour === colour) ?? [];
  return (
    <section class="kit-part">
      <h2>{phrase("page-kit-ready")}</h2>
      <p class="kit-verdict" data-status={kit?.status} aria-live="polite">
        {kit && !busy ? phrase("page-kit-verdict", { which: kit.status }) : failed && !busy ? phrase("page-kit-no-answer") : phrase("page-kit-looking")}
      </p>
      <p class="kit-again">
        <button type="button" class="in-head" aria-disabled={busy} onClick={() => busy || looking.again()}>
          {phrase("page-kit-again")}
        </button>
        {kit && <small>{phrase("page-kit-age", { s: Math.round(kit.age_s) })}</small>}
      </p>
      {kit && (
        <>
          <ol class="kit-findings">{[...of("red"), ...of("amber")].map((each) => <Open key={each.name} found={each} />)}</ol>
          <Folded found={of("unknown")} title={(count) => phrase("page-kit-untold", { n: count })} />
          <Folded found={of("green")} title={(count) => phrase("page-kit-in-order", { n: count })} />
          <p class="remark">
            {phrase("page-kit-beside")} {phrase("page-kit-checks-hint")} <a href="/checks">{phrase("page-kit-checks")}</a>.
          </p>
        </>
      )}
    </section>
  );
}

function Open({ found }: { found: Finding }) {
  return (
    <li data-colour={found.colour}>
      <Told found={found} />
    </li>
  );
}

function Folded({ found, title }: { found: readonly Finding[]; title: (n: number) => string }) {
  if (found.length === 0) return null;
  return (
    <details>
      <summary>{title(found.length)}</summary>
      <ul class="kit-findings">
        {found.map((each) => (
          <li key={each.name} data-colour={each.colour}>
            <Told found={each} />
          </li>
        ))}
      </ul>
    </details>
  );
}

function Told({ found }: { found: Finding }) {
  const values = Object.entries(found.values).filter(([, value]) => value !== null);
  return (
    <>
      <p>
        <strong>
          {nameOf(found.name)} – {phrase("page-kit-colour", { which: found.colour })}:
        </strong>{" "}
        {said(found.text)}
      </p>
      {found.remedy && (
        <p>
          <strong>{phrase("page-kit-next")}</strong> {said(found.remedy)}
        </p>
      )}
      {values.length > 0 && (
        <details>
          <summary>
            {phrase("page-kit-figures")} <span class="unseen">({nameOf(found.name)})</span>
          </summary>
          <dl class="kit-values">
            {values.map(([name, value]) => (
              <div key={name}>
                <dt>{name}</dt>
                <dd>{typeof value === "string" ? value : JSON.stringify(value)}</dd>
              </div>
            ))}
          </dl>
        </details>
      )}
    </>
  );
}

// Where other devices find this bench, as a QR code and in digits.

function KitAddress({ kit }: { kit: Kit }) {
  const [first = ""] = kit.addresses;
  const versions = kit.findings.find(({ name }) => name === "versions");
  return (
    <section class="kit-part kit-address">
      <div>
        <h2>{phrase("page-kit-address")}</h2>
        <p>{kit.bench}</p>
        <ul>
          {kit.addresses.map((each) => (
            <li key={each}>
              <a href={each}>{each}</a>
            </li>
          ))}
        </ul>
        {versions && (
          <p class="remark">
            {phrase("page-kit-versions")}: {said(versions.text)}
          </p>
        )}
      </div>
      <img src="/api/kit/address.svg" alt={phrase("page-kit-qr", { address: first })} width="160" height="160" />
    </section>
  );
}

// Staff make the cards of further benches: two files in, one zip out.

const LARGEST_KB = 15;
const CARDS_ANSWER_MS = 600_000;

/** The text of a chosen file; throws the words that say why not. A byte order mark is dropped. */
async function textOf(file: File): Promise<string> {
  try {
    return new TextDecoder("utf-8", { fatal: true }).decode(await file.arrayBuffer());
  } catch {
    throw new Error(phrase("page-kit-not-text", { file: file.name }));
  }
}

async function zipOf(kits: File, plan: File | null): Promise<Blob> {
  if (kits.size + (plan?.size ?? 0) > LARGEST_KB * 1000) throw new Error(phrase("page-kit-too-large", { kB: LARGEST_KB }));
  const body = { kits_toml: await textOf(kits), plan_toml: plan && (await textOf(plan)) };
  const abort = new AbortController();
  const timer = setTimeout(() => abort.abort(), CARDS_ANSWER_MS);
  try {
    const answer = await fetch("/api/kit/cards", {
      method: "POST",
      headers: { "Content-Type": "application/json" },
      body: JSON.stringify(body),
      signal: abort.signal,
    }).catch(() => null);
    if (answer?.ok) return await answer.blob();
    const problem = await answered<{ detail?: string }>(answer);
    throw new Error(problem?.detail ? said(problem.detail) : phrase("page-kit-no-answer"));
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

function MakeCards({ lack }: { lack: string | null }) {
  const [kits, chooseKits] = useState<File | null>(null);
  const [plan, choosePlan] = useState<File | null>(null);
  const [busy, wait] = useState(false);
  const [shown, say] = useState({ text: "", wrong: false });
  const submit = async (event: Event) => {
    event.preventDefault();
    if (busy) return;
    if (!kits) return say({ text: phrase("page-kit-choose-table"), wrong: true });
    wait(true);
    say({ text: phrase("page-kit-sending"), wrong: false });
    try {
      save(await zipOf(kits, plan));
      say({ text: phrase("page-kit-made"), wrong: false });
    } catch (error) {
      say({ text: error instanceof Error ? error.message : phrase("page-kit-no-answer"), wrong: true });
    }
    wait(false);
  };
  return (
    <section class="kit-part">
      <h2>{phrase("page-kit-cards")}</h2>
      <p>{phrase("page-kit-cards-why")}</p>
      <p>{phrase("page-kit-cards-secret")}</p>
      {lack && <p class="kit-lack">{said(lack)}</p>}
      <form class="kit-cards" onSubmit={(event) => void submit(event)}>
        <FileField label={phrase("page-kit-kits-file")} choose={chooseKits} />
        <FileField label={phrase("page-kit-plan-file")} choose={choosePlan} />
        <p class={shown.wrong ? "why-not" : "told"} aria-live="assertive">
          {shown.text}
        </p>
        <button type="submit" class="in-head" aria-disabled={busy}>
          {busy ? phrase("page-kit-sending") : phrase("page-kit-make-cards")}
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

// Staff test the lamps and the buzzer of the panel.

function LampsTest() {
  const [told, tell] = useState("");
  const test = async () => {
    tell(phrase("page-kit-sending"));
    const answer = await fetch("/api/kit/lamps", {
      method: "POST",
      headers: { "Content-Type": "application/json" },
      body: "{}",
    }).catch(() => null);
    const problem = answer?.ok ? null : (await answered<{ detail?: string }>(answer));
    tell(answer?.ok ? phrase("page-kit-trying") : said(problem?.detail ?? "") || phrase("page-kit-no-answer"));
  };
  return (
    <section class="kit-part">
      <h2>{phrase("page-kit-lamps")}</h2>
      <p>{phrase("page-kit-lamps-why")}</p>
      <p>
        <button type="button" class="in-head" onClick={() => void test()}>
          {phrase("page-kit-try-lamps")}
        </button>
      </p>
      <p class="told" aria-live="polite">
        {told}
      </p>
    </section>
  );
}

// All records of the station to take away, for staff.

function AllRecords() {
  return (
    <section class="kit-part">
      <h2>{phrase("page-kit-records")}</h2>
      <p>{phrase("page-kit-records-why")}</p>
      <p>
        <a href="/api/records.zip" download>
          {phrase("page-kit-records-link")}
        </a>
      </p>
    </section>
  );
}

startPage(KitPage);
