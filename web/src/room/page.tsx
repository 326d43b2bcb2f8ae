// The room's pages: board, class result, lessons; the address says which.

import { useState } from "preact/hooks";
import { type Address, Frame, StaffOnly, startPage } from "../staff/frame";
import { phrase, said } from "../words";
import { Board, Counts } from "./board";
import { ClassPage } from "./class_result/page";
import { useRoom } from "./feed";
import { LessonForm, LessonsPage, lessonInWords } from "./lessons";
import { Telling } from "./telling";

const PAGES = ["/room", "/room/class", "/room/lessons"] as const satisfies readonly Address[];

function RoomPage() {
  const here = PAGES.find((address) => address === location.pathname) ?? "/room";
  return (
    <Frame here={here} pages={PAGES}>
      {here === "/room" ? <BoardPage /> : here === "/room/class" ? <ClassPage /> : <LessonsPage />}
    </Frame>
  );
}

// The board's page: the benches, and what staff do with them.

const PROJECTOR = "#projector";

function RoomAddress({ addresses }: { addresses: readonly string[] }) {
  const [first] = addresses;
  if (!first) return null;
  return (
    <section class="settings-part room-address">
      <p>
        {phrase("page-room-address")} <b>{first}</b>
      </p>
      <img src="/api/room/address.svg" alt={phrase("page-room-qr", { address: first })} width="160" height="160" />
      <details class="room-practise">
        <summary>{phrase("page-room-practise")}</summary>
        <p>{phrase("page-room-practise-more")}</p>
        <p>
          <a href="/practise">{`${first}practise`}</a>
        </p>
        <img src="/api/room/address.svg?of=practise" alt={phrase("page-room-qr", { address: `${first}practise` })} width="160" height="160" />
      </details>
    </section>
  );
}

function BoardPage() {
  const { known, now_ms, lost } = useRoom();
  const [projector, project] = useState(location.hash === PROJECTOR);
  const [chosen, setChosen] = useState<ReadonlySet<string> | null>(null);
  if (!known) return <p class="connecting">{phrase("page-room-connecting")}</p>;
  const { room } = known;
  const choose = (bench: string) => {
    const next = new Set(chosen ?? []);
    if (!next.delete(bench)) next.add(bench);
    setChosen(next);
  };
  const turn = () => {
    history.replaceState(null, "", projector ? location.pathname : PROJECTOR);
    document.body.classList.toggle("projects", !projector);
    project(!projector);
  };
  document.body.classList.toggle("projects", projector);
  return (
    <>
      <div class="board-head">
        <p class="lesson-now">{lessonInWords(room.lesson)}</p>
        {!projector && <Counts known={known} />}
        <button type="button" class="plain" onClick={turn}>
          {projector ? phrase("page-room-no-projector") : phrase("page-room-projector")}
        </button>
        <div role="alert">
          {lost && <p class="contact">{phrase("page-room-lost")}</p>}
          {!lost && room.fault && <p class="fault">{phrase("page-room-fault", { reason: said(room.fault) })}</p>}
        </div>
      </div>
      <h2 class="unseen">{phrase("page-room-board-title")}</h2>
      <Board known={known} now_ms={now_ms} projector={projector} chosen={projector ? null : chosen} choose={choose} />
      {!projector && (
        <div class="room-tools">
          <StaffOnly>
            {() => (
              <>
                <Telling room={room} chosen={chosen} setChosen={setChosen} />
                <LessonForm key={room.lesson?.lesson ?? 0} room={room} />
              </>
            )}
          </StaffOnly>
          <RoomAddress addresses={room.addresses ?? []} />
        </div>
      )}
    </>
  );
}

startPage(RoomPage);
