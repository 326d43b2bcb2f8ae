// Every word the page itself says. Instructions and refusals are the station's own and come with its messages.

import { ageParts } from "./age";
import type { Probe } from "./contract";
import { fixed, short, volumeDecimals } from "./format";



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
  practical: (acid: string, volume_cm3: number, alkali: string, concentration_mol_dm3: number) =>
    `${short(volume_cm3)} cm³ of ${acid} in the cup; ${alkali}, ${short(concentration_mol_dm3, 4)} mol/dm³, is added`,

  temperature: "temperature",
  noTemperature: "no reading yet",
  celsius: (temperature_c: number) => `${fixed(temperature_c, 1)} °C`,
  age: (age_s: number) => {
    const { unit, count } = ageParts(age_s);
    return unit === "now" ? "measured just now" : `measured ${count} ${unit} ago`;
  },
  frozen: "not live any more",
  totalAdded: "total added",
  volume: (volume_cm3: number) => `${short(volume_cm3)} cm³`,
  repeatOf: (repeat: number, planned: number) => `repeat ${repeat} of ${planned}`,
  portionOf: (portion: number, planned: number) => `portion ${portion} of ${planned}`,
  timeLeft: "time left",
  left: (left_s: number) => (left_s < 1 ? "any moment" : `about ${Math.ceil(left_s)} s`),
  leftUnknown: "not known yet",
  settling: "waiting for the temperature to settle",
  probe: {
    ok: "",
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
  endPoint: (volume_cm3: number, u_cm3: number) => `${fixed(volume_cm3, volumeDecimals(u_cm3))} cm³`,
  plusMinus: (u_cm3: number) => `standard uncertainty ${fixed(u_cm3, volumeDecimals(u_cm3))} cm³`,
  interval: (low: number, high: number, u_cm3: number) =>
    `95 % interval ${fixed(low, volumeDecimals(u_cm3))} to ${fixed(high, volumeDecimals(u_cm3))} cm³`,
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

  table: "Readings",
  tableVolume: "volume added / cm³",
  tableRepeat: (repeat: number) => `repeat ${repeat} / °C`,
  tableMean: "mean / °C",
  reading: (temperature_c: number) => fixed(temperature_c, 2),
  missing: "–",
  noReading: "no reading",
  atVolume: (volume_cm3: number) => `at ${short(volume_cm3)} cm³`,
  notSettled: "not settled",
  notSure: "not sure",
  setAside: (repeat: number, reason: string | null) =>
    `Repeat ${repeat} was set aside${reason ? `: ${reason}` : ""}.`,
  alkaliAt: (temperature_c: number) => `Alkali before the start: ${fixed(temperature_c, 1)} °C.`,

  corrections: "Correct, pause or finish",
  correctionNames: {
    portion_added: (portion: number) => `Portion ${portion} is already in`,
    portion_undone: (portion: number) => `Portion ${portion} was not poured`,
    portion_volume: () => "A portion had another volume",
    portion_unsure: () => "Not sure about a portion",
    repeat_restarted: () => "Start this repeat again",
    alkali_temperature: () => "Temperature of the alkali",
    pause: () => "Pause",
    resume: () => "Go on",
    finish: () => "Finish the practical",
    begin: () => "Begin",
    rinsed: () => "The cup is rinsed",
  } as Record<string, (portion: number) => string>,
  ask: {
    portion_added: (portion: number) => `Record that portion ${portion} is already in the cup?`,
    portion_undone: (portion: number) =>
      `Take portion ${portion} back? Only if it never went into the cup. The record keeps a trace of it.`,
    repeat_restarted: (repeat: number) =>
      `Repeat ${repeat} is set aside and you start again with fresh acid. Why?`,
    finish: "Finish now? The repeat under way ends here and no more portions can be added.",
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
  portionName: (repeat: number, portion: number, volume_cm3: number) =>
    `repeat ${repeat}, portion ${portion} (${short(volume_cm3)} cm³)`,
  realVolume: "Volume that went in / cm³",
  alkaliTemperature: "Temperature of the alkali / °C",
  measureAlkali: "Measure it with the probe",
  alkaliFirst: "First take the alkali’s temperature",
  reasons: ["spilled", "lost count of the portions", "the probe was out of the cup", "wrong volume of acid"],
  otherReason: "another reason",
  reasonLabel: "Reason",
  reasonText: "In your own words",
} as const;
