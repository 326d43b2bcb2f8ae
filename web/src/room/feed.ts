// Keeps the board up to date: one stream for all benches, polling where none comes through; none while hidden.

import { useEffect, useRef, useState } from "preact/hooks";
import { get } from "../live/ask";
import { remember } from "../words";
import type { Room, Tile, TilesMessage } from "./contract";

const POLL_MS = 2000;
const SILENCE_MS = 9000;
const TRY_STREAM_AGAIN_MS = 15_000;
/** Ages go on while nothing is heard. */
const AGE_MS = 1000;
const LATEST_MS = 100;

function received<Data>(text: string): Data {
  const data = JSON.parse(text) as Data;
  remember(data);
  return data;
}

interface Following {
  known: Known | null;
  now_ms: number;
  /** Whether nothing was heard of the room for a while. */
  lost: boolean;
}

class Feed {
  known: Known | null = null;
  heard_ms = performance.now();
  private stream: EventSource | null = null;
  private polling = 0;
  private tryStream_ms = 0;

  constructor(private readonly tell: () => void) {}

  /** Look after the stream; called again and again while the page is shown. */
  look(): void {
    const now = performance.now();
    if (document.visibilityState !== "visible") return this.close();
    if (this.stream && now - this.heard_ms > SILENCE_MS) {
      this.close();
      this.tryStream_ms = now + TRY_STREAM_AGAIN_MS;
    }
    if (!this.stream && now >= this.tryStream_ms) this.open();
    if (!this.known || (!this.stream && now >= this.polling)) this.poll(now);
  }

  close(): void {
    this.stream?.close();
    this.stream = null;
  }

  private poll(now: number): void {
    if (now < this.polling) return;
    this.polling = now + POLL_MS;
    get<Room>("/api/room").then((room) => this.take(whole(room, this.known, performance.now())), () => undefined);
  }

  private take(known: Known): void {
    this.known = known;
    this.heard_ms = performance.now();
    this.tell();
  }

  private open(): void {
    const stream = new EventSource("/api/room/stream");
    this.stream = stream;
    this.heard_ms = performance.now();
    const on = (kind: string, taken: (data: string) => void) =>
      stream.addEventListener(kind, (event) => {
        if (stream === this.stream) taken((event as MessageEvent<string>).data);
      });
    on("room", (data) => this.take(whole(received<Room>(data), this.known, performance.now())));
    on("tiles", (data) => {
      if (this.known) this.take(changed(this.known, received<TilesMessage>(data), performance.now()));
    });
    on("reset", () => this.close());
    stream.addEventListener("error", () => {
      if (stream !== this.stream || stream.readyState !== EventSource.CLOSED) return;
      this.close();
      this.tryStream_ms = performance.now() + TRY_STREAM_AGAIN_MS;
    });
  }
}

/** The room as it is now; draws at most once a frame, and each second for the ages. */
export function useRoom(): Following {
  const [, drawn] = useState(0);
  const feed = useRef<Feed | null>(null);
  const asked = useRef(0);
  useEffect(() => {
    const draw = () => {
      clearTimeout(asked.current);
      asked.current = 0;
      drawn((count) => count + 1);
    };
    const tell = () => {
      if (asked.current) return;
      asked.current = window.setTimeout(draw, LATEST_MS);
      requestAnimationFrame(() => asked.current && draw());
    };
    const mine = new Feed(tell);
    feed.current = mine;
    const look = () => mine.look();
    const timers = [window.setInterval(look, 500), window.setInterval(tell, AGE_MS)];
    document.addEventListener("visibilitychange", look);
    window.addEventListener("pagehide", () => mine.close());
    look();
    return () => {
      timers.forEach(clearInterval);
      clearTimeout(asked.current);
      document.removeEventListener("visibilitychange", look);
      mine.close();
    };
  }, []);
  const now_ms = performance.now();
  const current = feed.current;
  return { known: current?.known ?? null, now_ms, lost: current !== null && now_ms - current.heard_ms > SILENCE_MS };
}

// What the board's page knows: a fold over what the room says. Pure: the clock comes in as a number.

export interface Known {
  room: Room;
  /** When each bench's tile was told / ms on the page's clock: from then on its age grows by itself. */
  told_ms: Readonly<Record<string, number>>;
}

export function whole(room: Room, before: Known | null, now_ms: number): Known {
  const addresses = room.addresses ?? before?.room.addresses;
  const told_ms = Object.fromEntries(room.order.map((bench) => [bench, now_ms]));
  return { room: addresses ? { ...room, addresses } : room, told_ms };
}

export function changed(known: Known, { order, tiles, needs, practice }: TilesMessage, now_ms: number): Known {
  const told_ms = { ...known.told_ms };
  const kept: Record<string, Tile> = {};
  for (const bench of order) {
    const tile = tiles[bench] ?? known.room.tiles[bench];
    if (!tile) continue;
    kept[bench] = tile;
    if (tiles[bench]) told_ms[bench] = now_ms;
  }
  return { room: { ...known.room, order, tiles: kept, needs, practice }, told_ms };
}

// How the benches stand, and what one is held against: the class.

export type Need = Tile["need"];
export type Standing = "idle" | "works" | "paused" | "held" | "done";

/** `paused`: by the group, `held`: by staff. Nobody who merely does not need help is called well. */
export function standingOf({ state, held }: Tile): Standing {
  if (state === "done") return "done";
  if (state === "ready" || state === "unknown") return "idle";
  if (state === "paused") return held ? "held" : "paused";
  return "works";
}

export function counts(tiles: readonly Tile[]): Readonly<Record<Standing, number>> {
  const found = { idle: 0, works: 0, paused: 0, held: 0, done: 0 };
  for (const tile of tiles) found[standingOf(tile)] += 1;
  return found;
}

function middle(values: readonly number[]): number {
  const sorted = [...values].sort((one, other) => one - other);
  const half = Math.floor(sorted.length / 2);
  const [low, high] = [sorted[half - 1] ?? 0, sorted[half] ?? 0];
  return sorted.length % 2 ? high : (low + high) / 2;
}

/** The class's progress: the median of those that have begun; 0 before anybody has. */
export function usualProgress(tiles: readonly Tile[]): number {
  const begun = tiles.filter((tile) => standingOf(tile) !== "idle");
  return begun.length === 0 ? 0 : middle(begun.map(({ progress }) => progress));
}

const ENOUGH = 3;

/** The class's curve so far as JSON text: volume added and the median change since the start, where three have it. */
export function usualCurve(tiles: readonly Tile[]): string {
  const curves = tiles.filter(({ curve, curve_to }) => curve_to !== null && curve.length > 1).map(({ curve }) => curve);
  const longest = Math.max(0, ...curves.map(({ length }) => length));
  const found: [number, number][] = [];
  for (let index = 0; index < longest; index += 1) {
    const here = curves.flatMap((curve) => {
      const [point, start] = [curve[index], curve[0]];
      return point && start ? [[point[0], point[1] - start[1]] as const] : [];
    });
    if (here.length < ENOUGH) break;
    found.push([middle(here.map(([x]) => x)), middle(here.map(([, c]) => c))]);
  }
  return JSON.stringify(found);
}

interface Grid {
  columns: number;
  /** The first place that is drawn: rows before it in which nobody stands are left out. */
  first: number;
  cells: number;
}

/** With so many places at the most, so many in a row: two screens' shapes, each filled. */
const ROWS_OF: readonly (readonly [number, number])[] = [[4, 2], [6, 3], [8, 4], [15, 5], [30, 6], [48, 8]];
const MOST_IN_A_ROW = 10;

/** How places are laid out; with `spare` from the first on, and one more row, to put somebody in. */
export function columnsOf(places: readonly number[], spare = false): Grid {
  const [low, high] = [Math.min(...places), Math.max(...places)];
  const inRow = (count: number) => ROWS_OF.find(([most]) => count <= most)?.[1] ?? MOST_IN_A_ROW;
  // A second set alone, as 16 to 30: the rows of the first are not drawn.
  const alone = low > inRow(high);
  const columns = inRow(alone ? high - low + 1 : high);
  const first = spare ? 1 : Math.floor((low - 1) / columns) * columns + 1;
  const rows = Math.ceil((high - first + 1) / columns) + (spare ? 1 : 0);
  return { columns, first, cells: rows * columns };
}

/** The number by which a bench is known where no names are to be seen: of its id, else its place in the list. */
export function numberOf(bench: string, benches: readonly string[]): string {
  const digits = /(\d+)\D*$/.exec(bench)?.[1];
  return digits ? String(Number(digits)) : String([...benches].sort().indexOf(bench) + 1);
}

/** Benches in the order in which people count. */
export function counted(benches: readonly string[]): string[] {
  return [...benches].sort((one, other) => one.localeCompare(other, "en", { numeric: true }));
}
