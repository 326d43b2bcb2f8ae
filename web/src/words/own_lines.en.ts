// The students' own lines and reading, what results wait for, and how far off the own reading was.

import { fixed, rounded, short, signed } from "../format";
import { cm3Places, celsiusPlaces } from "./quantities";

function off(own: number, computed: number, places: number, unit: string, more: string, less: string): string {
  const apart = Number(rounded(Math.abs(own - computed), places));
  if (apart === 0) return "the same as yours";
  return `yours is ${rounded(apart, places)} ${unit} ${own > computed ? more : less}`;
}

export const ownLines = {
  title: "Your own lines first",
  task: "Draw two straight lines of best fit: one through the readings that rise, one through those that fall. Drag the handles, or choose one and use the arrow keys.",
  taskFalling: "Draw two straight lines of best fit: one through the readings before the turn, one through those after it. Drag the handles, or choose one and use the arrow keys.",
  chart: "Mean readings with your two lines",
  chartText: (points: number) => `${points} mean readings and two straight lines that you place.`,
  handle: (side: "before" | "after", volume_cm3: number) =>
    `${side === "before" ? "line before" : "line after"}, handle at ${short(volume_cm3)} cm³`,
  handleAt: (temperature_c: number) => `${fixed(temperature_c, 2)} °C`,
  crossing: (volume_cm3: number) => `neutralisation volume ${fixed(volume_cm3, 1)} cm³`,
  noCrossing: "Your lines do not cross on the graph yet.",
  type: "Type the lines instead",
  field: (side: "before" | "after", volume_cm3: number) =>
    `${side === "before" ? "line before" : "line after"} at ${short(volume_cm3)} cm³: temperature / °C`,
  own: "Our neutralisation volume / cm³",
  fromCrossing: "Taken from where your lines cross. You may type your own.",
  useCrossing: "Take it from the crossing again",
  notAVolume: (most_cm3: number) => `Type a volume between 0 and ${short(most_cm3)} cm³.`,
  commit: "This is our reading",
  commitNow: "It cannot be changed once results are shown.",
  commitWait: "You can change it until your teacher shows the results.",
  nothing: "We could not read anything",
  nothingAsk: "Record that you could not read anything? The results may follow at once.",
  nothingYes: "Yes, we could not",
  committed: (volume_cm3: number) => `Your reading: ${short(volume_cm3)} cm³`,
  committedChange: (change_c: number) => `Your reading: ${signed(change_c, 2)} °C`,
  committedNothing: "You noted that you could not read anything.",
  change: "Change our reading",
  legendBefore: "your line before",
  legendAfter: "your line after",
  legendMean: "mean reading",

  onceTitle: "Your own reading first",
  onceTask: "Read it off the curve: extend the line before and the line after to the moment of mixing. How far apart are they there?",
  onceOwn: "Our change of temperature / °C",
  onceSign: "A rise has a plus sign, a fall a minus sign.",
  notAChange: "Type a number of degrees, like +6.2 or −3.5.",

  waitsTitle: "Results",
  waits: {
    end: "Results come when the practical is done and you have made your own reading.",
    "own reading": "Results come after your own reading.",
    staff: "Results come when your teacher shows them.",
  },
  waitsEndFirst: {
    "at once": "Results come when the first repeat is done.",
    "after own reading": "Results come when the practical is done and you have made your own reading.",
    "when shown": "Results come when your teacher shows them.",
  },
  computing: "The station is working the results out …",

  compared: "Your reading and the computed ones",
  you: "your lines",
  youTyped: "your reading",
  lines: "computed straight lines",
  linesOnce: "extended lines, computed",
  heat: "heat balance",
  volume: (volume_cm3: number, u_cm3: number) =>
    `${rounded(volume_cm3, cm3Places(u_cm3))} ± ${rounded(u_cm3, cm3Places(u_cm3))} cm³`,
  ownVolume: (volume_cm3: number) => `${short(volume_cm3)} cm³`,
  changeOf: (change_c: number, u_c: number) =>
    `${signed(change_c, celsiusPlaces(u_c))} ± ${rounded(u_c, celsiusPlaces(u_c))} °C`,
  ownChange: (change_c: number) => `${signed(change_c, 2)} °C`,
  off: (own_cm3: number, computed_cm3: number) => off(own_cm3, computed_cm3, 1, "cm³", "more", "less"),
  offChange: (own_c: number, computed_c: number) => off(own_c, computed_c, 2, "°C", "higher", "lower"),
  which: "reading",
  value: "value",
  howFar: "how far yours is off",
};
