// Was um die Anweisung herum steht: Menü, Ton, der Code des Platzes, eingetippte Werte.

import { fixed, short } from "../format";
import type { doing as en } from "./doing.en";
import type { Translated } from "./translated";

export const doing: Translated<typeof en> = {
  notFetched: "Dieser Teil ist nicht angekommen.",
  fetchAgain: "Noch einmal versuchen",

  menu: "Menü",
  menuOf: "Ansichten dieser Seite",
  places: {
    "": "Der Platz",
    guide: "Anleitung und Gefahren",
    record: "Protokoll zum Drucken",
    big: "Große Zahlen für den Beamer",
    settings: "Einstellungen",
  },
  toBench: "Zurück zum Platz",

  sound: { off: "Ton aus", on: "Ton an", asleep: "Tippen für Ton" },

  mayBeOld: "Nicht aktuell",
  atTheCup: "Am Becher den Knopf der Station drücken. Handys trocken halten.",
  dryHands: "Diese Seite nur mit sauberen, trockenen Händen berühren.",
  guideFirst: "Anleitung: Was ist im Becher, Gefahren",

  divisions: "Striche auf der Skala alle",
  divisionOf: (division_c) => `${short(division_c, 1)} °C`,
  goOnTyping: "Mit einem gewöhnlichen Thermometer weiter. Striche alle",
  typedTemperature: "Temperatur / °C",
  record: "Eintragen",
  notANumber: "Tippe eine Temperatur ein, etwa 21.5",
  outOfRange: (low_c, high_c) => `Nur ${short(low_c)} bis ${short(high_c)} °C können eingetragen werden.`,
  tooFine: (near_c) => `Ablesbar sind ${short(near_c)} °C. Noch einmal drücken behält deinen Wert.`,
  farOff: (change_c) =>
    `${fixed(Math.abs(change_c), 1)} °C ${change_c > 0 ? "über" : "unter"} dem letzten Wert. Stimmt es? Noch einmal drücken.`,
  lastReading: "letzter Wert",
  addedUnread: (portion) => `Portion ${portion} ist im Becher, nicht abgelesen`,

  toLines: "Jetzt deine eigenen Geraden",
  toResults: "Zu den Ergebnissen",
  toRecord: "Dein Protokoll",

  codeTitle: "Der Code dieses Platzes",
  codeWhy: "Er steht auf dem Schild des Platzes. Mit ihm bedient dieses Gerät den Platz.",
  code: "Code",
  giveCode: "Senden",
  leaveCode: "Jetzt nicht",
  noAnswer: "Die Station hat nicht geantwortet. Versuche es noch einmal.",
};
