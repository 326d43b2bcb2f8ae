"""The page `/kit`: the pre-flight beside the station at work, the address as a QR code, the lamps' test.

Whoever may look may see it: it tells addresses, ids and versions, and nothing that is secret.
"""

import asyncio
import io
import json
from typing import Any

import segno
from fastapi import Depends, FastAPI
from fastapi.responses import Response

from station.server.access import STAFF
from station.server.access_requires import requires
from station.server.problems import problem
from station.server.reason import public
from station.server.watch import Watch

SVG = "image/svg+xml"


def add_kit(app: FastAPI, watch: Watch) -> None:
    """Add the paths to the application."""
    _add_looking(app, watch)
    _add_staff(app, watch)


def _add_looking(app: FastAPI, watch: Watch) -> None:
    @app.get("/api/kit")
    async def kit() -> Any:
        """What `station check --json` finds beside this station, how old it is, and the page's addresses."""
        desk = watch.desk
        if desk is None:
            return problem(503, "not_here", "This station cannot look at its kit.")
        found, age_s = await desk.looks.newest()
        told: dict[str, Any] = json.loads(public(json.dumps(found, ensure_ascii=False)))
        return {
            **told,
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
            return problem(503, "not_here", "This station cannot look at its kit.")
        picture = io.BytesIO()
        segno.make(watch.desk.addresses()[0], error="m", micro=False).save(picture, kind="svg", border=4, light="white")
        return Response(picture.getvalue(), media_type=SVG)


def _add_staff(app: FastAPI, watch: Watch) -> None:
    @app.post("/api/kit/lamps", status_code=204, response_class=Response, dependencies=[Depends(requires(*STAFF))])
    async def lamps() -> Response:
        """Light the lamps one after the other, then all, with one beep; then they show the practical again."""
        panel = watch.bench.panel
        if panel.kind == "none":
            return problem(409, "no_panel", "This kit has no panel: panel.pins in its settings says so.")
        panel.try_all()
        return Response(status_code=204)
