// Die zwei Äquivalenzpunkte einer Neutralisation und die Bemerkungen dazu.

import { fixed, rounded } from "../format";
import { cm3Places, plusMinus } from "./quantities";
import type { results as en } from "./results.en";
import { german } from "./station";
import type { Translated } from "./translated";

export const results: Translated<typeof en> = {
  byStraightLines: "Schnittpunkt der Ausgleichsgeraden",
  byHeatBalance: "Wärmebilanz des ganzen Verlaufs",
  endPoint: (volume_cm3, u_cm3) => `${rounded(volume_cm3, cm3Places(u_cm3))} cm³`,
  plusMinus: (u_cm3) => `Standardunsicherheit ${plusMinus(u_cm3, cm3Places(u_cm3), "unter")} cm³`,
  interval: ([low, high], u_cm3) =>
    `95-%-Intervall ${rounded(low, cm3Places(u_cm3))} bis ${rounded(high, cm3Places(u_cm3))} cm³`,
  scatterOnly: (bias_cm3) => {
    const known = "Das ± kennt nur die Streuung der Messwerte.";
    if (bias_cm3 === null || Math.abs(bias_cm3) < 0.05) return known;
    const side = bias_cm3 < 0 ? "niedrig" : "hoch";
    return `${known} Geraden durch unkorrigierte Messwerte schneiden sich hier voraussichtlich etwa ${fixed(Math.abs(bias_cm3), 1)} cm³ zu ${side}.`;
  },
  heatBalanceKnows: "Berücksichtigt das wachsende Volumen, den Wärmeverlust an den Raum und die Trägheit des Fühlers.",
  notDescribed: "Das Modell beschreibt diesen Verlauf nicht gut: mit Vorsicht verwenden.",
  refused: (reason) => `Die Geraden ergeben keinen Schnittpunkt. ${german(reason)}`,
  refusedHeat: (reason) => `Keine Wärmebilanz. ${german(reason)}`,
  remarks: "Darüber lohnt es sich nachzudenken",
  inRepeats: (repeats) =>
    repeats.length === 1
      ? `Durchgang ${repeats[0]}`
      : `Durchgänge ${repeats.slice(0, -1).join(", ")} und ${repeats[repeats.length - 1]}`,
  remarkOf: (where, remark) => `${where}: ${german(remark)}`,
};
