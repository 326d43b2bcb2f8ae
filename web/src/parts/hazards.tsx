// Hazards as the regulation wants them: pictograms, signal word, statements with their codes.

import { said } from "../words";
import { Pictogram } from "./pictograms";

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
