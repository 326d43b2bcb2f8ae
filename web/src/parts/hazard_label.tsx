// A label as the regulation wants it: pictograms, signal word, statements with their codes.

import type { Label } from "../planning";
import { said } from "../words";
import { planWords } from "../words/plan_topic";
import { Pictogram } from "./pictograms";

export function HazardLabel({ label }: { label: Label }) {
  if (!label.classified) return <p>{planWords().notClassified}</p>;
  return (
    <div class="hazards">
      {label.pictograms.length > 0 && (
        <div class="pictograms">
          {label.pictograms.map((code) => (
            <Pictogram key={code} code={code} />
          ))}
        </div>
      )}
      <div>
        {label.signal && <p class="signal-word">{said(label.signal)}</p>}
        <ul>
          {label.hazards.map(({ code, text }) => (
            <li key={code}>
              {said(text)} <small>{code}</small>
            </li>
          ))}
        </ul>
      </div>
    </div>
  );
}
