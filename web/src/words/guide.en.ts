// What to know before the start, and how to clear up.

import { short } from "../format";

export const guide = {
  title: "Before you start",
  inCup: "In the cup",
  added: "You add",
  strength: (concentration_mol_dm3: number) => `${short(concentration_mol_dm3, 4)} mol/dm³`,
  assumed: (concentration_mol_dm3: number) =>
    `You are to find the concentration. Hazards are those of ${short(concentration_mol_dm3, 4)} mol/dm³.`,
  noPictogram: "No hazard pictogram at this concentration.",
  basis: "Where this comes from",
  how: "How it goes",
  steps: {
    fill: "Fill the cup. Probe in.",
    lid: "Lid on.",
    pour: "Add a portion.",
    stir: "Stir, wait for the station.",
    rinse: "After the last portion: rinse, then once more.",
  },
  cautions: "Take care",
  clearingUp: "Clearing up",
  pictograms: {
    GHS02: "Flammable",
    GHS03: "Oxidising",
    GHS05: "Corrosive",
    GHS06: "Toxic",
    GHS07: "Harmful or irritant",
    GHS08: "Serious health hazard",
    GHS09: "Dangerous for the environment",
  } as Record<string, string>,
};
