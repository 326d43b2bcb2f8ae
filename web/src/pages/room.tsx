// The room's pages: board, class result, lessons; the address says which.

import { type Address, Frame, startPage } from "../frame_staff";
import { BoardPage } from "../room/board_page";
import { ClassPage } from "../room/class_page";
import { LessonsPage } from "../room/lessons_page";

const PAGES = ["/room", "/room/class", "/room/lessons"] as const satisfies readonly Address[];

function RoomPage() {
  const here = PAGES.find((address) => address === location.pathname) ?? "/room";
  return (
    <Frame here={here} pages={PAGES}>
      {here === "/room" ? <BoardPage /> : here === "/room/class" ? <ClassPage /> : <LessonsPage />}
    </Frame>
  );
}

startPage(RoomPage);
