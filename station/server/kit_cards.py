"""Cards for further benches, made by this station for staff: a zip, made in a thread while it is sent."""

from collections.abc import AsyncIterator, Iterator
from functools import partial
from typing import Annotated

from anyio import CapacityLimiter
from anyio.to_thread import run_sync
from fastapi import Depends, FastAPI
from fastapi.responses import Response, StreamingResponse
from pydantic import BaseModel, ConfigDict, Field

from station.server.access import STAFF
from station.server.access_requires import requires
from station.server.problems import problem
from station.server.watch import Watch

ZIP = "application/zip"


class Tables(BaseModel):
    """The texts of kits.toml and, where it names one, of its plan; the body's size limits both."""

    model_config = ConfigDict(extra="forbid", frozen=True)

    kits_toml: Annotated[str, Field(min_length=1)]
    plan_toml: str | None = None


def add_cards(app: FastAPI, watch: Watch) -> None:
    """Add the path to the application."""
    in_turn = partial(run_sync, limiter=CapacityLimiter(1))

    @app.post(
        "/api/kit/cards",
        response_class=StreamingResponse,
        responses={200: {"content": {ZIP: {"schema": {"type": "string"}}}}},
        dependencies=[Depends(requires(*STAFF))],
    )
    async def cards(tables: Tables) -> Response:
        """A folder for each card, what goes onto every card, labels, and the sheet of codes and passphrases."""
        if watch.desk is None:
            return problem(503, "not_here", "This station cannot make cards.")
        try:
            growing = watch.desk.make_cards(tables.kits_toml, tables.plan_toml)
        except ValueError as error:
            return problem(422, "bad_table", str(error))

        async def pieces(growing: Iterator[bytes]) -> AsyncIterator[bytes]:
            while (piece := await in_turn(next, growing, None)) is not None:
                if piece:
                    yield piece

        attached = {"Content-Disposition": 'attachment; filename="cards.zip"', "Cache-Control": "no-store"}
        return StreamingResponse(pieces(growing), media_type=ZIP, headers=attached)
