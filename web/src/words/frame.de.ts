import type { frame as en } from "./frame.en";
import type { Translated } from "./translated";

export const frame: Translated<typeof en> = {
  ways: "Seiten",
  pages: {
    "/": "Arbeitsplatz",
    "/plan": "Versuch planen",
    "/prepare": "Vorbereiten",
    "/checks": "Fühler prüfen",
    "/kit": "Dieses Gerät",
    "/room": "Raum",
    "/room/class": "Klassenergebnis",
    "/room/lessons": "Stunden",
  },
  asking: "Die Station wird gefragt …",
  staffOnly: "Für Lehrkräfte und Technik",
  whyStaff: "Bitte anmelden: als Lehrkraft oder für die Technik.",
};
