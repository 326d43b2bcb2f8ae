// Die eigenen Geraden und die eigene Ablesung, worauf Ergebnisse warten, und wie weit die eigene Ablesung daneben lag.

import { fixed, rounded, short, signed } from "../format";
import type { ownLines as en } from "./own_lines.en";
import { celsiusPlaces, cm3Places } from "./quantities";
import type { Translated } from "./translated";

function off(own: number, computed: number, places: number, unit: string, more: string, less: string): string {
  const apart = Number(rounded(Math.abs(own - computed), places));
  if (apart === 0) return "genau wie eure";
  return `eure ist ${rounded(apart, places)} ${unit} ${own > computed ? more : less}`;
}

export const ownLines: Translated<typeof en> = {
  title: "Zuerst eure eigenen Geraden",
  task: "Zeichnet zwei Ausgleichsgeraden: eine durch die steigenden Messwerte, eine durch die fallenden. Zieht an den Griffen, oder wählt einen und benutzt die Pfeiltasten.",
  taskFalling: "Zeichnet zwei Ausgleichsgeraden: eine durch die Messwerte vor der Wende, eine durch die danach. Zieht an den Griffen, oder wählt einen und benutzt die Pfeiltasten.",
  chart: "Mittelwerte mit euren beiden Geraden",
  chartText: (points) => `${points} Mittelwerte und zwei Geraden, die ihr legt.`,
  handle: (side, volume_cm3) => `${side === "before" ? "Gerade davor" : "Gerade danach"}, Griff bei ${short(volume_cm3)} cm³`,
  handleAt: (temperature_c) => `${fixed(temperature_c, 2)} °C`,
  crossing: (volume_cm3) => `Neutralisationsvolumen ${fixed(volume_cm3, 1)} cm³`,
  noCrossing: "Eure Geraden schneiden sich noch nicht im Diagramm.",
  type: "Die Geraden eintippen",
  field: (side, volume_cm3) =>
    `${side === "before" ? "Gerade davor" : "Gerade danach"} bei ${short(volume_cm3)} cm³: Temperatur / °C`,
  own: "Unser Neutralisationsvolumen / cm³",
  fromCrossing: "Vom Schnittpunkt eurer Geraden. Ihr dürft auch selbst etwas eintippen.",
  useCrossing: "Wieder vom Schnittpunkt nehmen",
  notAVolume: (most_cm3) => `Tippt ein Volumen zwischen 0 und ${short(most_cm3)} cm³ ein.`,
  commit: "Das ist unsere Ablesung",
  commitNow: "Sobald Ergebnisse gezeigt werden, lässt sie sich nicht mehr ändern.",
  commitWait: "Ihr könnt sie ändern, bis eure Lehrkraft die Ergebnisse zeigt.",
  nothing: "Wir konnten nichts ablesen",
  committed: (volume_cm3) => `Eure Ablesung: ${short(volume_cm3)} cm³`,
  committedChange: (change_c) => `Eure Ablesung: ${signed(change_c, 2)} °C`,
  committedNothing: "Ihr habt festgehalten, dass ihr nichts ablesen konntet.",
  change: "Unsere Ablesung ändern",
  legendBefore: "eure Gerade davor",
  legendAfter: "eure Gerade danach",
  legendMean: "Mittelwert",

  onceTask: "Lest an der Kurve ab: Verlängert die Gerade davor und die Gerade danach bis zum Moment des Mischens. Wie weit liegen sie dort auseinander?",
  onceOwn: "Unsere Temperaturänderung / °C",
  onceSign: "Ein Anstieg hat ein Plus, ein Abfall ein Minus.",
  notAChange: "Tippt eine Zahl von Graden ein, etwa +6.2 oder −3.5.",

  waitsTitle: "Ergebnisse",
  waits: {
    end: "Ergebnisse kommen, wenn das Praktikum fertig ist und ihr selbst abgelesen habt.",
    "own reading": "Ergebnisse kommen nach eurer eigenen Ablesung.",
    staff: "Ergebnisse kommen, wenn eure Lehrkraft sie zeigt.",
  },
  waitsEndFirst: {
    "at once": "Ergebnisse kommen, wenn der erste Durchgang fertig ist.",
    "after own reading": "Ergebnisse kommen, wenn das Praktikum fertig ist und ihr selbst abgelesen habt.",
    "when shown": "Ergebnisse kommen, wenn eure Lehrkraft sie zeigt.",
  },
  computing: "Die Station rechnet die Ergebnisse aus …",

  compared: "Eure Ablesung und die berechneten",
  you: "eure Geraden",
  youTyped: "eure Ablesung",
  lines: "berechnete Geraden",
  linesOnce: "verlängerte Geraden, berechnet",
  heat: "Wärmebilanz",
  volume: (volume_cm3, u_cm3) => `${rounded(volume_cm3, cm3Places(u_cm3))} ± ${rounded(u_cm3, cm3Places(u_cm3))} cm³`,
  ownVolume: (volume_cm3) => `${short(volume_cm3)} cm³`,
  changeOf: (change_c, u_c) => `${signed(change_c, celsiusPlaces(u_c))} ± ${rounded(u_c, celsiusPlaces(u_c))} °C`,
  ownChange: (change_c) => `${signed(change_c, 2)} °C`,
  off: (own_cm3, computed_cm3) => off(own_cm3, computed_cm3, 1, "cm³", "größer", "kleiner"),
  offChange: (own_c, computed_c) => off(own_c, computed_c, 2, "°C", "höher", "niedriger"),
  which: "Ablesung",
  value: "Wert",
  howFar: "wie weit eure daneben liegt",
};
