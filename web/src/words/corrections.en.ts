// What a person can put right.

import { short } from "../format";
import { capital } from "./quantities";

export const corrections = {
  corrections: "Correct, pause or finish",
  /** What a correction is about: a numbered portion, or all that is mixed in. */
  portion: (portion: number) => `portion ${portion}`,
  whole: (name: string) => `the ${name}`,
  correctionNames: {
    portion_added: (what: string) => `${capital(what)} is already in`,
    portion_undone: (what: string) => `${capital(what)} was not added`,
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
  reasons: ["spilled", "lost count of the portions", "the probe was out of the cup", "wrong volume in the cup"] as [string, ...string[]],
  reasonsOnce: ["spilled", "added at the wrong moment", "the probe was out of the cup", "wrong amounts"] as [string, ...string[]],
  otherReason: "another reason",
  reasonLabel: "Reason",
  reasonText: "In your own words",
};
