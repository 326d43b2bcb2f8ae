// The page on which a class's practical is prepared.

import { short } from "../format";

export const prepare = {
  intro: "What to make up, label and lay out. Print it, or look it up here.",
  plan: "Plan",
  tabPlan: "the plan from the planning page",
  benchPlan: "the plan of this bench",
  benches: "Benches",
  lesson: "Lesson",
  minutes: (minutes: number) => `${minutes} min`,
  stock: (name: string) => `Your bottle of ${name} / mol/dm³`,
  stockEmpty: "as usual when empty",
  print: "Print",
  title: (practical: string, benches: number) => `${practical} (${benches} ${benches === 1 ? "bench" : "benches"})`,
  labels: "Labels",
  labelsWhy: "One for each bench and solution; they print on a sheet of their own.",
  strength: (mol_dm3: number) => `${short(mol_dm3, 4)} mol/dm³`,
  count: (count: number) => `${count} ×`,
  computing: "The station works it out …",
  noAnswer: "The station did not answer.",
  secret: "What staff made up is for staff: sign in to see it here.",
  toPlan: "Change the plan",
};
