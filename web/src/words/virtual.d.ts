// What web/words.mjs makes of station/words/*.ftl when the page is built.

declare module "@words" {
  /** English: it travels with the page. */
  export const english: import("./fluent").Language;
  /** Every language that has a catalogue, by its code: its name in itself, and how its words are fetched. */
  export const languages: Readonly<
    Record<string, { name: string; load: () => Promise<import("./fluent").Language> }>
  >;
}
