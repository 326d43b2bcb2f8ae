// Eine einzige Zugabe: ihr Diagramm, ihre Temperaturänderung, ihre Wärme.

import { fixed, rounded, signed } from "../format";
import type { once as en } from "./once.en";
import { celsiusPlaces, joulePlaces, kilojoulePlaces, plusMinus } from "./quantities";
import { german } from "./station";
import type { Translated } from "./translated";

export const once: Translated<typeof en> = {
  onceChart: "Temperatur über der Zeit",
  sinceRepeatAxis: "Zeit seit Beginn des Durchgangs / s",
  mixed: "gemischt",
  onceChartText: (repeats, change) =>
    repeats === 0
      ? "Noch keine Temperaturen."
      : `Der Temperaturverlauf von ${repeats} ${repeats === 1 ? "Durchgang" : "Durchgängen"}.${change === null ? "" : ` Beide Geraden, bis zum Zeitpunkt des Mischens verlängert, liegen ${change} auseinander.`} Die Tabelle darunter zeigt die Zahlen.`,
  lineReadOff: "Ausgleichsgerade",
  lineExtended: "bis zum Zeitpunkt des Mischens verlängert",
  whichLines: "Geraden von",
  byExtendedLines: "Verlängerte Ausgleichsgeraden",
  change: (change_c, u_c) => `${signed(change_c, celsiusPlaces(u_c))} °C`,
  changeInterval: ([low, high], u_c) =>
    `95-%-Intervall ${signed(low, celsiusPlaces(u_c))} bis ${signed(high, celsiusPlaces(u_c))} °C`,
  changePlusMinus: (u_c) => `Standardunsicherheit ${plusMinus(u_c, celsiusPlaces(u_c), "unter")} °C`,
  heat: (heat_j) => (heat_j < 0 ? "aufgenommene Wärme" : "abgegebene Wärme"),
  joules: (heat_j, u_j) => `${rounded(Math.abs(heat_j), joulePlaces(u_j))} J`,
  joulesPlusMinus: (u_j) => `Standardunsicherheit ${plusMinus(u_j, joulePlaces(u_j), "unter")} J`,
  enthalpyOf: (what) => `Enthalpieänderung pro Mol (${german(what)})`,
  enthalpy: (kj_mol, u_kj_mol) => `${signed(kj_mol, kilojoulePlaces(u_kj_mol))} kJ/mol`,
  enthalpyPlusMinus: (u_kj_mol) =>
    `Standardunsicherheit ${plusMinus(u_kj_mol, kilojoulePlaces(u_kj_mol), "unter")} kJ/mol`,
  linesKnow: (change_c, bias_c) => {
    const known = "Das ± der Änderung kennt nur die Streuung der Messwerte.";
    if (bias_c === null) {
      return `${known} Eine träge Becherwand oder eine Reaktion, die weiterläuft, verschiebt die Geraden stärker.`;
    }
    if (Math.abs(bias_c) < 0.01) return known;
    const side = bias_c * change_c > 0 ? "groß" : "klein";
    return `${known} So gezeichnete Geraden zeigen hier voraussichtlich eine um etwa ${fixed(Math.abs(bias_c), 2)} °C zu ${side}e Änderung.`;
  },
  heatOnceKnows: "Berücksichtigt den Wärmeverlust an den Raum, die Trägheit des Fühlers und die Zeit zum Mischen.",
  addedUnknown: (name) =>
    `Wie warm es vorher war (${german(name)}), hat niemand gemessen: Das ± der Wärme berücksichtigt das.`,
  refusedChange: (reason) => `Die Geraden ergeben keine Temperaturänderung. ${german(reason)}`,
};
