import assert from "node:assert/strict";
import { test } from "node:test";
import { type Values, formOf, valuesOf, without, withoutPrepared } from "../src/staff/plan/form";

const PORTIONS: Values = {
  title: "A title",
  repeats: 2,
  acid: { name: "nitric acid", volume_cm3: 25, concentration_mol_dm3: null, prepared_mol_dm3: 0.36 },
  alkali: { name: "sodium hydroxide", concentration_mol_dm3: 0.4 },
  portions: { volume_cm3: 2.5, count: 12, glassware: null },
};
const ONCE: Values = {
  kind: "once",
  liquid: { name: "water", volume_cm3: 50, concentration_mol_dm3: null },
  addition: { name: "urea", mass_g: 4, volume_cm3: null },
};

test("a plan goes through the form unchanged, without what it does not say", () => {
  assert.deepEqual(valuesOf(formOf(PORTIONS)), {
    title: "A title",
    repeats: 2,
    acid: { name: "nitric acid", volume_cm3: 25, prepared_mol_dm3: 0.36 },
    alkali: { name: "sodium hydroxide", concentration_mol_dm3: 0.4 },
    portions: { volume_cm3: 2.5, count: 12 },
  });
  assert.deepEqual(valuesOf(formOf(ONCE)), {
    kind: "once",
    liquid: { name: "water", volume_cm3: 50 },
    addition: { name: "urea", mass_g: 4 },
  });
});

test("numbers are typed with a comma or a dot; what is no number is the station's to refuse", () => {
  const form = formOf(PORTIONS);
  const typed = (text: string) => valuesOf({ ...form, fields: { ...form.fields, "acid.volume_cm3": text } }).acid;
  assert.deepEqual(typed("20,5"), { name: "nitric acid", volume_cm3: 20.5, prepared_mol_dm3: 0.36 });
  assert.deepEqual(typed("many"), { name: "nitric acid", volume_cm3: "many", prepared_mol_dm3: 0.36 });
  assert.deepEqual(typed(" "), { name: "nitric acid", prepared_mol_dm3: 0.36 });
});

test("what the class is told decides which concentration is sent", () => {
  const form = formOf(PORTIONS);
  assert.equal(form.told, "prepared");
  assert.deepEqual(valuesOf({ ...form, told: "unknown" }).acid, { name: "nitric acid", volume_cm3: 25 });
});

test("the other kind's choices stay while one kind is looked at", () => {
  const both = formOf(ONCE, formOf(PORTIONS));
  assert.equal(both.kind, "once");
  assert.equal("acid" in valuesOf(both), false);
  assert.deepEqual(valuesOf({ ...both, kind: "portions" }).alkali, { name: "sodium hydroxide", concentration_mol_dm3: 0.4 });
});

test("what staff made up is taken out", () => {
  assert.deepEqual(withoutPrepared(PORTIONS).acid, { name: "nitric acid", volume_cm3: 25, concentration_mol_dm3: null });
  assert.deepEqual(withoutPrepared(ONCE), ONCE);
});

test("keys that are not known are taken out", () => {
  const odd: Values = { ...ONCE, spoons: 2, addition: { name: "urea", mass_g: 4, colour: "white" } };
  assert.deepEqual(without(odd, [["spoons"], ["addition", "colour"]]), { ...ONCE, addition: { name: "urea", mass_g: 4 } });
});
