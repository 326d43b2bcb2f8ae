// Das Protokoll zum Drucken, was heruntergeladen werden kann, und Werte, die von einem anderen Platz übernommen sind.

import { rounded, short, signed } from "../format";
import { cm3Places, plusMinus } from "./quantities";
import type { record as en } from "./record.en";
import type { Translated } from "./translated";

export const record: Translated<typeof en> = {
  title: "Protokoll",
  print: "Drucken oder als PDF sichern",
  printHint: "Eine Seite A4.",

  fileTitle: (bench, day) => `${bench} ${day} Protokoll`,

  downloads: "Herunterladen",
  downloadsHint: "Die Dateien heißen nach Platz und Datum.",
  files: {
    sheet: "Alles als Tabellendokument",
    readings: "Messwerte",
    record: "Alle Temperaturen",
    readingsComma: "Messwerte für Tabellenprogramme mit Dezimalkomma",
    recordComma: "Alle Temperaturen für Tabellenprogramme mit Dezimalkomma",
    journal: "Alles, was geschah, für Programme",
  },

  plan: "Plan",
  planned: (plan) => {
    const repeats = `${plan.repeats} ${plan.repeats === 1 ? "Durchgang" : "Durchgänge"}`;
    return `Geplant: ${plan.kind === "once" ? "" : `${plan.portions.count} Portionen, `}${repeats}.`;
  },
  probe: "Temperaturen vom Fühler der Station.",
  typed: (division_c) =>
    division_c === null
      ? "Temperaturen an einem gewöhnlichen Thermometer abgelesen."
      : `Temperaturen an einem gewöhnlichen Thermometer abgelesen, ein Strich alle ${short(division_c)} °C.`,
  virtual: "Werte aus einem virtuellen Becher, nicht aus einem echten.",
  notTheirOwn: (label) => `Nicht die eigenen Messwerte dieser Gruppe: übernommen von ${label}.`,
  nothing: "Noch ist nichts aufgezeichnet.",

  unsureMark: "? unsicher, für die Geraden nicht verwendet.",
  unsettledMark: "* nicht zur Ruhe gekommen.",
  volumeMark: "In Klammern: in diesem Durchgang zugegeben / cm³.",

  results: "Ergebnisse",
  ownReading: "Deine eigene Ablesung",
  ownNothing: "nichts ließ sich ablesen",
  ownVolume: (volume_cm3) => `${short(volume_cm3)} cm³`,
  ownChange: (change_c) => `${signed(change_c, 2)} °C`,
  straight: "Geraden",
  heat: "Wärmebilanz",
  endPoint: (volume_cm3, u_cm3) =>
    `${rounded(volume_cm3, cm3Places(u_cm3))} ± ${plusMinus(u_cm3, cm3Places(u_cm3), "weniger als")} cm³`,
  acid: "Konzentration der Säure",
  enthalpy: "molare Enthalpieänderung",
  plusMinusIs: "Hinter ±: eine Standardunsicherheit.",

  steps: "Rechenweg",

  happened: "Notizen und Korrekturen",
  more: (count) => `… und ${count} weitere: alle stehen im Tabellendokument.`,
  at: (minutes, seconds) => `${minutes}:${String(seconds).padStart(2, "0")}`,
  where: (repeat, portion) =>
    [repeat === null ? "" : `Durchgang ${repeat}`, portion === null ? "" : `Portion ${portion}`]
      .filter((part) => part !== "")
      .join(", "),
  line: (at, where, what) => `${at}  ${where === "" ? "" : `${where}: `}${what}`,
  because: (what, reason) => (reason === "" ? what : `${what}: ${reason}`),
  note: "Notiz",
  noteWithdrawn: (text) => `Notiz zurückgezogen: ${text}`,
  undone: "zurückgenommen, sie kam nie in den Becher",
  volume: (volume_cm3) => `${short(volume_cm3)} cm³ kamen in den Becher`,
  unsure: "unsicher, für die Geraden nicht verwendet",
  sure: "doch sicher",
  early: "zugegeben, bevor sie verlangt war",
  retyped: (temperature_c) => `Messwert berichtigt: ${short(temperature_c)} °C`,
  asked: (question) => `gefragt: ${question}`,
  aside: "nicht mitgezählt",
  restored: "zählt wieder",
  probeLost: "der Fühler antwortete nicht",
  probeFound: "der Fühler ist wieder da",
  probeOften: (times) => `Der Fühler antwortete ${times}-mal nicht.`,
  thermometer: (division_c) => `gewöhnliches Thermometer, ein Strich alle ${short(division_c)} °C`,
  probeAgain: "wieder der Fühler der Station",
  endedEarly: "vorzeitig beendet",
  adopted: (label) => `Messwerte von ${label} übernommen`,
  returned: "wieder die eigenen Messwerte",
  salvaged: "die Aufzeichnung der Station war beschädigt; was lesbar war, geht weiter",

  cautions: "Vorsicht",

  adopt: {
    about:
      "Ohne eigene Messwerte kannst du mit denen eines anderen Platzes arbeiten. Sie sind als nicht deine eigenen gekennzeichnet, und deine bleiben in der Aufzeichnung.",
    how: "Öffne am anderen Platz das „Protokoll“, lade „Messwerte“ herunter und wähle diese Datei hier aus.",
    file: "Datei mit Messwerten (.csv)",
    label: "Wessen Messwerte sind es? Etwa Platz 4",
    take: "Diese Messwerte nehmen",
    tooLong: "Diese Datei ist zu lang für Messwerte. Lade am anderen Platz „Messwerte“ herunter.",
    unreadable: "Diese Datei lässt sich nicht lesen. Wähle sie noch einmal aus.",
    readingFile: "Die Datei wird gelesen …",
    returnWhy: (label) => `Du arbeitest mit den Messwerten von ${label}. Wieder die eigenen nehmen?`,
    back: "Wieder meine eigenen Messwerte",
  },
};
