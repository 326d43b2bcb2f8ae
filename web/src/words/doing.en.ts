// What stands around the instruction: menu, sound, the bench's code, readings that are typed.

import { fixed, short } from "../format";

export const doing = {
  notFetched: "This part did not arrive.",
  fetchAgain: "Try again",

  menu: "Menu",
  menuOf: "Views of this page",
  places: {
    "": "The bench",
    guide: "Guide and hazards",
    record: "Record to print",
    big: "Big numbers for the projector",
    settings: "Settings",
  },
  toBench: "Back to the bench",

  sound: { off: "Sound off", on: "Sound on", asleep: "Tap for sound" },

  mayBeOld: "Not up to date",
  atTheCup: "At the cup press the bench button. Keep phones dry.",
  dryHands: "Touch this page with clean, dry hands only.",
  guideFirst: "Guide: what is in the cup, hazards",

  divisions: "Lines on the scale every",
  divisionOf: (division_c: number) => `${short(division_c, 1)} °C`,
  goOnTyping: "Go on with an ordinary thermometer. Lines every",
  typedTemperature: "Temperature / °C",
  record: "Record",
  notANumber: "Type a temperature, such as 21.5",
  outOfRange: (low_c: number, high_c: number) => `Only ${short(low_c)} to ${short(high_c)} °C can be recorded.`,
  tooFine: (near_c: number) => `At best it shows ${short(near_c)} °C. Press again to keep yours.`,
  farOff: (change_c: number) =>
    `That is ${fixed(Math.abs(change_c), 1)} °C ${change_c > 0 ? "above" : "below"} the last one. Press again if it is right.`,
  lastReading: "last reading",
  addedUnread: (portion: number) => `Portion ${portion} is in, no reading taken`,

  toLines: "Now your own lines",
  toResults: "To the results",
  toRecord: "Your record",

  codeTitle: "The code of this bench",
  codeWhy: "It stands on the bench’s label. With it this device operates the bench.",
  code: "Code",
  giveCode: "Send",
  leaveCode: "Not now",
  noAnswer: "The station did not answer. Try again.",
};
