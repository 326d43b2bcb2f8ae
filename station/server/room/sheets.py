"""All sheets of a class at once: to print in one go, and as one zip. Results stand in it once they may be seen."""

import asyncio
from collections.abc import AsyncIterator, Iterator
from functools import partial
from typing import Any

from anyio import CapacityLimiter
from anyio.to_thread import run_sync
from fastapi import FastAPI
from fastapi.responses import Response, StreamingResponse

from station.practical.state import State
from station.practical.view import samples_of
from station.record.everything import Zipped
from station.record.exchange import WITHOUT_SAMPLES, readings_text, record_text, table_text
from station.record.spreadsheet.file import spreadsheet
from station.record.spreadsheet.sheets import record_sheets
from station.room.lesson_book import Practical, practical_events
from station.room.store.store import Lesson
from station.server.bench.downloads import ZIP, attached, file_answer, file_name, shown_of
from station.server.problems import problem
from station.server.room.bench import seen_by_room
from station.server.room.class_result import LessonView, Number
from station.server.room.contract import ClassSheet, ClassSheets
from station.server.room.desk import RoomDesk
from station.words import say

Found = dict[str, tuple[Practical, State]]


def add_sheets(app: FastAPI, desk: RoomDesk) -> None:
    """Add the paths to the application."""
    lessons, in_turn = LessonView(desk), partial(run_sync, limiter=CapacityLimiter(1))

    @app.get("/api/room/sheets")
    async def sheets(lesson: Number = None) -> ClassSheets | Response:
        """What stands on the sheet of each bench, as the bench's own page prints it, without any result."""
        which = await lessons.found(lesson)
        if which is None:
            return _no_lesson()
        found = await asyncio.to_thread(_found, desk, which)
        return {"lesson": which, "sheets": [_sheet(desk, bench, state) for bench, (_, state) in found.items()]}

    @app.get("/api/room/sheets.zip", response_class=StreamingResponse, responses=file_answer(ZIP))
    async def zipped(lesson: Number = None) -> Response:
        """A folder for each bench with its spreadsheet, table, readings and record."""
        which = await lessons.found(lesson)
        if which is None:
            return _no_lesson()
        found = await in_turn(_found, desk, which)
        name = file_name(which.label or "class", which.began[:10], "sheets.zip")
        return StreamingResponse(pieces(found), media_type=ZIP, headers=attached(name))

    async def pieces(found: Found) -> AsyncIterator[bytes]:
        growing = Zipped()
        for bench, (practical, state) in found.items():
            result = await shown_of(state)
            files = _files(desk, bench, practical, state, result)
            grown = (piece for name, content in files for piece in growing.file(name, [content]))
            while (piece := await in_turn(next, grown, None)) is not None:
                if piece:
                    yield piece
        yield growing.end()


def _found(desk: RoomDesk, lesson: Lesson) -> Found:
    """Return each bench's practical in a lesson and how it stands, by place. Raises StoreError."""
    states = desk.lesson.states(lesson, desk.store, desk.book, desk.board)
    newest = {each.bench: each for each in desk.book.practicals(lesson.lesson)}
    by_place = sorted(states, key=lambda bench: (desk.board.places.get(bench, len(states)), bench))
    return {bench: (newest[bench], states[bench]) for bench in by_place if states[bench].repeats}


def _sheet(desk: RoomDesk, bench: str, state: State) -> ClassSheet:
    """Whole traces are drawn where a practical has no readings of its own to draw."""
    traces = [samples_of(repeat) for repeat in state.repeats] if state.plan.pours_once else []
    return {"view": seen_by_room(desk, bench, state, state.step_since_s), "traces": traces}


def _files(
    desk: RoomDesk, bench: str, practical: Practical, state: State, result: dict[str, Any] | None
) -> Iterator[tuple[str, bytes]]:
    happened = list(practical_events(desk.store, practical, WITHOUT_SAMPLES))
    name = desk.name_of(bench)
    yield f"{bench}/record.xlsx", spreadsheet(record_sheets(name, state, result, happened))
    yield f"{bench}/table.csv", table_text(state).encode()
    yield f"{bench}/readings.csv", readings_text(state).encode()
    yield f"{bench}/record.csv", record_text(state).encode()


def _no_lesson() -> Response:
    return problem(404, "no_such_lesson", say("room-no-such-lesson"))
