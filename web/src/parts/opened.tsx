// A part that a person opens: a button, and under it what it opens.

import type { ComponentChildren } from "preact";
import { useState } from "preact/hooks";

interface Props {
  id: string;
  name: string;
  class?: string;
  /** Drawn only while it is open. */
  children: ComponentChildren;
}

export function Opened({ id, name, class: own = "", children }: Props) {
  const [open, setOpen] = useState(false);
  return (
    <div class={`opened ${own}`}>
      <h3>
        <button type="button" class="opener" aria-expanded={open} aria-controls={id} onClick={() => setOpen(!open)}>
          {name}
        </button>
      </h3>
      <div id={id} hidden={!open}>
        {open && children}
      </div>
    </div>
  );
}
