// A temperature as it was typed from an ordinary thermometer: what is refused, and what is asked again.

import { typedNumber } from "./typed";

/** What the station takes / °C. */
export const LOWEST_C = -5;
export const HIGHEST_C = 60;
/** A portion seldom changes the temperature by more: common practice, no source. */
export const FAR_C = 10;

export type Doubt = { code: "too fine"; near_c: number } | { code: "far off"; change_c: number };

export type Typed =
  | { kind: "nonsense" }
  | { kind: "out of range" }
  | { kind: "doubtful"; temperature_c: number; doubt: Doubt }
  | { kind: "fine"; temperature_c: number };

interface Against {
  /** Of the thermometer's scale / °C; half of it can be read. */
  division_c: number;
  /** The reading before it / °C; null when there is none to compare with. */
  before_c: number | null;
}

/** Judge what was typed. */
export function judged(text: string, { division_c, before_c }: Against): Typed {
  const temperature_c = typedNumber(text.replace(/\s*°?\s*C$/i, ""));
  if (temperature_c === null) return { kind: "nonsense" };
  if (temperature_c < LOWEST_C || temperature_c > HIGHEST_C) return { kind: "out of range" };
  const halves = temperature_c / (division_c / 2);
  if (Math.abs(halves - Math.round(halves)) > 1e-6) {
    const near_c = Number((Math.round(halves) * (division_c / 2)).toFixed(2));
    return { kind: "doubtful", temperature_c, doubt: { code: "too fine", near_c } };
  }
  if (before_c !== null && Math.abs(temperature_c - before_c) > FAR_C) {
    return { kind: "doubtful", temperature_c, doubt: { code: "far off", change_c: temperature_c - before_c } };
  }
  return { kind: "fine", temperature_c };
}
