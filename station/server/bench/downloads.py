"""The record to take away: CSV files, a spreadsheet, the journal. Looking is free; no result before it is shown.

Everything is made in a thread, one download at a time: thirty groups that press at once wait for each other, and
sampling waits for none of them.
"""

import asyncio
import re
import unicodedata
from collections.abc import AsyncIterator, Awaitable, Callable, Iterator
from datetime import datetime
from functools import partial
from pathlib import Path
from typing import Annotated, Any, Literal

from anyio import CapacityLimiter
from anyio.to_thread import run_sync
from fastapi import Depends, FastAPI, Query
from fastapi.responses import Response, StreamingResponse

from station.bench.calculation.results import calculate
from station.bench.calculation.worker import CalculationFailed
from station.practical.dataset import question_for
from station.practical.events.bench import PlanChosen
from station.practical.state import State
from station.practical.view import shown_result
from station.record.everything import Practical, Zipped, files_of, practicals, state_of
from station.record.exchange import WITHOUT_SAMPLES, journal_piece, newest_began, readings_text, record_text, table_text
from station.record.journal import JournalError, read_events
from station.record.spreadsheet.file import spreadsheet
from station.record.spreadsheet.sheets import record_sheets
from station.server.bench.contract import BenchView
from station.server.bench.watch import Watch
from station.server.door.access import STAFF
from station.server.door.requires import requires
from station.server.problems import problem
from station.words import say

Decimal = Annotated[Literal["dot", "comma"], Query(description="comma: semicolons and a decimal comma")]
CSV, LINES = "text/csv", "application/jsonl"
XLSX = "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"
EARLIEST_YEAR = 2025
"""A clock that was never set says something earlier: then a file's name has no date."""


def add_downloads(app: FastAPI, watch: Watch) -> None:
    """Add the downloads to the application."""
    one_at_a_time = CapacityLimiter(1)
    folder = watch.bench.journal.path.parent

    async def made(ending: str, media_type: str, make: Callable[[BenchView, State], bytes]) -> Response:
        # What is shown and the state are taken together, here; both are never changed, so a thread may read them.
        view, state = watch.view(), watch.bench.state

        def work() -> tuple[bytes, str]:
            return make(view, state), file_name(view["bench"]["name"], _begun(folder), ending)

        try:
            content, name = await run_sync(work, limiter=one_at_a_time)
        except (JournalError, OSError) as error:
            return problem(503, "not_made", say("server-file-not-made", reason=str(error)))
        return Response(content, media_type=media_type, headers=attached(name))

    _add_csv(app, made)

    @app.get("/api/record.xlsx", response_class=Response, responses=file_answer(XLSX))
    async def record_xlsx() -> Response:
        """The whole record as a spreadsheet, with the results once they are shown."""

        def make(view: BenchView, state: State) -> bytes:
            began = newest_began(folder)
            happened = list(read_events(folder, after=began - 1, kinds=WITHOUT_SAMPLES))
            return spreadsheet(record_sheets(view["bench"]["name"], state, view["result"], happened))

        return await made("record.xlsx", XLSX, make)

    @app.get("/api/journal.jsonl", response_class=StreamingResponse, responses=file_answer(LINES))
    async def journal_jsonl(samples: bool = True) -> Response:
        """Every event of the newest practical, or all but the samples, one JSON object a line."""
        last, kinds = watch.bench.seq, () if samples else WITHOUT_SAMPLES
        try:
            first = await run_sync(newest_began, folder, limiter=one_at_a_time)
            piece, following = await run_sync(journal_piece, folder, first, last, kinds, limiter=one_at_a_time)
        except JournalError as error:
            return problem(503, "not_made", say("server-file-not-made", reason=str(error)))

        async def pieces(piece: str, following: int) -> AsyncIterator[str]:
            while piece:
                yield piece
                piece, following = await run_sync(journal_piece, folder, following, last, kinds, limiter=one_at_a_time)

        name = file_name(watch.view()["bench"]["name"], await run_sync(_begun, folder), "journal.jsonl")
        return StreamingResponse(pieces(piece, following), media_type=LINES, headers=attached(name))


Made = Callable[[str, str, Callable[[BenchView, State], bytes]], Awaitable[Response]]
"""Makes a file with this ending and of this type, and answers with it."""


def _add_csv(app: FastAPI, made: Made) -> None:
    @app.get("/api/record.csv", response_class=Response, responses=file_answer(CSV))
    async def record_csv(decimal: Decimal = "dot") -> Response:
        """All good samples of the repeats that count, and the portions."""
        comma = decimal == "comma"
        return await made("record.csv", CSV, lambda _, state: record_text(state, decimal_comma=comma).encode())

    @app.get("/api/readings.csv", response_class=Response, responses=file_answer(CSV))
    async def readings_csv(decimal: Decimal = "dot") -> Response:
        """The readings; another bench can take them over."""
        comma = decimal == "comma"
        return await made("readings.csv", CSV, lambda _, state: readings_text(state, decimal_comma=comma).encode())

    @app.get("/api/table.csv", response_class=Response, responses=file_answer(CSV))
    async def table_csv(decimal: Decimal = "dot") -> Response:
        """Volume, each repeat, their mean: the table that the spreadsheet opens with."""
        comma = decimal == "comma"
        return await made("table.csv", CSV, lambda _, state: table_text(state, decimal_comma=comma).encode())


def file_name(bench: str, begun: str | None, ending: str) -> str:
    """Return a file's name in ASCII from the bench's name and the day it began on, as far as they are any use."""
    spelt = unicodedata.normalize("NFKD", bench.lower().translate(_GERMAN)).lower()
    plain = re.sub(r"[^a-z0-9]+", "-", spelt.encode("ascii", "ignore").decode())[:40].strip("-")
    return "-".join([plain or "bench", *([begun] if begun else []), ending])


def _begun(folder: Path) -> str | None:
    """Return the day on which the newest practical was chosen, in the station's time zone."""
    chosen = list(read_events(folder, kinds=(PlanChosen.kind,)))
    try:
        day = datetime.fromisoformat(chosen[-1].wall).astimezone()
    except (IndexError, ValueError, OverflowError):
        return None
    return day.date().isoformat() if day.year >= EARLIEST_YEAR else None


def attached(name: str) -> dict[str, str]:
    """Return the headers of a file to be kept under this name."""
    return {"Content-Disposition": f'attachment; filename="{name}"'}


def file_answer(media_type: str) -> dict[int | str, dict[str, object]]:
    """Return what the OpenAPI document says of an endpoint that gives a file."""
    return {200: {"content": {media_type: {"schema": {"type": "string"}}}}}


_GERMAN = str.maketrans({"ä": "ae", "ö": "oe", "ü": "ue", "ß": "ss"})


# Every practical of this station in one zip, for staff; a practical whose results are withheld comes without them.


ZIP = "application/zip"


def add_everything(app: FastAPI, watch: Watch) -> None:
    """Add the download to the application."""
    folder = watch.bench.journal.path.parent
    # One thread for all of them: a station makes one such zip at a time, and its sampling waits for none.
    in_turn = partial(run_sync, limiter=CapacityLimiter(1))

    @app.get(
        "/api/records.zip",
        response_class=StreamingResponse,
        responses={200: {"content": {ZIP: {"schema": {"type": "string"}}}}},
        dependencies=[Depends(requires(*STAFF))],
    )
    async def records() -> Response:
        """All practicals of the record: samples, readings, spreadsheet and journal of each."""
        try:
            found = await in_turn(practicals, folder)
        except JournalError as error:
            return problem(503, "not_made", say("server-file-not-made", reason=str(error)))
        name = file_name(watch.view()["bench"]["name"], None, "records.zip")
        attached = {"Content-Disposition": f'attachment; filename="{name}"'}
        return StreamingResponse(_pieces(found, in_turn), media_type=ZIP, headers=attached)

    async def _pieces(found: list[Practical], in_turn: Callable[..., Any]) -> AsyncIterator[bytes]:
        zipped = Zipped()
        for practical in found:
            state: State = await in_turn(state_of, folder, practical)
            result = await shown_of(state)
            growing = _grown(zipped, files_of(folder, practical, state, result))
            while (piece := await in_turn(next, growing, None)) is not None:
                if piece:
                    yield piece
        yield zipped.end()


def _grown(zipped: Zipped, files: Iterator[tuple[str, Iterator[bytes]]]) -> Iterator[bytes]:
    for name, pieces in files:
        yield from zipped.file(name, pieces)


async def shown_of(state: State) -> dict[str, Any] | None:
    """Return the results of a practical if they may be seen; computed anew."""
    if not state.results_shown or not state.counted:
        return None
    try:
        return shown_result(await asyncio.shield(calculate(question_for(state))))
    except CalculationFailed:
        return None
