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
