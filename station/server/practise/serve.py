"""Serves a hall of practice cups, and ends everything in order."""

import asyncio
import socket
from collections.abc import Callable

from starlette.types import ASGIApp

from station.bench import watchdog
from station.server.practise.hall import Hall
from station.server.serve import GRACE_S, server_of, stopped_by_signal


async def serve_hall(hall: Hall, app: ASGIApp, bound: socket.socket, ready: Callable[[], None]) -> None:
    """Serve the hall on this socket until SIGINT or SIGTERM; `ready` is called once a signal ends it as it should."""
    server, stopped = server_of(app), stopped_by_signal()
    ready()
    tasks = [asyncio.create_task(work) for work in (server.serve([bound]), hall.run(), stopped())]
    watchdog.ready()
    try:
        done, _ = await asyncio.wait(tasks, return_when=asyncio.FIRST_COMPLETED)
    finally:
        watchdog.stopping()
        hall.close()
        server.should_exit = True
        await asyncio.wait({tasks[0]}, timeout=GRACE_S + 1)
        for task in tasks:
            task.cancel()
        await asyncio.wait(tasks)
    for task in done:
        task.result()
