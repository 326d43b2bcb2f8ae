"""The page `/kit`: the pre-flight beside the station at work, the address as a QR code, the lamps' test.

Whoever may look may see it: it tells addresses, ids and versions, and nothing that is secret.
"""

import asyncio
import io
from collections.abc import AsyncIterator, Iterator
from functools import partial
from typing import Annotated

import segno
from anyio import CapacityLimiter
from anyio.to_thread import run_sync
from fastapi import Depends, FastAPI
from fastapi.responses import Response, StreamingResponse
from pydantic import BaseModel, ConfigDict, Field

from station.server.bench.contract import KitShown
from station.server.bench.watch import Watch
from station.server.door.access import STAFF
from station.server.door.requires import requires
from station.server.problems import problem
from station.words import say

# Cards for further benches, made by this station for staff: a zip, made in a thread while it is sent.


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
            return problem(503, "not_here", say("kit-cannot-make-cards"))
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


SVG = "image/svg+xml"


def add_kit(app: FastAPI, watch: Watch) -> None:
    """Add the paths to the application."""
    _add_looking(app, watch)
    _add_staff(app, watch)


def _add_looking(app: FastAPI, watch: Watch) -> None:
    @app.get("/api/kit")
    async def kit() -> KitShown | Response:
        """What `station check --json` finds beside this station, how old it is, and the page's addresses."""
        desk = watch.desk
        if desk is None:
            return problem(503, "not_here", say("kit-cannot-look"))
        found, age_s = await desk.looks.newest()
        return {
            **found,
            "age_s": round(age_s, 1),
            "bench": watch.view()["bench"]["name"],
            "addresses": desk.addresses(),
            "panel": watch.bench.panel.kind,
            "cards_lack": await asyncio.to_thread(desk.cards_lack),
        }

    @app.get("/api/kit/address.svg", response_class=Response, responses={200: {"content": {SVG: {}}}})
    async def address() -> Response:
        """The page's address as a QR code (ISO/IEC 18004)."""
        if watch.desk is None:
            return problem(503, "not_here", say("kit-cannot-look"))
        picture = io.BytesIO()
        segno.make(watch.desk.addresses()[0], error="m", micro=False).save(picture, kind="svg", border=4, light="white")
        return Response(picture.getvalue(), media_type=SVG)


def _add_staff(app: FastAPI, watch: Watch) -> None:
    @app.post("/api/kit/lamps", status_code=204, response_class=Response, dependencies=[Depends(requires(*STAFF))])
    async def lamps() -> Response:
        """Light the lamps one after the other, then all, with one beep; then they show the practical again."""
        panel = watch.bench.panel
        if panel.kind == "none":
            return problem(409, "no_panel", say("kit-no-panel"))
        panel.try_all()
        return Response(status_code=204)
