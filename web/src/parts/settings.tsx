// Settings of this device: language, units, sound, and who operates the bench.

import { useState } from "preact/hooks";
import type { Message, View } from "../contract";
import { isStaff, type Role } from "../session";
import { type LanguageCode, type Units, said, words } from "../words";
import { LANGUAGES, UNITS, chooseLanguage, chooseUnits, chosen } from "../words/choice";
import { SoundSwitch } from "./menu";
import type { Session } from "./signing";
import { StaffControls } from "./staff";
import { StaffSignIn } from "./staff_sign_in";

interface Props {
  view: View;
  session: Session;
  take: (message: Message) => void;
}

function Language({ view }: { view: View }) {
  const { language } = view.bench;
  const station = language && language in LANGUAGES ? LANGUAGES[language as keyof typeof LANGUAGES] : null;
  return (
    <label>
      {words.settings.language}
      <select
        value={chosen().language ?? ""}
        onChange={(event) => void chooseLanguage((event.currentTarget.value || null) as LanguageCode | null)}
      >
        <option value="">{station ? words.settings.asStation(station) : words.settings.asBrowser}</option>
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
      {words.settings.units}
      <select
        value={chosen().units ?? ""}
        onChange={(event) => chooseUnits((event.currentTarget.value || null) as Units | null)}
      >
        <option value="">{words.settings.asStation(station)}</option>
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
    if (!admission.admitted) say(said(admission.words ?? "") || words.doing.noAnswer);
  };
  return (
    <div class="recovery">
      <h3>{words.settings.recoverTitle}</h3>
      <p>{words.settings.recoverWhy}</p>
      <button type="button" class="plain" onClick={() => void ask()}>
        {words.settings.recover}
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
      <h2>{words.settings.who}</h2>
      <p aria-live="polite">{words.settings.role[role]}</p>
      {role !== "looker" && (
        <button type="button" class="plain" onClick={() => void session.signOut()}>
          {words.settings.signOut}
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
      <h2>{words.settings.room}</h2>
      <p class={view.link.up ? undefined : "away"} role="status">
        {said(view.link.text)}
      </p>
    </section>
  );
}

export function SettingsView({ view, session, take }: Props) {
  const role = session.standing?.role ?? "looker";
  return (
    <div class="settings">
      <section class="settings-part">
        <h2>{words.settings.title}</h2>
        <Language view={view} />
        <UnitsChoice view={view} />
        <h3>{words.settings.sound}</h3>
        <p>{words.settings.soundWhy}</p>
        <SoundSwitch />
      </section>
      {!view.bench.read_only && <Who session={session} role={role} panel={view.bench.panel !== "none"} />}
      <Room view={view} />
      {isStaff(role) && <StaffControls view={view} take={take} />}
      <p>
        <a class="to-bench" href="#">
          {words.doing.toBench}
        </a>
      </p>
    </div>
  );
}
