// The record to print, what can be downloaded, and readings taken over from another bench.

import { rounded, short, signed } from "../format";
import type { Plan } from "../plan";
import { cm3Places, plusMinus } from "./quantities";

export const record = {
  title: "Record",
  print: "Print, or save as PDF",
  printHint: "One side of A4.",

  fileTitle: (bench: string, day: string) => `${bench} ${day} record`,

  downloads: "Downloads",
  downloadsHint: "The files carry the bench’s name and the date.",
  files: {
    sheet: "Everything as a spreadsheet",
    readings: "Readings",
    record: "All samples",
    readingsComma: "Readings for spreadsheets that want a decimal comma",
    recordComma: "All samples for spreadsheets that want a decimal comma",
    journal: "Everything that happened, for programs",
  },

  plan: "Plan",
  planned: (plan: Plan) => {
    const repeats = `${plan.repeats} ${plan.repeats === 1 ? "repeat" : "repeats"}`;
    return `Planned: ${plan.kind === "once" ? "" : `${plan.portions.count} portions, `}${repeats}.`;
  },
  probe: "Temperatures by the station’s probe.",
  typed: (division_c: number | null) =>
    division_c === null
      ? "Temperatures read off an ordinary thermometer."
      : `Temperatures read off an ordinary thermometer with lines every ${short(division_c)} °C.`,
  virtual: "Readings of a virtual cup, not of a real one.",
  notTheirOwn: (label: string) => `Not this group’s own readings: taken over from ${label}.`,
  nothing: "Nothing has been recorded yet.",

  unsureMark: "? not sure, left out of the lines.",
  unsettledMark: "* not settled.",
  volumeMark: "In brackets: the total added in this repeat / cm³.",

  results: "Results",
  ownReading: "Your own reading",
  ownNothing: "nothing could be read",
  ownVolume: (volume_cm3: number) => `${short(volume_cm3)} cm³`,
  ownChange: (change_c: number) => `${signed(change_c, 2)} °C`,
  straight: "Straight lines",
  heat: "Heat balance",
  endPoint: (volume_cm3: number, u_cm3: number) =>
    `${rounded(volume_cm3, cm3Places(u_cm3))} ± ${plusMinus(u_cm3, cm3Places(u_cm3), "less than")} cm³`,
  acid: "concentration of the acid",
  enthalpy: "enthalpy change per mole",
  plusMinusIs: "After ±: one standard uncertainty.",

  steps: "Steps",

  happened: "Notes and corrections",
  more: (count: number) => `… and ${count} more: all of them are in the spreadsheet.`,
  at: (minutes: number, seconds: number) => `${minutes}:${String(seconds).padStart(2, "0")}`,
  where: (repeat: number | null, portion: number | null) =>
    [repeat === null ? "" : `repeat ${repeat}`, portion === null ? "" : `portion ${portion}`]
      .filter((part) => part !== "")
      .join(", "),
  line: (at: string, where: string, what: string) => `${at}  ${where === "" ? "" : `${where}: `}${what}`,
  because: (what: string, reason: string) => (reason === "" ? what : `${what}: ${reason}`),
  note: "note",
  noteWithdrawn: (text: string) => `note withdrawn: ${text}`,
  undone: "taken back, it never went in",
  volume: (volume_cm3: number) => `${short(volume_cm3)} cm³ went in`,
  unsure: "not sure, left out of the lines",
  sure: "sure again",
  early: "added before it was asked for",
  retyped: (temperature_c: number) => `reading corrected to ${short(temperature_c)} °C`,
  asked: (question: string) => `asked: ${question}`,
  aside: "set aside",
  restored: "counts again",
  probeLost: "the probe did not answer",
  probeFound: "the probe is back",
  probeOften: (times: number) => `The probe did not answer ${times} times.`,
  thermometer: (division_c: number) => `ordinary thermometer, lines every ${short(division_c)} °C`,
  probeAgain: "the station’s probe again",
  endedEarly: "finished early",
  adopted: (label: string) => `readings taken over from ${label}`,
  returned: "own readings again",
  salvaged: "the station’s record was damaged before; what could be read goes on",

  cautions: "Cautions",

  adopt: {
    about:
      "Without readings of your own you can work with those of another bench. They are marked as not your own, and yours stay in the record.",
    how: "On the other bench open “Record”, download “Readings”, and choose that file here.",
    file: "Readings file (.csv)",
    label: "Whose readings are they? Such as Bench 4",
    take: "Use these readings",
    tooLong: "This file is too long for readings. Download “Readings” on the other bench.",
    unreadable: "This file cannot be read. Choose it again.",
    readingFile: "Reading the file …",
    returnWhy: (label: string) => `You work with the readings of ${label}. Go back to your own?`,
    back: "Use our own readings again",
  },
};
