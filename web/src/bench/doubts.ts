// Which doubts are named with what can be done about them (./doubtful), and which remarks of the station say the same.

import type { View } from "../live/contract";
import { messageOf } from "../words";
import { type Parted, parted } from "./parting";

/** A portion that does not look like its volume. */
export interface DoubtfulPortion {
  repeat: number;
  portion: number;
  volume_cm3: number;
  note: string;
}

/** Portions of which the fit of the whole trace says so, and that nobody has looked at since. */
export function doubtfulPortions(view: View): DoubtfulPortion[] {
  return (view.result?.repeats ?? []).flatMap(({ repeat, notes = [] }) =>
    notes.flatMap((note): DoubtfulPortion[] => {
      const message = messageOf(note);
      if (message?.id !== "heat-note-portion-volume") return [];
      const portion = Number(message.values?.portion);
      const of = view.repeats.find((each) => each.repeat === repeat && each.status === "ended");
      const found = of?.portions.find((each) => each.portion === portion);
      return found && !of?.confirmed?.includes(portion) && !found.unsure ? [{ repeat, portion, volume_cm3: found.volume_cm3, note }] : [];
    }),
  );
}

/** The doubts that are named now: two repeats that part, and portions once results are shown. */
interface Doubts {
  apart: Parted | null;
  portions: readonly DoubtfulPortion[];
}

export function doubtsNamed(view: View): Doubts {
  if (view.bench.read_only || view.state !== "done") return { apart: null, portions: [] };
  return { apart: view.adopted === null ? parted(view.repeats) : null, portions: view.results.shown ? doubtfulPortions(view) : [] };
}

/** Whether a remark of the station, of this repeat or of all (null), is one of these doubts. */
export function isNamed({ apart, portions }: Doubts, text: string, repeat: number | null): boolean {
  if (repeat !== null) return portions.some((one) => one.repeat === repeat && one.note === text);
  const message = messageOf(text);
  if (apart === null || message?.id !== "result-repeats-differ") return false;
  const pair = [message.values?.first, message.values?.second].map(Number).sort();
  return pair[0] === Math.min(apart.first, apart.second) && pair[1] === Math.max(apart.first, apart.second);
}
