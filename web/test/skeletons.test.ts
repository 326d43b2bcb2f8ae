// Sentences with values in them.

import assert from "node:assert/strict";
import { test } from "node:test";
import { translator } from "../src/words/skeletons";
import { german } from "../src/words/station";

const say = translator({
  "nitric acid": "Salpetersäure",
  after: "nach",
  "# cm³ of #": "# cm³ #",
  "Refill the cup: #.": "Fülle den Becher: #.",
  "The line # the turn needs # readings.": "Die Gerade # der Wende braucht # Messwerte.",
  "The # of # is left over.": "#2: # bleibt übrig.",
  "Add more portions.": "Gib mehr dazu.",
  "#: is it (really) so?": "#: Ist das (wirklich) so?",
  "Portion # is in": "Portion # ist drin",
  "Portion # is in doubt": "Portion # ist unsicher",
});

test("values stand where the translation has them, and are translated themselves", () => {
  assert.equal(say("Refill the cup: 25 cm³ of nitric acid."), "Fülle den Becher: 25 cm³ Salpetersäure.");
  assert.equal(say("The line after the turn needs 3 readings."), "Die Gerade nach der Wende braucht 3 Messwerte.");
  assert.equal(say("The rest of nitric acid is left over."), "Salpetersäure: rest bleibt übrig.");
});

test("a skeleton is matched as a whole and letter by letter", () => {
  assert.equal(say("Portion 3 is in"), "Portion 3 ist drin");
  assert.equal(say("Portion 3 is in doubt"), "Portion 3 ist unsicher");
  assert.equal(say("Is portion 3 is in"), "Is portion 3 is in");
  assert.equal(say("nitric acid: is it (really) so?"), "Salpetersäure: Ist das (wirklich) so?");
  assert.equal(say("nitric acid: is it really so?"), "nitric acid: is it really so?");
});

test("a text of several sentences is told one by one", () => {
  assert.equal(
    say("The line after the turn needs 3 readings. Add more portions."),
    "Die Gerade nach der Wende braucht 3 Messwerte. Gib mehr dazu.",
  );
});

test("before a unit stands a number, and a vague skeleton takes known values only", () => {
  assert.equal(say("about 3 cm³ of nitric acid"), "about 3 cm³ of nitric acid");
  assert.equal(say("3 cm³ of something"), "3 cm³ of something");
  assert.equal(say("3.5 cm³ of nitric acid"), "3.5 cm³ Salpetersäure");
});

test("numbers that were kept with their unit are the same text", () => {
  assert.equal(say("Refill the cup: 25\u00a0cm³ of nitric acid."), "Fülle den Becher: 25 cm³ Salpetersäure.");
});

test("an unknown text comes back as it is, whatever is in it", () => {
  for (const text of ["", "#", "a + b (c) [d] \\ $1", "we spilled it. Twice."]) assert.equal(say(text), text);
});

test("the station's texts of several parts", () => {
  assert.equal(
    german(
      "Wear eye protection. Your teacher and your school's risk assessment come first. " +
        "First, if you can: dip the rinsed, wiped probe in the sodium hydroxide for its temperature.",
    ),
    "Trage eine Schutzbrille. Deine Lehrkraft und die Gefährdungsbeurteilung deiner Schule gehen vor. " +
      "Zuerst, wenn es geht: Tauche den abgespülten, abgewischten Fühler in das Gefäß mit Natronlauge, damit ihre Temperatur bekannt ist.",
  );
  assert.equal(
    german("The heat balance cannot be used: the two are swapped: nitric acid is the acid, sodium hydroxide the alkali."),
    "Die Wärmebilanz ist hier nicht anwendbar: die beiden sind vertauscht: Salpetersäure ist die Säure, Natronlauge die Lauge.",
  );
  assert.equal(german("Only the newest portion, 3, can be taken back."), "Nur die neueste Portion, 3, kann zurückgenommen werden.");
});
