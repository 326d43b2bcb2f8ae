// The plan as a file, as text, and as what this bench does next.

import { useRef, useState } from "preact/hooks";
import type { Role } from "../../live/contract";
import { type Session, isStaff, sendStaff } from "../../live/session";
import { phrase, said } from "../../words";
import type { PlanChecked } from "../contract";
import { StaffSignIn } from "../sign_in";
import type { Values } from "./form";

/** Hands a text over as a file. A blob's address is let go a little later: some browsers read it late. */
function download(name: string, text: string): void {
  const address = URL.createObjectURL(new Blob([text], { type: "application/toml" }));
  const link = Object.assign(document.createElement("a"), { href: address, download: name });
  link.click();
  setTimeout(() => URL.revokeObjectURL(address), 10_000);
}

/** Copy a text. Plain http has no clipboard of its own: what is marked is copied the older way. */
function copied(area: HTMLTextAreaElement | null): boolean {
  if (!area) return false;
  area.focus();
  area.select();
  try {
    return document.execCommand("copy");
  } catch {
    return false;
  }
}

function AsText({ toml, tell }: { toml: string; tell: (words: string) => void }) {
  const area = useRef<HTMLTextAreaElement>(null);
  return (
    <>
      <div class="answers">
        <button type="button" class="plain" onClick={() => download("plan.toml", toml)}>
          {phrase("page-plan-save")}
        </button>
        <button type="button" class="plain" onClick={() => tell(copied(area.current) ? phrase("page-plan-copied") : phrase("page-plan-not-copied"))}>
          {phrase("page-plan-copy")}
        </button>
      </div>
      <label>
        {phrase("page-plan-text")}
        <textarea class="plan-text" readOnly rows={8} value={toml} ref={area} />
      </label>
    </>
  );
}

function Start({ plan, strong, tell }: { plan: Values; strong: readonly string[]; tell: (words: string, started?: boolean) => void }) {
  const [confirmed, confirm] = useState(false);
  const [busy, wait] = useState(false);
  const open = strong.length === 0 || confirmed;
  const start = async () => {
    if (busy || !open) return;
    wait(true);
    const outcome = await sendStaff({ act: "choose_plan", plan, confirmed });
    wait(false);
    tell(outcome.done ? phrase("page-plan-started") : said(outcome.words ?? "") || phrase("page-plan-no-answer"), outcome.done);
  };
  return (
    <>
      {strong.map((line) => (
        <p class="plan-strong" key={line}>
          {said(line)}
        </p>
      ))}
      {strong.length > 0 && (
        <label class="plan-confirm">
          <input type="checkbox" checked={confirmed} onChange={(event) => confirm(event.currentTarget.checked)} />
          <span>{phrase("page-plan-confirm")}</span>
        </label>
      )}
      <button type="button" class="strong" disabled={!open} onClick={() => void start()}>
        {busy ? phrase("page-sending") : phrase("page-plan-start")}
      </button>
    </>
  );
}

export function Keep({ checked, session }: { checked: PlanChecked | null; session: Session }) {
  const [told, say] = useState("");
  const [started, begin] = useState(false);
  const role: Role = session.standing?.role ?? "looker";
  const tell = (text: string, done = false) => {
    say(text);
    begin(done);
  };
  const { plan = null, toml = null, strong = [] } = checked ?? {};
  return (
    <section class="settings-part plan-keep">
      <h2>{phrase("page-plan-keep")}</h2>
      {toml !== null && <AsText toml={toml} tell={tell} />}
      {isStaff(role) && plan && <Start key={JSON.stringify(plan)} plan={plan} strong={strong ?? []} tell={tell} />}
      {!isStaff(role) && (
        <>
          <p>{phrase("page-plan-keep-staff")}</p>
          <StaffSignIn session={session} />
        </>
      )}
      <p class="told" role="status">
        {told} {started && <a href="/">{phrase("page-plan-to-bench")}</a>}
      </p>
      <p>
        <a href="/prepare">{phrase("page-plan-to-prepare")}</a>
      </p>
    </section>
  );
}
