// Every word the page itself says. Instructions and refusals are the station's own and come with its messages.

import { ageParts } from "./age";
import type { Probe } from "./contract";
import { fixed, placesFor, rounded, short, signed } from "./format";
import type { OncePlan, Plan, Substance } from "./plan";
import type { Interval } from "./results";

/** A volume is never known better than to 0.01 cm³, nor a change of temperature to 0.01 °C. */
const cm3 = (u_cm3: number) => placesFor(u_cm3, 2);
const celsius = (u_c: number) => placesFor(u_c, 2);
const joule = (u_j: number) => placesFor(u_j, 0);
const kilojoule = (u_kj: number) => placesFor(u_kj, 1);

function plusMinus(u: number, places: number): string {
  const text = rounded(u, places);
  return Number(text) === 0 ? `less than ${rounded(10 ** -places, places)}` : text;
}

/** "25 cm³ of nitric acid, 0.4 mol/dm³" */
function amount({ name, volume_cm3, concentration_mol_dm3, mass_g = null }: Omit<Substance, "mass_g"> & { mass_g?: number | null }): string {
  if (mass_g !== null) return `${short(mass_g, 3)} g of ${name}`;
  const strength = concentration_mol_dm3 === null ? "" : ` (${short(concentration_mol_dm3, 4)} mol/dm³)`;
  return `${short(volume_cm3 ?? 0)} cm³ of ${name}${strength}`;
}

const Capital = (text: string) => text.charAt(0).toUpperCase() + text.slice(1);

export const words = {
  station: "Bench station",
  connecting: "Connecting to the station …",
  virtualCup: "virtual cup",
  speed: (factor: number) => `time runs ${short(factor)} × faster`,
  silent: "Nothing heard from the station for more than 3 seconds. What you see may be out of date.",
  lost: "No contact with the station. Look at the bench itself; this page catches up by itself.",
  finished: "Done",
  readyTag: "Ready",
  pausedTag: "Paused",
  practical: (plan: Plan) =>
    plan.kind === "once"
      ? `${amount(plan.liquid)} in the cup; ${amount(plan.addition)} all at once`
      : `${amount(plan.acid)} in the cup; ${plan.alkali.name} (${short(plan.alkali.concentration_mol_dm3, 4)} mol/dm³) in ${short(plan.portions.volume_cm3)} cm³ portions`,

  temperature: "temperature",
  noTemperature: "no reading yet",
  celsius: (temperature_c: number) => `${fixed(temperature_c, 1)} °C`,
  age: (age_s: number) => {
    const { unit, count } = ageParts(age_s);
    return unit === "now" ? "measured just now" : `measured ${count} ${unit} ago`;
  },
  frozen: "not live any more",
  totalAdded: "total added",
  added: "added",
  nothingAdded: "nothing yet",
  addedOnce: ({ addition: { mass_g } }: OncePlan, total_cm3: number) =>
    mass_g === null ? `${short(total_cm3)} cm³` : `${short(mass_g, 3)} g`,
  volume: (volume_cm3: number) => `${short(volume_cm3)} cm³`,
  repeatOf: (repeat: number, planned: number) => `repeat ${repeat} of ${planned}`,
  portionOf: (portion: number, planned: number) => `portion ${portion} of ${planned}`,
  timeLeft: "time left",
  left: (left_s: number) => (left_s < 1 ? "any moment" : `about ${Math.ceil(left_s)} s`),
  leftUnknown: "not known yet",
  settling: "waiting for the temperature to settle",
  probe: {
    ok: "",
    none: "",
    failing: "Some readings fail. Check the probe’s plug.",
    lost: "The probe does not answer. Check that it is plugged in; the practical goes on when it is back.",
  } satisfies Record<Probe, string>,
  bad: {
    empty: "no answer",
    crc: "garbled",
    zeros: "short circuit on the data wire",
    garbled: "garbled",
    power_on: "the probe lost its power",
    out_of_range: "out of range",
    jump: "an impossible jump",
    gone: "the probe is unplugged",
    no_answer: "no answer in time",
  } as Record<string, string>,
  badSample: (kind: string) => `newest sample left out: ${kind}`,

  fault: (reason: string) => `Nothing can be recorded just now. Call your teacher. (${reason})`,
  question: "A question",
  moreQuestions: (more: number) => (more === 1 ? "one more question after this" : `${more} more questions after this`),
  sending: "Sending …",
  unanswered:
    "The station did not answer, so this may or may not be recorded. Press again: it is never counted twice.",
  close: "Close",

  volumeChart: "Temperature against volume added",
  timeChart: (portion: number) =>
    portion === 0 ? "Before the first portion" : `Since portion ${portion} went in`,
  temperatureAxis: "temperature / °C",
  volumeAxis: "volume of alkali added / cm³",
  sincePourAxis: "time since the pour / s",
  sinceStartAxis: "time since the start / s",
  repeatName: (repeat: number) => `repeat ${repeat}`,
  mean: "mean",
  lineBefore: "line before",
  lineAfter: "line after",
  crossing: "crossing",
  settledAt: (temperature_c: number) => `settled at ${fixed(temperature_c, 2)} °C`,
  volumeChartText: (points: number) =>
    points === 0 ? "No readings yet." : `${points} readings; the table below gives them all.`,

  byStraightLines: "Where the straight lines cross",
  byHeatBalance: "Heat balance of the whole trace",
  endPoint: (volume_cm3: number, u_cm3: number) => `${rounded(volume_cm3, cm3(u_cm3))} cm³`,
  plusMinus: (u_cm3: number) => `standard uncertainty ${plusMinus(u_cm3, cm3(u_cm3))} cm³`,
  interval: ([low, high]: Interval, u_cm3: number) =>
    `95 % interval ${rounded(low, cm3(u_cm3))} to ${rounded(high, cm3(u_cm3))} cm³`,
  scatterOnly: (bias_cm3: number | null) => {
    const known = "The ± knows only how the readings scatter.";
    if (bias_cm3 === null || Math.abs(bias_cm3) < 0.05) return known;
    const side = bias_cm3 < 0 ? "low" : "high";
    return `${known} Lines through uncorrected readings are expected to cross about ${fixed(Math.abs(bias_cm3), 1)} cm³ too ${side} here.`;
  },
  heatBalanceKnows: "Allows for the growing volume, the loss to the room and the probe’s lag.",
  notDescribed: "The model does not describe this trace well: take this with care.",
  refused: (reason: string) => `The lines give no crossing. ${reason}`,
  refusedHeat: (reason: string) => `No heat balance. ${reason}`,
  remarks: "Worth a thought",
  inRepeats: (repeats: readonly number[]) =>
    repeats.length === 1 ? `Repeat ${repeats[0]}` : `Repeats ${repeats.slice(0, -1).join(", ")} and ${repeats[repeats.length - 1]}`,
  remarkOf: (where: string, remark: string) => `${where}: ${remark}`,

  onceChart: "Temperature against time",
  sinceRepeatAxis: "time since the start of the repeat / s",
  mixed: "mixed",
  onceChartText: (repeats: number, change: string | null) =>
    repeats === 0
      ? "No temperatures yet."
      : `The temperature over time of ${repeats} ${repeats === 1 ? "repeat" : "repeats"}.${change === null ? "" : ` Both lines extended to the moment of mixing are ${change} apart.`} The table below gives the numbers.`,
  lineReadOff: "straight line",
  lineExtended: "extended to the moment of mixing",
  whichLines: "Lines of",
  byExtendedLines: "Extended straight lines",
  change: (change_c: number, u_c: number) => `${signed(change_c, celsius(u_c))} °C`,
  changeInterval: ([low, high]: Interval, u_c: number) =>
    `95 % interval ${signed(low, celsius(u_c))} to ${signed(high, celsius(u_c))} °C`,
  changePlusMinus: (u_c: number) => `standard uncertainty ${plusMinus(u_c, celsius(u_c))} °C`,
  heat: (heat_j: number) => (heat_j < 0 ? "heat taken in" : "heat given out"),
  joules: (heat_j: number, u_j: number) => `${rounded(Math.abs(heat_j), joule(u_j))} J`,
  joulesPlusMinus: (u_j: number) => `standard uncertainty ${plusMinus(u_j, joule(u_j))} J`,
  enthalpyOf: (what: string) => `enthalpy change per mole of ${what}`,
  enthalpy: (kj_mol: number, u_kj_mol: number) => `${signed(kj_mol, kilojoule(u_kj_mol))} kJ/mol`,
  enthalpyPlusMinus: (u_kj_mol: number) => `standard uncertainty ${plusMinus(u_kj_mol, kilojoule(u_kj_mol))} kJ/mol`,
  linesKnow: (change_c: number, bias_c: number | null) => {
    const known = "The ± of the change knows only how the readings scatter.";
    if (bias_c === null) return `${known} A slow cup wall, or a reaction that goes on, shifts the lines by more.`;
    if (Math.abs(bias_c) < 0.01) return known;
    const side = bias_c * change_c > 0 ? "large" : "small";
    return `${known} Lines drawn like this are expected to show a change about ${fixed(Math.abs(bias_c), 2)} °C too ${side} here.`;
  },
  heatOnceKnows: "Allows for the loss to the room, the probe’s lag and the time that mixing takes.",
  addedUnknown: (name: string) => `Nobody measured how warm the ${name} was: the ± of the heat allows for that.`,
  refusedChange: (reason: string) => `The lines give no change of temperature. ${reason}`,

  table: "Readings",
  tableVolume: "volume added / cm³",
  tableRepeat: (repeat: number) => `repeat ${repeat} / °C`,
  tableMean: "mean / °C",
  onceTable: "Numbers of each repeat / °C",
  quantity: "temperature",
  rows: {
    start: "start",
    before: "line before",
    after: "line after",
    change: "change, lines",
    heatChange: "change, heat balance",
    end: "end",
  },
  reading: (temperature_c: number) => fixed(temperature_c, 2),
  missing: "–",
  noReading: "no reading",
  atVolume: (volume_cm3: number) => `at ${short(volume_cm3)} cm³`,
  notSettled: "not settled",
  notSure: "not sure",
  setAside: (repeat: number, reason: string | null) =>
    `Repeat ${repeat} was set aside${reason ? `: ${reason}` : ""}.`,
  addedAt: (name: string, temperature_c: number) => `${Capital(name)} before the start: ${fixed(temperature_c, 1)} °C.`,

  corrections: "Correct, pause or finish",
  /** What a correction is about: a numbered portion, or all that is mixed in. */
  portion: (portion: number) => `portion ${portion}`,
  whole: (name: string) => `the ${name}`,
  correctionNames: {
    portion_added: (what: string) => `${Capital(what)} is already in`,
    portion_undone: (what: string) => `${Capital(what)} was not added`,
    portion_volume: () => "Another volume went in",
    portion_unsure: () => "Not sure what went in",
    repeat_restarted: () => "Start this repeat again",
    alkali_temperature: (_: string, added: string) => `Temperature of the ${added}`,
    pause: () => "Pause",
    resume: () => "Go on",
    finish: () => "Finish the practical",
    begin: () => "Begin",
    rinsed: () => "The cup is rinsed",
  } as Record<string, (what: string, added: string) => string>,
  ask: {
    portion_added: (what: string) => `Record that ${what} is already in the cup?`,
    portion_undone: (what: string) =>
      `Take ${what} back? Only if it never went into the cup. The record keeps a trace of it.`,
    repeat_restarted: (repeat: number) => `Repeat ${repeat} is set aside and you start it again. Why?`,
    finish: "Finish now? The repeat under way ends here and nothing more can be added.",
  },
  yes: {
    portion_added: "Yes, it is in",
    portion_undone: "Yes, take it back",
    portion_volume: "Record this volume",
    portion_unsure: "Mark as not sure",
    repeat_restarted: "Yes, start again",
    finish: "Yes, finish",
    alkali_temperature: "Record this temperature",
  } as Record<string, string>,
  no: "No, leave it",
  whichPortion: "Which portion?",
  whichRepeat: "Which repeat?",
  portionName: (repeat: number, portion: number, volume_cm3: number) =>
    `repeat ${repeat}, portion ${portion} (${short(volume_cm3)} cm³)`,
  onceName: (repeat: number, volume_cm3: number) =>
    volume_cm3 > 0 ? `repeat ${repeat} (${short(volume_cm3)} cm³)` : `repeat ${repeat}`,
  realVolume: "Volume that went in / cm³",
  addedTemperature: (added: string) => `Temperature of the ${added} / °C`,
  measureWithProbe: "Measure it with the probe",
  addedFirst: (added: string) => `First take the ${added}’s temperature`,
  alkali: "alkali",
  reasons: ["spilled", "lost count of the portions", "the probe was out of the cup", "wrong volume in the cup"],
  reasonsOnce: ["spilled", "added at the wrong moment", "the probe was out of the cup", "wrong amounts"],
  otherReason: "another reason",
  reasonLabel: "Reason",
  reasonText: "In your own words",
} as const;
