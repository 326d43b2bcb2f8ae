// Überschriften, Achsen und Legenden der Diagramme.

import { fixed } from "../format";
import type { charts as en } from "./charts.en";
import type { Translated } from "./translated";

export const charts: Translated<typeof en> = {
  volumeChart: "Temperatur über dem zugegebenen Volumen",
  timeChart: (portion) => (portion === 0 ? "Vor der ersten Portion" : `Seit Portion ${portion} im Becher ist`),
  temperatureAxis: "Temperatur / °C",
  volumeAxis: "zugegebenes Volumen der Lauge / cm³",
  sincePourAxis: "Zeit seit der Zugabe / s",
  sinceStartAxis: "Zeit seit dem Start / s",
  repeatName: (repeat) => `Durchgang ${repeat}`,
  mean: "Mittelwert",
  lineBefore: "Gerade davor",
  lineAfter: "Gerade danach",
  crossing: "Schnittpunkt",
  settledAt: (temperature_c) => `ruhig bei ${fixed(temperature_c, 2)} °C`,
  volumeChartText: (points) =>
    points === 0
      ? "Noch keine Messwerte."
      : `${points} ${points === 1 ? "Messwert" : "Messwerte"}; die Tabelle darunter zeigt alle.`,
};
