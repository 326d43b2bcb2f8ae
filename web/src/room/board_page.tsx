// The board's page: the benches, and what staff do with them.

import { useState } from "preact/hooks";
import { StaffOnly } from "../frame_staff";
import { said } from "../words";
import { roomWords as words } from "../words/room_topic";
import { Board, Counts } from "./board";
import { useRoom } from "./feed";
import { LessonForm, lessonInWords } from "./lesson";
import { Telling } from "./telling";

const PROJECTOR = "#projector";

function Address({ addresses }: { addresses: readonly string[] }) {
  const [first] = addresses;
  if (!first) return null;
  return (
    <section class="settings-part room-address">
      <p>
        {words().address} <b>{first}</b>
      </p>
      <img src="/api/room/address.svg" alt={words().qr(first)} width="160" height="160" />
    </section>
  );
}

export function BoardPage() {
  const { known, now_ms, lost } = useRoom();
  const [projector, project] = useState(location.hash === PROJECTOR);
  const [chosen, setChosen] = useState<ReadonlySet<string> | null>(null);
  if (!known) return <p class="connecting">{words().connecting}</p>;
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
          {projector ? words().noProjector : words().projector}
        </button>
        <div role="alert">
          {lost && <p class="contact">{words().lost}</p>}
          {!lost && room.fault && <p class="fault">{words().fault(said(room.fault))}</p>}
        </div>
      </div>
      <h2 class="unseen">{words().boardTitle}</h2>
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
          <Address addresses={room.addresses ?? []} />
        </div>
      )}
    </>
  );
}
