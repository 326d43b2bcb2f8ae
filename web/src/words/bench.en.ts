// What stands around the instruction: the bench, its numbers, how fresh they are.

import { ageParts } from "../age";
import type { Probe } from "../contract";
import { fixed, short } from "../format";
import type { OncePlan, Plan } from "../plan";
import { type Amount, amountParts } from "./quantities";

/** "25 cm³ of nitric acid (0.4 mol/dm³)" */
function amount(of: Amount): string {
  const { much, strength } = amountParts(of);
  return `${much} of ${of.name}${strength}`;
}

export const bench = {
  station: "Bench station",
  connecting: "Connecting to the station …",
  virtualCup: "virtual cup",
  fromRoom: "to look at only; back to the room",
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
  nothingAdded: "none",
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
    several: "several probes are plugged in",
    other_probe: "another probe than before is plugged in",
    not_read: "the station could not read it",
    no_answer: "no answer in time",
  } as Record<string, string>,
  badSample: (kind: string) => `newest sample left out: ${kind}`,

  inMemory: "Results are not being kept: they are gone when the power is cut. Call your teacher.",
  fault: (reason: string) => `Nothing can be recorded just now. Call your teacher. (${reason})`,
  question: "A question",
  moreQuestions: (more: number) => (more === 1 ? "one more question after this" : `${more} more questions after this`),
  sending: "Sending …",
  unanswered:
    "The station did not answer, so this may or may not be recorded. Press again: it is never counted twice.",
  close: "Close",
};
