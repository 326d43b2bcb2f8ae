// Die eigenen Geraden und die eigene Ablesung, worauf Ergebnisse warten, und wie weit die eigene Ablesung daneben lag.

import { fixed, rounded, short, signed } from "../format";
import type { ownLines as en } from "./own_lines.en";
import { celsiusPlaces, cm3Places } from "./quantities";
import type { Translated } from "./translated";

function off(own: number, computed: number, places: number, unit: string, more: string, less: string): string {
  const apart = Number(rounded(Math.abs(own - computed), places));
  if (apart === 0) return "genau wie deine";
  return `deine ist ${rounded(apart, places)} ${unit} ${own > computed ? more : less}`;
}

export const ownLines: Translated<typeof en> = {
  title: "Zuerst deine eigenen Geraden",
  task: "Zeichne zwei Ausgleichsgeraden: eine durch die steigenden Messwerte, eine durch die fallenden. Zieh an den Griffen, oder wähle einen und benutze die Pfeiltasten.",
  taskFalling: "Zeichne zwei Ausgleichsgeraden: eine durch die Messwerte vor der Wende, eine durch die danach. Zieh an den Griffen, oder wähle einen und benutze die Pfeiltasten.",
  chart: "Mittelwerte mit deinen beiden Geraden",
  chartText: (points) => `${points} Mittelwerte und zwei Geraden, die du legst.`,
  handle: (side, volume_cm3) => `${side === "before" ? "Gerade davor" : "Gerade danach"}, Griff bei ${short(volume_cm3)} cm³`,
  handleAt: (temperature_c) => `${fixed(temperature_c, 2)} °C`,
  crossing: (volume_cm3) => `Neutralisationsvolumen ${fixed(volume_cm3, 1)} cm³`,
  noCrossing: "Deine Geraden schneiden sich noch nicht im Diagramm.",
  type: "Die Geraden eintippen",
  field: (side, volume_cm3) =>
    `${side === "before" ? "Gerade davor" : "Gerade danach"} bei ${short(volume_cm3)} cm³: Temperatur / °C`,
  own: "Mein Neutralisationsvolumen / cm³",
  fromCrossing: "Vom Schnittpunkt deiner Geraden. Du darfst auch selbst etwas eintippen.",
  useCrossing: "Wieder vom Schnittpunkt nehmen",
  notAVolume: (most_cm3) => `Tippe ein Volumen zwischen 0 und ${short(most_cm3)} cm³ ein.`,
  commit: "Das ist meine Ablesung",
  commitNow: "Sobald Ergebnisse gezeigt werden, lässt sie sich nicht mehr ändern.",
  commitWait: "Du kannst sie ändern, bis deine Lehrkraft die Ergebnisse zeigt.",
  nothing: "Ich konnte nichts ablesen",
  nothingAsk: "Festhalten, dass du nichts ablesen konntest? Die Ergebnisse können sofort folgen.",
  nothingYes: "Ja, es ging nicht",
  committed: (volume_cm3) => `Deine Ablesung: ${short(volume_cm3)} cm³`,
  committedChange: (change_c) => `Deine Ablesung: ${signed(change_c, 2)} °C`,
  committedNothing: "Du hast festgehalten, dass du nichts ablesen konntest.",
  change: "Meine Ablesung ändern",
  legendBefore: "deine Gerade davor",
  legendAfter: "deine Gerade danach",
  legendMean: "Mittelwert",

  onceTitle: "Zuerst deine eigene Ablesung",
  onceTask: "Lies an der Kurve ab: Verlängere die Gerade davor und die Gerade danach bis zum Moment des Mischens. Wie weit liegen sie dort auseinander?",
  onceOwn: "Meine Temperaturänderung / °C",
  onceSign: "Ein Anstieg hat ein Plus, ein Abfall ein Minus.",
  notAChange: "Tippe eine Zahl von Graden ein, etwa +6.2 oder −3.5.",

  waitsTitle: "Ergebnisse",
  waits: {
    end: "Ergebnisse kommen, wenn der Versuch fertig ist und du selbst abgelesen hast.",
    "own reading": "Ergebnisse kommen nach deiner eigenen Ablesung.",
    staff: "Ergebnisse kommen, wenn deine Lehrkraft sie zeigt.",
  },
  waitsEndFirst: {
    "at once": "Ergebnisse kommen, wenn der erste Durchgang fertig ist.",
    "after own reading": "Ergebnisse kommen, wenn der Versuch fertig ist und du selbst abgelesen hast.",
    "when shown": "Ergebnisse kommen, wenn deine Lehrkraft sie zeigt.",
  },
  computing: "Die Station rechnet die Ergebnisse aus …",

  compared: "Deine Ablesung und die berechneten",
  you: "deine Geraden",
  youTyped: "deine Ablesung",
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
  howFar: "wie weit deine daneben liegt",
};
