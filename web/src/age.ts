// How old a number may be before it must look old. Ages are wall seconds, whatever the bench's speed.

export type Freshness = "fresh" | "old" | "frozen";

export const OLD_AFTER_S = 3;
export const FROZEN_AFTER_S = 10;
const JUST_NOW_S = 2;

/** Age in seconds of something that happened at `then_ms`; never negative. */
export function age_s(then_ms: number, now_ms: number): number {
  return Math.max(0, (now_ms - then_ms) / 1000);
}

/** Fresh, old from 3 s on, frozen from 10 s on; something never heard of is frozen. */
export function freshness(age: number | null): Freshness {
  if (age === null || age >= FROZEN_AFTER_S) return "frozen";
  return age >= OLD_AFTER_S ? "old" : "fresh";
}

/** The age in the unit a person would use. */
export function ageParts(age: number): { unit: "now" | "s" | "min" | "h"; count: number } {
  if (age < JUST_NOW_S) return { unit: "now", count: 0 };
  if (age < 120) return { unit: "s", count: Math.floor(age) };
  if (age < 7200) return { unit: "min", count: Math.floor(age / 60) };
  return { unit: "h", count: Math.floor(age / 3600) };
}
