// A short tone when there is something to do: by choice, armed by a tap. A browser starts sound only inside a tap, and
// iOS interrupts it when the screen is locked (state "interrupted"): then the next tap wakes it, and until then the
// page says that it is silent.

import { useEffect, useRef, useState } from "preact/hooks";
import type { Instruction } from "../live/contract";
import { asksForSomething } from "../live/model";

/** `asleep`: wanted, but the browser keeps silent until somebody taps. `undecided`: off, and nobody was asked yet. */
type Hearing = "off" | "on" | "asleep" | "undecided";

/** As much of an AudioContext as is needed. */
export type Sounding = Pick<
  AudioContext,
  "resume" | "close" | "currentTime" | "destination" | "createOscillator" | "createGain" | "addEventListener"
> & { readonly state: string };

interface Memory {
  /** Null where nobody has said it yet. */
  wanted: () => boolean | null;
  keep: (wanted: boolean) => void;
}

const NOTES_HZ = [660, 880];
const NOTE_S = 0.14;
const LOUDNESS = 0.25;

export class Sound {
  private context: Sounding | null = null;
  private readonly listeners = new Set<() => void>();

  constructor(
    private readonly open: () => Sounding,
    private readonly memory: Memory,
  ) {}

  get hearing(): Hearing {
    const wanted = this.memory.wanted();
    if (!wanted) return wanted === null ? "undecided" : "off";
    return this.context?.state === "running" ? "on" : "asleep";
  }

  /** Call `listener` when what is heard changes; returns how to stop. */
  onChange(listener: () => void): () => void {
    this.listeners.add(listener);
    return () => this.listeners.delete(listener);
  }

  /** A tap on the switch: off goes on, on goes off, asleep wakes. Only inside a tap or a key press. */
  async press(): Promise<void> {
    if (this.hearing === "on") {
      this.memory.keep(false);
      await this.context?.close().catch(() => undefined);
      this.context = null;
    } else {
      this.memory.keep(true);
      await this.wake();
      this.tone();
    }
    this.tell();
  }

  /** Without sound: it is not offered again. */
  decline(): void {
    this.memory.keep(false);
    this.tell();
  }

  /** Any tap or key press wakes a sound that is wanted; without a tap only one that was opened before. */
  async wake(tapped = true): Promise<void> {
    if (this.hearing !== "asleep" || !(tapped || this.context)) return;
    if (!this.context || this.context.state === "closed") this.begin();
    await this.resume();
    // A context that iOS does not give back is left, and another one opened.
    if (this.context?.state === "interrupted") {
      void this.context.close().catch(() => undefined);
      this.begin();
      await this.resume();
    }
    this.tell();
  }

  /** The tone, if anything can be heard. */
  tone(): void {
    const { context } = this;
    if (!context || this.hearing !== "on") return;
    NOTES_HZ.forEach((frequency_hz, index) => {
      const from_s = context.currentTime + 0.02 + index * NOTE_S;
      const [note, loud] = [context.createOscillator(), context.createGain()];
      note.frequency.value = frequency_hz;
      loud.gain.setValueAtTime(0, from_s);
      loud.gain.linearRampToValueAtTime(LOUDNESS, from_s + 0.02);
      loud.gain.linearRampToValueAtTime(0, from_s + NOTE_S);
      note.connect(loud).connect(context.destination);
      note.start(from_s);
      note.stop(from_s + NOTE_S);
    });
  }

  private begin(): void {
    this.context = this.open();
    this.context.addEventListener("statechange", () => this.tell());
  }

  private async resume(): Promise<void> {
    // Outside a tap the browser may leave this unanswered for good: nothing waits for it longer than a moment.
    const moment = new Promise<void>((settle) => setTimeout(settle, 300));
    await Promise.race([this.context?.resume().catch(() => undefined), moment]);
  }

  private tell(): void {
    for (const listener of this.listeners) listener();
  }
}

// The page's one sound: remembered on the device, woken by any tap.

let wantedHere: boolean | null = null;

function kept(): boolean | null {
  try {
    const known = localStorage.getItem("sound");
    return known === null ? null : known === "on";
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
