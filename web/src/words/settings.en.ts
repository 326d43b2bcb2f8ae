// The settings of this device, and what staff may do.

import type { Role, Staff } from "../session";

export const settings = {
  title: "Settings of this device",
  language: "Language",
  asStation: (name: string) => `as the station (${name})`,
  asBrowser: "as this browser",
  units: "Units",
  sound: "Sound",
  soundWhy: "A short tone when there is something to do. A browser sounds only after a tap on this page.",

  who: "Who operates the bench",
  room: "The room",
  role: {
    looker: "This device may look. The first press asks for the code on the bench’s label.",
    bench: "This device operates the bench.",
    teacher: "Signed in as teacher.",
    technician: "Signed in as technician.",
  } satisfies Record<Role, string>,
  signOut: "Sign out",
  staff: "Staff sign in",
  staffRole: "Role",
  roles: { teacher: "Teacher", technician: "Technician" } satisfies Record<Staff, string>,
  passphrase: "Passphrase",
  signIn: "Sign in",
  recoverTitle: "The code is lost?",
  recoverWhy: "Hold the bench button for 6 seconds, let go, then press here within a minute.",
  recover: "Operate this bench without the code",

  staffTitle: "For staff",
  showResults: "Show the results",
  hideResults: "Hold the results back",
  resultsShown: "The results can be seen.",
  resultsHeld: "The results are held back.",
  quiet: "Silence the buzzer",
  loud: "Let the buzzer sound",
  isQuiet: "The buzzer is silent.",
  isLoud: "The buzzer sounds.",
  rename: "Rename",
  benchName: "Name of the bench",
  pages: { "/plan": "Plan and begin a practical", "/prepare": "Prepare", "/checks": "Probe checks", "/kit": "This kit" },
  setAside: "Set a repeat aside",
  setAsideNow: "Set aside",
  done: "Done.",
};
