// Remarks of plausibility and of the fit, in the station's own words.

import type { Repeat } from "../contract";
import { keptTogether } from "../format";
import { remarksOn, sentence } from "../remarks";
import type { Result } from "../results";
import { words } from "../words";

export function Remarks({ result, repeats }: { result: Result; repeats: readonly Repeat[] }) {
  const ended = repeats.filter(({ status }) => status === "ended").map(({ repeat }) => repeat);
  const counted = repeats.filter(({ status }) => status !== "set aside").length;
  const remarks = remarksOn(result, ended);
  if (remarks.length === 0) return null;
  return (
    <div class="remarks">
      <h3>{words.remarks}</h3>
      <ul>
        {remarks.map((remark) => {
          const text = keptTogether(sentence(remark, counted));
          return <li key={text}>{text}</li>;
        })}
      </ul>
    </div>
  );
}
