// Teacher and technician say who they are.

import { useState } from "preact/hooks";
import type { Staff } from "../live/contract";
import type { Session } from "../live/session";
import { phrase, said } from "../words";

/** The form for whoever has a passphrase; where nobody has one, how to set one. */
export function StaffSignIn({ session }: { session: Session }) {
  const passphrases = session.standing?.passphrases ?? [];
  if (passphrases.length > 0) return <SignInForm session={session} roles={passphrases} />;
  return (
    <div class="no-passphrase">
      <h3>{phrase("page-settings-no-passphrase")}</h3>
      <p>{phrase("page-settings-set-passphrase")}</p>
    </div>
  );
}

function SignInForm({ session, roles }: { session: Session; roles: readonly Staff[] }) {
  const [role, be] = useState<Staff>(roles[0] ?? "teacher");
  const [passphrase, type] = useState("");
  const [why, say] = useState("");
  const [busy, wait] = useState(false);
  const submit = async (event: Event) => {
    event.preventDefault();
    if (busy || passphrase === "") return;
    wait(true);
    const admission = await session.signIn({ role, passphrase });
    wait(false);
    if (!admission.admitted) say(said(admission.words ?? "") || phrase("page-doing-no-answer"));
  };
  return (
    <form onSubmit={(event) => void submit(event)}>
      <h3>{phrase("page-settings-staff")}</h3>
      <label>
        {phrase("page-settings-staff-role")}
        <select value={role} onChange={(event) => be(event.currentTarget.value as Staff)}>
          {roles.map((each) => (
            <option key={each} value={each}>
              {phrase("page-settings-roles", { which: each })}
            </option>
          ))}
        </select>
      </label>
      <label>
        {phrase("page-settings-passphrase")}
        <input
          type="password"
          autocomplete="off"
          maxLength={200}
          value={passphrase}
          aria-describedby="passphrase-refused"
          onInput={(event) => type(event.currentTarget.value)}
        />
      </label>
      <p id="passphrase-refused" class="why-not" aria-live="assertive">
        {why}
      </p>
      <button type="submit" class="strong" aria-disabled={busy}>
        {busy ? phrase("page-sending") : phrase("page-settings-sign-in")}
      </button>
    </form>
  );
}
