// Formulas as they are printed.

/** Numbers of atoms stand low; those of water after the dot do not. */
export const lowered = (formula: string): string =>
  formula.replace(/([A-Za-z)])(\d+)/g, (_, atom: string, count: string) => atom + count.replace(/\d/g, (digit) => "₀₁₂₃₄₅₆₇₈₉"[+digit] ?? digit));
