// Wie jede Zahl zustande kam, der anerkannte Wert, Fragen zum Nachdenken, und das eigene Urteil.

import { fixed } from "../format";
import { type steps as en, worked } from "./steps.en";
import type { Translated } from "./translated";

export const steps: Translated<typeof en> = {
  open: "Wie jede Zahl zustande kam",
  whose: "Zahlen von",
  ofMean: "Mittelwert",
  byLines: "Aus den Geraden",
  byHeat: "Nach der Wärmebilanz",
  opens: "Öffne eine Zahl, um die Zeile zu sehen, die sie ergab.",
  worked,
  accepted: "Anerkannter Wert",
  acceptedValue: (enthalpy_kj_mol, u) => `${fixed(enthalpy_kj_mol, 1)} ± ${fixed(u, 1)} kJ/mol`,
  yours: (enthalpy_kj_mol, u) => `Deiner, nach der Wärmebilanz: ${worked(enthalpy_kj_mol, u, "kJ/mol")}`,
  source: (source) => `Quelle: ${source}`,
  think: "Fragen für deine Auswertung",
  questions: [
    "Wohin ging Wärme aus dem Becher verloren, während du gemessen hast? Würden deine Temperaturen, dein Äquivalenzpunkt und deine Enthalpie dadurch zu groß oder zu klein? Wie könntest du das herausfinden?",
    "Dein Thermometer zeigt Temperaturen in Stufen. Wie groß ist eine Stufe gegen die ganze Temperaturänderung? Welche deiner Zahlen hängt am meisten davon ab?",
    "Wie genau kennst du das Volumen im Becher und das jeder Portion? Wenn jede Portion 2 % zu groß war: Welche Zahlen ändern sich, und in welche Richtung?",
    "Wie weit liegen deine Durchgänge auseinander? Mehr oder weniger, als das ± sagt? Was könnte von einem Durchgang zum nächsten anders gewesen sein?",
    "Ist der Unterschied zwischen deinem Wert und dem anerkannten größer als beide ± zusammen? Wenn ja: Was steckt nicht im ±?",
  ],
  questionsOnce: [
    "Wohin floss Wärme zwischen Becher und Raum, während du gemessen hast? Würde deine Temperaturänderung dadurch zu groß oder zu klein? Wie könntest du das herausfinden?",
    "Dein Thermometer zeigt Temperaturen in Stufen. Wie groß ist eine Stufe gegen die ganze Temperaturänderung?",
    "Wie genau kennst du die Mengen, die gemischt wurden? Wenn eine davon 2 % zu groß war: Welche Zahlen ändern sich, und in welche Richtung?",
    "Wie weit liegen deine Durchgänge auseinander? Mehr oder weniger, als das ± sagt? Was könnte von einem Durchgang zum nächsten anders gewesen sein?",
    "Ist der Unterschied zwischen deinem Wert und dem anerkannten größer als beide ± zusammen? Wenn ja: Was steckt nicht im ±?",
  ],

  judgement: "Dein Urteil und das der Station",
  portion: "Portion",
  repeatTitle: (repeat) => `Durchgang ${repeat}`,
  ownWaited: "du, nach / s",
  ownRead: "du / °C",
  stationWaited: "Station, nach / s",
  stationRead: "Station / °C",
  seconds: (s) => fixed(s, 0),
  degrees: (c) => fixed(c, 2),
  start: "Start",
  cost: "Was der Unterschied gekostet hat",
  byYou: "du",
  byStation: "die Station",
  time: "gebrauchte Zeit",
  endPoint: "Äquivalenzpunkt",
  minutes: (minutes) => `${fixed(minutes, 1)} min`,
  volume: (volume_cm3) => `${fixed(volume_cm3, 1)} cm³`,
};
