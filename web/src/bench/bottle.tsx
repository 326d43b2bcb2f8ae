// Staff tell what the bottle was made up to, where the concentration was the question.

import { useEffect, useState } from "preact/hooks";
import { kindOf } from "../kinds";
import { get } from "../live/ask";
import type { View } from "../live/contract";
import type { StaffAct } from "../live/session";
import { BottleForm } from "../page/bottle";

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
  const [known, know] = useState<number | null>(told);
  const asked = kindOf(view.plan).findsConcentration(view.plan);
  useEffect(() => {
    if (!asked || told !== null) return;
    get<OfStaff>("/api/plans").then(
      ({ bench }) => know(bench.acid?.prepared_mol_dm3 ?? null),
      () => undefined,
    );
  }, [asked, told]);
  return asked ? <BottleForm known={known} show={(prepared_mol_dm3) => send({ act: "show_results", shown: true, prepared_mol_dm3 })} /> : null;
}
