// Numbers as the page writes and reads them, formulas, and how old a number may be.

// Numbers as the page writes them: a true minus sign, never an exponent, as many decimals as the quantity earns.
// They have a dot: the catalogue (./words) puts the reader's decimal sign into all it says, and `decimal` does so for a
// number that stands alone (chart ticks, table cells). Paths and attributes of a drawing keep the dot.

let decimalSign = ".";

/** The reader's decimal sign, set by the catalogue together with the language. */
export function setDecimalSign(sign: string): void {
  decimalSign = sign;
}

/** A number, or a text with numbers, as the reader writes it: 4.5 becomes 4,5. Addresses and versions keep their dots. */
export function decimal(text: string): string {
  return withDecimalSign(text, decimalSign);
}

/** `text` with `sign` in its decimal numbers. */
export function withDecimalSign(text: string, sign: string): string {
  if (sign === ".") return text;
  return text.replace(/\d+(?:\.\d+)+/g, (number) => (number.split(".").length === 2 ? number.replace(".", sign) : number));
}

/** `value` with `decimals` decimals. */
export function fixed(value: number, decimals: number): string {
  const text = Math.abs(value).toFixed(decimals);
  const negative = value < 0 && Number(text) !== 0;
  return negative ? `\u2212${text}` : text;
}

/** `value` with at most `decimals` decimals and no trailing zeros: 4 cm³, 4.5 cm³. */
export function short(value: number, decimals = 2): string {
  const rounded = Number(value.toFixed(decimals));
  const text = String(Math.abs(rounded));
  return rounded < 0 ? `\u2212${text}` : text;
}

/** `value` with so many significant figures, as a school writes it: 0.400, 25.0; a true minus sign, never an exponent. */
export function significant(value: number, figures = 3): string {
  if (value === 0) return "0";
  const power = Number(value.toExponential(figures - 1).split("e")[1]);
  return rounded(value, figures - 1 - power);
}

/** The same words with numbers kept together with their unit, so that no line ends between them. */
export function keptTogether(text: string): string {
  return text.replace(/(\d) (?=cm³|mL|M\b|°C|s\b|min\b|mol|g\b|k?J\b)/g, "$1\u00a0");
}

/** Decimal places of a number known to `u`; -1 stands for whole tens. One digit of u counts, two when the first is
 * 1 or 2 (within the two digits at most of GUM 7.2.6), and never more than `most` places. */
export function placesFor(u: number, most: number): number {
  if (!(u > 0) || !Number.isFinite(u)) return most;
  // Rounded to two digits first: 0.0996 is 1.0e-1, and its first digit is a 1.
  const [digits = "", power = "0"] = u.toExponential(1).split("e");
  return Math.min(most, (Number(digits) < 3 ? 1 : 0) - Number(power));
}

/** `value` with `places` decimals, or rounded to tens, hundreds … where that is negative; a true minus sign. */
export function rounded(value: number, places: number): string {
  if (places >= 0) return fixed(value, places);
  const unit = 10 ** -places;
  return fixed(Math.round(value / unit) * unit, 0);
}

/** The same with a plus sign in front of a rise. */
export function signed(value: number, places: number): string {
  const text = rounded(value, places);
  return value > 0 && Number(text) !== 0 ? `+${text}` : text;
}

// Numbers as people type them.

/** A number typed with a comma or a dot; null when it is none. */
export function typedNumber(text: string): number | null {
  const trimmed = text.trim().replace(",", ".").replace("\u2212", "-");
  const value = trimmed === "" ? Number.NaN : Number(trimmed);
  return Number.isFinite(value) ? value : null;
}

// Formulas as they are printed.

/** Numbers of atoms stand low; those of water after the dot do not. */
export const lowered = (formula: string): string =>
  formula.replace(/([A-Za-z)])(\d+)/g, (_, atom: string, count: string) => atom + count.replace(/\d/g, (digit) => "₀₁₂₃₄₅₆₇₈₉"[+digit] ?? digit));

// How old a number may be before it must look old. Ages are wall seconds, whatever the bench's speed.

export type Freshness = "fresh" | "old" | "frozen";

const OLD_AFTER_S = 3;
const FROZEN_AFTER_S = 10;
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

/** Seconds as a clock shows them: 1:30. */
export function minutesText(seconds: number): string {
  const whole = Math.max(0, Math.floor(seconds));
  return `${Math.floor(whole / 60)}:${String(whole % 60).padStart(2, "0")}`;
}
