// One addition at one moment: its chart, its change of temperature, its heat.

import { fixed, rounded, signed } from "../format";
import type { Interval } from "../results";
import { celsiusPlaces, joulePlaces, kilojoulePlaces, plusMinus } from "./quantities";

export const once = {
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
  change: (change_c: number, u_c: number) => `${signed(change_c, celsiusPlaces(u_c))} °C`,
  changeInterval: ([low, high]: Interval, u_c: number) =>
    `95 % interval ${signed(low, celsiusPlaces(u_c))} to ${signed(high, celsiusPlaces(u_c))} °C`,
  changePlusMinus: (u_c: number) => `standard uncertainty ${plusMinus(u_c, celsiusPlaces(u_c), "less than")} °C`,
  heat: (heat_j: number) => (heat_j < 0 ? "heat taken in" : "heat given out"),
  joules: (heat_j: number, u_j: number) => `${rounded(Math.abs(heat_j), joulePlaces(u_j))} J`,
  joulesPlusMinus: (u_j: number) => `standard uncertainty ${plusMinus(u_j, joulePlaces(u_j), "less than")} J`,
  enthalpyOf: (what: string) => `enthalpy change per mole of ${what}`,
  enthalpy: (kj_mol: number, u_kj_mol: number) => `${signed(kj_mol, kilojoulePlaces(u_kj_mol))} kJ/mol`,
  enthalpyPlusMinus: (u_kj_mol: number) => `standard uncertainty ${plusMinus(u_kj_mol, kilojoulePlaces(u_kj_mol), "less than")} kJ/mol`,
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
};
