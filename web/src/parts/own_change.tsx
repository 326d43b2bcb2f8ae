// The change of temperature that the students read off the curve of one mixing, and commit to.

import { useState } from "preact/hooks";
import { decimal, signed } from "../format";
import type { OnceView } from "../plan";
import { typedNumber } from "../typed";
import { words } from "../words";
import type { Acting } from "./acting";
import { OwnNothing } from "./own_nothing";

export interface OwnChangeProps {
  view: OnceView;
  acting: Acting;
  /** Called once a reading is kept. */
  done: () => void;
}

/** No change in a cup is larger / °C. */
const MOST_C = 100;

export function OwnChange({ view, acting, done }: OwnChangeProps) {
  const known_c = view.own_reading?.change_c ?? null;
  const [typed, setTyped] = useState(known_c === null ? "" : decimal(signed(known_c, 2)));
  const [wrong, setWrong] = useState(false);
  const submit = async (event: Event) => {
    event.preventDefault();
    const change_c = typedNumber(typed);
    const readable = change_c !== null && Math.abs(change_c) <= MOST_C;
    setWrong(!readable);
    if (readable && (await acting.send({ act: "own_reading", change_c }))) done();
  };
  return (
    <form class="own-volume" onSubmit={(event) => void submit(event)}>
      <h3>{words.ownLines.onceTitle}</h3>
      <p>{words.ownLines.onceTask}</p>
      <label>
        {words.ownLines.onceOwn}
        <input
          type="text"
          autocomplete="off"
          value={typed}
          aria-invalid={wrong}
          aria-describedby="own-sign"
          onInput={(event) => setTyped(event.currentTarget.value)}
        />
      </label>
      <p id="own-sign" class="remark">
        {words.ownLines.onceSign}
      </p>
      {wrong && (
        <p class="trouble" role="alert">
          {words.ownLines.notAChange}
        </p>
      )}
      <button type="submit" class="strong" aria-disabled={acting.busy}>
        {acting.busy ? words.sending : words.ownLines.commit}
      </button>
      <p class="remark">
        {view.results.rule === "when shown" ? words.ownLines.commitWait : words.ownLines.commitNow}
      </p>
      <OwnNothing acting={acting} done={done} />
    </form>
  );
}
