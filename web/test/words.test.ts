// The catalogue: languages, units, the decimal sign, and the sentences of the station.

import assert from "node:assert/strict";
import { afterEach, test } from "node:test";
import { decimal } from "../src/format";
import { typedNumber } from "../src/typed";
import { onWords, said, setLanguage, setUnits, speaking, words, wordsVersion } from "../src/words";
import { UNITS, decided, languageOf } from "../src/words/choice";
import { dressed, unitsOf } from "../src/words/dress";
import { accented } from "../src/words/pseudo";

afterEach(async () => {
  setUnits("cm3");
  await setLanguage("en");
});

test("English is there from the start and says the station's sentences as they are", () => {
  assert.equal(words.close, "Close");
  assert.equal(said("Add portion 3: 4 cm³ of potassium hydroxide. Stir."), "Add portion 3: 4 cm³ of potassium hydroxide. Stir.");
  assert.equal(decimal("4.5"), "4.5");
});

test("German has its own words, names and decimal sign", async () => {
  assert.equal(await setLanguage("de"), true);
  assert.equal(words.close, "Schließen");
  assert.equal(words.volume(4.5), "4,5 cm³");
  assert.equal(said("Add portion 3: 4.5 cm³ of potassium hydroxide. Stir."), "Gib Portion 3 dazu: 4,5 cm³ Kalilauge. Rühre um.");
  assert.equal(decimal("22.5"), "22,5");
  assert.equal(speaking().language, "de");
  await setLanguage("en");
  assert.equal(words.volume(4.5), "4.5 cm³");
  assert.equal(decimal("22.5"), "22.5");
});

test("the language that was asked for last is spoken, whichever comes first", async () => {
  await Promise.all([setLanguage("de"), setLanguage("pseudo"), setLanguage("en")]);
  assert.equal(words.close, "Close");
  await Promise.all([setLanguage("en"), setLanguage("de")]);
  assert.equal(words.close, "Schließen");
});

test("whoever asks hears of every change and of nothing else", async () => {
  let heard = 0;
  const stop = onWords(() => (heard += 1));
  const before = wordsVersion();
  await setLanguage("de");
  setUnits("mL");
  setUnits("mL");
  await setLanguage("de");
  assert.equal(heard, 2);
  assert.notEqual(wordsVersion(), before);
  stop();
  setUnits("cm3");
  assert.equal(heard, 2);
});

test("mL and M are said everywhere in place of cm³ and mol/dm³", async () => {
  setUnits("mL");
  assert.equal(words.volume(4.5), "4.5 mL");
  assert.equal(words.volumeAxis, "volume of alkali added / mL");
  assert.equal(said("Add portion 3: 4 cm³ of potassium hydroxide. Stir."), "Add portion 3: 4 mL of potassium hydroxide. Stir.");
  await setLanguage("de");
  assert.equal(words.volume(4.5), "4,5 mL");
});

for (const [written, read] of [
  ["25 cm³ of nitric acid (0.4 mol/dm³)", "25 mL of nitric acid (0.4 M)"],
  ["c = 0.38 mol dm⁻³", "c = 0.38 M"],
  ["12 mmol/dm³", "12 mM"],
  ["concentration / mol/dm³", "concentration / M"],
  ["concentration / (mol/dm³)", "concentration / (M)"],
  ["n = 0.4 mol/dm³ × 24.2 cm³ ÷ 1000", "n = 0.4 M × 24.2 mL ÷ 1000"],
  ["0.025 dm³", "0.025 L"],
  // A millilitre is a cubic centimetre, so it may stand in any unit …
  ["4.18 J/(cm³ K)", "4.18 J/(mL K)"],
  ["4.18 J cm⁻³ K⁻¹", "4.18 J mL⁻¹ K⁻¹"],
  ["0.31 °C/cm³", "0.31 °C/mL"],
  ["1.02 g/cm³", "1.02 g/mL"],
  // … but M means moles per litre by itself only.
  ["3 °C/(mol/dm³)", "3 °C/(mol/L)"],
  ["2 mol dm⁻³ s⁻¹", "2 mol L⁻¹ s⁻¹"],
  ["0.2 mol/dm³/s", "0.2 mol/L/s"],
  ["−57.1 kJ/mol", "−57.1 kJ/mol"],
  ["volume_cm3", "volume_cm3"],
] as const) {
  test(`mL and M: ${written}`, () => {
    assert.equal(unitsOf("mL", written, "."), read);
    assert.equal(unitsOf("cm3", written, "."), written);
  });
}

test("only decimal numbers get the decimal comma", () => {
  assert.equal(unitsOf("cm3", "-58.5 kJ/mol (-3), 2-3, H-315", "."), "−58.5 kJ/mol (−3), 2-3, H-315");
  const comma = (text: string) => unitsOf("cm3", text, ",");
  assert.equal(comma("Portion 4. Rühre um."), "Portion 4. Rühre um.");
  assert.equal(comma("24.2 cm³ ± 0.3 cm³"), "24,2 cm³ ± 0,3 cm³");
  assert.equal(comma("\u221212.5 °C."), "\u221212,5 °C.");
  assert.equal(comma("http://192.168.4.1/, Version 1.4.2"), "http://192.168.4.1/, Version 1.4.2");
  assert.equal(comma("24,2"), "24,2");
});

test("what is typed may have a comma or a dot", () => {
  assert.equal(typedNumber("22,5"), 22.5);
  assert.equal(typedNumber("22.5"), 22.5);
});

test("everything in a catalogue is dressed: texts, lists, what functions return", () => {
  const loud = dressed({ a: "a", list: ["b"] as [string], deep: { say: (n: number) => `c${n}`, both: () => ({ d: "e" }) } }, (text) =>
    text.toUpperCase(),
  );
  assert.equal(loud.a, "A");
  assert.deepEqual(loud.list, ["B"]);
  assert.equal(loud.deep.say(1), "C1");
  assert.deepEqual(loud.deep.both(), { d: "E" });
});

test("the pseudo-locale leaves no plain letter, is longer, and the same when done twice", async () => {
  assert.match(accented("Wait. Stir gently: 4 cm³"), /^[^A-Za-z]+$/);
  assert.ok(accented("Wait. Stir gently").length > "Wait. Stir gently".length);
  assert.equal(accented(accented("Stir")), accented("Stir"));
  await setLanguage("pseudo");
  assert.match(words.silent, /^[^A-Za-z]+$/);
  assert.match(words.volume(4.5), /^4·5 [^A-Za-z]+$/);
  assert.match(said("Press as soon as it is in."), /^[^A-Za-z]+$/);
});

test("a language tag names a language that is spoken, or none", () => {
  assert.equal(languageOf("de-AT"), "de");
  assert.equal(languageOf("en-GB"), "en");
  assert.equal(languageOf("DE"), "de");
  for (const other of ["fr", "den", "", null, undefined]) assert.equal(languageOf(other), null);
});

test("the device's choice comes before the station's, and that before the browser's", () => {
  assert.equal(decided(["de", "en", "en-GB"]), "de");
  assert.equal(decided([null, "de", "en-GB"]), "de");
  assert.equal(decided([null, null, "fr-FR", "de-CH", "en"]), "de");
  assert.equal(decided([null, undefined, "fr-FR"]), "en");
});

test("the names of the units to choose from stay what they are", () => {
  for (const name of Object.values(UNITS)) assert.equal(unitsOf("mL", name, ","), name);
});

/** Words that are the same in both languages. */
const SAME = new Set(["Start", "Portion", "Name", "Text", "Code", "Plan"]);

function sameTexts(one: unknown, other: unknown, path: string): string[] {
  if (typeof one === "string") return one === other && !SAME.has(one) && /[A-Za-z]{3}/.test(one) ? [`${path}: ${one}`] : [];
  if (one === null || typeof one !== "object") return [];
  return Object.entries(one).flatMap(([name, part]) => sameTexts(part, (other as Record<string, unknown>)[name], `${path}.${name}`));
}

test("no German word was left in English", async () => {
  const english = words;
  await setLanguage("de");
  assert.deepEqual(sameTexts(english, words, "words"), []);
});
