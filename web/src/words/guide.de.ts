// Was vor dem Start zu wissen ist, und wie aufgeräumt wird.

import { short } from "../format";
import type { guide as en } from "./guide.en";
import type { Translated } from "./translated";

export const guide: Translated<typeof en> = {
  title: "Bevor du anfängst",
  inCup: "Im Becher",
  added: "Du gibst zu",
  strength: (concentration_mol_dm3) => `${short(concentration_mol_dm3, 4)} mol/dm³`,
  assumed: (concentration_mol_dm3) =>
    `Die Konzentration sollst du herausfinden. Die Gefahren gelten für ${short(concentration_mol_dm3, 4)} mol/dm³.`,
  noPictogram: "Bei dieser Konzentration kein Gefahrenpiktogramm.",
  basis: "Woher das kommt",
  how: "So geht es",
  steps: {
    fill: "Becher füllen. Fühler hinein.",
    lid: "Deckel drauf.",
    pour: "Eine Portion zugeben.",
    stir: "Rühren, auf die Station warten.",
    rinse: "Nach der letzten Portion: spülen, dann noch einmal.",
  },
  cautions: "Vorsicht",
  clearingUp: "Aufräumen",
  pictograms: {
    GHS02: "Entzündbar",
    GHS03: "Brandfördernd",
    GHS05: "Ätzend",
    GHS06: "Giftig",
    GHS07: "Gesundheitsschädlich oder reizend",
    GHS08: "Ernste Gesundheitsgefahr",
    GHS09: "Umweltgefährlich",
  },
};
