// Which bench and which practical, the ways to elsewhere; and what must stay in sight wherever the page is.

import { useEffect, useRef, useState } from "preact/hooks";
import { type Freshness, keptTogether, short } from "../format";
import { kindOf } from "../kinds";
import type { Acting } from "../live/acts";
import type { View } from "../live/contract";
import { markedSaid, phrase, said } from "../words";
import { laterStill, useEarlyPress } from "./shared";
import { sound, useHearing } from "./sound";
import { Explained } from "./terms";

const SoundOffer = laterStill(() => import("./sound_offer").then((part) => part.SoundOffer));

const CallButton = laterStill(() => import("../bench/call").then((part) => part.CallButton));

export function Header({ view, place, acting }: { view: View; place: Place; acting: Acting }) {
  return (
    <header class={place === "" || place === "big" ? "head-compact" : undefined}>
      <h1><Explained text={markedSaid(view.plan.title)} /></h1>
      <div class="head-tools">
        {view.link && !view.bench.read_only && <CallButton view={view} acting={acting} />}
        <SoundSwitch />
        <Menu place={place} />
      </div>
      <div class="head-about">
        {!view.bench.practice && <span class="bench-name">{view.bench.name}</span>}
        {view.bench.read_only && (
          <a class="tag" href="/room">
            {phrase("page-from-room")}
          </a>
        )}
        {view.group && <span class="tag">{view.group}</span>}
        {view.bench.virtual && <span class="tag tag-virtual">{view.bench.practice ? phrase("page-practise-tag") : phrase("page-virtual-cup")}</span>}
        {view.speed !== 1 && <span class="tag">{phrase("page-speed", { factor: short(view.speed) })}</span>}
        <p class="practical">{keptTogether(kindOf(view.plan).practical(view.plan))}</p>
      </div>
    </header>
  );
}

interface NoticesProps {
  view: View;
  heard: Freshness;
  acting: Acting;
}

/** What is wrong with the probe, unless the instruction is about just that. */
function probeTrouble({ thermometer, probe, live, instruction }: View): string {
  if (thermometer.kind === "typed" || instruction.code === "probe_lost") return "";
  const bad = live?.bad;
  return phrase("page-probe", { which: probe }) && `${phrase("page-probe", { which: probe })}${bad ? ` (${phrase("page-bad", { which: bad })})` : ""}`;
}

/** What a person has to know at once, over whatever is on the screen: nothing moves when it comes or goes. */
export function Notices({ view, heard, acting }: NoticesProps) {
  const { fault } = view;
  const probe = heard === "fresh" ? probeTrouble(view) : "";
  const inMemory = view.bench.in_memory === true;
  const early = useEarlyPress();
  const offers = useHearing() === "undecided" && view.state === "ready" && !view.bench.read_only;
  const some = heard !== "fresh" || probe !== "" || fault !== null || inMemory || offers || acting.trouble !== null;
  return (
    <>
      {some && <div class="notices-room" />}
      <div class="notices">
        {offers && <SoundOffer />}
        <div role="status" class="contact">
          {heard !== "fresh" && <p>{heard === "old" ? phrase("page-silent") : phrase("page-lost")}</p>}
          {probe !== "" && <p>{probe}</p>}
          {early && <p class="early">{phrase("page-doing-pressed-early")}</p>}
        </div>
        {inMemory && (
          <p class="fault" role="alert">
            {phrase("page-in-memory")}
          </p>
        )}
        {fault && (
          <p class="fault" role="alert">
            {phrase("page-fault", { reason: said(fault) })}
          </p>
        )}
        {acting.trouble && (
          <div class="trouble" role="alert">
            <p>{acting.trouble}</p>
            <button type="button" class="plain" onClick={acting.dismiss}>
              {phrase("page-close")}
            </button>
          </div>
        )}
      </div>
    </>
  );
}

// The way to the other views, and the switch of the sound.

const WAVES = { on: "M17 8q4 4 0 8M20 5q7 7 0 14", off: "M17 9l6 6M23 9l-6 6", undecided: "M17 9l6 6M23 9l-6 6", asleep: "M17 9h5l-5 6h5" } as const;

/** Its drawing says whether anything can be heard, its words what a press does. */
export function SoundSwitch() {
  const hearing = useHearing();
  return (
    <button type="button" class="plain in-head" data-sound={hearing} onClick={() => void sound.press()}>
      <svg class="icon" viewBox="0 0 26 24" aria-hidden="true">
        <path d={`M3 9h4l6-5v16l-6-5H3z${WAVES[hearing]}`} />
      </svg>
      <span class="in-head-name">{phrase("page-doing-sound", { which: hearing })}</span>
    </button>
  );
}

function Menu({ place }: { place: Place }) {
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
    <nav class="menu" ref={whole} aria-label={phrase("page-doing-menu-of")} onKeyDown={escape}>
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
        <span class="in-head-name">{phrase("page-doing-menu")}</span>
      </button>
      <ul id="menu" hidden={!open}>
        {PLACES.map((each) => (
          <li key={each}>
            <a href={`#${each}`} aria-current={each === place ? "page" : undefined} onClick={() => setOpen(false)}>
              {phrase("page-doing-places", { which: each || "bench" })}
            </a>
          </li>
        ))}
        <li>
          <a href="/manual/student">{phrase("page-manual")}</a>
        </li>
      </ul>
    </nav>
  );
}

// Which view the address asks for: the part behind the # names it.

const PLACES = ["", "guide", "record", "big", "settings"] as const;
export type Place = (typeof PLACES)[number];

function placeNow(): Place {
  const name = location.hash.slice(1);
  return PLACES.find((place) => place === name) ?? "";
}

/** The view that is asked for now; a new one starts at its top. */
export function usePlace(): Place {
  const [place, go] = useState(placeNow);
  useEffect(() => {
    const changed = () => {
      go(placeNow());
      scrollTo(0, 0);
    };
    addEventListener("hashchange", changed);
    // The address may have changed between the first drawing and this.
    go(placeNow());
    return () => removeEventListener("hashchange", changed);
  }, []);
  return place;
}
