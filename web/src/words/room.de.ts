// Die Seite des Raums: Übersicht, Stunden, Klassenergebnis.

import { ageParts } from "../age";
import { fixed, placesFor, rounded } from "../format";
import type { room as en } from "./room.en";
import { germanOfStaff as german } from "./staff";
import type { Translated } from "./translated";

function lasting(seconds: number): string {
  return seconds < 90 ? `${Math.round(seconds)} s` : `${Math.round(seconds / 60)} min`;
}

export const room: Translated<typeof en> = {
  connecting: "Der Raum wird gefragt …",
  lost: "Seit einigen Sekunden ist vom Raum nichts zu hören. Was hier steht, kann veraltet sein.",
  fault: (reason) => `Der Raum kann gerade nichts sammeln: ${german(reason)}`,
  none: "Noch kein Arbeitsplatz war zu hören. Sie erscheinen hier von selbst.",
  lesson: (label, began) => (label ? `${label}, seit ${began}` : `Stunde seit ${began}`),
  noLesson: "Es läuft keine Stunde.",
  counts: (help, look, all) =>
    help + look === 0 ? `Alle ${all} Plätze kommen zurecht.` : `${help} brauchen Hilfe, nach ${look} ist zu sehen, von ${all} Plätzen.`,
  needs: { 0: "", 1: "", 2: "Nachsehen", 3: "Braucht Hilfe" },
  states: {
    ready: "nicht begonnen",
    alkali: "Temperatur der Lauge",
    start: "Anfangstemperatur",
    pour: "soll zugeben",
    settle: "stellt sich ein",
    rinse: "spült",
    paused: "pausiert",
    done: "fertig",
    unknown: "noch nichts bekannt",
  },
  where: ({ repeat, repeats_planned, portion, portions_planned }) =>
    `Durchgang ${repeat}/${repeats_planned}, Portion ${portion}/${portions_planned}`,
  celsius: (temperature_c) => `${fixed(temperature_c, 1)} °C`,
  noTemperature: "– °C",
  age: (age_s) => {
    const { unit, count } = ageParts(age_s);
    return unit === "now" ? "jetzt" : `vor ${count} ${unit}`;
  },
  waits: (waits_s, usual_s) =>
    usual_s === null ? lasting(waits_s) : `${lasting(waits_s)} (Klasse ${lasting(usual_s)})`,
  reasons: {
    trouble: ({ text = "" }) => german(text),
    unreadable: () => "Seine Aufzeichnung ergibt hier keinen Sinn: dort einen neuen Versuch beginnen.",
    silent: ({ seconds = 0 }) => `Seit ${lasting(seconds)} nichts gehört.`,
    probe_lost: () => "Der Fühler antwortet nicht.",
    bad_readings: ({ count = 0 }) => `${count} der letzten Messungen misslangen: Stecker prüfen.`,
    not_begun: () => "Hat nicht begonnen.",
    stuck: ({ seconds = 0 }) => `Seit ${lasting(seconds)} ist nichts geschehen.`,
    slow: ({ seconds = 0 }) => `Braucht lange: ${lasting(seconds)} bei diesem Schritt.`,
    paused: ({ seconds = 0 }) => `Pausiert seit ${lasting(seconds)}.`,
    behind: () => "Hinter der Klasse zurück.",
    question: ({ text = "" }) => `Offene Frage: ${german(text)}`,
    started_again: ({ count = 0 }) => `${count} Durchgänge zählen nicht.`,
    set_aside: ({ text = "" }) => `Hat einen Durchgang neu begonnen: ${text}`,
  },
  open: (name) => `Seite von ${name} öffnen`,
  choose: (name) => `${name} auswählen`,
  projector: "Für den Beamer",
  noProjector: "Zurück zur Übersicht",
  boardTitle: "Arbeitsplätze",

  tellTitle: "Den Plätzen sagen",
  toAll: "Alle Plätze",
  toSome: (count) => (count === 1 ? "Ein Platz ausgewählt" : `${count} Plätze ausgewählt`),
  chooseSome: "Einige auswählen",
  chooseAll: "Wieder alle",
  acts: {
    show: "Ergebnisse zeigen",
    hold: "Ergebnisse zurückhalten",
    quiet: "Summer stumm schalten",
    loud: "Summer tönen lassen",
    pause: "Anhalten",
    resume: "Weiter",
  },
  rename: "Umbenennen",
  newName: "Neuer Name des Platzes",
  setAside: "Einen Durchgang nicht mitzählen",
  whichRepeat: "Welcher Durchgang",
  repeatName: (repeat) => `Durchgang ${repeat}`,
  why: "Warum",
  told: "Gesagt. Ein Platz, der gerade fehlt, holt es nach.",
  noAnswer: "Der Raum hat nicht geantwortet. Es wurde nichts gesagt; bitte noch einmal.",
  left: "Noch nicht getan",
  leftPending: (act, benches) => `${act}: ${benches} (nicht da)`,
  leftRefused: (act, bench, why) => `${act}: ${bench} tat es nicht: ${german(why)}`,
  orderNames: {
    choose_plan: "Neuer Versuch",
    show_results: "Ergebnisse",
    quiet: "Summer",
    rename: "Umbenennen",
    set_aside: "Nicht mitzählen",
    pause: "Anhalten",
    resume: "Weiter",
  },
  takeBack: "Zurücknehmen, was noch nicht getan ist",

  lessonTitle: "Stunde",
  begin: "Eine Stunde beginnen",
  beginWhy:
    "Jeder Platz beginnt einen neuen Versuch; was gemessen wurde, bleibt erhalten. Ein Platz mitten in einem Durchgang macht weiter; ihm ist es noch einmal zu sagen, wenn er fertig ist.",
  label: "Klasse (eine Bezeichnung, keine Namen)",
  plan: "Plan",
  ownPlan: "der, den jeder Platz hat",
  planInFile: "aus einer Datei",
  planFile: "Plan (plan.toml)",
  confirm: "Falls eine Lösung stärker als 1.0 mol/dm³ ist: nach der Gefährdungsbeurteilung der Schule geprüft.",
  newPractical: "Einen neuen Versuch beginnen",
  noPlan: "Diese Datei kann kein Plan sein: Sie ist zu groß oder lässt sich nicht lesen.",
  end: "Die Stunde beenden",
  lessonsTitle: "Stunden",
  noLessons: "Noch keine Stunde.",
  lessonHead: { began: "Beginn", label: "Klasse", benches: "Plätze", result: "Klassenergebnis" },
  toResult: "Öffnen",
  underWay: "läuft",

  address: "Andere Geräte finden den Raum unter",
  qr: (address) => `QR-Code von ${address}`,

  classTitle: "Klassenergebnis",
  withheld: "Das Klassenergebnis wird zurückgehalten, bis jeder Platz seines zeigt: Es würde den anderen ihres verraten.",
  waitsFor: (benches) => `Noch zurückgehalten an: ${benches}.`,
  nobody: "Noch kein Platz hat begonnen.",
  calculating: "Wird gerechnet …",
  meaning: "Was es sagt",
  quantities: {
    end_point_cm3: "Endpunkt",
    enthalpy_kj_mol: "Enthalpie",
    change_c: "Temperaturänderung",
  },
  methods: { heat_balance: "Wärmebilanz", straight_lines: "Geraden" },
  inUnit: (quantity) => ({ end_point_cm3: "cm³", enthalpy_kj_mol: "kJ/mol", change_c: "°C" })[quantity],
  value: (value, u) => {
    const places = placesFor(u, 2);
    return `${rounded(value, places)} ± ${rounded(u, places)}`;
  },
  plotTitle: (quantity, method) => `${quantity} nach: ${method}`,
  plotWhy:
    "Ein Punkt ist der Wert eines Platzes, sein Strich der 95-%-Bereich; ein Pfeil: Er geht weiter. Das Band ist der Mittelwert der Klasse mit seinem 95-%-Bereich.",
  plotValue: (name, value, low, high) => `${name}: ${value} (95 %: ${low} bis ${high})`,
  classMean: "Klasse",
  tableTitle: "Alle Plätze",
  bench: "Platz",
  repeats: "Durchgänge",
  noValue: "keiner",
  notPooled: "anderer Plan",
  oddTitle: "Plätze, die abweichen",
  oddWhy: "Von selbst wird nichts weggelassen.",
  noOdd: "Kein Platz weicht von den anderen ab.",
  curveTitle: "Mittlere Kurve der Klasse",
  curveAcross: "Lauge zugegeben / cm³",
  curveUp: "Änderung seit dem Anfang / °C",
  curveWhy: (count) => `Mittel von ${count} Plätzen; die Striche sind die Streuung zwischen den Plätzen (eine Standardabweichung).`,
  files: "Zum Mitnehmen",
  fileNames: {
    sheet: "Alles als Tabelle",
    results: "Ergebnisse aller Plätze",
    resultsComma: "Ergebnisse, Dezimalkomma",
    readings: "Ablesungen aller Plätze",
    readingsComma: "Ablesungen, Dezimalkomma",
    events: "Jedes Ereignis jedes Platzes",
  },
  print: "Das Klassenblatt drucken",
  printHint: "Eine Seite A4.",
  fileTitle: (label, day) => `${label || "Klasse"} ${day}`,
};
