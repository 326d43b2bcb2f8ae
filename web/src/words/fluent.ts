// Messages of a catalogue, as web/words.mjs compiles them from station/words/*.ftl, and how they become text.

/** A text, or its parts one after the other. */
export type Pattern = string | readonly Part[];
/** Text; the value of this name; or one of several patterns, chosen by the value of this name. */
export type Part =
  | string
  | readonly [name: string]
  | readonly [name: string, variants: Readonly<Record<string, Pattern>>, otherwise: string];

export type Catalogue = Readonly<Record<string, Pattern>>;
export type Value = string | number;
export type GivenValues = Readonly<Record<string, Value>>;

/** What one language brings. */
export interface Language {
  /** For `<html lang>`, and for the choice between one and several. */
  tag: string;
  /** Whose dates it writes, as a BCP 47 tag. */
  dates: string;
  decimalSign: string;
  catalogue: Catalogue;
  /** Where the catalogue has only what the first view says: all else. */
  rest?: () => Promise<Catalogue>;
  /** Done last to everything that is said: only the pseudo-locale has one. */
  accent?: (text: string) => string;
}

/** A code as the variant of a selector is called: without spaces. */
export type Keyed<Code extends string> = Code extends `${infer Before} ${infer After}` ? `${Before}-${Keyed<After>}` : Code;

export function keyed<Code extends string>(code: Code): Keyed<Code> {
  return code.replace(/ /g, "-") as Keyed<Code>;
}

/** The text of a pattern; a number chooses the variant of that number, else that of its plural category. */
export function formatted(pattern: Pattern, values: GivenValues, plurals: Intl.PluralRules): string {
  if (typeof pattern === "string") return pattern;
  return pattern.map((part) => partText(part, values, plurals)).join("");
}

function partText(part: Part, values: GivenValues, plurals: Intl.PluralRules): string {
  if (typeof part === "string") return part;
  const [name, variants, otherwise = ""] = part;
  const value = values[name] ?? "";
  if (!variants) return String(value);
  const chosen =
    variants[value] ?? (typeof value === "number" ? variants[plurals.select(value)] : undefined) ?? variants[otherwise];
  return formatted(chosen ?? "", values, plurals);
}
