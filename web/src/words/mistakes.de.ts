// Was schiefging, in den Worten der Schülerinnen und Schüler: Zweifel, mehr Portionen, Durchgänge, Notizen, Name der Gruppe.

import { short } from "../format";
import type { mistakes as en } from "./mistakes.en";
import { german } from "./station";
import type { Translated } from "./translated";

export const mistakes: Translated<typeof en> = {
  groups: {
    portions: "Eine Portion",
    repeat: "Dieser Durchgang",
    practical: "Der Versuch",
    group: "Deine Gruppe",
  },
  doubtTitle: (portion) => `Portion ${portion}: Was ist passiert?`,
  doubtTitleOnce: "Was ist passiert?",
  doubts: { spilled: "Verschüttet", "stirred late": "Spät gerührt", "lid off": "Deckel war ab" },
  inDoubt: (portion, reason) => `Portion ${portion} ist als unsicher markiert${reason ? `: ${german(reason)}` : ""}.`,
  inDoubtOnce: (reason) => `Als unsicher markiert${reason ? `: ${german(reason)}` : ""}.`,
  sure: "Zurücknehmen",
  otherDoubt: "In deinen eigenen Worten (kann leer bleiben)",
  names: {
    more: "Es sind mehr Portionen im Becher",
    reading: "Einen eingetippten Wert berichtigen",
    thermometer: "Wieder den Fühler nehmen",
    repeat_set_aside: "Einen Durchgang nicht mitzählen",
    repeat_restored: "Einen Durchgang wieder mitzählen",
    note: "Notizen",
    group: "Bezeichnung deiner Gruppe",
    adopt: "Werte einer anderen Gruppe nehmen",
    adopt_returned: "Zurück zu den eigenen Werten",
  },
  oneMore: "Noch eine Wiederholung: ausgespült und neu gefüllt",
  moreTitle: "Wie viele Portionen sind jetzt im Becher?",
  moreOf: (portion) => short(portion),
  quickVolume: "Das Volumen, das in den Becher kam: einmal tippen",
  otherVolume: "oder eintippen / cm³",
  volumeOf: (volume_cm3) => `${short(volume_cm3)} cm³`,
  asPlanned: (volume_cm3) => `${short(volume_cm3)} cm³, wie geplant`,
  whichReading: "Welcher Wert?",
  readingName: (repeat, portion, temperature_c) =>
    portion === 0
      ? `Durchgang ${repeat}, Anfang: ${short(temperature_c)} °C`
      : `Durchgang ${repeat}, Portion ${portion}: ${short(temperature_c)} °C`,
  rightReading: "Was das Thermometer zeigte / °C",
  setAsideWhy: "Er bleibt im Protokoll und kann später wieder zählen. Warum?",
  setAside: "Nicht mitzählen",
  restoreWhy: "Welcher Durchgang zählt wieder?",
  restoreName: (repeat, reason) => `Durchgang ${repeat}${reason ? ` (nicht mitgezählt: ${german(reason)})` : ""}`,
  noteText: "Neue Notiz",
  noteAbout: "Zu",
  aboutAll: "ganzer Versuch",
  noteKeep: "Notiz behalten",
  noteWithdraw: "Zurückziehen",
  noteOf: (about, text) => `${about}: ${text}`,
  noteWithdrawn: "zurückgezogen",
  groupLabel: "Bezeichnung, etwa Gruppe 4. Keine Namen.",
  groupKeep: "So heißen",
  back: "Zurück",
};
