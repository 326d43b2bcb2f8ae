// Die Einstellungen dieses Geräts, und was Lehrkräfte und Technik dürfen.

import type { settings as en } from "./settings.en";
import type { Translated } from "./translated";

export const settings: Translated<typeof en> = {
  title: "Einstellungen dieses Geräts",
  language: "Sprache",
  asStation: (name) => `wie die Station (${name})`,
  asBrowser: "wie dieser Browser",
  units: "Einheiten",
  sound: "Ton",
  soundWhy: "Ein kurzer Ton, wenn etwas zu tun ist. Ein Browser tönt erst, nachdem auf die Seite getippt wurde.",

  who: "Wer den Platz bedient",
  room: "Der Raum",
  role: {
    looker: "Dieses Gerät darf zusehen. Beim ersten Druck wird nach dem Code auf dem Schild des Platzes gefragt.",
    bench: "Dieses Gerät bedient den Platz.",
    teacher: "Angemeldet als Lehrkraft.",
    technician: "Angemeldet als Technik.",
  },
  signOut: "Abmelden",
  staff: "Anmeldung für Lehrkraft und Technik",
  staffRole: "Rolle",
  roles: { teacher: "Lehrkraft", technician: "Technik" },
  passphrase: "Passwortsatz",
  signIn: "Anmelden",
  recoverTitle: "Der Code ist verloren?",
  recoverWhy: "Den Knopf der Station 6 Sekunden halten, loslassen, dann innerhalb einer Minute hier drücken.",
  recover: "Diesen Platz ohne Code bedienen",

  staffTitle: "Für Lehrkraft und Technik",
  showResults: "Ergebnisse zeigen",
  hideResults: "Ergebnisse zurückhalten",
  resultsShown: "Die Ergebnisse sind zu sehen.",
  resultsHeld: "Die Ergebnisse werden zurückgehalten.",
  quiet: "Summer stumm schalten",
  loud: "Summer tönen lassen",
  isQuiet: "Der Summer ist stumm.",
  isLoud: "Der Summer tönt.",
  rename: "Umbenennen",
  benchName: "Name des Platzes",
  pages: { "/plan": "Versuch planen und beginnen", "/prepare": "Vorbereiten", "/checks": "Fühler prüfen", "/kit": "Dieses Gerät" },
  setAside: "Einen Durchgang nicht mitzählen",
  setAsideNow: "Nicht mitzählen",
  done: "Erledigt.",
};
