"""A lesson to take away: CSV files, a spreadsheet, every event. No result before it is shown."""

import asyncio
from collections.abc import AsyncIterator, Awaitable, Callable, Iterator
from itertools import islice

from anyio import CapacityLimiter
from anyio.to_thread import run_sync
from fastapi import FastAPI, Request
from fastapi.responses import Response, StreamingResponse

from station.bench.calculator import CalculationFailed
from station.record.spreadsheet import spreadsheet
from station.room.class_export import (
    READINGS_HEADER,
    RESULTS_HEADER,
    class_sheets,
    csv_text,
    lesson_lines,
    reading_rows,
    result_rows,
)
from station.room.store import Lesson
from station.server.downloads import CSV, LINES, XLSX, Decimal, attached, file_answer, file_name
from station.server.problems import problem
from station.server.room_class import LessonView, Number
from station.server.room_desk import RoomDesk

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
                return problem(403, "withheld", "The results are not shown yet: they are shown to everybody at once.")
            rows = result_rows(await lessons.desk.class_of(which))
            return csv_text(RESULTS_HEADER, rows, decimal_comma=decimal == "comma").encode()

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
            return csv_text(READINGS_HEADER, rows, decimal_comma=decimal == "comma").encode()

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
        return problem(503, "not_made", f"The file could not be made. {error}")
    if isinstance(content, Response):
        return content
    return Response(content, media_type=kind, headers=attached(_name(which, ending)))


def _no_lesson() -> Response:
    return problem(404, "no_such_lesson", "There is no such lesson.")


def _name(lesson: Lesson, ending: str) -> str:
    """Return a file's name from the class's label and the day of the lesson."""
    return file_name(lesson.label or "class", lesson.began[:10], ending)


async def _pieces(lines: Iterator[str], limiter: CapacityLimiter) -> AsyncIterator[str]:
    while piece := await run_sync(lambda: "".join(islice(lines, PIECE)), limiter=limiter):
        yield piece
