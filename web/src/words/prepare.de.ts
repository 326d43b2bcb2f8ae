import { short } from "../format";
import type { prepare as en } from "./prepare.en";
import type { Translated } from "./translated";

export const prepare: Translated<typeof en> = {
  intro: "Was anzusetzen, zu beschriften und bereitzustellen ist. Zum Drucken oder Nachsehen.",
  plan: "Plan",
  tabPlan: "der Plan von der Planungsseite",
  benchPlan: "der Plan dieses Arbeitsplatzes",
  benches: "Arbeitsplätze",
  lesson: "Stunde",
  minutes: (minutes: number) => `${minutes} min`,
  stock: (name: string) => `Eigene Flasche ${name} / mol/dm³`,
  stockEmpty: "leer: wie üblich",
  print: "Drucken",
  title: (practical: string, benches: number) => `${practical} (${benches} ${benches === 1 ? "Arbeitsplatz" : "Arbeitsplätze"})`,
  labels: "Etiketten",
  labelsWhy: "Eines je Arbeitsplatz und Lösung; sie kommen auf ein eigenes Blatt.",
  strength: (mol_dm3: number) => `${short(mol_dm3, 4)} mol/dm³`,
  count: (count: number) => `${count} ×`,
  computing: "Die Station rechnet …",
  noAnswer: "Die Station hat nicht geantwortet.",
  secret: "Was angesetzt wurde, ist nur für Lehrkräfte und Technik: zum Sehen bitte anmelden.",
  toPlan: "Plan ändern",
};
