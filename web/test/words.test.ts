// The words: languages, units, the decimal sign, the catalogues against each other and against the page's sources, and
// the sentences of the station.

import assert from "node:assert/strict";
import { readFile, readdir } from "node:fs/promises";
import path from "node:path";
import { afterEach, test } from "node:test";
import { catalogue, codes, compiled, idsIn, valuesOf } from "../words.mjs";
import { decimal, short, typedNumber } from "../src/format";
import { LANGUAGES, marked, markedSaid, onWords, phrase, remember, said, setLanguage, setUnits, speaking, wordsVersion } from "../src/words";
import { UNITS, decided, languageOf } from "../src/words/choice";
import { unitsOf } from "../src/words/dress";
import { formatted, keyed } from "../src/words/fluent";
import { TERMS, stretches } from "../src/words/marks";
import { accented } from "../src/words/pseudo";

/** Tests run in web/. */
const SOURCES = path.resolve("src");
/** Entries that a catalogue says of itself; web/words.mjs reads them. */
const OF_A_LANGUAGE = ["language-name", "language-decimal", "language-dates"];
const OF_THE_PAGE = /^page-/;

const fourAndAHalf = () => phrase("page-volume", { volume: short(4.5) });

afterEach(async () => {
  setUnits("cm3");
  await setLanguage("en");
});

test("English is there from the start and says the station's sentences as they are", () => {
  assert.equal(phrase("page-close"), "Close");
  assert.equal(said("Add portion 3: 4 cm³ of potassium hydroxide. Stir."), "Add portion 3: 4 cm³ of potassium hydroxide. Stir.");
  assert.equal(decimal("4.5"), "4.5");
});

test("German has its own words, names and decimal sign", async () => {
  assert.equal(await setLanguage("de"), true);
  assert.equal(phrase("page-close"), "Schließen");
  assert.equal(fourAndAHalf(), "4,5 cm³");
  assert.equal(said("nitric acid"), "nitric acid", "an English text that no answer named");
  remember({ messages: { "nitric acid": { id: "reagent-nitric-acid", values: {} } } });
  assert.equal(said("nitric acid"), "Salpetersäure");
  assert.equal(decimal("22.5"), "22,5");
  assert.equal(speaking().language, "de");
  await setLanguage("en");
  assert.equal(fourAndAHalf(), "4.5 cm³");
  assert.equal(decimal("22.5"), "22.5");
});

test("a message of the station is said by its id, with the messages in its values", async () => {
  const volume = { id: "page-volume", values: { volume: "4.5" }, text: "4.5 cm³" };
  const message = { id: "page-added-at", values: { name: volume, temperature: "21.5" }, text: "in English" };
  await setLanguage("de");
  assert.equal(said(message), "4,5 cm³ vor dem Start: 21,5 °C.");
  await setLanguage("en");
  assert.equal(said(message), "4.5 cm³ before the start: 21.5 °C.");
});

test("names and what a person typed stay as they are in a message", async () => {
  await setLanguage("de");
  setUnits("mL");
  const message = { id: "page-added-at", values: { name: "Bench 1.5 cm³", temperature: "21.5" }, text: "in English" };
  assert.equal(said(message), "Bench 1.5 cm³ vor dem Start: 21,5 °C.");
});

test("a message whose id is not known is said by its English text", async () => {
  await setLanguage("de");
  const text = "Add portion 3: 4.5 cm³ of potassium hydroxide. Stir.";
  for (const id of ["no-such-message", "", null, undefined]) {
    assert.equal(said({ id, values: {}, text }), "Add portion 3: 4,5 cm³ of potassium hydroxide. Stir.");
  }
  assert.equal(said({ id: "no-such-message", text: "Something new." }), "Something new.");
});

test("the languages to choose from are the catalogues, by the names that these give themselves", async () => {
  const found = await codes();
  const named = found.map(async (code) => [code, (await catalogue(code))["language-name"]]);
  assert.deepEqual(Object.entries(LANGUAGES), await Promise.all(named));
  assert.equal(found[0], "en");
  assert.equal(LANGUAGES.de, "Deutsch");
});

test("the language that was asked for last is spoken, whichever comes first", async () => {
  await Promise.all([setLanguage("de"), setLanguage("pseudo"), setLanguage("en")]);
  assert.equal(phrase("page-close"), "Close");
  await Promise.all([setLanguage("en"), setLanguage("de")]);
  assert.equal(phrase("page-close"), "Schließen");
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
  assert.equal(fourAndAHalf(), "4.5 mL");
  assert.equal(phrase("page-volume-axis"), "volume of alkali added / mL");
  assert.equal(said("Add portion 3: 4 cm³ of potassium hydroxide. Stir."), "Add portion 3: 4 mL of potassium hydroxide. Stir.");
  await setLanguage("de");
  assert.equal(fourAndAHalf(), "4,5 mL");
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

test("the pseudo-locale leaves no plain letter, is longer, and the same when done twice", async () => {
  assert.match(accented("Wait. Stir gently: 4 cm³"), /^[^A-Za-z]+$/);
  assert.ok(accented("Wait. Stir gently").length > "Wait. Stir gently".length);
  assert.equal(accented(accented("Stir")), accented("Stir"));
  await setLanguage("pseudo");
  assert.match(phrase("page-silent"), /^[^A-Za-z]+$/);
  assert.match(fourAndAHalf(), /^4·5 [^A-Za-z]+$/);
  assert.match(said("Press as soon as it is in."), /^[^A-Za-z]+$/);
});

test("a language tag names a language that is spoken, or none", () => {
  assert.equal(languageOf("de-AT"), "de");
  assert.equal(languageOf("en-GB"), "en");
  assert.equal(languageOf("DE"), "de");
  for (const other of ["xx", "den", "constructor", "", null, undefined]) assert.equal(languageOf(other), null);
});

test("the device's choice comes before the station's, and that before the browser's", () => {
  assert.equal(decided(["de", "en", "en-GB"]), "de");
  assert.equal(decided([null, "de", "en-GB"]), "de");
  assert.equal(decided([null, null, "xx-XX", "de-CH", "en"]), "de");
  assert.equal(decided([null, undefined, "xx-XX"]), "en");
});

test("the names of the units to choose from stay what they are", () => {
  for (const name of Object.values(UNITS)) assert.equal(unitsOf("mL", name, ","), name);
});

/** What a catalogue of these lines says. */
function tell(lines: string, values: Record<string, string | number> = {}, tag = "en"): string {
  return formatted(compiled(lines, "test.ftl").a ?? "", values, new Intl.PluralRules(tag));
}

test("values, variants, references and quoted text", () => {
  assert.equal(tell("a = { $n } of { $all }", { n: 3, all: "4.50" }), "3 of 4.50");
  assert.equal(tell('a = the { -cup }, { b }{ "{" }\n-cup = cup of { b }\nb = acid'), "the cup of acid, acid{");
  assert.equal(tell("a =\n    { $which ->\n        [lid-off] Lid\n       *[other] { $which }\n    }!", { which: keyed("lid off") }), "Lid!");
  assert.equal(tell("a =\n    { $which ->\n        [lid-off] Lid\n       *[other] { $which }\n    }!", { which: "spilled" }), "spilled!");
});

test("a number chooses its own variant first, then its plural category in the language", () => {
  const lines = "a =\n    { $n ->\n        [0] none\n        [one] one\n        [few] few\n       *[other] { $n }\n    }";
  assert.deepEqual([0, 1, 2, 5].map((n) => tell(lines, { n })), ["none", "one", "2", "5"]);
  assert.deepEqual([0, 1, 2, 5].map((n) => tell(lines, { n }, "cs")), ["none", "one", "few", "5"]);
  // A text is no number: "1.0 cm³" is not one of anything.
  assert.equal(tell(lines, { n: "1" }), "1");
});

for (const [what, lines] of [
  ["no message at all", "a = fine\n12"],
  ["an id twice", "a = one\na = two"],
  ["a reference to nothing", "a = { b }"],
  ["a reference to itself", "a = { b }\nb = { a }"],
  ["a function", "a = { NUMBER($n) }"],
  ["an attribute", "a = fine\n    .title = not here"],
] as const) {
  test(`a catalogue is refused with its line: ${what}`, () => {
    assert.throws(() => compiled(lines, "test.ftl"), /^Error: test\.ftl:[12]: /);
  });
}

async function sources(folder: string): Promise<string[]> {
  const found = await readdir(folder, { withFileTypes: true });
  const texts = found.map(async (each) => {
    const file = path.join(folder, each.name);
    if (each.isDirectory()) return sources(file);
    return /\.tsx?$/.test(each.name) && !each.name.endsWith(".d.ts") ? [await readFile(file, "utf8")] : [];
  });
  return (await Promise.all(texts)).flat();
}

test("every id that the page says is in the English catalogue, and every id of the page there is said", async () => {
  const known = Object.keys(await catalogue("en"));
  const used = new Set((await sources(SOURCES)).flatMap(idsIn).filter((id) => OF_THE_PAGE.test(id)));
  assert.ok(used.size > 500, `only ${used.size} ids were found in ${SOURCES}`);
  assert.deepEqual([...used].filter((id) => !known.includes(id)), [], "said, and not in en.ftl");
  assert.deepEqual(known.filter((id) => OF_THE_PAGE.test(id) && !used.has(id)), [], "in en.ftl, and never said");
});

for (const code of (await codes()).filter((each) => each !== "en")) {
  test(`${code}.ftl has the messages of en.ftl, no others, and each has the same values`, async () => {
    const [english, other] = await Promise.all([catalogue("en"), catalogue(code)]);
    assert.deepEqual(Object.keys(english).filter((id) => !(id in other)), [], `not in ${code}.ftl`);
    assert.deepEqual(Object.keys(other).filter((id) => !(id in english)), [], `only in ${code}.ftl`);
    const namesOf = (of: typeof english, id: string) => [...valuesOf(of[id] ?? "").keys()].sort();
    assert.deepEqual(
      Object.keys(english).filter((id) => String(namesOf(english, id)) !== String(namesOf(other, id))),
      [],
      `other values in ${code}.ftl`,
    );
    for (const id of OF_A_LANGUAGE) assert.notEqual(other[id], undefined, `${code}.ftl does not say its ${id}`);
  });

  test(`${code}.ftl has a word for every code that en.ftl has one for`, async () => {
    const [english, other] = await Promise.all([catalogue("en"), catalogue(code)]);
    const isPlural = (name: string) => /^(zero|one|two|few|many|other|\d+)$/.test(name);
    const missing = Object.entries(english).flatMap(([id, pattern]) =>
      [...valuesOf(pattern)].flatMap(([name, variants]) => {
        const has = valuesOf(other[id] ?? "").get(name);
        return [...variants].filter((each) => !isPlural(each) && !has?.has(each)).map((each) => `${id}: ${each}`);
      }),
    );
    assert.deepEqual(missing, []);
  });
}

/** Words that are the same in both languages. */
const SAME = new Set(["Start", "Portion", "Name", "Text", "Code", "Plan", "Plan (plan.toml)"]);

/** The texts of a pattern without its values, each with its place. */
function textsOf(pattern: Awaited<ReturnType<typeof catalogue>>[string], place: string): [string, string][] {
  if (typeof pattern === "string") return [[place, pattern]];
  return pattern.flatMap((part): [string, string][] => {
    if (typeof part === "string") return [[place, part]];
    return Object.entries(part[1] ?? {}).flatMap(([name, each]) => textsOf(each, `${place}[${name}]`));
  });
}

test("no German word was left in English", async () => {
  const [english, german] = await Promise.all([catalogue("en"), catalogue("de")]);
  const left = Object.entries(english).flatMap(([id, pattern]) => {
    if (!OF_THE_PAGE.test(id)) return [];
    const other = new Map(textsOf(german[id] ?? "", id));
    return textsOf(pattern, id).filter(([place, text]) => other.get(place) === text && !SAME.has(text) && /[A-Za-z]{4}/.test(text));
  });
  assert.deepEqual(left, []);
});

test("a word that explains itself is marked in the page's texts alone, and a text is cut at its marks", () => {
  const mean = (text: string) => `\ufdd4${text}\ufdef`;
  assert.equal(marked("page-table-mean"), `${mean("mean")} / °C`);
  assert.equal(phrase("page-table-mean"), "mean / °C");
  assert.deepEqual(stretches(marked("page-table-mean")), [{ text: "mean", term: "mean" }, { text: " / °C", term: null }]);
  assert.deepEqual(stretches("a < b > c"), [{ text: "a < b > c", term: null }]);
  assert.deepEqual(stretches(`${mean("x")}${mean("y")}`).map(({ term }) => term), ["mean", "mean"]);
  assert.deepEqual(stretches(""), []);
  assert.throws(() => compiled("a = <average>mean</average>", "test.ftl"), /no average/);
});

test("a word of the station that explains itself is marked in English, too", () => {
  const text = "Heat of neutralisation";
  remember({ messages: { [text]: { id: "practical-neutralisation", values: {} } } });
  assert.equal(said(text), text);
  assert.deepEqual(stretches(markedSaid(text)).map(({ term }) => term), [null, "neutralisation"]);
});

/** Sentences end with a full stop, a question mark or an exclamation mark. */
const ENDS = /[.?!](?= |$)/g;

for (const code of await codes()) {
  test(`${code}.ftl explains each word of the glossary in at most two sentences, and marks each somewhere`, async () => {
    const messages = await catalogue(code);
    const variants = (id: string): Record<string, string> => {
      const part = (messages[id] as [[string, Record<string, string>, string]])[0];
      return part[1];
    };
    assert.deepEqual(Object.keys(variants("page-glossary-word")), [...TERMS]);
    assert.deepEqual(Object.keys(variants("page-glossary-means")), [...TERMS]);
    for (const [term, text] of Object.entries(variants("page-glossary-means"))) {
      const count = text.match(ENDS)?.length ?? 0;
      assert.ok(count >= 1 && count <= 2, `${term}: ${count} sentences`);
    }
    const all = stretches(JSON.stringify(messages)).map(({ term }) => term);
    assert.deepEqual(TERMS.filter((term) => !all.includes(term)), [], "never marked");
  });
}
