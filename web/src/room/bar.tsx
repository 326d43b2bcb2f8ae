// The bar at the foot of the board, which stays: what is pressed in every lesson, and the ways to the rest.

import type { ComponentChildren } from "preact";
import { useEffect, useRef } from "preact/hooks";
import { phrase } from "../words";
import type { Room } from "./contract";
import { standingOf } from "./feed";
import { useTelling } from "./telling";

export type PanelName = "tell" | "lesson" | "join" | "practice" | "sign";

interface Props {
  room: Room;
  /** Whether who looks may tell benches something. */
  staff: boolean;
  benches: readonly string[];
  open: PanelName | null;
  show: (panel: PanelName | null) => void;
  arranges: boolean;
  arrange: () => void;
  project: () => void;
  /** On a phone: whether all benches are shown, not only those who need somebody. */
  all: boolean;
  showAll: () => void;
}

export function Bar({ room, staff, benches, open, show, arranges, arrange, project, all, showAll }: Props) {
  const { told, send, busy } = useTelling();
  const tiles = benches.flatMap((bench) => room.tiles[bench] ?? []);
  const give = (act: object) => void send("/api/room/orders", { benches, act });
  const shown = tiles.filter(({ results_shown }) => results_shown).length;
  const held = tiles.filter((tile) => standingOf(tile) === "held").length;
  const every = tiles.length > 0 && shown === tiles.length;
  const none = tiles.length === 0 || busy;
  const panel = (name: PanelName, words: string) => (
    <button type="button" class="plain" aria-expanded={open === name} aria-controls="panel" onClick={() => show(open === name ? null : name)}>
      {words}
    </button>
  );
  return (
    <div class="room-bar" role="group" aria-label={phrase("page-room-bar")}>
      <button type="button" class="plain only-phone" aria-pressed={all} onClick={showAll}>
        {phrase("page-room-all-benches", { count: room.order.length })}
      </button>
      {staff ? (
        <>
          <button type="button" class="switch" role="switch" aria-checked={every} disabled={none} onClick={() => give({ act: "show_results", shown: !every })}>
            <span class="switch-track" aria-hidden="true" />
            <span>
              {phrase("page-room-results", { state: every ? "shown" : shown === 0 ? "held" : "some", shown, all: tiles.length })}
            </span>
          </button>
          <button type="button" class="plain" disabled={none} onClick={() => give({ act: held > 0 ? "resume" : "pause" })}>
            {phrase("page-room-pause-all", { which: held > 0 ? "resume" : "pause", count: held > 0 ? held : tiles.length })}
          </button>
          {panel("tell", phrase("page-room-tell-title"))}
          {panel("lesson", phrase("page-room-lesson-title"))}
          <button type="button" class="plain not-phone" aria-pressed={arranges} onClick={arrange}>
            {phrase(arranges ? "page-room-arranged" : "page-room-arrange")}
          </button>
        </>
      ) : (
        panel("sign", phrase("page-room-sign-in"))
      )}
      {room.practice.length > 0 && panel("practice", phrase("page-room-practice-count", { count: room.practice.length }))}
      {panel("join", phrase("page-room-join"))}
      <button type="button" class="plain not-phone" onClick={project}>
        {phrase("page-room-projector")}
      </button>
      <p class="told" role="status">
        {told}
      </p>
    </div>
  );
}

/** What opens over the board: nothing beneath it moves. Escape closes it. */
export function Panel({ close, children }: { close: () => void; children: ComponentChildren }) {
  const whole = useRef<HTMLDivElement>(null);
  useEffect(() => {
    const before = document.activeElement;
    whole.current?.focus();
    const escape = (event: KeyboardEvent) => {
      if (event.key === "Escape") close();
    };
    document.addEventListener("keydown", escape);
    return () => {
      document.removeEventListener("keydown", escape);
      if (before instanceof HTMLElement) before.focus();
    };
  }, []);
  return (
    <div id="panel" class="room-panel" ref={whole} tabIndex={-1} role="dialog" aria-label={phrase("page-room-panel")}>
      <button type="button" class="plain panel-close" onClick={close}>
        {phrase("page-close")}
      </button>
      {children}
    </div>
  );
}
