// Numbers as people type them.

/** A number typed with a comma or a dot; null when it is none. */
export function typedNumber(text: string): number | null {
  const trimmed = text.trim().replace(",", ".").replace("\u2212", "-");
  const value = trimmed === "" ? Number.NaN : Number(trimmed);
  return Number.isFinite(value) ? value : null;
}
