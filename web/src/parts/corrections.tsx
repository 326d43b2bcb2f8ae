// Corrections in words, behind one button: what is possible now travels only when it is opened.

import { useRef, useState } from "preact/hooks";
import type { View } from "../contract";
import { words } from "../words";
import type { Acting } from "./acting";
import { later } from "./later";

const Panel = later(() => import("./corrections_panel").then((part) => part.CorrectionsPanel));

export function Corrections({ view, acting }: { view: View; acting: Acting }) {
  const [open, setOpen] = useState(false);
  const toggle = useRef<HTMLButtonElement>(null);
  if (view.other_acts.length === 0) return null;
  const close = () => {
    setOpen(false);
    toggle.current?.focus();
  };
  return (
    <section class="corrections" onKeyDown={(event) => event.key === "Escape" && open && close()}>
      <button
        type="button"
        class="plain toggle"
        ref={toggle}
        aria-expanded={open}
        aria-controls="corrections"
        onClick={() => (open ? close() : setOpen(true))}
      >
        {words.corrections}
      </button>
      <div id="corrections" hidden={!open}>
        {open && <Panel view={view} acting={acting} close={close} />}
      </div>
    </section>
  );
}
