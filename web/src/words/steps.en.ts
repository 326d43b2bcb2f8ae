// How every number was worked out, the accepted value, questions to think about, and the own judgement.

import { fixed, placesFor, rounded } from "../format";

/** A worked number as its uncertainty deserves; one without has three figures, as in school. */
export function worked(value: number, u: number | null, unit: string): string {
  const places = u ? placesFor(u, 6) : Math.max(0, 2 - Math.floor(Math.log10(Math.abs(value) || 1)));
  const plusMinus = u ? ` ± ${rounded(u, places)}` : "";
  return `${rounded(value, places)}${plusMinus}${unit ? ` ${unit}` : ""}`;
}

export const steps = {
  open: "How every number was worked out",
  whose: "Numbers of",
  ofMean: "mean",
  byLines: "From the straight lines",
  byHeat: "By the heat balance",
  opens: "Open a number to see the line that made it.",
  worked,
  accepted: "Accepted value",
  acceptedValue: (enthalpy_kj_mol: number, u: number) => `${fixed(enthalpy_kj_mol, 1)} ± ${fixed(u, 1)} kJ/mol`,
  yours: (enthalpy_kj_mol: number, u: number) => `Yours, by heat balance: ${worked(enthalpy_kj_mol, u, "kJ/mol")}`,
  source: (source: string) => `Source: ${source}`,
  think: "Questions for your evaluation",
  questions: [
    "Which way did heat leave the cup while you measured? Would that make your temperatures, your end-point and your enthalpy too high or too low? How could you find out?",
    "Your thermometer shows temperatures in steps. How big is one step beside the whole change of temperature? Which of your numbers depends on it most?",
    "How well do you know the volume in the cup, and of each portion? If every portion had been 2 % too large, which numbers would change, and which way?",
    "How far apart are your repeats? Is that more or less than the ± says? What could be different from one repeat to the next?",
    "Is the difference between your value and the accepted one larger than the two ± together? If so: what is not in the ±?",
  ],
  questionsOnce: [
    "Which way did heat flow between the cup and the room while you measured? Would that make your change of temperature too large or too small? How could you find out?",
    "Your thermometer shows temperatures in steps. How big is one step beside the whole change of temperature?",
    "How well do you know the amounts that were mixed? If one of them had been 2 % too large, which numbers would change, and which way?",
    "How far apart are your repeats? Is that more or less than the ± says? What could be different from one repeat to the next?",
    "Is the difference between your value and the accepted one larger than the two ± together? If so: what is not in the ±?",
  ],

  judgement: "Your own judgement and the station’s",
  portion: "portion",
  repeatTitle: (repeat: number) => `Repeat ${repeat}`,
  ownWaited: "you, after / s",
  ownRead: "you / °C",
  stationWaited: "station, after / s",
  stationRead: "station / °C",
  seconds: (s: number) => fixed(s, 0),
  degrees: (c: number) => fixed(c, 2),
  start: "start",
  cost: "What the difference cost",
  byYou: "you",
  byStation: "the station",
  time: "time taken",
  endPoint: "end-point",
  minutes: (minutes: number) => `${fixed(minutes, 1)} min`,
  volume: (volume_cm3: number) => `${fixed(volume_cm3, 1)} cm³`,
};
