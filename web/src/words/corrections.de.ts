// Was ein Mensch berichtigen kann.

import { short } from "../format";
import type { corrections as en } from "./corrections.en";
import { capital } from "./quantities";
import { german } from "./station";
import type { Translated } from "./translated";

export const corrections: Translated<typeof en> = {
  corrections: "Berichtigen, unterbrechen oder beenden",
  portion: (portion) => `Portion ${portion}`,
  whole: (name) => german(name),
  correctionNames: {
    portion_added: (what) => `${capital(what)} ist schon im Becher`,
    portion_undone: (what) => `${capital(what)} kam nicht in den Becher`,
    portion_volume: () => "Es war ein anderes Volumen",
    portion_unsure: () => "Unsicher, was in den Becher kam",
    repeat_restarted: () => "Diesen Durchgang neu beginnen",
    alkali_temperature: (_, added) => `Temperatur: ${german(added)}`,
    pause: () => "Unterbrechen",
    resume: () => "Weiter",
    finish: () => "Versuch beenden",
    begin: () => "Beginnen",
    rinsed: () => "Der Becher ist ausgespült",
  },
  ask: {
    portion_added: (what) => `Aufzeichnen, dass schon im Becher ist: ${what}?`,
    portion_undone: (what) =>
      `${capital(what)} zurücknehmen? Nur, wenn nichts davon im Becher ist. Im Protokoll bleibt eine Spur davon.`,
    repeat_restarted: (repeat) => `Durchgang ${repeat} zählt dann nicht mit, und du beginnst ihn neu. Warum?`,
    finish: "Jetzt beenden? Der laufende Durchgang endet hier, und nichts kann mehr zugegeben werden.",
  },
  yes: {
    portion_added: "Ja, ist im Becher",
    portion_undone: "Ja, zurücknehmen",
    portion_volume: "Dieses Volumen aufzeichnen",
    portion_unsure: "Als unsicher markieren",
    repeat_restarted: "Ja, neu beginnen",
    finish: "Ja, beenden",
    alkali_temperature: "Diese Temperatur aufzeichnen",
  },
  no: "Nein, so lassen",
  whichPortion: "Welche Portion?",
  whichRepeat: "Welcher Durchgang?",
  portionName: (repeat, portion, volume_cm3) => `Durchgang ${repeat}, Portion ${portion} (${short(volume_cm3)} cm³)`,
  onceName: (repeat, volume_cm3) =>
    volume_cm3 > 0 ? `Durchgang ${repeat} (${short(volume_cm3)} cm³)` : `Durchgang ${repeat}`,
  realVolume: "Volumen, das in den Becher kam / cm³",
  addedTemperature: (added) => `Temperatur / °C (${german(added)})`,
  measureWithProbe: "Mit dem Fühler messen",
  addedFirst: (added) => `Miss zuerst die Temperatur: ${german(added)}`,
  alkali: "Lauge",
  reasons: ["verschüttet", "Portionen nicht mehr mitgezählt", "der Fühler war nicht im Becher", "falsches Volumen im Becher"],
  reasonsOnce: ["verschüttet", "im falschen Moment zugegeben", "der Fühler war nicht im Becher", "falsche Mengen"],
  otherReason: "ein anderer Grund",
  reasonLabel: "Grund",
  reasonText: "In deinen eigenen Worten",
};
