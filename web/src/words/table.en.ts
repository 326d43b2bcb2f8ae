// The table of readings.

import { fixed, short } from "../format";
import { capital } from "./quantities";

export const table = {
  table: "Readings",
  tableVolume: "volume added / cm³",
  tableRepeat: (repeat: number) => `repeat ${repeat} / °C`,
  tableMean: "mean / °C",
  onceTable: "Numbers of each repeat / °C",
  quantity: "temperature",
  rows: {
    start: "start",
    before: "line before",
    after: "line after",
    change: "change, lines",
    heatChange: "change, heat balance",
    end: "end",
  },
  reading: (temperature_c: number) => fixed(temperature_c, 2),
  missing: "–",
  noReading: "no reading",
  atVolume: (volume_cm3: number) => `at ${short(volume_cm3)} cm³`,
  notSettled: "not settled",
  notSure: "not sure",
  setAside: (repeat: number, reason: string | null) =>
    `Repeat ${repeat} was set aside${reason ? `: ${reason}` : ""}.`,
  addedAt: (name: string, temperature_c: number) => `${capital(name)} before the start: ${fixed(temperature_c, 1)} °C.`,
};
