// The virtual cup in a person's hands: what the station says of it, and what the hands do to it.

import { useEffect, useRef, useState } from "preact/hooks";
import { answered, base, get, post } from "../live/ask";
import type { Practice } from "../live/contract";

/** One thing that hands do, as `POST /api/hands` takes it. */
export type HandAct =
  | { hand: "fill" | "stir" }
  | { hand: "lid"; on: boolean }
  | { hand: "probe"; place: Practice["hands"]["probe"] }
  | { hand: "ware"; drawn_cm3: number; poured_cm3: number };

/** What was drawn and poured since the start of the practice; what is in the glassware is the difference. */
export type Way = "draw" | "pour";

export interface Measured {
  drawn_cm3: number;
  poured_cm3: number;
}

export interface Holding {
  practice: Practice | null;
  /** The glassware as it is drawn: ahead of the station while somebody holds. */
  measured: Measured;
  /** Why the last act was refused. */
  refused: string | null;
  act: (act: HandAct) => void;
  /** Fill or pour for so long as it is held; null lets go. */
  hold: (way: Way | null) => void;
}

const ANSWER_MS = 4000;
/** So often the station hears of what moves / ms. */
const TELL_MS = 150;
const AGAIN_MS = 700;
const TOO_MUCH = 429;
/** From empty to full, and back, in s of the person: as fast as can be read while it moves. */
const DRAW_S = 4;
const POUR_S = 2.5;
/** Slow at first, for the last tenth of a cubic centimetre: the share of the speed, and until when / s. */
const SLOW = 0.2;
const SLOW_S = 0.5;

/** How full it is after it was held for another `dt_s`; it stops at both ends. */
export function moved({ drawn_cm3, poured_cm3 }: Measured, way: Way, capacity_cm3: number, held_s: number, dt_s: number): Measured {
  const share = Math.min(1, SLOW + ((1 - SLOW) * held_s) / SLOW_S);
  const in_cm3 = drawn_cm3 - poured_cm3;
  if (way === "draw") {
    return { drawn_cm3: drawn_cm3 + Math.min((share * dt_s * capacity_cm3) / DRAW_S, capacity_cm3 - in_cm3), poured_cm3 };
  }
  return { drawn_cm3, poured_cm3: poured_cm3 + Math.min((share * dt_s * capacity_cm3) / POUR_S, in_cm3) };
}

/** Hands on the cup; `about` changes whenever the station may know more of it. */
export function useHands(about: string): Holding {
  const [practice, know] = useState<Practice | null>(null);
  const [refused, refuse] = useState<string | null>(null);
  const [, redraw] = useState(0);
  const measured = useRef<Measured>({ drawn_cm3: 0, poured_cm3: 0 });
  const held = useRef<{ way: Way; since_ms: number; at_ms: number } | null>(null);
  const telling = useRef({ busy: false, told: "", timer: 0 });
  const newest = useRef<Practice | null>(null);

  const heard = (found: Practice) => {
    newest.current = found;
    know(found);
    const { drawn_cm3, poured_cm3 } = found.hands.ware;
    // Another practice, or another page with the same cup: what the station knows is what is there.
    if (!held.current && !telling.current.busy) measured.current = { drawn_cm3, poured_cm3 };
  };
  const send = async (act: HandAct): Promise<boolean> => {
    const answer = await post(`${base()}/hands`, act, ANSWER_MS);
    if (answer?.ok) {
      const found = await answered<Practice>(answer);
      refuse(null);
      if (found) heard(found);
      return true;
    }
    // Too much at once: nothing is wrong with the act, and how full the glassware is will be told again.
    if (answer?.status === TOO_MUCH && act.hand === "ware") return false;
    const problem = await answered<{ detail?: string }>(answer);
    if (problem?.detail) {
      refuse(problem.detail);
      // What was refused did not happen: the glassware is as full as the station has it.
      const known = newest.current?.hands.ware;
      if (act.hand === "ware" && known) {
        held.current = null;
        measured.current = { drawn_cm3: known.drawn_cm3, poured_cm3: known.poured_cm3 };
      }
    }
    return problem !== null;
  };
  /** Tell the station how full the glassware is, one message at a time and not too often, until it knows. */
  const tell = async () => {
    const state = telling.current;
    const { drawn_cm3, poured_cm3 } = measured.current;
    const now = `${drawn_cm3.toFixed(3)} ${poured_cm3.toFixed(3)}`;
    if (state.busy || state.timer !== 0 || now === state.told) return;
    state.busy = true;
    const known = await send({ hand: "ware", drawn_cm3, poured_cm3 });
    state.busy = false;
    if (known) state.told = now;
    const later = () => {
      state.timer = 0;
      void tell();
    };
    // Whoever has let go presses soon: what is still untold then goes without a pause.
    state.timer = window.setTimeout(later, !known ? AGAIN_MS : held.current ? TELL_MS : 0);
  };
  const move = () => {
    const now = held.current;
    const capacity_cm3 = newest.current?.hands.ware.capacity_cm3;
    if (!now || !capacity_cm3) return;
    const at_ms = performance.now();
    measured.current = moved(measured.current, now.way, capacity_cm3, (at_ms - now.since_ms) / 1000, (at_ms - now.at_ms) / 1000);
    now.at_ms = at_ms;
    redraw((count) => count + 1);
    void tell();
    requestAnimationFrame(move);
  };
  useEffect(() => {
    get<Practice>(`${base()}/hands`).then(heard, () => undefined);
  }, [about]);
  useEffect(() => () => clearTimeout(telling.current.timer), []);
  return {
    practice,
    measured: measured.current,
    refused,
    act: (act) => void send(act),
    hold: (way) => {
      if (way === null) {
        move();
        held.current = null;
        clearTimeout(telling.current.timer);
        telling.current.timer = 0;
        void tell();
      } else if (held.current === null) {
        held.current = { way, since_ms: performance.now(), at_ms: performance.now() };
        requestAnimationFrame(move);
      }
    },
  };
}

/** Begin another practice, with another unknown. */
export const again = async (): Promise<void> => {
  await post(`${base()}/hands/again`, {}, ANSWER_MS);
};
