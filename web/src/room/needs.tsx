// The strip of who needs somebody: always there, always as high; the newest stands last. A press leads to the tile.

import { needText } from "../phrases/room";
import { phrase } from "../words";
import type { Room } from "./contract";
import { Mark } from "./drawings";

const FLASH_MS = 1600;

/** Lead the eye and the keyboard to a bench's tile. */
export function showTile(bench: string): void {
  const tile = document.getElementById(`tile-${bench}`);
  if (!tile) return;
  tile.scrollIntoView({ block: "nearest" });
  tile.focus({ preventScroll: true });
  tile.classList.add("is-shown");
  setTimeout(() => tile.classList.remove("is-shown"), FLASH_MS);
}

export function NeedsStrip({ room, show }: { room: Room; show: (bench: string) => void }) {
  const needing = room.needs.flatMap((bench) => room.tiles[bench] ?? []);
  return (
    <section class="needs" data-testid="needs" aria-label={phrase("page-room-needs-title")}>
      <p class="needs-count" role="status">
        {phrase("page-room-needs-count", { count: needing.length })}
      </p>
      <ol tabIndex={needing.length > 0 ? 0 : undefined} aria-label={needing.length > 0 ? phrase("page-room-needs-title") : undefined}>
        {needing.map(({ bench, name, need, reasons }) => (
          <li key={bench}>
            <button
              type="button"
              class={`need need-${need}`}
              data-testid="need"
              data-bench={bench}
              data-code={reasons[0]?.code}
              onClick={() => show(bench)}
            >
              <Mark need={need} />
              <span>{reasons[0] ? needText(name, reasons[0]) : name}</span>
            </button>
          </li>
        ))}
      </ol>
    </section>
  );
}
