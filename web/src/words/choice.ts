// Which language and units a device speaks: its own choice, else what the station is set to, else the browser's
// language. A choice is kept on the device where it may be.

import { LANGUAGES, type LanguageCode, type Units, setLanguage, setUnits } from ".";

/** The units to choose from, as they are written in every language. A word joiner, which is not seen, keeps the
 * catalogue from turning the names of one into those of the other. */
export const UNITS: Record<Units, string> = { cm3: "cm\u2060³, mol/dm\u2060³", mL: "mL, M" };

/** How the station itself is set, as its view gives it. */
export interface StationSpeaks {
  language?: string | null | undefined;
  units?: string | null | undefined;
}

export interface Choice {
  language: LanguageCode | null;
  units: Units | null;
}

/** A page without its words must not stay empty: later words come when they come / ms. */
const LONGEST_WAIT_MS = 2000;

let station: StationSpeaks = {};
let choice: Choice = { language: null, units: null };

function kept(name: "language" | "units"): string | null {
  try {
    return localStorage.getItem(name);
  } catch {
    return null;
  }
}

function keep(name: "language" | "units", value: string | null): void {
  try {
    if (value === null) localStorage.removeItem(name);
    else localStorage.setItem(name, value);
  } catch {
    // A device that keeps nothing asks again next time.
  }
}

/** The language that a tag such as "en-GB" names, when the page speaks it. */
export function languageOf(tag: string | null | undefined): LanguageCode | null {
  const [code = ""] = (tag ?? "").toLowerCase().split("-");
  return Object.keys(LANGUAGES).includes(code) || code === "pseudo" ? code : null;
}

function unitsOf(name: string | null | undefined): Units | null {
  return name === "cm3" || name === "mL" ? name : null;
}

/** The language to speak, from the strongest wish to the weakest. */
export function decided(wishes: readonly (string | null | undefined)[]): LanguageCode {
  for (const wish of wishes) {
    const code = languageOf(wish);
    if (code) return code;
  }
  return "en";
}

function speak(): Promise<boolean> {
  setUnits(choice.units ?? unitsOf(station.units) ?? "cm3");
  return setLanguage(decided([choice.language, station.language, ...(navigator.languages ?? [navigator.language])]));
}

/** Speak as the address (`?language=`) or this device wishes; resolves when the words are there, cannot come, or
 * take long. */
export async function startWords(): Promise<void> {
  const asked = new URLSearchParams(location.search).get("language");
  choice = { language: languageOf(asked) ?? languageOf(kept("language")), units: unitsOf(kept("units")) };
  await Promise.race([speak(), new Promise((resolve) => setTimeout(resolve, LONGEST_WAIT_MS))]);
}

/** What the station is set to: holds until this device chooses. */
export function stationSpeaks({ language, units }: StationSpeaks): void {
  if (language === station.language && units === station.units) return;
  station = { language, units };
  void speak();
}

/** What this device has chosen; null where it follows the station. */
export const chosen = (): Choice => choice;

/** Speak `language` on this device; null follows the station again. False when its words could not be fetched. */
export function chooseLanguage(language: LanguageCode | null): Promise<boolean> {
  choice = { ...choice, language };
  keep("language", language);
  return speak();
}

/** Say volumes and concentrations in `units` on this device; null follows the station again. */
export function chooseUnits(units: Units | null): void {
  choice = { ...choice, units };
  keep("units", units);
  void speak();
}
