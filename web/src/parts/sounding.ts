// The page's one sound: remembered on the device, woken by any tap.

import { useEffect, useRef, useState } from "preact/hooks";
import { asksForSomething } from "../asks";
import type { Instruction } from "../contract";
import { type Hearing, Sound } from "../sound";

let wantedHere = false;

function kept(): boolean {
  try {
    return localStorage.getItem("sound") === "on";
  } catch {
    return wantedHere;
  }
}

function keep(wanted: boolean): void {
  wantedHere = wanted;
  try {
    localStorage.setItem("sound", wanted ? "on" : "off");
  } catch {
    // A device that keeps nothing is asked again after the next load.
  }
}

export const sound = new Sound(() => new AudioContext(), { wanted: kept, keep });

/** Wake the sound with every tap and key press, except those on its own switch. */
export function startSound(): void {
  const wake = (event: Event) => {
    if (!(event.target as Element | null)?.closest?.("[data-sound]")) void sound.wake();
  };
  for (const kind of ["pointerup", "keydown"]) addEventListener(kind, wake, { capture: true, passive: true });
  document.addEventListener("visibilitychange", () => document.visibilityState === "visible" && void sound.wake(false));
}

export function useHearing(): Hearing {
  const [hearing, hear] = useState<Hearing>(sound.hearing);
  useEffect(() => {
    const changed = () => hear(sound.hearing);
    changed();
    return sound.onChange(changed);
  }, []);
  return hearing;
}

/** Sound when the instruction changes to something to do; the first one that is seen is silent. */
export function useTone(instruction: Instruction | undefined, repeat: number | undefined): void {
  const seen = useRef<string | null>(null);
  const asked = instruction && `${instruction.code} ${instruction.portion} ${repeat}`;
  useEffect(() => {
    if (!instruction || !asked) return;
    if (seen.current !== null && seen.current !== asked && asksForSomething(instruction)) sound.tone();
    seen.current = asked;
  }, [asked]);
}
