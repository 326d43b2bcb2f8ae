// Die Tabelle der Messwerte.

import { fixed, short } from "../format";
import { capital } from "./quantities";
import { german } from "./station";
import type { table as en } from "./table.en";
import type { Translated } from "./translated";

export const table: Translated<typeof en> = {
  table: "Messwerte",
  tableVolume: "zugegebenes Volumen / cm³",
  tableRepeat: (repeat) => `Durchgang ${repeat} / °C`,
  tableMean: "Mittelwert / °C",
  onceTable: "Zahlen jedes Durchgangs / °C",
  quantity: "Temperatur",
  rows: {
    start: "Start",
    before: "Gerade davor",
    after: "Gerade danach",
    change: "Änderung, Geraden",
    heatChange: "Änderung, Wärmebilanz",
    end: "Ende",
  },
  reading: (temperature_c) => fixed(temperature_c, 2),
  missing: "–",
  noReading: "kein Messwert",
  atVolume: (volume_cm3) => `bei ${short(volume_cm3)} cm³`,
  notSettled: "nicht ruhig",
  notSure: "unsicher",
  setAside: (repeat, reason) => `Durchgang ${repeat} zählt nicht mit${reason ? `: ${german(reason)}` : ""}.`,
  addedAt: (name, temperature_c) => `${capital(german(name))} vor dem Start: ${fixed(temperature_c, 1)} °C.`,
};
