// The room's HTTP contract as its page reads it, made from the room's own OpenAPI document. Ages and waits are seconds;
// `waits_s` and `usual_s` are bench time.

import type { Lesson as PlainLesson, LessonListed, Room as WholeRoom, RoomBoard } from "../live/contract.generated";

export type {
  ClassAnswer,
  ClassResult,
  ClassSheets,
  KitFinding,
  KitRow,
  Lessons,
  MadeUp,
  OrderLeft,
  PracticeCup,
  Quantity,
  ReasonShown as Reason,
  Tile,
  TilesChanged as TilesMessage,
} from "../live/contract.generated";

/** The addresses come with the first answer, and not over the stream. */
export type Room = RoomBoard & Partial<Pick<WholeRoom, "addresses">>;

/** How many benches took part stands in the list of lessons only. */
export type Lesson = PlainLesson & Partial<Pick<LessonListed, "benches">>;
