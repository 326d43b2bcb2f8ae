"""A room whose application is called without a network: store, collector, board and desk are real, no broker runs."""

import asyncio
from collections.abc import AsyncIterator, Mapping
from contextlib import asynccontextmanager, suppress
from dataclasses import dataclass
from pathlib import Path
from typing import Any

import httpx
from fastapi import FastAPI

from station.practical.events import Stamped
from station.practical.events.bench import PlanChosen
from station.room.class_result.kept import ClassResults
from station.room.collector import Collector
from station.room.lesson_book import Practical
from station.room.store.store import RoomStore
from station.room.wire import BrokerAddress
from station.server.door.access import Access
from station.server.door.secrets import Secrets
from station.server.room.app import make_room_app
from station.server.room.desk import RoomDesk
from tests.conftest import PATIENCE_S
from tests.server.live import here

Lesson = Mapping[str, tuple[Stamped, ...]]
JOURNAL = "a1b2c3d4e5f60718"
NOWHERE = BrokerAddress("127.0.0.1", 1)
COMPUTED = ClassResults()
"""What one test had computed of a bench need not be computed again for another."""


@dataclass
class Room:
    """A room and how to ask it."""

    desk: RoomDesk
    client: httpx.AsyncClient
    access: Access
    app: FastAPI

    async def get(self, path: str, **query: Any) -> httpx.Response:
        return await self.client.get(path, params=query)

    async def room(self) -> dict[str, Any]:
        body: dict[str, Any] = (await self.get("/api/room")).json()
        return body

    async def order(self, benches: list[str], **act: Any) -> httpx.Response:
        return await self.client.post("/api/room/orders", json={"benches": benches, "act": act})

    async def class_result(self, **query: Any) -> dict[str, Any]:
        """The class result, once it is computed."""
        async with asyncio.timeout(PATIENCE_S):
            while (body := (await self.get("/api/room/class", **query)).json())["computing"]:  # noqa: ASYNC110
                await asyncio.sleep(0.1)
        found: dict[str, Any] = body
        return found

    def hear(self, bench: str, events: tuple[Stamped, ...]) -> None:
        """Keep further events and hand them on, as the collector does."""
        self.desk.store.keep(bench, JOURNAL, events)
        for each in events:
            self.desk._happened(bench, JOURNAL, each)


def filled(folder: Path, lesson: Lesson, label: str = "10B") -> RoomStore:
    """A store that holds these benches' events, all of one lesson."""
    store = RoomStore(folder)
    number = store.begin_lesson(label)
    for bench, events in lesson.items():
        store.keep(bench, JOURNAL, events)
        chosen = next(each.seq for each in events if isinstance(each.event, PlanChosen))
        store.add_practical(number, bench, JOURNAL, Practical(bench, JOURNAL, chosen).began)
    return store


@asynccontextmanager
async def room_in_process(
    folder: Path, lesson: Lesson, secrets: Secrets | None = None, *, running: bool = False
) -> AsyncIterator[Room]:
    """A room that knows this lesson; `running`: it also looks after lessons and class results."""
    store = filled(folder, lesson)
    desk = RoomDesk(store, Collector(store, NOWHERE))
    desk.results._benches, desk.results._classes = COMPUTED._benches, COMPUTED._classes
    await desk.begin()
    access = here(secrets)
    work = asyncio.create_task(desk.run()) if running else None
    app = make_room_app(desk, "0", access, lambda: ["http://192.0.2.7:8080/"])
    transport = httpx.ASGITransport(app, raise_app_exceptions=False)
    try:
        async with httpx.AsyncClient(transport=transport, base_url="http://bench.local") as client:
            yield Room(desk, client, access, app)
    finally:
        if work is not None:
            work.cancel()
            with suppress(asyncio.CancelledError):
                await work
        await app.state.views.ended()
        store.close()
