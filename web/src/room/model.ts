// What the board's page knows: a fold over what the room says. Pure: the clock comes in as a number.

import type { Room, Tile, TilesMessage } from "./contract";

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

export function changed(known: Known, { order, tiles }: TilesMessage, now_ms: number): Known {
  const told_ms = { ...known.told_ms };
  const kept: Record<string, Tile> = {};
  for (const bench of order) {
    const tile = tiles[bench] ?? known.room.tiles[bench];
    if (!tile) continue;
    kept[bench] = tile;
    if (tiles[bench]) told_ms[bench] = now_ms;
  }
  return { room: { ...known.room, order, tiles: kept }, told_ms };
}

/** How long ago anything was heard of a bench / s; null: never. */
export function ageOf(tile: Tile, told_ms: number | undefined, now_ms: number): number | null {
  if (tile.age_s === null) return null;
  return tile.age_s + Math.max(0, now_ms - (told_ms ?? now_ms)) / 1000;
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
