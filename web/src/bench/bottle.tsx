// Staff tell what the bottle was made up to, together with results: never before they are seen.

import { useEffect, useState } from "preact/hooks";
import { decimal, short, typedNumber } from "../format";
import { kindOf } from "../kinds";
import { get } from "../live/ask";
import type { View } from "../live/contract";
import type { StaffAct } from "../live/session";
import { phrase } from "../words";

interface Props {
  view: View;
  send: (act: StaffAct) => void;
}

/** What staff made up, as far as this station still knows: it is told to staff alone / mol/dm³. */
interface OfStaff {
  bench: { acid?: { prepared_mol_dm3?: number | null } };
}

export function Bottle({ view, send }: Props) {
  const told = view.results.prepared_mol_dm3;
  const [typed, type] = useState<string | null>(null);
  const [known, know] = useState<number | null>(told);
  const [wrong, setWrong] = useState(false);
  const asked = kindOf(view.plan).findsConcentration(view.plan);
  useEffect(() => {
    if (!asked || told !== null) return;
    get<OfStaff>("/api/plans").then(
      ({ bench }) => know(bench.acid?.prepared_mol_dm3 ?? null),
      () => undefined,
    );
  }, [asked, told]);
  if (!asked) return null;
  const shown = typed ?? (known === null ? "" : decimal(short(known, 4)));
  const submit = (event: Event) => {
    event.preventDefault();
    const mol_dm3 = typedNumber(shown);
    const readable = mol_dm3 !== null && mol_dm3 > 0;
    setWrong(!readable);
    if (readable) send({ act: "show_results", shown: true, prepared_mol_dm3: mol_dm3 });
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
      <button type="submit" class="plain">
        {phrase("page-settings-bottle-show")}
      </button>
      <p class="remark">{phrase("page-settings-bottle-why")}</p>
    </form>
  );
}
