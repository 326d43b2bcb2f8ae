// What does not look right and can be acted on: a portion that does not look like its volume, two repeats that part.

import { useState } from "preact/hooks";
import { fixed, short } from "../format";
import { kindOf } from "../kinds";
import type { Act, Acting } from "../live/acts";
import type { PortionsView } from "../live/contract";
import { NumberField, Taps, useNumber } from "../page/forms";
import { Explained } from "../page/terms";
import { marked, phrase, said } from "../words";
import { likelyVolumes } from "./corrections/possible";
import { type DoubtfulPortion, doubtsNamed } from "./doubts";

interface Props {
  view: PortionsView;
  acting: Acting;
}

function PortionDoubt({ of, view, acting }: Props & { of: DoubtfulPortion }) {
  const [other, setOther] = useState(false);
  const typed = useNumber();
  const { repeat, portion, volume_cm3 } = of;
  const send = (act: Act) => void (!acting.busy && acting.send(act));
  const went = (to_cm3: number) => send({ act: "portion_volume", repeat, portion, volume_cm3: to_cm3 });
  const submit = (event: Event) => {
    event.preventDefault();
    const typed_cm3 = typed.read();
    if (typed_cm3 !== null) went(typed_cm3);
  };
  return (
    <li>
      <p>{phrase("page-doubt-of", { repeat, note: said(of.note) })}</p>
      <div class="answers">
        <button type="button" aria-expanded={other} onClick={() => setOther(!other)}>
          {phrase("page-doubt-other-volume")}
        </button>
        <button type="button" onClick={() => send({ act: "repeat_set_aside", repeat, reason: "wrong volume in the cup" })}>
          {phrase("page-doubt-leave-out", { repeat })}
        </button>
        <button type="button" onClick={() => went(volume_cm3)}>
          {phrase("page-doubt-right")}
        </button>
      </div>
      {other && (
        <form onSubmit={submit}>
          <Taps title={phrase("page-mistakes-quick-volume")}>
            {likelyVolumes(kindOf(view.plan).portion_cm3(view.plan), volume_cm3).map((likely_cm3) => (
              <button type="button" key={likely_cm3} aria-disabled={acting.busy} onClick={() => went(likely_cm3)}>
                {phrase("page-mistakes-volume-of", { volume: short(likely_cm3) })}
              </button>
            ))}
          </Taps>
          <NumberField label={phrase("page-real-volume")} value={typed.text} change={typed.type} why={typed.why} />
          <button type="submit" class="strong" aria-disabled={acting.busy}>
            {phrase("page-yes", { which: "portion_volume" })}
          </button>
        </form>
      )}
    </li>
  );
}

/** Named before the mean of the repeats is used: for the own lines as for the results. */
export function Doubtful({ view, acting }: Props) {
  const { apart, portions } = doubtsNamed(view);
  if (apart === null && portions.length === 0) return null;
  const leaveOut = (repeat: number) =>
    void (!acting.busy && acting.send({ act: "repeat_set_aside", repeat, reason: "differs from the other repeat" }));
  return (
    <section class="figure doubtful" aria-labelledby="doubtful">
      <h2 id="doubtful">{phrase("page-doubt-title")}</h2>
      <ul>
        {apart && (
          <li>
            <p><Explained text={marked("page-doubt-parted", { first: apart.first, second: apart.second, portion: apart.portion, apart: fixed(apart.apart_c, 1) })} /></p>
            <div class="answers">
              {[apart.first, apart.second].map((repeat) => (
                <button type="button" key={repeat} onClick={() => leaveOut(repeat)}>
                  {phrase("page-doubt-leave-out", { repeat })}
                </button>
              ))}
            </div>
          </li>
        )}
        {portions.map((of) => (
          <PortionDoubt key={`${of.repeat} ${of.portion}`} of={of} view={view} acting={acting} />
        ))}
      </ul>
    </section>
  );
}
