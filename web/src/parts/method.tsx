// One method's card: its name, its number, its interval, and what stands beside it.

import type { ComponentChildren } from "preact";
import { keptTogether } from "../format";

interface Props {
  name: string;
  method: "lines" | "heat";
  number: string;
  interval: string;
  plusMinus: string;
  /** While a repeat runs: the number and its interval, nothing that pushes the curve off the screen. */
  brief: boolean;
  children: ComponentChildren;
}

export function Method({ name, method, number, interval, plusMinus, brief, children }: Props) {
  return (
    <div class={`result result-${method}${brief ? " result-brief" : ""}`}>
      <h3>{name}</h3>
      <p class="end-point">{keptTogether(number)}</p>
      <p class="interval">
        {keptTogether(interval)}
        {!brief && <br />}
        {!brief && keptTogether(plusMinus)}
      </p>
      {!brief && children}
    </div>
  );
}

export function Remark({ text }: { text: string }) {
  return <p class="remark">{keptTogether(text)}</p>;
}
