"""The class result: looking is free, and nobody sees it before it is shown."""

import asyncio
from collections.abc import AsyncIterator, Awaitable, Callable, Iterator
from itertools import islice
from typing import Annotated

from anyio import CapacityLimiter
from anyio.to_thread import run_sync
from fastapi import FastAPI, Query, Request
from fastapi.responses import Response, StreamingResponse

from station.bench.calculation.worker import CalculationFailed
from station.practical.state import State
from station.record.spreadsheet.file import spreadsheet
from station.room.class_result.export import (
    READINGS_HEADER,
    RESULTS_HEADER,
    class_sheets,
    lesson_csv,
    lesson_lines,
    reading_rows,
    result_rows,
)
from station.room.store.store import Lesson
from station.server.bench.downloads import CSV, LINES, XLSX, Decimal, attached, file_answer, file_name
from station.server.door.access import STAFF
from station.server.door.requires import role_now
from station.server.problems import problem
from station.server.room.contract import ClassAnswer, ClassSeen, MadeUp
from station.server.room.desk import RoomDesk
from station.words import say

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

    async def standing(self, lesson: Lesson, request: Request) -> ClassSeen:
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

    async def made_up(self, lesson: Lesson, request: Request) -> MadeUp:
        """Return what the bottle was made up to, for staff; for everybody once benches show it. Raises StoreError."""
        states = list((await self.states(lesson)).values())
        told = [each.prepared_mol_dm3 for each in states if each.results_shown and each.prepared_mol_dm3 is not None]
        to_find = any(part.to_find for each in states if each.chosen for part in each.plan.ingredients)
        mol_dm3 = told[0] if told else None
        if to_find and role_now(request) in STAFF:
            mol_dm3 = await asyncio.to_thread(self.desk.store.made_up, lesson.lesson) or mol_dm3
        return {"mol_dm3": mol_dm3, "to_find": to_find, "seen": bool(told)}


def add_class(app: FastAPI, desk: RoomDesk) -> None:
    """Add the class result to the application."""
    lessons = LessonView(desk)

    @app.get("/api/room/class")
    async def class_result(request: Request, lesson: Number = None) -> ClassAnswer:
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
                "made_up": {"mol_dm3": None, "to_find": False, "seen": False},
            }
        standing = await lessons.standing(which, request)
        result, computing = await desk.class_at_hand(which) if standing["shown"] else (None, False)
        made_up = await lessons.made_up(which, request)
        return {**standing, "lesson": which, "computing": computing, "result": result, "made_up": made_up}


# A lesson to take away: CSV files, a spreadsheet, every event. No result before it is shown.


PIECE = 500
Make = Callable[[Lesson], Awaitable[bytes | Response]]


def add_downloads(app: FastAPI, desk: RoomDesk) -> None:
    """Add the downloads to the application."""
    lessons, one_at_a_time = LessonView(desk), CapacityLimiter(1)
    _add_results(app, lessons, one_at_a_time)
    _add_readings(app, lessons, one_at_a_time)


def _add_results(app: FastAPI, lessons: LessonView, one_at_a_time: CapacityLimiter) -> None:
    @app.get("/api/room/class.csv", response_class=Response, responses=file_answer(CSV))
    async def class_csv(request: Request, lesson: Number = None, decimal: Decimal = "dot") -> Response:
        """The results of all benches and the class's, once they are shown."""

        async def make(which: Lesson) -> bytes | Response:
            if not (await lessons.standing(which, request))["shown"]:
                return problem(403, "withheld", say("room-results-not-shown"))
            rows = result_rows(await lessons.desk.class_of(which))
            return lesson_csv(RESULTS_HEADER, rows, decimal_comma=decimal == "comma").encode()

        return await _made(lessons, lesson, "class.csv", CSV, make)

    @app.get("/api/room/class.xlsx", response_class=Response, responses=file_answer(XLSX))
    async def class_xlsx(request: Request, lesson: Number = None) -> Response:
        """Readings as a spreadsheet, and the class result once it is shown."""

        async def make(which: Lesson) -> bytes:
            states = await lessons.states(which)
            shown = (await lessons.standing(which, request))["shown"]
            answer = await lessons.desk.class_of(which) if shown else None
            sheets = class_sheets(answer, states, lessons.desk.names_of(states))
            return await run_sync(spreadsheet, sheets, limiter=one_at_a_time)

        return await _made(lessons, lesson, "class.xlsx", XLSX, make)


def _add_readings(app: FastAPI, lessons: LessonView, one_at_a_time: CapacityLimiter) -> None:
    @app.get("/api/room/readings.csv", response_class=Response, responses=file_answer(CSV))
    async def readings_csv(lesson: Number = None, decimal: Decimal = "dot") -> Response:
        """Every reading of every bench."""

        async def make(which: Lesson) -> bytes:
            states = await lessons.states(which)
            rows = reading_rows(states, lessons.desk.names_of(states))
            return lesson_csv(READINGS_HEADER, rows, decimal_comma=decimal == "comma").encode()

        return await _made(lessons, lesson, "readings.csv", CSV, make)

    @app.get("/api/room/lesson.jsonl", response_class=StreamingResponse, responses=file_answer(LINES))
    async def lesson_jsonl(lesson: Number = None, samples: bool = True) -> Response:
        """Every event of every bench in a lesson, one JSON object a line."""
        which = await lessons.found(lesson)
        if which is None:
            return _no_lesson()
        desk = lessons.desk
        lines = lesson_lines(desk.store, await asyncio.to_thread(desk.book.practicals, which.lesson), samples=samples)
        name = _name(which, "lesson.jsonl")
        return StreamingResponse(_pieces(lines, one_at_a_time), media_type=LINES, headers=attached(name))


async def _made(lessons: LessonView, number: int | None, ending: str, kind: str, make: Make) -> Response:
    which = await lessons.found(number)
    if which is None:
        return _no_lesson()
    try:
        content = await make(which)
    except (CalculationFailed, OSError) as error:
        return problem(503, "not_made", say("server-file-not-made", reason=str(error)))
    if isinstance(content, Response):
        return content
    return Response(content, media_type=kind, headers=attached(_name(which, ending)))


def _no_lesson() -> Response:
    return problem(404, "no_such_lesson", say("room-no-such-lesson"))


def _name(lesson: Lesson, ending: str) -> str:
    """Return a file's name from the class's label and the day of the lesson."""
    return file_name(lesson.label or "class", lesson.began[:10], ending)


async def _pieces(lines: Iterator[str], limiter: CapacityLimiter) -> AsyncIterator[str]:
    while piece := await run_sync(lambda: "".join(islice(lines, PIECE)), limiter=limiter):
        yield piece
