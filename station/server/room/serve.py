"""Runs the room's server beside its collector, and ends both in order."""

import asyncio
import socket
from collections.abc import Callable, Coroutine, Sequence
from typing import Any

from fastapi import FastAPI

from station.bench import watchdog
from station.server.practise.hall import Hall
from station.server.room.desk import RoomDesk
from station.server.serve import GRACE_S, server_of, stopped_by_signal

Work = Callable[[], Coroutine[Any, Any, None]]


async def serve_room(
    app: FastAPI,
    desk: RoomDesk,
    bound: socket.socket,
    works: Sequence[Work],
    ready: Callable[[], None],
    hall: Hall | None = None,
) -> None:
    """Serve the room on this socket until SIGINT, SIGTERM, or one of `works` returns; then let everything go.

    `ready` is called once a signal ends the room as it should, and the board knows what the store holds. The desk
    must be made before the collector among `works` runs. With a `hall` practice cups are served beside. Raises
    StoreError.
    """
    stopped = stopped_by_signal()
    server = server_of(app if hall is None else hall.beside(app))
    works = works if hall is None else [*works, hall.run]
    await desk.begin()
    ready()
    serving = asyncio.create_task(server.serve([bound]))
    tasks = [serving, *(asyncio.create_task(work()) for work in (desk.run, stopped, watchdog.keep_fed, *works))]
    watchdog.ready()
    try:
        done, _ = await asyncio.wait(tasks, return_when=asyncio.FIRST_COMPLETED)
    finally:
        watchdog.stopping()
        desk.hub.close()
        app.state.views.close()
        if hall is not None:
            hall.close()
        server.should_exit = True
        await asyncio.wait({serving}, timeout=GRACE_S + 1)
        for task in tasks:
            task.cancel()
        await asyncio.wait(tasks)
        await app.state.views.ended()
    for task in done:
        task.result()
