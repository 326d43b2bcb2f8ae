// Was um die Anweisung herum steht: die Bank, ihre Zahlen, wie frisch sie sind.

import { ageParts } from "../age";
import { fixed, short } from "../format";
import type { bench as en } from "./bench.en";
import { type Amount, amountParts } from "./quantities";
import { german } from "./station";
import type { Translated } from "./translated";

/** "25 cm³ Salpetersäure (0,4 mol/dm³)" */
function amount(of: Amount): string {
  const { much, strength } = amountParts(of);
  // With the amount: 4 g of a hydroxide are no solution of it.
  return `${german(`${much} of ${of.name}`)}${strength}`;
}

const UNITS_OF_TIME = { now: "", s: "s", min: "min", h: "h" };

export const bench: Translated<typeof en> = {
  station: "Messstation",
  connecting: "Verbindung zur Station wird hergestellt …",
  fromRoom: "nur zum Ansehen; zurück zum Raum",
  virtualCup: "virtueller Becher",
  speed: (factor) => `die Zeit läuft ${short(factor)} × schneller`,
  silent: "Seit mehr als 3 Sekunden kommt nichts von der Station. Was du siehst, kann veraltet sein.",
  lost: "Keine Verbindung zur Station. Schau auf die Station selbst; diese Seite holt alles von allein nach.",
  finished: "Fertig",
  readyTag: "Bereit",
  pausedTag: "Pause",
  practical: (plan) =>
    plan.kind === "once"
      ? `${amount(plan.liquid)} im Becher; ${amount(plan.addition)} auf einmal dazu`
      : `${amount(plan.acid)} im Becher; ${german(plan.alkali.name)} (${short(plan.alkali.concentration_mol_dm3, 4)} mol/dm³) in Portionen von ${short(plan.portions.volume_cm3)} cm³`,

  temperature: "Temperatur",
  noTemperature: "noch kein Messwert",
  celsius: (temperature_c) => `${fixed(temperature_c, 1)} °C`,
  age: (age_s) => {
    const { unit, count } = ageParts(age_s);
    return unit === "now" ? "gerade gemessen" : `vor ${count} ${UNITS_OF_TIME[unit]} gemessen`;
  },
  frozen: "nicht mehr aktuell",
  totalAdded: "insgesamt zugegeben",
  added: "zugegeben",
  nothingAdded: "nichts",
  addedOnce: ({ addition: { mass_g } }, total_cm3) =>
    mass_g === null ? `${short(total_cm3)} cm³` : `${short(mass_g, 3)} g`,
  volume: (volume_cm3) => `${short(volume_cm3)} cm³`,
  repeatOf: (repeat, planned) => `Durchgang ${repeat} von ${planned}`,
  portionOf: (portion, planned) => `Portion ${portion} von ${planned}`,
  timeLeft: "noch",
  left: (left_s) => (left_s < 1 ? "gleich so weit" : `etwa ${Math.ceil(left_s)} s`),
  leftUnknown: "noch nicht bekannt",
  settling: "warten, bis die Temperatur ruhig ist",
  probe: {
    ok: "",
    none: "",
    failing: "Manche Messungen schlagen fehl. Prüfe den Stecker des Fühlers.",
    lost: "Der Fühler antwortet nicht. Prüfe, ob er eingesteckt ist; der Versuch geht weiter, sobald er wieder da ist.",
  },
  bad: {
    empty: "keine Antwort",
    crc: "unleserlich",
    zeros: "Kurzschluss auf der Datenleitung",
    garbled: "unleserlich",
    power_on: "der Fühler war ohne Strom",
    out_of_range: "außerhalb des Messbereichs",
    jump: "ein unmöglicher Sprung",
    gone: "der Fühler ist nicht eingesteckt",
    several: "mehrere Fühler sind eingesteckt",
    other_probe: "ein anderer Fühler als bisher ist eingesteckt",
    not_read: "die Station konnte ihn nicht lesen",
    no_answer: "keine rechtzeitige Antwort",
  },
  badSample: (kind) => `neuester Messwert weggelassen: ${kind}`,

  inMemory: "Ergebnisse werden nicht aufbewahrt: Ohne Strom sind sie weg. Hol deine Lehrkraft.",
  fault: (reason) => `Im Moment kann nichts aufgezeichnet werden. Hol deine Lehrkraft. (${german(reason)})`,
  question: "Eine Frage",
  moreQuestions: (more) => (more === 1 ? "danach noch eine Frage" : `danach noch ${more} Fragen`),
  sending: "Wird gesendet …",
  unanswered:
    "Die Station hat nicht geantwortet; vielleicht ist es aufgezeichnet, vielleicht nicht. Drück noch einmal: Doppelt gezählt wird nie.",
  close: "Schließen",
};
