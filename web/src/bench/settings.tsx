// Settings of this device: language, units, sound, and who operates the bench.

import { useState } from "preact/hooks";
import type { Message, Role, View } from "../live/contract";
import { type Session, type StaffAct, isStaff, sendStaff } from "../live/session";
import { ReasonField, useReason } from "../page/forms";
import { SoundSwitch } from "../page/header";
import { restoreText } from "../phrases/reasons";
import { StaffSignIn } from "../staff/sign_in";
import { LANGUAGES, type Units, phrase, said } from "../words";
import { UNITS, chooseLanguage, chooseUnits, chosen } from "../words/choice";
import { Bottle } from "./bottle";
import { restorableRepeats } from "./corrections/possible";
import { reasonInWords } from "./names";

interface SettingsViewProps {
  view: View;
  session: Session;
  take: (message: Message) => void;
}

function Language({ view }: { view: View }) {
  const { language } = view.bench;
  const station = language ? (LANGUAGES[language] ?? null) : null;
  return (
    <label>
      {phrase("page-settings-language")}
      <select
        value={chosen().language ?? ""}
        onChange={(event) => void chooseLanguage(event.currentTarget.value || null)}
      >
        <option value="">{station ? phrase("page-settings-as-station", { name: station }) : phrase("page-settings-as-browser")}</option>
        {Object.entries(LANGUAGES).map(([code, name]) => (
          <option key={code} value={code} lang={code}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
}

function UnitsChoice({ view }: { view: View }) {
  const station = UNITS[view.bench.units === "mL" ? "mL" : "cm3"];
  return (
    <label>
      {phrase("page-settings-units")}
      <select
        value={chosen().units ?? ""}
        onChange={(event) => chooseUnits((event.currentTarget.value || null) as Units | null)}
      >
        <option value="">{phrase("page-settings-as-station", { name: station })}</option>
        {Object.entries(UNITS).map(([code, name]) => (
          <option key={code} value={code}>
            {name}
          </option>
        ))}
      </select>
    </label>
  );
}

function Recovery({ session }: { session: Session }) {
  const [why, say] = useState("");
  const ask = async () => {
    const admission = await session.signIn({ recovery: true });
    if (!admission.admitted) say(said(admission.words ?? "") || phrase("page-doing-no-answer"));
  };
  return (
    <div class="recovery">
      <h3>{phrase("page-settings-recover-title")}</h3>
      <p>{phrase("page-settings-recover-why")}</p>
      <button type="button" class="plain" onClick={() => void ask()}>
        {phrase("page-settings-recover")}
      </button>
      <p class="why-not" aria-live="assertive">
        {why}
      </p>
    </div>
  );
}

function Who({ session, role, panel }: { session: Session; role: Role; panel: boolean }) {
  return (
    <section class="settings-part">
      <h2>{phrase("page-settings-who")}</h2>
      <p aria-live="polite">{phrase("page-settings-role", { which: role })}</p>
      {role !== "looker" && (
        <button type="button" class="plain" onClick={() => void session.signOut()}>
          {phrase("page-settings-sign-out")}
        </button>
      )}
      {!isStaff(role) && <StaffSignIn session={session} />}
      {role === "looker" && panel && <Recovery session={session} />}
    </section>
  );
}

function Room({ view }: { view: View }) {
  if (!view.link) return null;
  return (
    <section class="settings-part">
      <h2>{phrase("page-settings-room")}</h2>
      <p class={view.link.up ? undefined : "away"} role="status">
        {said(view.link.text)}
      </p>
    </section>
  );
}

export function SettingsView({ view, session, take }: SettingsViewProps) {
  const role = session.standing?.role ?? "looker";
  return (
    <div class="settings">
      <section class="settings-part">
        <h2>{phrase("page-settings-title")}</h2>
        <Language view={view} />
        <UnitsChoice view={view} />
        <h3>{phrase("page-settings-sound")}</h3>
        <p>{phrase("page-settings-sound-why")}</p>
        <SoundSwitch />
      </section>
      {!view.bench.read_only && <Who session={session} role={role} panel={view.bench.panel !== "none"} />}
      <Room view={view} />
      {isStaff(role) && <StaffControls view={view} take={take} />}
      <p>
        <a class="to-bench" href="#">
          {phrase("page-doing-to-bench")}
        </a>
      </p>
    </div>
  );
}

// What teacher and technician may do to this bench.

interface StaffControlsProps {
  view: View;
  take: (message: Message) => void;
}

type Send = (act: StaffAct) => void;

function Rename({ name, send }: { name: string; send: Send }) {
  const [typed, type] = useState(name);
  const submit = (event: Event) => {
    event.preventDefault();
    send({ act: "rename", name: typed.trim() || null });
  };
  return (
    <form onSubmit={submit}>
      <label>
        {phrase("page-settings-bench-name")}
        <input type="text" maxLength={24} autocomplete="off" value={typed} onInput={(event) => type(event.currentTarget.value)} />
      </label>
      <button type="submit" class="plain">
        {phrase("page-settings-rename")}
      </button>
    </form>
  );
}

function SetAside({ view, send }: { view: View; send: Send }) {
  const counted = view.repeats.filter(({ status }) => status !== "set aside");
  const [chosen, choose] = useState<number | null>(null);
  const reason = useReason(view.plan);
  const repeat = counted.find((each) => each.repeat === chosen) ?? counted[counted.length - 1];
  if (!repeat) return null;
  const submit = (event: Event) => {
    event.preventDefault();
    if (reason.told) send({ act: "set_aside", repeat: repeat.repeat, reason: reason.told });
  };
  return (
    <form onSubmit={submit}>
      <h3>{phrase("page-settings-set-aside")}</h3>
      <label>
        {phrase("page-which-repeat")}
        <select value={repeat.repeat} onChange={(event) => choose(Number(event.currentTarget.value))}>
          {counted.map((each) => (
            <option key={each.repeat} value={each.repeat}>
              {phrase("page-repeat-name", { repeat: each.repeat })}
            </option>
          ))}
        </select>
      </label>
      <ReasonField reason={reason} />
      <button type="submit" class="plain" disabled={reason.told === ""}>
        {phrase("page-settings-set-aside-now")}
      </button>
    </form>
  );
}

/** A pause of staff lasts until they end it; a group's own they may end, too. */
function Pause({ view, send }: { view: View; send: Send }) {
  const paused = view.state === "paused";
  if (!paused && view.repeats[view.repeats.length - 1]?.status !== "running" && view.state !== "rinse") return null;
  return (
    <p>
      <button type="button" class="plain" onClick={() => send({ act: paused ? "resume" : "pause" })}>
        {paused ? phrase("page-settings-resume") : phrase("page-settings-pause")}
      </button>
    </p>
  );
}

/** The pages of staff; a new practical begins with a plan on the first. */
const PAGES = ["plan", "prepare", "checks", "kit"] as const;

function StaffPages() {
  return (
    <ul class="legend">
      {PAGES.map((page) => (
        <li key={page}>
          <a class="to-bench" href={`/${page}`}>
            {phrase("page-settings-pages", { which: page })}
          </a>
        </li>
      ))}
    </ul>
  );
}

function StaffControls({ view, take }: StaffControlsProps) {
  const [told, tell] = useState("");
  const send: Send = (act) =>
    void sendStaff(act).then((outcome) => {
      if (outcome.done) take({ kind: "state", data: outcome.state });
      tell(outcome.done ? phrase("page-settings-done") : said(outcome.words ?? "") || phrase("page-doing-no-answer"));
    });
  const { shown } = view.results;
  const quiet = view.silent === true;
  return (
    <section class="settings-part">
      <h2>{phrase("page-settings-staff-title")}</h2>
      <StaffPages />
      <p>{shown ? phrase("page-settings-results-shown") : phrase("page-settings-results-held")}</p>
      <button type="button" class="plain" onClick={() => send({ act: "show_results", shown: !shown })}>
        {shown ? phrase("page-settings-hide-results") : phrase("page-settings-show-results")}
      </button>
      <Bottle view={view} send={send} />
      <p>{quiet ? phrase("page-settings-is-quiet") : phrase("page-settings-is-loud")}</p>
      <button type="button" class="plain" onClick={() => send({ act: "quiet", silent: !quiet })}>
        {quiet ? phrase("page-settings-loud") : phrase("page-settings-quiet")}
      </button>
      <Pause view={view} send={send} />
      <Rename key={view.bench.name} name={view.bench.name} send={send} />
      <SetAside view={view} send={send} />
      {restorableRepeats(view).map(({ repeat, reason }) => (
        <p key={repeat}>
          <button type="button" class="plain" onClick={() => send({ act: "restore", repeat })}>
            {restoreText(repeat, reasonInWords(reason))}
          </button>
        </p>
      ))}
      <p class="told" role="status">
        {told}
      </p>
    </section>
  );
}
