// The room's pages: board, class result, lessons, sheets, kits; the address says which.

import { useLayoutEffect, useState } from "preact/hooks";
import { isStaff, useSession } from "../live/session";
import { type Address, Frame, StaffOnly, startPage } from "../staff/frame";
import { phrase, said } from "../words";
import { Bar, Panel, type PanelName } from "./bar";
import { Board } from "./board";
import { ClassPage } from "./class_result/page";
import type { Room } from "./contract";
import { counts, useRoom } from "./feed";
import { KitsPage } from "./kits";
import { PracticeCups, RoomAddress } from "./joining";
import { LessonForm, LessonsPage, lessonInWords } from "./lessons";
import { NeedsStrip, showTile } from "./needs";
import { SheetsPage } from "./sheets";
import { Telling, useTelling } from "./telling";

const PAGES = ["/room", "/room/class", "/room/lessons", "/room/sheets", "/room/kits"] as const satisfies readonly Address[];

function RoomPage() {
  const here = PAGES.find((address) => address === location.pathname) ?? "/room";
  return (
    <Frame here={here} pages={PAGES}>
      {here === "/room" && <BoardPage />}
      {here === "/room/class" && <ClassPage />}
      {here === "/room/lessons" && <LessonsPage />}
      {here === "/room/sheets" && <SheetsPage />}
      {here === "/room/kits" && <StaffOnly>{() => <KitsPage />}</StaffOnly>}
    </Frame>
  );
}

// The board's page: who needs somebody, the benches, and what staff do with them. It fills the window and never scrolls
// where that is large enough.

const PROJECTOR = "#projector";

const STANDINGS = ["works", "done", "held", "paused", "idle"] as const;

/** How the benches stand, all together: at work is not done, and paused is not well. */
function Counts({ room }: { room: Room }) {
  const found = counts(room.order.flatMap((bench) => room.tiles[bench] ?? []));
  const some = STANDINGS.filter((which) => found[which] > 0);
  return <p class="counts">{some.map((which) => phrase("page-room-counts", { which, count: found[which] })).join(" · ")}</p>;
}

/** Before anything is drawn: what is led to must be there. */
function useBody(name: string, on: boolean): void {
  useLayoutEffect(() => {
    for (const element of [document.documentElement, document.body]) element.classList.toggle(name, on);
    return () => [document.documentElement, document.body].forEach((element) => element.classList.remove(name));
  }, [name, on]);
}

function BoardPage() {
  const { known, lost } = useRoom();
  const { standing } = useSession();
  const [projector, project] = useState(location.hash === PROJECTOR);
  const [chosen, setChosen] = useState<ReadonlySet<string> | null>(null);
  const [panel, show] = useState<PanelName | null>(null);
  const [taken, take] = useState<string | null>(null);
  const [all, setAll] = useState(false);
  const moving = useTelling();
  useBody("projects", projector);
  useBody("board-page", true);
  useBody("shows-all", all || taken !== null);
  if (!known) return <p class="connecting">{phrase("page-room-connecting")}</p>;
  const { room } = known;
  const turn = () => {
    history.replaceState(null, "", projector ? location.pathname : PROJECTOR);
    show(null);
    take(null);
    project(!projector);
  };
  const press = (place: number | null, bench: string | null) => {
    if (place === null || !taken) {
      take(bench ?? "");
    } else {
      if (taken !== bench) void moving.send("/api/room/places", { bench: taken, place });
      take("");
    }
  };
  const benches = chosen === null ? room.order : room.order.filter((bench) => chosen.has(bench));
  const jump = (bench: string) => {
    setAll(true);
    requestAnimationFrame(() => showTile(bench));
  };
  return (
    <>
      <div class="board-head">
        <p class="lesson-now">
          {!projector && room.about.name && <b>{said(room.about.name)}</b>} {lessonInWords(room.lesson)}
        </p>
        {!projector && <Counts room={room} />}
        {projector && (
          <button type="button" class="plain" onClick={turn}>
            {phrase("page-room-no-projector")}
          </button>
        )}
        <div role="alert" class="board-alert">
          {lost && <p class="contact">{phrase("page-room-lost")}</p>}
          {!lost && room.fault && <p class="fault">{phrase("page-room-fault", { reason: said(room.fault) })}</p>}
        </div>
      </div>
      {!projector && <NeedsStrip room={room} show={jump} />}
      <h2 class="unseen">{phrase("page-room-board-title")}</h2>
      <Board known={known} projector={projector} chosen={projector ? null : chosen} taken={taken} press={press} />
      {!projector && (
        <Bar
          room={room}
          staff={standing !== null && isStaff(standing.role)}
          benches={benches}
          open={panel}
          show={show}
          arranges={taken !== null}
          arrange={() => take(taken === null ? "" : null)}
          project={turn}
          all={all}
          showAll={() => setAll(!all)}
        />
      )}
      {panel !== null && !projector && (
        <Panel key={panel} close={() => show(null)}>
          {panel === "join" && <RoomAddress addresses={room.addresses ?? []} />}
          {panel === "practice" && <PracticeCups cups={room.practice} />}
          {panel !== "join" && panel !== "practice" && (
            <StaffOnly>
              {() =>
                panel === "lesson" ? (
                  <LessonForm key={room.lesson?.lesson ?? 0} room={room} />
                ) : (
                  <Telling room={room} chosen={chosen} setChosen={setChosen} />
                )
              }
            </StaffOnly>
          )}
        </Panel>
      )}
    </>
  );
}

startPage(RoomPage);
