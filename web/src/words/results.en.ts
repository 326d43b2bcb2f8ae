// The two end-points of a titration, and the remarks beside them.

import { fixed, rounded } from "../format";
import type { Interval } from "../results";
import { cm3Places, plusMinus } from "./quantities";

export const results = {
  byStraightLines: "Where the straight lines cross",
  byHeatBalance: "Heat balance of the whole trace",
  endPoint: (volume_cm3: number, u_cm3: number) => `${rounded(volume_cm3, cm3Places(u_cm3))} cm³`,
  plusMinus: (u_cm3: number) => `standard uncertainty ${plusMinus(u_cm3, cm3Places(u_cm3), "less than")} cm³`,
  interval: ([low, high]: Interval, u_cm3: number) =>
    `95 % interval ${rounded(low, cm3Places(u_cm3))} to ${rounded(high, cm3Places(u_cm3))} cm³`,
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
};
