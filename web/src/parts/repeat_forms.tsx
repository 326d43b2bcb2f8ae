// A repeat that does not count, and one that counts again: only a person decides, and says why.

import { useState } from "preact/hooks";
import { endedRepeats, restorableRepeats } from "../corrections";
import { reasonInWords } from "../reasons";
import { words } from "../words";
import { Back, Buttons, type FormProps, Taps } from "./form_parts";
import { ReasonField, useReason } from "./reason";

export function SetAsideForm({ act, view, busy, send, close }: FormProps) {
  const ended = endedRepeats(view);
  const [chosen, choose] = useState(ended[ended.length - 1]?.repeat ?? 1);
  const reason = useReason(view.plan);
  const submit = (event: Event) => {
    event.preventDefault();
    if (reason.told) send({ act, repeat: chosen, reason: reason.told });
  };
  return (
    <form onSubmit={submit}>
      <p>{words.mistakes.setAsideWhy}</p>
      <label>
        {words.whichRepeat}
        <select value={chosen} onChange={(event) => choose(Number(event.currentTarget.value))}>
          {ended.map(({ repeat }) => (
            <option key={repeat} value={repeat}>
              {words.repeatName(repeat)}
            </option>
          ))}
        </select>
      </label>
      <ReasonField reason={reason} />
      <Buttons act={act} busy={busy} close={close} ready={reason.told !== ""} yes={words.mistakes.setAside} />
    </form>
  );
}

export function RestoreForm({ act, view, busy, send, close }: FormProps) {
  return (
    <form>
      <Taps title={words.mistakes.restoreWhy}>
        {restorableRepeats(view).map(({ repeat, reason }) => (
          <button type="button" key={repeat} disabled={busy} onClick={() => send({ act, repeat })}>
            {words.mistakes.restoreName(repeat, reasonInWords(reason))}
          </button>
        ))}
      </Taps>
      <Back close={close} />
    </form>
  );
}
