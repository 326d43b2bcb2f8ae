// Die beiden Ansichten der Kurve, und das Ablesen eines Punkts.

import { fixed, short } from "../format";
import type { seeing as en } from "./seeing.en";
import { german } from "./station";
import type { Translated } from "./translated";

function clock(time_s: number): string {
  const whole_s = Math.round(time_s);
  return `${Math.floor(whole_s / 60)} min ${whole_s % 60} s`;
}

export const seeing: Translated<typeof en> = {
  views: "Was die Kurve zeigt",
  againstVolume: "über dem Volumen",
  againstTime: "über der Zeit",
  whichRepeat: "Welcher Durchgang?",
  traceChart: (repeat) => `Durchgang ${repeat}: Temperatur über der Zeit`,
  traceText: (portions, minutes) =>
    `Der ganze Verlauf von ${short(minutes, 1)} Minuten; ${portions} ${portions === 1 ? "Portion" : "Portionen"} zugegeben. Die Tabelle darunter zeigt die ruhigen Messwerte.`,
  loading: "Wird geladen …",
  notLoaded: "Dieser Teil kam nicht an. Läuft die Station?",
  tryAgain: "Noch einmal",
  pour: "Portion zugegeben (mit Nummer)",
  settledReading: "ruhiger Messwert",
  unsettledReading: "Messwert, noch nicht ruhig",
  wholeTrace: "jede Messung",
  readPoint: "Einen Punkt der Kurve ablesen",
  hint: "Kurve berühren oder Pfeiltasten benutzen, um einen Punkt abzulesen.",
  point: ({ portion, volume_cm3, values }) => {
    const [first] = values;
    const where = `${portion === 0 ? "Start" : `Portion ${portion}`}: ${short(volume_cm3)} cm³`;
    if (first && values.length === 1) return `${where}, ${fixed(first.temperature_c, 2)} °C`;
    const named = values.map(({ repeat, temperature_c, ownVolume_cm3 }) => {
      const own = ownVolume_cm3 === null ? "" : ` (bei ${short(ownVolume_cm3)} cm³)`;
      return `${repeat === null ? "Mittelwert" : `Durchgang ${repeat}`} ${fixed(temperature_c, 2)} °C${own}`;
    });
    return `${where}; ${named.join(", ")}`;
  },
  moment: (time_s, temperature_c, portion, since_s) =>
    `${clock(time_s)}: ${fixed(temperature_c, 2)} °C, ${portion === 0 ? "vor der ersten Portion" : `${Math.round(since_s)} s nach Portion ${portion}`}`,
  momentOnce: (time_s, repeat, temperature_c, since_s) =>
    `${clock(time_s)}: ${fixed(temperature_c, 2)} °C, Durchgang ${repeat}, ${since_s === null ? "vor dem Mischen" : `${Math.round(since_s)} s nach dem Mischen`}`,
  unsureWhy: (reason) => `unsicher: ${german(reason)}`,
  typed: "eingetippt",
};
