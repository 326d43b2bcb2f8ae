// The board: every bench at a glance, who needs help first. Places are the room's; while somebody points at a tile or
// stands in one with the keyboard, they do not change.

import { useRef, useState } from "preact/hooks";
import { roomWords as words } from "../words/room_topic";
import type { Known } from "./model";
import { ageOf, counted, numberOf } from "./model";
import { BenchTile } from "./tile";

/** With more benches than this the tiles are small, so that a wide screen shows all of them. */
const MANY = 18;

interface Props {
  known: Known;
  now_ms: number;
  projector: boolean;
  /** The benches chosen; null while all are meant. */
  chosen: ReadonlySet<string> | null;
  choose: (bench: string) => void;
}

/** The order in which tiles are drawn: the newest, or the one that is being read. */
function useOrder(newest: readonly string[], held: boolean): readonly string[] {
  const shown = useRef(newest);
  const same = shown.current.length === newest.length && newest.every((bench) => shown.current.includes(bench));
  if (!held || !same) shown.current = newest;
  return shown.current;
}

export function Board({ known, now_ms, projector, chosen, choose }: Props) {
  const [read, setRead] = useState(false);
  const { room, told_ms } = known;
  const order = useOrder(projector ? counted(room.order) : room.order, read && !projector);
  if (order.length === 0) return <p class="board-none">{words().none}</p>;
  return (
    <ul
      class={order.length > MANY ? "board board-many" : "board"}
      onPointerEnter={() => setRead(true)}
      onPointerLeave={() => setRead(false)}
      onFocusIn={() => setRead(true)}
      onFocusOut={() => setRead(false)}
    >
      {order.map((bench) => {
        const tile = room.tiles[bench];
        if (!tile) return null;
        const age = ageOf(tile, told_ms[bench], now_ms);
        return (
          <BenchTile
            key={bench}
            tile={tile}
            age_s={age === null ? null : Math.floor(age)}
            number={projector ? numberOf(bench, order) : null}
            chosen={chosen === null ? null : chosen.has(bench)}
            choose={choose}
          />
        );
      })}
    </ul>
  );
}

/** How many need help, in words; the one thing that is said aloud when it changes. */
export function Counts({ known }: { known: Known }) {
  const { order, tiles } = known.room;
  const of = (need: number) => order.filter((bench) => tiles[bench]?.need === need).length;
  if (order.length === 0) return null;
  return (
    <p class="counts" role="status">
      {words().counts(of(3), of(2), order.length)}
    </p>
  );
}
