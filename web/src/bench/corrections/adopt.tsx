// Readings of another group, from the file that its bench gives; and the way back to the own ones.

import { useState } from "preact/hooks";
import { Buttons, type FormProps, TextField, textOf } from "../../page/forms";
import { phrase } from "../../words";

/** The station takes acts up to 16 KiB; ten repeats of sixty portions fit. */
const LONGEST = 14_000;
const LONGEST_LABEL = 24;

type Chosen = { kind: "none" | "reading" } | { kind: "wrong"; why: string } | { kind: "read"; csv: string };

async function chosenOf(file: File): Promise<Chosen> {
  if (file.size > 4 * LONGEST) return { kind: "wrong", why: phrase("page-record-adopt-too-long") };
  try {
    const csv = await textOf(file);
    return csv.length > LONGEST ? { kind: "wrong", why: phrase("page-record-adopt-too-long") } : { kind: "read", csv };
  } catch {
    return { kind: "wrong", why: phrase("page-record-adopt-unreadable") };
  }
}

/** Choose a readings file and say whose it is. What is wrong with it the station says. */
export function AdoptForm({ busy, send, close }: FormProps) {
  const [label, type] = useState("");
  const [chosen, choose] = useState<Chosen>({ kind: "none" });
  const pick = async (file: File | undefined) => {
    if (!file) return choose({ kind: "none" });
    choose({ kind: "reading" });
    choose(await chosenOf(file));
  };
  const submit = (event: Event) => {
    event.preventDefault();
    if (chosen.kind === "read") send({ act: "adopt", label: label.trim(), csv: chosen.csv });
  };
  return (
    <form class="adopt" onSubmit={submit}>
      <p>{phrase("page-record-adopt-about")}</p>
      <p>{phrase("page-record-adopt-how")}</p>
      <label>
        {phrase("page-record-adopt-file")}
        <input type="file" accept=".csv,text/csv,text/plain" onChange={(event) => void pick(event.currentTarget.files?.[0])} />
      </label>
      <p class="adopt-said" role="status">
        {chosen.kind === "reading" && phrase("page-record-adopt-reading-file")}
        {chosen.kind === "wrong" && chosen.why}
      </p>
      <TextField label={phrase("page-record-adopt-label")} longest={LONGEST_LABEL} value={label} change={type} />
      <Buttons
        act="adopt"
        busy={busy}
        close={close}
        ready={chosen.kind === "read" && label.trim() !== ""}
        yes={phrase("page-record-adopt-take")}
      />
    </form>
  );
}

/** Back to the own readings. */
export function ReturnForm({ view, busy, send, close }: FormProps) {
  const submit = (event: Event) => {
    event.preventDefault();
    send({ act: "adopt_returned" });
  };
  return (
    <form class="adopt" onSubmit={submit}>
      <p>{phrase("page-record-adopt-return-why", { label: view.adopted?.label ?? "" })}</p>
      <Buttons act="adopt_returned" busy={busy} close={close} yes={phrase("page-record-adopt-back")} />
    </form>
  );
}
