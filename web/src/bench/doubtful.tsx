// What does not look right and can be acted on: a portion that does not look like its volume, two repeats that part.

import { useState } from "preact/hooks";
import { fixed, short } from "../format";
import { kindOf } from "../kinds";
import type { Act, Acting } from "../live/acts";
import type { PortionsView, View } from "../live/contract";
import { NumberField, Taps, useNumber } from "../page/forms";
import { Explained } from "../page/terms";
import { marked, messageOf, phrase, said } from "../words";
import { likelyVolumes } from "./corrections/possible";
import { parted } from "./parting";

interface Portion {
  repeat: number;
  portion: number;
  volume_cm3: number;
  note: string;
}

/** Portions of which the fit of the whole trace says so, and that nobody has looked at since. */
export function doubtfulPortions(view: View): Portion[] {
  return (view.result?.repeats ?? []).flatMap(({ repeat, notes = [] }) =>
    notes.flatMap((note): Portion[] => {
      const message = messageOf(note);
      if (message?.id !== "heat-note-portion-volume") return [];
      const portion = Number(message.values?.portion);
      const of = view.repeats.find((each) => each.repeat === repeat && each.status === "ended");
      const found = of?.portions.find((each) => each.portion === portion);
      return found && !of?.confirmed?.includes(portion) && !found.unsure ? [{ repeat, portion, volume_cm3: found.volume_cm3, note }] : [];
    }),
  );
}

interface Props {
  view: PortionsView;
  acting: Acting;
}

function PortionDoubt({ of, view, acting }: Props & { of: Portion }) {
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
  const apart = view.adopted === null && view.state === "done" ? parted(view.repeats) : null;
  const portions = view.results.shown ? doubtfulPortions(view) : [];
  if (view.bench.read_only || (apart === null && portions.length === 0)) return null;
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
