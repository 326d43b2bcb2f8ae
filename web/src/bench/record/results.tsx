// The own reading and both computed results side by side, with their ±; or what they wait for.

import { parts as sheets } from "@kinds/sheet";
import { fixed, keptTogether, short, signed } from "../../format";
import type { Column } from "../../kinds/sheet";
import type { View } from "../../live/contract";
import { keyed, phrase, said } from "../../words";

function own({ own_reading: read }: View): Column[] {
  if (read === null) return [];
  const number = read.end_point_cm3 !== null ? phrase("page-record-own-volume", { volume: short(read.end_point_cm3) })
    : read.change_c !== null ? phrase("page-record-own-change", { change: signed(read.change_c, 2) })
    : phrase("page-record-own-nothing");
  return [{ name: phrase("page-record-own-reading"), number, interval: null, more: [], remark: null }];
}

function Accepted({ view }: { view: View }) {
  const accepted = view.result?.accepted;
  if (!accepted) return null;
  return (
    <p class="record-accepted">
      {phrase("page-steps-accepted")}: {keptTogether(phrase("page-steps-accepted-value", { enthalpy: signed(accepted.enthalpy_kj_mol, 1), u: fixed(accepted.u, 1) }))}.{" "}
      {said(accepted.text)} {phrase("page-steps-source", { source: accepted.source })}
    </p>
  );
}

export function RecordResults({ view }: { view: View }) {
  const { results } = view;
  const found = !results.shown ? [] : sheets[view.plan.kind].columns(view);
  return (
    <section class="record-results">
      <h3>{phrase("page-record-results")}</h3>
      <div class="record-columns">
        {[...own(view), ...found].map(({ name, number, interval, more, remark }) => (
          <div key={name}>
            <h4>{name}</h4>
            <p class="record-number">{keptTogether(number)}</p>
            {interval && <p>{keptTogether(interval)}</p>}
            {more.map(([quantity, value]) => (
              <p key={quantity}>
                {quantity}: <b>{keptTogether(value)}</b>
              </p>
            ))}
            {remark && <p class="record-remark">{keptTogether(remark)}</p>}
          </div>
        ))}
      </div>
      {!results.shown && results.waits_for && <p>{phrase("page-own-lines-waits", { which: keyed(results.waits_for) })}</p>}
      {found.length > 0 && <p class="record-remark">{phrase("page-record-plus-minus-is")}</p>}
      {results.shown && <Accepted view={view} />}
    </section>
  );
}
