// The plan as a file, as text, and as what this bench does next.

import { useRef, useState } from "preact/hooks";
import type { Values } from "../plan_form";
import type { Checked } from "../planning";
import { type Role, isStaff, sendStaff } from "../session";
import { said, words as page } from "../words";
import { planWords as words } from "../words/plan_topic";
import type { Session } from "./signing";
import { StaffSignIn } from "./staff_sign_in";

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
          {words().save}
        </button>
        <button type="button" class="plain" onClick={() => tell(copied(area.current) ? words().copied : words().notCopied)}>
          {words().copy}
        </button>
      </div>
      <label>
        {words().text}
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
    tell(outcome.done ? words().started : said(outcome.words ?? "") || words().noAnswer, outcome.done);
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
          <span>{words().confirm}</span>
        </label>
      )}
      <button type="button" class="strong" disabled={!open} onClick={() => void start()}>
        {busy ? page.sending : words().start}
      </button>
    </>
  );
}

export function Keep({ checked, session }: { checked: Checked | null; session: Session }) {
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
      <h2>{words().keep}</h2>
      {toml !== null && <AsText toml={toml} tell={tell} />}
      {isStaff(role) && plan && <Start key={JSON.stringify(plan)} plan={plan} strong={strong ?? []} tell={tell} />}
      {!isStaff(role) && (
        <>
          <p>{words().keepStaff}</p>
          <StaffSignIn session={session} />
        </>
      )}
      <p class="told" role="status">
        {told} {started && <a href="/">{words().toBench}</a>}
      </p>
      <p>
        <a href="/prepare">{words().toPrepare}</a>
      </p>
    </section>
  );
}
