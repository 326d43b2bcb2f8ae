// Warum die beiden Äquivalenzpunkte verschieden sind, Schritt für Schritt.

import { fixed, rounded, short, signed } from "../format";
import { cm3Places } from "./quantities";
import type { Translated } from "./translated";
import type { why as en } from "./why.en";

const volume = (volume_cm3: number, u_cm3: number) => `${rounded(volume_cm3, cm3Places(u_cm3))} cm³`;

export const why: Translated<typeof en> = {
  open: "Warum sind die beiden Äquivalenzpunkte verschieden?",
  openLow: "Warum kommen Geraden zu niedrig heraus?",
  title: "Warum Geraden zu niedrig herauskommen",
  titleOther: "Warum die beiden Äquivalenzpunkte verschieden sind",
  chart: "Die Erklärung als Diagramm",
  which: (repeat) =>
    repeat === null ? "Gezeigt am Mittelwert deiner eigenen Messwerte." : `Gezeigt an deinen eigenen Messwerten von Durchgang ${repeat}.`,
  step: (step, of) => `Schritt ${step} von ${of}`,
  back: "Zurück",
  next: "Weiter",
  closeIt: "Schließen",
  notPossible: "Zu diesen Messwerten gibt es keine korrigierte Kurve, darum nur in Worten.",
  names: ["Zwei Geraden", "Immer mehr Flüssigkeit", "Also sind die Äste krumm", "Gleich viel Flüssigkeit für jede Portion", "Wo sie wirklich abknickt"],
  measured: "deine Messwerte",
  corrected: "Messwerte bei gleich viel Flüssigkeit für jede Portion",
  liquid: "Flüssigkeit im Becher",
  liquidAt: (liquid_cm3) => `${short(Math.round(liquid_cm3))} cm³`,
  change: (change_c) => `${signed(change_c, 2)} °C`,
  crossingName: "Schnittpunkt",
  heatName: "Wärmebilanz",
  two: (crossing_cm3, u_cm3) =>
    `Die beiden Ausgleichsgeraden durch deine Messwerte schneiden sich bei ${volume(crossing_cm3, u_cm3)}. Eine Ausgleichsgerade setzt voraus, dass die Messwerte wirklich auf einer Geraden liegen. Tun sie das?`,
  more: (first, last) =>
    `Portion ${first.portion} musste ${short(Math.round(first.liquid_cm3))} cm³ Flüssigkeit erwärmen und änderte die Temperatur um ${signed(first.change_c, 2)} °C. Portion ${last.portion} hatte ${short(Math.round(last.liquid_cm3))} cm³ und änderte sie um ${signed(last.change_c, 2)} °C. Jede gab etwa gleich viel Wärme ab, aber es war immer mehr Flüssigkeit zu erwärmen. Der Raum, und Portionen, die kühler sind als der Becher, nehmen sich auch einen Teil.`,
  moreWords:
    "Jede Portion vor dem Äquivalenzpunkt gibt etwa gleich viel Wärme ab, aber im Becher ist immer mehr Flüssigkeit, die sie erwärmen muss. Darum ändert jede Portion die Temperatur weniger als die davor.",
  bend: (above_c) =>
    `Der erste Ast wird also immer flacher: Er ist krumm. Auch der zweite ist krumm: Jede weitere Portion hat mehr Flüssigkeit abzukühlen. Eine Gerade kann dem nicht folgen. Bis zum Äquivalenzpunkt der Wärmebilanz verlängert, liegt die erste Gerade schon ${fixed(above_c, 2)} °C jenseits der zweiten: Die Geraden haben sich vorher getroffen.`,
  bendWords:
    "Der erste Ast wird also immer flacher: Er ist krumm. Auch der zweite ist krumm: Jede weitere Portion hat mehr Flüssigkeit abzukühlen. Geraden, die man durch krumme Äste zeichnet und aufeinander zu verlängert, treffen sich zu früh.",
  same: (liquid_cm3) =>
    `Nun verteilen wir die Reaktionswärme so, als wären die ganze Zeit ${short(Math.round(liquid_cm3))} cm³ im Becher gewesen, jede Portion so warm wie der Becher hineingekommen und nichts an den Raum verloren gegangen. Deine Messwerte wandern: Vor dem Äquivalenzpunkt ändert jede Portion die Temperatur jetzt gleich viel, danach ändert sich nichts mehr. Die Kurve ist gerade.`,
  sameWords:
    "Nun verteilen wir die Reaktionswärme so, als wäre die ganze Zeit gleich viel Flüssigkeit im Becher gewesen, jede Portion so warm wie der Becher hineingekommen und nichts an den Raum verloren gegangen. Vor dem Äquivalenzpunkt ändert dann jede Portion die Temperatur gleich viel, danach ändert sich nichts mehr. Die Kurve ist gerade.",
  low: (end_point_cm3, u_cm3, apart_cm3) =>
    `Die begradigte Kurve knickt bei ${volume(end_point_cm3, u_cm3)} ab. Das ist der Äquivalenzpunkt nach der Wärmebilanz. Der Schnittpunkt der Geraden kam ${fixed(apart_cm3, 1)} cm³ zu niedrig heraus: nicht weil jemand schlecht gemessen hat, sondern weil Geraden durch krumme Äste gezeichnet wurden.`,
  high: (end_point_cm3, u_cm3, apart_cm3) =>
    `Die begradigte Kurve knickt bei ${volume(end_point_cm3, u_cm3)} ab. Das ist der Äquivalenzpunkt nach der Wärmebilanz. Geraden durch krumme Äste schneiden sich meist zu früh; hier hat die Streuung der Messwerte sie ${fixed(apart_cm3, 1)} cm³ darüber hinaus gebracht.`,
  agree: (end_point_cm3, u_cm3) =>
    `Die begradigte Kurve knickt bei ${volume(end_point_cm3, u_cm3)} ab. Das ist der Äquivalenzpunkt nach der Wärmebilanz. Geraden durch krumme Äste schneiden sich meist zu früh; hier stimmen beide überein, soweit die Messwerte es hergeben.`,
};
