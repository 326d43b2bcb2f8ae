// The last thing done to everything that is said: the reader's units and decimal sign.

import { withDecimalSign } from "../format";

/** cm³ and mol/dm³, or mL and M; by the station's own names for them. */
export type Units = "cm3" | "mL";

/** A concentration by itself. Inside a larger unit ("kJ/(mol/dm³)", "mol dm⁻³ s⁻¹") an M would read as a factor of its
 * own: there only the volume changes. */
const CONCENTRATION = /(\/\(?)?\b(m?)mol(?:\/dm³| dm⁻³)(?! ?[a-zA-Z]+⁻|\/)/g;

function inLitres(text: string): string {
  return text
    .replace(CONCENTRATION, (found: string, inUnit: string | undefined, milli: string) => (inUnit ? found : `${milli}M`))
    .replace(/cm⁻³/g, "mL⁻¹")
    .replace(/dm⁻³/g, "L⁻¹")
    .replace(/cm³/g, "mL")
    .replace(/dm³/g, "L");
}

/** `text` in the reader's units and with the reader's decimal sign. One litre is exactly one dm³, so cm³ and mL may be
 * exchanged in any unit: J/(cm³ K) is J/(mL K). */
export function unitsOf(units: Units, text: string, decimalSign: string): string {
  // A station writes a hyphen before a negative number; a reader is used to a minus sign.
  const signed = text.replace(/(^|[\s(=])-(?=\d)/g, "$1−");
  return withDecimalSign(units === "mL" ? inLitres(signed) : signed, decimalSign);
}
