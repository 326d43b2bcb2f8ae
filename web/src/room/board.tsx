// The board: every bench at a glance, who needs help first. Places are the room's; while somebody points at a tile or
// stands in one with the keyboard, they do not change.

import { Component } from "preact";
import { useRef, useState } from "preact/hooks";
import { ageParts, fixed, freshness } from "../format";
import { countsText, roomReasonText, tileWhereText, waitsText } from "../phrases/room";
import { phrase, said } from "../words";
import type { Reason, Tile } from "./contract";
import { type Known, ageOf, counted, numberOf } from "./feed";

/** With more benches than this the tiles are small, so that a wide screen shows all of them. */
const MANY = 18;

interface BoardProps {
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

export function Board({ known, now_ms, projector, chosen, choose }: BoardProps) {
  const [read, setRead] = useState(false);
  const { room, told_ms } = known;
  const order = useOrder(projector ? counted(room.order) : room.order, read && !projector);
  if (order.length === 0) return <p class="board-none">{phrase("page-room-none")}</p>;
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
      {countsText(of(3), of(2), order.length)}
    </p>
  );
}

// One bench on the board. Who needs help is told from afar by shape, word and colour, never by colour alone.

interface BenchTileProps {
  tile: Tile;
  /** How long ago anything was heard / s, whole seconds; null: never. */
  age_s: number | null;
  /** Set where no names may be seen. */
  number: string | null;
  /** Set while benches are being chosen. */
  chosen: boolean | null;
  choose: (bench: string) => void;
}

const MARKS = { 0: "", 1: "", 2: "M12 3a9 9 0 1 0 .01 0zM12 7v6M12 16v1", 3: "M12 3L22 21H2zM12 9v6M12 17v1" } as const;

export const reasonInWords = (reason: Reason): string => roomReasonText(reason) ?? "";

function Temperature({ tile, age_s }: { tile: Tile; age_s: number | null }) {
  const { temperature_c } = tile;
  const text = temperature_c === null ? phrase("page-room-no-temperature") : phrase("page-room-celsius", { temperature: fixed(temperature_c, 1) });
  return (
    <p class={`tile-temperature is-${freshness(age_s)}`}>
      <span class="value">{text}</span> {age_s !== null && <small class="age">{phrase("page-room-age", ageParts(age_s))}</small>}
    </p>
  );
}

function Drawn({ tile, age_s, number, chosen, choose }: BenchTileProps) {
  const { need, reasons, state, name, bench } = tile;
  const shown = number === null ? reasons : [];
  return (
    <li class={`tile need-${need}`} data-bench={bench} data-need={need}>
      <div class="tile-head">
        {need >= 2 && (
          <svg class="tile-mark" viewBox="0 0 24 24" aria-hidden="true">
            <path d={MARKS[need]} />
          </svg>
        )}
        <h3>
          {number === null ? (
            <a href={`/room/bench/${bench}`} aria-label={phrase("page-room-open", { name })}>
              {name}
            </a>
          ) : (
            number
          )}
        </h3>
        {chosen !== null && (
          <label class="tile-choice">
            <input type="checkbox" checked={chosen} onChange={() => choose(bench)} />
            <span class="unseen">{phrase("page-room-choose", { name })}</span>
          </label>
        )}
      </div>
      {need >= 2 && <p class="tile-need">{phrase("page-room-needs", { which: need })}</p>}
      {shown.slice(0, 2).map((reason) => (
        <p key={reason.code} class={`tile-reason need-of-${reason.need}`}>
          {reasonInWords(reason)}
        </p>
      ))}
      {state !== "unknown" && (
        <p class="tile-state">
          <b>{phrase("page-room-states", { which: state })}</b>{" "}
          {state !== "done" && state !== "ready" && <span>{waitsText(tile.waits_s, tile.usual_s)}</span>}
        </p>
      )}
      {state !== "unknown" && state !== "ready" && state !== "done" && <p class="tile-where">{tileWhereText(tile)}</p>}
      <Temperature tile={tile} age_s={age_s} />
      {number === null && tile.group && <p class="tile-group">{tile.group}</p>}
      <div class="tile-progress" aria-hidden="true">
        <span style={{ width: `${Math.round(100 * tile.progress)}%` }} />
      </div>
    </li>
  );
}

const COUNTS: readonly (keyof BenchTileProps)[] = ["tile", "age_s", "number", "chosen"];

/** Thirty tiles may be drawn ten times a second: only what changed is. */
class BenchTile extends Component<BenchTileProps> {
  override shouldComponentUpdate(next: BenchTileProps): boolean {
    return COUNTS.some((name) => next[name] !== this.props[name]);
  }

  override render(props: BenchTileProps) {
    return <Drawn {...props} />;
  }
}

export const orderInWords = (act: string, state: string, name: string, why: string | null): string => {
  const told = phrase("page-room-order-names", { which: act });
  return state === "refused" ? phrase("page-room-left-refused", { act: told, bench: name, why: said(why ?? "") }) : phrase("page-room-left-pending", { act: told, benches: name });
};
