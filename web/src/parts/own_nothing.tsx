// The way on for students who could not read anything: asked back once, for it cannot be undone when results follow.

import { useState } from "preact/hooks";
import { words } from "../words";
import type { Acting } from "./acting";

interface Props {
  acting: Acting;
  done: () => void;
}

export function OwnNothing({ acting, done }: Props) {
  const [asked, ask] = useState(false);
  if (!asked) {
    return (
      <button type="button" onClick={() => ask(true)}>
        {words.ownLines.nothing}
      </button>
    );
  }
  const commit = async () => {
    if (await acting.send({ act: "own_reading" })) done();
  };
  return (
    <div class="own-nothing" role="group" aria-label={words.ownLines.nothing}>
      <p role="status">{words.ownLines.nothingAsk}</p>
      <div class="answers">
        <button type="button" aria-disabled={acting.busy} onClick={() => void commit()}>
          {words.ownLines.nothingYes}
        </button>
        <button type="button" onClick={() => ask(false)}>
          {words.no}
        </button>
      </div>
    </div>
  );
}
