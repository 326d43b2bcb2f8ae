"""Every practical of this station in one zip, for staff; a practical whose results are withheld comes without them."""

import asyncio
from collections.abc import AsyncIterator, Callable, Iterator
from functools import partial
from typing import Any

from anyio import CapacityLimiter
from anyio.to_thread import run_sync
from fastapi import Depends, FastAPI
from fastapi.responses import Response, StreamingResponse

from station.bench.calculator import CalculationFailed, calculate
from station.practical.dataset import question_for
from station.practical.state import State
from station.practical.view import shown_result
from station.record.everything import Practical, files_of, practicals, state_of
from station.record.journal import JournalError
from station.record.zipped import Zipped
from station.server.access import STAFF
from station.server.access_requires import requires
from station.server.downloads import file_name
from station.server.problems import problem
from station.server.watch import Watch

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
            return problem(503, "not_made", f"The file could not be made. {error}")
        name = file_name(watch.view()["bench"]["name"], None, "records.zip")
        attached = {"Content-Disposition": f'attachment; filename="{name}"'}
        return StreamingResponse(_pieces(found, in_turn), media_type=ZIP, headers=attached)

    async def _pieces(found: list[Practical], in_turn: Callable[..., Any]) -> AsyncIterator[bytes]:
        zipped = Zipped()
        for practical in found:
            state: State = await in_turn(state_of, folder, practical)
            result = await _shown(state)
            growing = _grown(zipped, files_of(folder, practical, state, result))
            while (piece := await in_turn(next, growing, None)) is not None:
                if piece:
                    yield piece
        yield zipped.end()


def _grown(zipped: Zipped, files: Iterator[tuple[str, Iterator[bytes]]]) -> Iterator[bytes]:
    for name, pieces in files:
        yield from zipped.file(name, pieces)


async def _shown(state: State) -> dict[str, Any] | None:
    """Return the results of a practical if they may be seen; computed anew, in a child."""
    if not state.results_shown or not state.counted:
        return None
    try:
        return shown_result(await asyncio.shield(calculate(question_for(state))))
    except CalculationFailed:
        return None
