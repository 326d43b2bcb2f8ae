// Why the two end-points differ, step by step.

import { fixed, rounded, short, signed } from "../format";
import { cm3Places } from "./quantities";

const volume = (volume_cm3: number, u_cm3: number) => `${rounded(volume_cm3, cm3Places(u_cm3))} cm³`;

export const why = {
  open: "Why do the two end-points differ?",
  openLow: "Why do straight lines come out low?",
  title: "Why straight lines come out low",
  titleOther: "Why the two end-points differ",
  chart: "The explanation as a chart",
  which: (repeat: number | null) =>
    repeat === null ? "Shown with the mean of your own readings." : `Shown with your own readings of repeat ${repeat}.`,
  step: (step: number, of: number) => `Step ${step} of ${of}`,
  back: "Back",
  next: "Next",
  closeIt: "Close",
  notPossible: "There is no corrected curve of these readings, so it is told in words only.",
  names: ["Two straight lines", "More and more liquid", "So the arms bend", "The same liquid for every portion", "Where it really turns"],
  measured: "your readings",
  corrected: "readings with the same liquid for every portion",
  liquid: "liquid in the cup",
  liquidAt: (liquid_cm3: number) => `${short(Math.round(liquid_cm3))} cm³`,
  change: (change_c: number) => `${signed(change_c, 2)} °C`,
  crossingName: "crossing",
  heatName: "heat balance",
  two: (crossing_cm3: number, u_cm3: number) =>
    `The two lines of best fit through your readings cross at ${volume(crossing_cm3, u_cm3)}. A line of best fit takes for granted that the readings really lie on a straight line. Do they?`,
  more: (first: { portion: number; liquid_cm3: number; change_c: number }, last: { portion: number; liquid_cm3: number; change_c: number }) =>
    `Portion ${first.portion} had ${short(Math.round(first.liquid_cm3))} cm³ of liquid to warm and changed it by ${signed(first.change_c, 2)} °C. Portion ${last.portion} had ${short(Math.round(last.liquid_cm3))} cm³ and changed it by ${signed(last.change_c, 2)} °C. Each gave out about the same heat, but there was more and more liquid for it to warm. The room, and portions that are cooler than the cup, take a share too.`,
  moreWords:
    "Each portion before the end-point gives out about the same heat, but there is more and more liquid in the cup for it to warm. So each portion changes the temperature by less than the one before.",
  bend: (above_c: number) =>
    `So the first arm gets flatter and flatter: it is bent. The second arm is bent too: each further portion has more liquid to cool. A straight line cannot follow. Drawn on to the heat balance’s end-point, the first line is already ${fixed(above_c, 2)} °C beyond the second one: the lines have met before they got there.`,
  bendWords:
    "So the first arm gets flatter and flatter: it is bent. The second arm is bent too: each further portion has more liquid to cool. Straight lines drawn through bent arms and on towards each other meet too early.",
  same: (liquid_cm3: number) =>
    `Now share out the heat of the reaction as if the cup had held ${short(Math.round(liquid_cm3))} cm³ all the time, every portion had come in as warm as the cup, and nothing had gone to the room. Your readings move: before the end-point every portion now changes the temperature by the same amount, after it nothing changes any more. The curve is straight.`,
  sameWords:
    "Now share out the heat of the reaction as if the cup had held the same amount of liquid all the time, every portion had come in as warm as the cup, and nothing had gone to the room. Before the end-point every portion then changes the temperature by the same amount; after it nothing changes any more. The curve is straight.",
  low: (end_point_cm3: number, u_cm3: number, apart_cm3: number) =>
    `The straightened curve turns at ${volume(end_point_cm3, u_cm3)}. That is the end-point by heat balance. The crossing of the straight lines came out ${fixed(apart_cm3, 1)} cm³ too low: not because anybody measured badly, but because straight lines were drawn through bent arms.`,
  high: (end_point_cm3: number, u_cm3: number, apart_cm3: number) =>
    `The straightened curve turns at ${volume(end_point_cm3, u_cm3)}. That is the end-point by heat balance. Straight lines through bent arms mostly cross too early; here the scatter of the readings brought them ${fixed(apart_cm3, 1)} cm³ beyond it.`,
  agree: (end_point_cm3: number, u_cm3: number) =>
    `The straightened curve turns at ${volume(end_point_cm3, u_cm3)}. That is the end-point by heat balance. Straight lines through bent arms mostly cross too early; here the two agree within what the readings can tell.`,
};
