// The board is the room: every bench in its own place, one tile of one height for each. Nothing moves but by hand.

import { Component, type ComponentChildren } from "preact";
import { fixed } from "../format";
import { roomReasonText, tileWhereText } from "../phrases/room";
import { keyed, phrase } from "../words";
import { Counting } from "./counting";
import type { OrderLeft, Reason, Tile } from "./contract";
import { type Known, columnsOf, numberOf, standingOf, usualCurve, usualProgress } from "./feed";
import { Mark, Sparkline, StateMark } from "./drawings";

interface BoardProps {
  known: Known;
  projector: boolean;
  /** The benches chosen; null while all are meant. */
  chosen: ReadonlySet<string> | null;
  /** The bench that is being given another place, "" before one is taken; null while nobody arranges. */
  taken: string | null;
  /** A place was pressed; without one a bench is taken. */
  press: (place: number | null, bench: string | null) => void;
}

export function Board({ known, projector, chosen, taken, press }: BoardProps) {
  const { room, told_ms } = known;
  const tiles = room.order.flatMap((bench) => room.tiles[bench] ?? []);
  if (tiles.length === 0) return <p class="board-none">{phrase("page-room-none")}</p>;
  const { columns, first, cells } = columnsOf(tiles.map(({ place }) => place), taken !== null);
  const at = new Map(tiles.map((tile) => [tile.place, tile]));
  const [curve, progress] = [usualCurve(tiles), usualProgress(tiles)];
  const rows = Math.ceil(cells / columns);
  return (
    <ul class="board" style={{ "--columns": String(columns), "--rows": String(rows) }} data-rows={rows}>
      {Array.from({ length: cells }, (_, index) => {
        const place = first + index;
        const tile = at.get(place);
        if (!tile) {
          return (
            <li key={`place ${place}`} class="place" aria-hidden={taken === null}>
              {taken !== null && <PlaceButton place={place} bench={null} name={null} taken={taken} press={press} />}
            </li>
          );
        }
        const { bench, name } = tile;
        return (
          <BenchTile
            key={bench}
            tile={tile}
            told_ms={told_ms[bench] ?? 0}
            number={projector ? numberOf(bench, room.order) : null}
            curve={curve}
            progress={progress}
            answer={projector ? "" : answerOf(room.orders, bench)}
            marked={taken === bench || chosen?.has(bench) === true}
          >
            {taken !== null && <PlaceButton place={place} bench={bench} name={name} taken={taken} press={press} />}
          </BenchTile>
        );
      })}
    </ul>
  );
}

/** What came of the newest order at this bench, as far as it is not simply done. */
function answerOf(orders: readonly OrderLeft[], bench: string): string {
  const own = orders.find((order) => order.bench === bench && order.state !== "taken");
  return own ? orderInWords(own) : "";
}

export const orderInWords = ({ act, state }: OrderLeft): string =>
  phrase("page-room-answer", { act: phrase("page-room-order-names", { which: act }), state });

interface PlaceProps {
  place: number;
  bench: string | null;
  name: string | null;
  taken: string;
  press: (place: number | null, bench: string | null) => void;
}

/** A place as something to press, drag from and drop on: first a bench is taken, then it is put down. */
function PlaceButton({ place, bench, name, taken, press }: PlaceProps) {
  const words =
    taken === "" ? phrase("page-room-take", { name: name ?? String(place) }) : phrase("page-room-put", { place });
  return (
    <button
      type="button"
      class="place-button"
      data-place={place}
      disabled={taken === "" && bench === null}
      aria-pressed={bench !== null && bench === taken}
      draggable={bench !== null}
      onDragStart={() => press(null, bench)}
      onDragOver={(event) => event.preventDefault()}
      onDrop={(event) => {
        event.preventDefault();
        press(place, bench);
      }}
      onClick={() => press(place, bench)}
    >
      <span>{words}</span>
    </button>
  );
}

// One bench on the board. How it stands is told by shape, word and colour, never by colour alone.

interface BenchTileProps {
  tile: Tile;
  /** When the room told of it / ms on the page's clock. */
  told_ms: number;
  /** Set where no names may be seen. */
  number: string | null;
  curve: string;
  progress: number;
  answer: string;
  /** Taken to be moved, or chosen to be told something. */
  marked: boolean;
  children?: ComponentChildren;
}

export const reasonInWords = (reason: Reason): string => roomReasonText(reason) ?? "";

/** One line: why it needs somebody, else what it did with an order, else what else is to be noted, else where it is. */
function lineOf({ tile, number, answer }: BenchTileProps): string {
  const [first] = tile.reasons;
  const standing = standingOf(tile);
  if (number === null && first && first.need >= 2) return reasonInWords(first);
  if (answer !== "") return answer;
  // What its own word says already need not be said twice, and the bar below says who is behind.
  const more = tile.reasons.find(({ code }) => code !== "paused" && code !== "not_begun" && code !== "behind");
  if (number === null && more) return reasonInWords(more);
  return standing === "idle" || standing === "done" ? "" : tileWhereText(tile);
}

function Drawn(props: BenchTileProps) {
  const { tile, told_ms, number, curve, progress, marked, children } = props;
  const { need, name, bench, state, temperature_c } = tile;
  const standing = standingOf(tile);
  const line = lineOf(props);
  return (
    <li
      class={`tile need-${need} is-${standing}${marked ? " is-taken" : ""}`}
      id={`tile-${bench}`}
      tabIndex={-1}
      data-testid="tile"
      data-bench={bench}
      data-need={need}
      data-standing={standing}
    >
      <div class="tile-head">
        <h3>
          {number === null ? (
            <a href={`/room/bench/${bench}`} aria-label={phrase("page-room-open", { name })}>
              {name}
            </a>
          ) : (
            number
          )}
        </h3>
        {need >= 2 && <Mark need={need} />}
      </div>
      <p class="tile-state">
        <StateMark standing={standing} />
        <b>{phrase("page-room-states", { which: standing === "held" || standing === "paused" ? standing : keyed(state) })}</b>{" "}
        {standing !== "done" && standing !== "idle" && <Counting from_s={tile.waits_s} told_ms={told_ms} speed={tile.speed} />}
      </p>
      <p class={need >= 2 && number === null ? "tile-line tile-reason" : "tile-line"} title={line}>
        {line}
      </p>
      <div class="tile-foot">
        <Sparkline tile={tile} usual={curve} />
        {temperature_c !== null && <span class="tile-temperature">{phrase("page-room-celsius", { temperature: fixed(temperature_c, 1) })}</span>}
      </div>
      <div class="tile-progress" role="img" aria-label={phrase("page-room-progress", { own: Math.round(100 * tile.progress), usual: Math.round(100 * progress) })}>
        <span style={{ width: `${Math.round(100 * tile.progress)}%` }} />
        <i style={{ left: `${Math.round(100 * progress)}%` }} />
      </div>
      {children}
    </li>
  );
}

const COUNTS: readonly (keyof BenchTileProps)[] = ["tile", "told_ms", "number", "curve", "progress", "answer", "marked", "children"];

/** Thirty tiles may be drawn ten times a second: only what changed is. */
class BenchTile extends Component<BenchTileProps> {
  override shouldComponentUpdate(next: BenchTileProps): boolean {
    return COUNTS.some((name) => next[name] !== this.props[name]);
  }

  override render(props: BenchTileProps) {
    return <Drawn {...props} />;
  }
}
