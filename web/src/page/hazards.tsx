// Hazards as the regulation wants them: pictograms, signal word, statements with their codes.

import { frame, place, symbols } from "../../../station/chemistry/pictograms.json";
import { phrase, said } from "../words";

interface Classified {
  pictograms: readonly string[];
  signal: string | null;
  hazards: readonly { code: string; text: string }[];
}

export function Hazards({ of }: { of: Classified }) {
  return (
    <div class="hazards">
      {of.pictograms.length > 0 && (
        <div class="pictograms">
          {of.pictograms.map((code) => (
            <Pictogram key={code} code={code} />
          ))}
        </div>
      )}
      <div>
        {of.signal && <p class="signal-word">{said(of.signal)}</p>}
        <ul>
          {of.hazards.map(({ code, text }) => (
            <li key={code}>
              {said(text)} <small>{code}</small>
            </li>
          ))}
        </ul>
      </div>
    </div>
  );
}

// The hazard pictograms that a school's reagents need. Their drawings are the station's, for the page and for sheets alike.

const SYMBOLS: Record<string, string> = symbols;

/** One pictogram, with what it stands for as its text; nothing for a code that is not known. */
function Pictogram({ code }: { code: string }) {
  const symbol = SYMBOLS[code];
  if (!symbol) return null;
  const drawn = `${frame}<g transform="${place}">${symbol}</g>`;
  return (
    <svg
      class="pictogram"
      viewBox="0 0 100 100"
      role="img"
      aria-label={phrase("page-guide-pictograms", { which: code })}
      dangerouslySetInnerHTML={{ __html: drawn }}
    />
  );
}
