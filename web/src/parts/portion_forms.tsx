// What may be wrong with a portion: how many went in, how much, a doubt, a typed reading.

import { useState } from "preact/hooks";
import { choices, likelyVolumes, moreThan, typedReadings } from "../corrections";
import { isOnce } from "../plan";
import { reasonInWords } from "../reasons";
import { typedNumber } from "../typed";
import { words } from "../words";
import { Back, Buttons, type FormProps, NumberField, PortionChoice, Taps, TextField } from "./form_parts";
import { TemperatureField } from "./typed";

/** "We added 6": every portion up to it is recorded, one by one. */
export function MoreForm({ view, busy, send, close }: FormProps) {
  const from = view.portion;
  const added = (count: number) => {
    const portions = Array.from({ length: count - from }, (_, index) => from + 1 + index);
    send(...portions.map((portion) => ({ act: "portion_added", portion })));
  };
  return (
    <form>
      <Taps title={words.mistakes.moreTitle}>
        {moreThan(view).map((count) => (
          <button type="button" key={count} data-count={count} disabled={busy} onClick={() => added(count)}>
            {words.mistakes.moreOf(count)}
          </button>
        ))}
      </Taps>
      <Back close={close} />
    </form>
  );
}

export function VolumeForm({ act, view, busy, send, close }: FormProps) {
  // What was there when the form opened: a portion added meanwhile must not shift the choice.
  const [from] = useState(() => choices(view));
  const [index, choose] = useState(0);
  const [text, type] = useState("");
  const volume_cm3 = typedNumber(text);
  const chosen = from[index];
  const planned_cm3 = view.plan.kind === "once" ? (view.plan.addition.volume_cm3 ?? 0) : view.plan.portions.volume_cm3;
  const correct = (to_cm3: number) =>
    chosen && send({ act, repeat: chosen.repeat, portion: chosen.portion, volume_cm3: to_cm3 });
  const submit = (event: Event) => {
    event.preventDefault();
    if (volume_cm3 !== null) correct(volume_cm3);
  };
  const { volumeOf, asPlanned } = words.mistakes;
  return (
    <form onSubmit={submit}>
      <PortionChoice from={from} once={isOnce(view)} value={index} choose={choose} />
      <Taps title={words.mistakes.quickVolume}>
        {likelyVolumes(planned_cm3, chosen?.volume_cm3 ?? planned_cm3).map((likely_cm3) => (
          <button type="button" key={likely_cm3} disabled={busy} onClick={() => correct(likely_cm3)}>
            {likely_cm3 === planned_cm3 ? asPlanned(likely_cm3) : volumeOf(likely_cm3)}
          </button>
        ))}
      </Taps>
      <NumberField label={words.realVolume} value={text} change={type} />
      <Buttons act={act} busy={busy} close={close} ready={chosen !== undefined && volume_cm3 !== null} />
    </form>
  );
}

/** A doubt about any portion, and the way back. */
export function DoubtForm({ act, view, busy, send, close }: FormProps) {
  const [from] = useState(() => choices(view));
  const [index, choose] = useState(0);
  const [reason, type] = useState("");
  const chosen = from[index];
  const now = choices(view).find(({ repeat, portion }) => repeat === chosen?.repeat && portion === chosen?.portion);
  const submit = (event: Event) => {
    event.preventDefault();
    if (!now) return;
    const { repeat, portion } = now;
    if (now.unsure) send({ act: "portion_sure", repeat, portion });
    else send({ act, repeat, portion, ...(reason.trim() ? { reason: reason.trim() } : {}) });
  };
  return (
    <form onSubmit={submit}>
      <PortionChoice from={from} once={isOnce(view)} value={index} choose={choose} />
      {now?.unsure ? (
        <p>{words.mistakes.inDoubt(now.portion, reasonInWords(now.reason))}</p>
      ) : (
        <TextField label={words.mistakes.otherDoubt} longest={200} value={reason} change={type} />
      )}
      <Buttons
        act={act}
        busy={busy}
        close={close}
        ready={now !== undefined}
        {...(now?.unsure ? { yes: words.mistakes.sure } : {})}
      />
    </form>
  );
}

/** An earlier typed reading was misread or mistyped. */
export function ReadingForm({ act, view, busy, send, close }: FormProps) {
  const [from] = useState(() => typedReadings(view));
  const [index, choose] = useState(0);
  const chosen = from[index];
  const division_c = (view.thermometer.kind === "typed" && view.thermometer.division_c) || 0.1;
  return (
    <>
      <label>
        {words.mistakes.whichReading}
        <select value={index} onChange={(event) => choose(Number(event.currentTarget.value))}>
          {from.map(({ repeat, portion, temperature_c }, each) => (
            <option key={`${repeat} ${portion}`} value={each}>
              {words.mistakes.readingName(repeat, portion, temperature_c)}
            </option>
          ))}
        </select>
      </label>
      <TemperatureField
        division_c={division_c}
        before_c={chosen?.temperature_c ?? null}
        busy={busy}
        label={words.mistakes.rightReading}
        give={(temperature_c) => chosen && send({ act, temperature_c, repeat: chosen.repeat, portion: chosen.portion })}
      />
      <Back close={close} />
    </>
  );
}
