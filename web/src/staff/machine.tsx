// The machine below the bench, for staff: its network, name and codes, the record on a stick, an update, the power. All
// of it is done by the station's helper; where there is none, the page says so.

import type { ComponentChildren } from "preact";
import { useEffect, useState } from "preact/hooks";
import type { MachineShown } from "../live/contract.generated";
import { answered, get } from "../live/ask";
import { phrase, said } from "../words";

const PATH = "/api/kit/machine";
/** An update installs for minutes. */
const ANSWER_MS = 1_900_000;
const LOOK_AGAIN_MS = 5000;
const MOST_TRIES = 120;

type Request = Readonly<Record<string, string | boolean>> & { readonly do: string };
interface Told {
  readonly done: boolean;
  readonly words: string;
}

async function ask(request: Request): Promise<Told> {
  const answer = await fetch(PATH, {
    method: "POST",
    headers: { "Content-Type": "application/json" },
    body: JSON.stringify(request),
    signal: AbortSignal.timeout?.(ANSWER_MS) ?? null,
  }).catch(() => null);
  const held = await answered<{ told?: string; detail?: string }>(answer);
  return { done: answer?.ok ?? false, words: said(held?.told ?? held?.detail ?? "") || phrase("page-kit-no-answer") };
}

export function Machine() {
  const [machine, found] = useState<MachineShown | null>(null);
  /** Counts answers that did not come: the page is away while the record is put in place. */
  const [tries, again] = useState(0);
  const look = () => void get<MachineShown>(PATH).then(found, () => again((tried) => tried + 1));
  useEffect(look, []);
  useEffect(() => {
    if (!machine?.at_work || tries > MOST_TRIES) return;
    const timer = setTimeout(look, LOOK_AGAIN_MS);
    return () => clearTimeout(timer);
  }, [machine, tries]);
  if (!machine) return null;
  if (!machine.here)
    return (
      <section class="kit-part">
        <h2>{phrase("page-machine")}</h2>
        <p class="remark">{said(machine.told)}</p>
      </section>
    );
  return (
    <>
      <p class="told kit-outcome" aria-live="polite">
        {said(machine.told)}
      </p>
      <Network machine={machine} look={look} />
      <Settings />
      <Record copies={machine.copies} look={look} />
      <Update look={look} />
      <Power />
    </>
  );
}

/** A form that asks for one thing; it says what came of it. `sure` is what has to be ticked first. */
function Asking(props: {
  request: () => Request;
  button: string;
  sure?: string;
  asked?: () => void;
  children?: ComponentChildren;
}) {
  const [told, tell] = useState<Told>({ done: true, words: "" });
  const [busy, wait] = useState(false);
  const [ticked, tick] = useState(false);
  const submit = async (event: Event) => {
    event.preventDefault();
    if (busy) return;
    if (props.sure && !ticked) return tell({ done: false, words: phrase("page-machine-tick") });
    wait(true);
    tell({ done: true, words: phrase("page-kit-sending") });
    tell(await ask(props.request()));
    wait(false);
    tick(false);
    props.asked?.();
  };
  return (
    <form class="kit-machine" onSubmit={(event) => void submit(event)}>
      {props.children}
      {props.sure && (
        <label class="kit-sure">
          <input type="checkbox" checked={ticked} onChange={(event) => tick(event.currentTarget.checked)} /> {props.sure}
        </label>
      )}
      <p class={told.done ? "told" : "why-not"} aria-live="assertive">
        {told.words}
      </p>
      <button type="submit" class="in-head" aria-disabled={busy}>
        {props.button}
      </button>
    </form>
  );
}

function Field(props: { label: string; value: string; change: (value: string) => void; most: number; secret?: boolean }) {
  const { value, most: maxLength } = props;
  const onInput = (event: { currentTarget: HTMLInputElement }) => props.change(event.currentTarget.value);
  const common = { autocomplete: "off", maxLength, value, onInput } as const;
  return (
    <label>
      {props.label}
      {props.secret ? <input type="password" {...common} /> : <input type="text" {...common} />}
    </label>
  );
}

/** Only what is filled in is asked for. */
const filled = (values: Readonly<Record<string, string>>): Record<string, string> =>
  Object.fromEntries(Object.entries(values).filter(([, value]) => value !== ""));

function Network({ machine, look }: { machine: MachineShown; look: () => void }) {
  const [wired, choose] = useState(machine.wired);
  const [ssid, name] = useState(machine.ssid ?? "");
  const [password, type] = useState("");
  const [country, live] = useState(machine.country ?? "");
  const [hidden, hide] = useState(false);
  const request = (): Request =>
    wired ? { do: "network", wired } : { do: "network", hidden, ...filled({ ssid, password, country }) };
  return (
    <section class="kit-part">
      <h2>{phrase("page-machine-network")}</h2>
      <p>{phrase("page-machine-network-why")}</p>
      <Asking request={request} button={phrase("page-machine-try-network")} asked={look}>
        <label>
          {phrase("page-machine-way")}
          <select value={wired ? "wired" : "wifi"} onChange={(event) => choose(event.currentTarget.value === "wired")}>
            <option value="wifi">{phrase("page-machine-wifi")}</option>
            <option value="wired">{phrase("page-machine-wired")}</option>
          </select>
        </label>
        {!wired && (
          <>
            <Field label={phrase("page-machine-ssid")} value={ssid} change={name} most={32} />
            <Field label={phrase("page-machine-password")} value={password} change={type} most={63} secret />
            <Field label={phrase("page-machine-country")} value={country} change={live} most={2} />
            <label class="kit-sure">
              <input type="checkbox" checked={hidden} onChange={(event) => hide(event.currentTarget.checked)} />{" "}
              {phrase("page-machine-hidden")}
            </label>
          </>
        )}
      </Asking>
    </section>
  );
}

function Settings() {
  const [name, call] = useState("");
  const [code, change] = useState("");
  const [teacher, teach] = useState("");
  const [technician, mend] = useState("");
  const request = (): Request => ({
    do: "settings",
    ...filled({ name, bench_code: code, teacher_passphrase: teacher, technician_passphrase: technician }),
  });
  return (
    <section class="kit-part">
      <h2>{phrase("page-machine-words")}</h2>
      <p>{phrase("page-machine-words-why")}</p>
      <Asking request={request} button={phrase("page-machine-keep")}>
        <Field label={phrase("page-machine-name")} value={name} change={call} most={24} />
        <Field label={phrase("page-machine-code")} value={code} change={change} most={60} />
        <Field label={phrase("page-machine-teacher")} value={teacher} change={teach} most={200} secret />
        <Field label={phrase("page-machine-technician")} value={technician} change={mend} most={200} secret />
      </Asking>
    </section>
  );
}

function Record({ copies, look }: { copies: readonly string[]; look: () => void }) {
  const [copy, choose] = useState(copies[0] ?? "");
  const [file, name] = useState("");
  return (
    <section class="kit-part">
      <h2>{phrase("page-machine-record")}</h2>
      <Asking request={() => ({ do: "backup" })} button={phrase("page-machine-backup")} />
      {copies.length > 0 && (
        <Asking
          request={() => ({ do: "restore", place: "card", file: copy })}
          button={phrase("page-machine-restore")}
          sure={phrase("page-machine-restore-sure")}
          asked={look}
        >
          <label>
            {phrase("page-machine-copy")}
            <select value={copy} onChange={(event) => choose(event.currentTarget.value)}>
              {copies.map((each) => (
                <option key={each}>{each}</option>
              ))}
            </select>
          </label>
        </Asking>
      )}
      <Asking
        request={() => ({ do: "restore", place: "stick", file })}
        button={phrase("page-machine-restore-stick")}
        sure={phrase("page-machine-restore-sure")}
        asked={look}
      >
        <Field label={phrase("page-machine-file")} value={file} change={name} most={90} />
      </Asking>
      <Asking
        request={() => ({ do: "wipe" })}
        button={phrase("page-machine-wipe")}
        sure={phrase("page-machine-wipe-sure")}
        asked={look}
      />
    </section>
  );
}

function Update({ look }: { look: () => void }) {
  const [digits, type] = useState("");
  return (
    <section class="kit-part">
      <h2>{phrase("page-machine-update")}</h2>
      <p>{phrase("page-machine-update-why")}</p>
      <Asking
        request={() => ({ do: "update", sha256: digits.replace(/\s/g, "").toLowerCase() })}
        button={phrase("page-machine-update-go")}
        asked={look}
      >
        <Field label={phrase("page-machine-digits")} value={digits} change={type} most={90} />
      </Asking>
    </section>
  );
}

function Power() {
  return (
    <section class="kit-part">
      <h2>{phrase("page-machine-power")}</h2>
      <Asking
        request={() => ({ do: "restart" })}
        button={phrase("page-machine-restart")}
        sure={phrase("page-machine-stops")}
      />
      <Asking
        request={() => ({ do: "shut-down" })}
        button={phrase("page-machine-shut-down")}
        sure={phrase("page-machine-stops")}
      />
    </section>
  );
}
