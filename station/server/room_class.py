"""The class result: looking is free, and nobody sees it before it is shown."""

import asyncio
from typing import Annotated, Any

from fastapi import FastAPI, Query, Request

from station.practical.state import State
from station.room.store import Lesson
from station.server.access import STAFF
from station.server.access_requires import role_now
from station.server.room_desk import RoomDesk
from station.server.room_lesson import lesson_json

Json = dict[str, Any]
Number = Annotated[int | None, Query(ge=1, le=10**9, description="which lesson; the newest without")]


class LessonView:
    """A lesson as who asks may see it."""

    def __init__(self, desk: RoomDesk) -> None:
        self.desk = desk

    async def found(self, number: int | None) -> Lesson | None:
        """Return this lesson, or the newest. Raises StoreError."""
        return await asyncio.to_thread(self.desk.book.find, number)

    async def states(self, lesson: Lesson) -> dict[str, State]:
        """Return each bench's state in this lesson. Raises StoreError."""
        return await self.desk.states_of(lesson)

    async def standing(self, lesson: Lesson, request: Request) -> Json:
        """Return whether who asks may see the class result, and which benches it waits for. Raises StoreError.

        The lesson under way shows it to everybody at once. Of one that is over nobody could show it any more, so
        staff see it then.
        """
        newest = self.desk.lesson.lesson
        if newest is not None and newest.lesson == lesson.lesson:
            standing = self.desk.class_standing()
        else:
            begun = [state for state in (await self.states(lesson)).values() if state.repeats]
            shown = bool(begun) and all(state.results_shown for state in begun)
            standing = {"shown": shown, "waits_for": [], "taking_part": len(begun)}
        over = lesson.ended is not None or newest is None or newest.lesson != lesson.lesson
        return {**standing, "shown": standing["shown"] or (over and role_now(request) in STAFF)}


def add_class(app: FastAPI, desk: RoomDesk) -> None:
    """Add the class result to the application."""
    lessons = LessonView(desk)

    @app.get("/api/room/class")
    async def class_result(request: Request, lesson: Number = None) -> Any:
        """The class result of a lesson once it is shown; until then what it waits for. `computing`: ask again."""
        which = await lessons.found(lesson)
        if which is None:
            return {
                "lesson": None,
                "shown": False,
                "waits_for": [],
                "taking_part": 0,
                "computing": False,
                "result": None,
            }
        standing = await lessons.standing(which, request)
        result, computing = await desk.class_at_hand(which) if standing["shown"] else (None, False)
        return {"lesson": lesson_json(which), **standing, "computing": computing, "result": result}
