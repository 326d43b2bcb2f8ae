"""Runs the server, and ends it: open streams are closed first, since a server waits for them for ever."""

import asyncio
import contextlib
import signal
import socket
from collections.abc import Callable, Coroutine, Generator

import uvicorn
from starlette.types import ASGIApp

from station.bench import watchdog
from station.server.access import Access
from station.server.app import make_app
from station.server.connections import BACKLOG, Connection, have_files
from station.server.watch import Watch

GRACE_S = 2
SILENT_MS = 20_000


class Server(uvicorn.Server):
    """Leaves signals alone: uvicorn would raise them again, and the record would not be closed."""

    @contextlib.contextmanager
    def capture_signals(self) -> Generator[None, None, None]:
        """Capture nothing."""
        yield


class PortTaken(OSError):  # noqa: N818
    """The address cannot be listened on; the message says what to do."""


def listen(host: str, port: int) -> socket.socket:
    """Return a listening socket, so that its address may be told; port 0 takes a free one. Raises PortTaken."""
    family = socket.AF_INET6 if ":" in host else socket.AF_INET
    bound = socket.socket(family, socket.SOCK_STREAM)
    bound.setsockopt(socket.SOL_SOCKET, socket.SO_REUSEADDR, 1)
    # Accepted sockets inherit it: a phone that fell asleep, or reads no more, is let go (tcp(7)).
    bound.setsockopt(socket.IPPROTO_TCP, socket.TCP_USER_TIMEOUT, SILENT_MS)
    try:
        bound.bind((host, port))
        bound.listen(BACKLOG)
    except (OSError, OverflowError, ValueError, TypeError) as error:  # the last two: no name of a host at all
        bound.close()
        raise PortTaken(f"cannot listen on {host} port {port}: {error}; choose another server.port") from error
    return bound


async def serve(
    watch: Watch,
    version: str,
    bound: socket.socket,
    until: Callable[[], Coroutine[None, None, None]],
    ready: Callable[[], None] = lambda: None,
    access: Access | None = None,
    beside: Callable[[], Coroutine[None, None, None]] | None = None,
) -> None:
    """Serve the bench on this socket until SIGINT, SIGTERM, or `until` returns; then let everything go in order.

    `ready` is called once a signal ends the station as it should, before anything happens on the bench. `beside` is
    work whose end ends nothing.
    """
    server = server_of(make_app(watch, version, access))
    stop = stopped_by_signal()
    ready()
    watch.begin()
    tasks = [asyncio.create_task(work) for work in (watch.bench.run(), server.serve([bound]), until(), stop())]
    other = asyncio.create_task(stop() if beside is None else beside())
    watchdog.ready()
    try:
        done, _ = await asyncio.wait(tasks, return_when=asyncio.FIRST_COMPLETED)
    finally:
        watchdog.stopping()
        watch.hub.close()
        await watch.predictor.close()
        server.should_exit = True
        await asyncio.wait({tasks[1]}, timeout=GRACE_S + 1)
        await watch.calculator.close()
        for task in (*tasks, other):
            task.cancel()
        await asyncio.wait({*tasks, other})
    for task in done:
        task.result()


def server_of(app: ASGIApp) -> Server:
    """Return a server for this application, as every page here is served."""
    have_files()
    config = uvicorn.Config(
        app,
        log_level="error",  # a request that is none would be a line each
        log_config=None,  # uvicorn's own needs a standard output
        access_log=False,
        http=Connection,
        lifespan="off",
        ws="none",
        loop="asyncio",
        backlog=BACKLOG,
        timeout_graceful_shutdown=GRACE_S,
        server_header=False,
        proxy_headers=False,  # nobody says for another whose address it is
    )
    return Server(config)


def stopped_by_signal() -> Callable[[], Coroutine[None, None, None]]:
    """Return what ends when SIGINT or SIGTERM comes; from now on they end nothing by themselves."""
    stop = asyncio.Event()
    for number in (signal.SIGINT, signal.SIGTERM):
        asyncio.get_running_loop().add_signal_handler(number, stop.set)

    async def stopped() -> None:
        await stop.wait()

    return stopped
