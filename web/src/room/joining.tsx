// How other devices join: the room's address, and the practice cups of those that did.

import { phrase } from "../words";
import type { PracticeCup } from "./contract";

export function RoomAddress({ addresses }: { addresses: readonly string[] }) {
  const [first] = addresses;
  if (!first) return <p>{phrase("page-room-no-address")}</p>;
  return (
    <section class="room-address">
      <h2>{phrase("page-room-join")}</h2>
      <p>
        {phrase("page-room-address")} <b>{first}</b>
      </p>
      <img src="/api/room/address.svg" alt={phrase("page-room-qr", { address: first })} width="160" height="160" />
      <h3>{phrase("page-room-practise")}</h3>
      <p>{phrase("page-room-practise-more")}</p>
      <p>
        <a href="/practise">{`${first}practise`}</a>
      </p>
      <img src="/api/room/address.svg?of=practise" alt={phrase("page-room-qr", { address: `${first}practise` })} width="160" height="160" />
    </section>
  );
}

/** In a part of their own: nobody is marked by them, and nothing of them enters a result. */
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
