// Teacher and technician say who they are.

import { useState } from "preact/hooks";
import type { Staff } from "../live/contract";
import type { Session } from "../live/session";
import { phrase, said } from "../words";

export function StaffSignIn({ session }: { session: Session }) {
  const [role, be] = useState<Staff>("teacher");
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
          {(["teacher", "technician"] as const).map((each) => (
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
