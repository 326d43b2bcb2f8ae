// What went wrong, in the students' own words: doubts, more portions, repeats that do not count, notes, the label.

import { short } from "../format";

export const mistakes = {
  groups: {
    portions: "A portion",
    repeat: "This repeat",
    practical: "The practical",
    group: "Your group",
  },
  doubtTitle: (portion: number) => `Portion ${portion}: what happened?`,
  doubtTitleOnce: "What happened?",
  doubts: { spilled: "Spilled", "stirred late": "Stirred late", "lid off": "Lid was off" },
  inDoubt: (portion: number, reason: string | null) =>
    `Portion ${portion} is marked as not sure${reason ? `: ${reason}` : ""}.`,
  inDoubtOnce: (reason: string | null) => `Marked as not sure${reason ? `: ${reason}` : ""}.`,
  sure: "Take this back",
  otherDoubt: "In your own words (can stay empty)",
  names: {
    more: "We added more portions",
    reading: "Correct a typed reading",
    thermometer: "Use the probe again",
    repeat_set_aside: "Leave a repeat out",
    repeat_restored: "Let a repeat count again",
    note: "Notes",
    group: "Label of your group",
    adopt: "Use another group’s readings",
    adopt_returned: "Back to your own readings",
  },
  oneMore: "Do one more repeat: rinsed and refilled",
  moreTitle: "How many portions are in the cup now?",
  moreOf: (portion: number) => short(portion),
  quickVolume: "The volume that went in: one tap",
  otherVolume: "or type it / cm³",
  volumeOf: (volume_cm3: number) => `${short(volume_cm3)} cm³`,
  asPlanned: (volume_cm3: number) => `${short(volume_cm3)} cm³, as planned`,
  whichReading: "Which reading?",
  readingName: (repeat: number, portion: number, temperature_c: number) =>
    portion === 0
      ? `repeat ${repeat}, start: ${short(temperature_c)} °C`
      : `repeat ${repeat}, portion ${portion}: ${short(temperature_c)} °C`,
  rightReading: "What the thermometer said / °C",
  setAsideWhy: "It stays in the record and can count again later. Why?",
  setAside: "Leave it out",
  restoreWhy: "Which repeat counts again?",
  restoreName: (repeat: number, reason: string | null) => `Repeat ${repeat}${reason ? ` (left out: ${reason})` : ""}`,
  noteText: "New note",
  noteAbout: "About",
  aboutAll: "the whole practical",
  noteKeep: "Keep this note",
  noteWithdraw: "Withdraw",
  noteOf: (about: string, text: string) => `${about}: ${text}`,
  noteWithdrawn: "withdrawn",
  groupLabel: "Label, such as Group 4. No names.",
  groupKeep: "Use this label",
  back: "Back",
};
