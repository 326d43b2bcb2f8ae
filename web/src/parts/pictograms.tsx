// The hazard pictograms that a school's reagents need. Their drawings are the station's, for the page and for sheets alike.

import { frame, place, symbols } from "../../../station/chemistry/pictograms.json";
import { words } from "../words";

const SYMBOLS: Record<string, string> = symbols;

/** One pictogram, with what it stands for as its text; nothing for a code that is not known. */
export function Pictogram({ code }: { code: string }) {
  const symbol = SYMBOLS[code];
  if (!symbol) return null;
  const drawn = `${frame}<g transform="${place}">${symbol}</g>`;
  return (
    <svg
      class="pictogram"
      viewBox="0 0 100 100"
      role="img"
      aria-label={words.guide.pictograms[code] ?? code}
      dangerouslySetInnerHTML={{ __html: drawn }}
    />
  );
}
