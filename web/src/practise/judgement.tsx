// How well the practice was done, told once its results are shown: each slip with what it cost, and what was in the cup.

import { useState } from "preact/hooks";
import { fixed } from "../format";
import type { Practice, View } from "../live/contract";
import { phrase, said } from "../words";
import { again, useHands } from "./hands";

type Slip = NonNullable<Practice["judgement"]>["slips"][number];

export function Judgement({ view }: { view: View }) {
  const { practice } = useHands(`${view.boot} ${view.state} ${view.results.shown} ${view.repeats.length}`);
  const [busy, work] = useState(false);
  const judged = practice?.judgement;
  if (view.state !== "done") return null;
  const begin = () => {
    work(true);
    void again().then(() => work(false));
  };
  return (
    <section class="judgement" data-testid="judgement">
      <h2>{phrase("page-practise-technique")}</h2>
      {!judged && <p>{phrase("page-practise-after-results")}</p>}
      {judged && judged.slips.length === 0 && <p>{phrase("page-practise-no-slips", { count: judged.portions })}</p>}
      {judged && judged.slips.length > 0 && (
        <ul>
          {judged.slips.map((slip) => (
            <Told key={`${slip.repeat} ${slip.portion} ${slip.slip}`} slip={slip} />
          ))}
        </ul>
      )}
      {judged && <p class="judgement-truth">{said(judged.truth)}</p>}
      <button type="button" class="strong" aria-disabled={busy} onClick={() => !busy && begin()}>
        {phrase("page-practise-again")}
      </button>
    </section>
  );
}

function Told({ slip: { repeat, portion, text, cost_c, put_right } }: { slip: Slip }) {
  return (
    <li>
      <b>{portion > 0 ? phrase("page-practise-of-portion", { repeat, portion }) : phrase("page-practise-of-start", { repeat })}</b> {said(text)}
      {cost_c !== null && ` ${phrase("page-practise-cost", { cost: fixed(Math.abs(cost_c), 1) })}`}
      {put_right !== null && ` ${phrase("page-practise-record", { which: put_right ? "right" : "wrong" })}`}
    </li>
  );
}
