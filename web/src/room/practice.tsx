// The practice cups in use, in a part of their own: nobody is marked by them, and nothing of them enters a result.

import { phrase } from "../words";
import type { PracticeCup } from "./contract";

export function PracticeCups({ cups }: { cups: readonly PracticeCup[] }) {
  return (
    <section class="practice-cups" data-testid="practice-cups">
      <h2>{phrase("page-room-practice-title")}</h2>
      <p class="remark">{phrase("page-room-practice-why")}</p>
      <ul>
        {cups.map(({ cup, state, repeat, repeats_planned, portion, portions_planned }) => (
          <li key={cup}>
            <b>{phrase("page-room-practice-cup", { cup })}</b> {phrase("page-room-states", { which: state })}
            {state !== "ready" && state !== "done" && (
              <> · {phrase("page-room-where", { repeat, repeats: repeats_planned, portion, portions: portions_planned })}</>
            )}
          </li>
        ))}
      </ul>
    </section>
  );
}
