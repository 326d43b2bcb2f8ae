// What can be put right in which state, in the order it stands on the page.

import { kindOf } from "../../kinds";
import type { Reading, Repeat, View } from "../../live/contract";
import { runningRepeat } from "../../live/model";

type GroupName = "portions" | "repeat" | "practical" | "group";

const GROUPS: Record<GroupName, readonly string[]> = {
  portions: ["more", "portion_added", "portion_unsure", "portion_volume", "portion_undone", "reading"],
  repeat: [
    "alkali_temperature",
    "begin",
    "rinsed",
    "one_more",
    "thermometer",
    "repeat_set_aside",
    "repeat_restored",
    "repeat_restarted",
  ],
  practical: ["resume", "pause", "finish", "finish_undone"],
  group: ["note", "group", "adopt", "adopt_returned"],
};

/** A portion that can be corrected. */
export interface Choice {
  repeat: number;
  portion: number;
  volume_cm3: number;
  unsure: boolean;
  reason: string | null;
}

/** Every portion that can be corrected, the newest first. */
export function choices(view: View): Choice[] {
  const all = view.repeats
    .filter(({ status }) => status !== "set aside")
    .flatMap(({ repeat, portions }) =>
      portions.map(({ portion, volume_cm3, unsure, unsure_reason }) => ({
        repeat,
        portion,
        volume_cm3,
        unsure,
        reason: unsure_reason,
      })),
    );
  return all.reverse();
}

/** Every typed reading that can be corrected, the newest first. */
export function typedReadings(view: View): (Reading & { repeat: number; temperature_c: number })[] {
  if (view.repeats.some(({ clocked }) => clocked?.length)) return [];
  const all = view.repeats
    .filter(({ status }) => status !== "set aside")
    .flatMap(({ repeat, readings }) => readings.filter(({ typed }) => typed).map((each) => ({ ...each, repeat })));
  return all.filter((each): each is (typeof all)[number] & { temperature_c: number } => each.temperature_c !== null).reverse();
}

/** Every temperature typed by the clock that can be corrected, the newest first. */
export function clockedReadings(view: View): { repeat: number; at_s: number; temperature_c: number }[] {
  return view.repeats
    .filter(({ status }) => status !== "set aside")
    .flatMap(({ repeat, clocked }) => (clocked ?? []).map(({ at_s, temperature_c }) => ({ repeat, at_s, temperature_c })))
    .reverse();
}

/** Repeats that have ended and count: a person may leave one out. */
export const endedRepeats = (view: View): Repeat[] => view.repeats.filter(({ status }) => status === "ended");

/** Repeats that were left out and can count again. */
export const restorableRepeats = (view: View): Repeat[] =>
  view.repeats.filter(({ status, restorable }) => status === "set aside" && restorable);

/** Numbers that the students may have got to without telling the station. */
export function moreThan(view: View): number[] {
  const last = Math.min(view.portion + 4, view.portions_planned);
  return Array.from({ length: Math.max(0, last - view.portion) }, (_, index) => view.portion + 1 + index);
}

/** Volumes that a portion may well have had, near the planned one: half a step and a whole one to each side, and
 * twice; without the volume that is recorded. */
export function likelyVolumes(planned_cm3: number, recorded_cm3: number): number[] {
  const step_cm3 = planned_cm3 >= 3 ? 0.5 : planned_cm3 >= 1 ? 0.2 : 0.1 * planned_cm3;
  const likely = [-2, -1, 0, 1, 2].map((steps) => Number((planned_cm3 + steps * step_cm3).toPrecision(6)));
  return [...likely, 2 * planned_cm3].filter((volume_cm3) => volume_cm3 > 0 && volume_cm3 !== recorded_cm3);
}

function isPossible(name: string, view: View): boolean {
  const may = (act: string) => view.other_acts.includes(act);
  switch (name) {
    case "more": {
      const adds = may("portion_added") || view.instruction.act === "portion_added";
      return adds && kindOf(view.plan).inPortions && runningRepeat(view) !== undefined && view.portion < view.portions_planned;
    }
    case "portion_added":
      return may(name) && !kindOf(view.plan).inPortions && view.portion === 0;
    case "portion_unsure":
      return may(name) && choices(view).length > 0;
    case "portion_volume":
      return may(name) && !kindOf(view.plan).addsSolid(view.plan) && choices(view).length > 0;
    case "portion_undone":
      return may(name) && view.portion > 0;
    case "reading":
      return may(name) && (typedReadings(view).length > 0 || clockedReadings(view).length > 0);
    case "thermometer":
      return may(name) && view.thermometer.kind === "typed" && view.probe !== "none";
    case "alkali_temperature":
      // Where the probe is asked for, another thermometer may be read and typed.
      return may(name) || view.instruction.act === name;
    case "repeat_set_aside":
      return may(name) && endedRepeats(view).length > 0;
    case "repeat_restored":
      return may(name) && restorableRepeats(view).length > 0;
    case "rinsed":
      // After the end another repeat begins with setting the cup up.
      return may(name) && view.state !== "done";
    default:
      return may(name);
  }
}

/** What can be corrected now, by what it is about; empty groups are left out. */
export function possibleCorrections(view: View): { group: GroupName; names: string[] }[] {
  return (Object.keys(GROUPS) as GroupName[])
    .map((group) => ({ group, names: GROUPS[group].filter((name) => isPossible(name, view)) }))
    .filter(({ names }) => names.length > 0);
}
