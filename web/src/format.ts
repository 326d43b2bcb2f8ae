// Numbers as the page writes them: a true minus sign, never an exponent, as many decimals as the quantity earns.

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
  return text.replace(/(\d) (?=cm³|°C|s\b|min\b|mol)/g, "$1\u00a0");
}

/** Decimals worth writing for a volume known to `u_cm3`: one, or two when it is known better than 0.05 cm³. */
export function volumeDecimals(u_cm3: number): number {
  return u_cm3 < 0.05 ? 2 : 1;
}
