// The way to the other views, and the switch of the sound.

import { useEffect, useRef, useState } from "preact/hooks";
import { words } from "../words";
import { PLACES, type Place } from "./place";
import { sound, useHearing } from "./sounding";

const WAVES = { on: "M17 8q4 4 0 8M20 5q7 7 0 14", off: "M17 9l6 6M23 9l-6 6", asleep: "M17 9h5l-5 6h5" } as const;

/** Says in words whether anything can be heard; the press that arms the sound is on it. */
export function SoundSwitch() {
  const hearing = useHearing();
  return (
    <button type="button" class="plain in-head" data-sound={hearing} onClick={() => void sound.press()}>
      <svg class="icon" viewBox="0 0 26 24" aria-hidden="true">
        <path d={`M3 9h4l6-5v16l-6-5H3z${WAVES[hearing]}`} />
      </svg>
      {words.doing.sound[hearing]}
    </button>
  );
}

export function Menu({ place }: { place: Place }) {
  const [open, setOpen] = useState(false);
  const whole = useRef<HTMLElement>(null);
  const toggle = useRef<HTMLButtonElement>(null);
  useEffect(() => setOpen(false), [place]);
  useEffect(() => {
    if (!open) return undefined;
    const elsewhere = (event: Event) => {
      if (!whole.current?.contains(event.target as Node)) setOpen(false);
    };
    for (const kind of ["pointerdown", "focusin"]) document.addEventListener(kind, elsewhere);
    return () => {
      for (const kind of ["pointerdown", "focusin"]) document.removeEventListener(kind, elsewhere);
    };
  }, [open]);
  const escape = (event: KeyboardEvent) => {
    if (event.key !== "Escape" || !open) return;
    setOpen(false);
    toggle.current?.focus();
  };
  return (
    <nav class="menu" ref={whole} aria-label={words.doing.menuOf} onKeyDown={escape}>
      <button
        type="button"
        class="plain in-head"
        ref={toggle}
        aria-expanded={open}
        aria-controls="menu"
        onClick={() => setOpen(!open)}
      >
        <svg class="icon" viewBox="0 0 24 24" aria-hidden="true">
          <path d="M3 6h18M3 12h18M3 18h18" />
        </svg>
        {words.doing.menu}
      </button>
      <ul id="menu" hidden={!open}>
        {PLACES.map((each) => (
          <li key={each}>
            <a href={`#${each}`} aria-current={each === place ? "page" : undefined} onClick={() => setOpen(false)}>
              {words.doing.places[each]}
            </a>
          </li>
        ))}
      </ul>
    </nav>
  );
}
