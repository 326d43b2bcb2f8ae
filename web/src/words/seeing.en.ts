// The two views of the curve, and reading one point of it.

import { fixed, short } from "../format";
import type { PortionPoint } from "../points";

function clock(time_s: number): string {
  const whole_s = Math.round(time_s);
  return `${Math.floor(whole_s / 60)} min ${whole_s % 60} s`;
}

export const seeing = {
  views: "What the curve shows",
  againstVolume: "against volume",
  againstTime: "against time",
  whichRepeat: "Which repeat?",
  traceChart: (repeat: number) => `Repeat ${repeat}: temperature against time`,
  traceText: (portions: number, minutes: number) =>
    `The whole trace of ${short(minutes, 1)} minutes; ${portions} ${portions === 1 ? "portion" : "portions"} went in. The table below gives the settled readings.`,
  loading: "Loading …",
  notLoaded: "This part did not come. Is the station on?",
  tryAgain: "Try again",
  pour: "portion went in (its number)",
  settledReading: "settled reading",
  unsettledReading: "reading, not settled",
  wholeTrace: "every sample",
  readPoint: "Read a point of the curve",
  hint: "Touch the curve, or use the arrow keys, to read a point.",
  point: ({ portion, volume_cm3, values }: PortionPoint) => {
    const [first] = values;
    const where = `${portion === 0 ? "start" : `portion ${portion}`}: ${short(volume_cm3)} cm³`;
    if (first && values.length === 1) return `${where}, ${fixed(first.temperature_c, 2)} °C`;
    const named = values.map(({ repeat, temperature_c, ownVolume_cm3 }) => {
      const own = ownVolume_cm3 === null ? "" : ` (at ${short(ownVolume_cm3)} cm³)`;
      return `${repeat === null ? "mean" : `repeat ${repeat}`} ${fixed(temperature_c, 2)} °C${own}`;
    });
    return `${where}; ${named.join(", ")}`;
  },
  moment: (time_s: number, temperature_c: number, portion: number, since_s: number) =>
    `${clock(time_s)}: ${fixed(temperature_c, 2)} °C, ${portion === 0 ? "before the first portion" : `${Math.round(since_s)} s after portion ${portion}`}`,
  momentOnce: (time_s: number, repeat: number, temperature_c: number, since_s: number | null) =>
    `${clock(time_s)}: ${fixed(temperature_c, 2)} °C, repeat ${repeat}, ${since_s === null ? "before the mixing" : `${Math.round(since_s)} s after the mixing`}`,
  unsureWhy: (reason: string) => `not sure: ${reason}`,
  typed: "typed",
};
