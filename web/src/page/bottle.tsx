// Telling what the bottle was made up to, together with results: never before they are seen.

import { useState } from "preact/hooks";
import { decimal, short, typedNumber } from "../format";
import { phrase } from "../words";

interface Props {
  /** What it was made up to, as far as it is known here / mol/dm³. */
  known: number | null;
  /** Whether it can be sent now. */
  able?: boolean;
  show: (prepared_mol_dm3: number) => void;
}

/** A field for the concentration, with what is known already in it, and the button that shows it with the results. */
export function BottleForm({ known, able = true, show }: Props) {
  const [typed, type] = useState<string | null>(null);
  const [wrong, setWrong] = useState(false);
  const shown = typed ?? (known === null ? "" : decimal(short(known, 4)));
  const submit = (event: Event) => {
    event.preventDefault();
    const mol_dm3 = typedNumber(shown);
    const readable = mol_dm3 !== null && mol_dm3 > 0;
    setWrong(!readable);
    if (readable) show(mol_dm3);
  };
  return (
    <form onSubmit={submit}>
      <label>
        {phrase("page-settings-bottle")}
        <input
          type="text"
          inputMode="decimal"
          autocomplete="off"
          value={shown}
          aria-invalid={wrong}
          onInput={(event) => type(event.currentTarget.value)}
        />
      </label>
      {wrong && (
        <p class="trouble" role="alert">
          {phrase("page-settings-bottle-wrong")}
        </p>
      )}
      <button type="submit" class="plain" disabled={!able}>
        {phrase("page-settings-bottle-show")}
      </button>
      <p class="remark">{phrase("page-settings-bottle-why")}</p>
    </form>
  );
}
