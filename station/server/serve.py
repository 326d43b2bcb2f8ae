"""Runs the server, and ends it: open streams are closed first, since a server waits for them for ever."""

import asyncio
import contextlib
import logging
import resource
import signal
import socket
import time
from collections import Counter
from collections.abc import Callable, Coroutine, Generator
from typing import Any

import h11
import uvicorn
from starlette.types import ASGIApp
from uvicorn.protocols.http.h11_impl import H11Protocol

from station.bench import watchdog
from station.server.bench.app import make_app
from station.server.bench.watch import Watch
from station.server.door.access import Access
from station.server.door.limits import Rate, network_of
from station.server.practise.hall import Hall
from station.words import say

# How many connections there may be, and how long a request may take to arrive.
#
# A web server holds a connection for as long as its other end likes; a handful of scripts on one phone could so keep
# a class out. Here a request arrives within `REQUEST_WITHIN_S`, and where there is no room left, whoever holds the most
# connections gives up one on which nothing is being answered, or else its newest.


MOST_OF_ONE = 320
"""Open connections of one address. A browser opens six; forty pages behind one access point have room."""
MOST = 640
"""Open connections in all, where a process may have `FILES` open; fewer where it may have fewer."""
FILES = 1024
BACKLOG = 64
"""So many connections are accepted in one turn of the loop."""
OWN_FILES = 80
"""What the station needs beside connections: the record, its readers, probe, pins, children."""
REQUEST_WITHIN_S = 15.0
"""From its first byte (of a new connection: from its opening) a request arrives within this time."""


class Connection(H11Protocol):
    """One connection; `connections` holds all of this server."""

    connections: set["Connection"]  # type: ignore[assignment]
    network = ""
    opened_s = 0.0
    _deadline: asyncio.TimerHandle | None = None

    def connection_made(self, transport: asyncio.Transport) -> None:  # type: ignore[override]
        """Take the connection if there is room, or can be made."""
        super().connection_made(transport)
        self.network = network_of(self.client[0] if self.client else "")
        self.opened_s = self.loop.time()
        self._await_request()
        too_many = one_too_many(self)
        if too_many is not None:
            too_many.drop()

    def data_received(self, data: bytes) -> None:
        """Take what came; a request that has begun has its time to arrive."""
        super().data_received(data)
        if self.transport.is_closing():
            return
        if self._has_arrived():
            self._no_deadline()
        elif self._deadline is None:
            self._await_request()

    def connection_lost(self, exc: Exception | None) -> None:
        """Forget it."""
        self._no_deadline()
        super().connection_lost(exc)

    def send_400_response(self, msg: str) -> None:
        """Answer what is no request; where an answer is under way it is the end of it.

        uvicorn would answer twice, and write its own fault into the log for each such request.
        """
        if self.cycle is not None and not self.cycle.response_complete:
            self.cycle.disconnected = True
            self.cycle.message_event.set()
            self.transport.close()
            return
        try:
            super().send_400_response(msg)
        except h11.LocalProtocolError:  # it cannot even be answered
            self.transport.close()

    @property
    def is_spare(self) -> bool:
        """Whether nothing is being answered on it."""
        return self.cycle is None or self.cycle.response_complete or self.cycle.more_body

    def drop(self) -> None:
        """Close it at once."""
        self.transport.abort()
        self.connections.discard(self)

    def _has_arrived(self) -> bool:
        state: Any = self.conn.their_state
        return state is not h11.SEND_BODY and not (state is h11.IDLE and self.conn.trailing_data[0])

    def _await_request(self) -> None:
        self._deadline = self.loop.call_later(REQUEST_WITHIN_S, self.drop)

    def _no_deadline(self) -> None:
        if self._deadline is not None:
            self._deadline.cancel()
            self._deadline = None


def most() -> int:
    """Return how many connections there may be. Where files run out, asyncio does nothing but say so (Python 3.11)."""
    files = resource.getrlimit(resource.RLIMIT_NOFILE)[0]
    # A connection is made two turns of the loop after it was accepted, and each turn accepts anew.
    return max(min(MOST, files - 3 * BACKLOG - OWN_FILES), 4)


def have_files() -> None:
    """Let this process have `FILES` files open, as far as the system lets it."""
    files, at_most = resource.getrlimit(resource.RLIMIT_NOFILE)
    if files < FILES:
        resource.setrlimit(resource.RLIMIT_NOFILE, (min(FILES, at_most), at_most))


def one_too_many(newest: Connection) -> Connection | None:
    """Return the connection that has to go now that this one came; None while there is room."""
    counts = Counter(each.network for each in newest.connections)
    if counts[newest.network] > MOST_OF_ONE:
        crowded = newest.network
    elif len(newest.connections) > most():
        crowded, held = counts.most_common(1)[0]
        if held <= counts[newest.network]:
            crowded = newest.network
    else:
        return None
    crowd = [each for each in newest.connections if each.network == crowded and each is not newest]
    spare = [each for each in crowd if each.is_spare]
    if spare:
        return min(spare, key=lambda each: each.opened_s)
    return newest if crowded == newest.network else max(crowd, key=lambda each: each.opened_s)


GRACE_S = 2
SILENT_MS = 20_000
FAULTS_PER_S, FAULTS_AT_ONCE = 0.2, 5
"""A fault with its traceback is some kilobytes: whoever can provoke one must not be able to fill the card with it."""


class FewFaults(logging.Filter):
    """Lets the first faults into the log, then one every few seconds, which says how many were left out before it."""

    def __init__(self, monotonic: Callable[[], float] = time.monotonic) -> None:
        super().__init__()
        self._rate, self._monotonic, self._left_out = Rate(FAULTS_PER_S, FAULTS_AT_ONCE), monotonic, 0

    def filter(self, record: logging.LogRecord) -> bool:
        """Whether this one is written."""
        if self._rate.wait_s(record.name, self._monotonic()) > 0.0:
            self._left_out += 1
            return False
        if self._left_out:
            told = say("server-faults-left-out", count=self._left_out, reason=record.getMessage())
            record.msg, record.args = told, None
            self._left_out = 0
        return True


class Server(uvicorn.Server):
    """Leaves signals alone: uvicorn would raise them again, and the record would not be closed."""

    @contextlib.contextmanager
    def capture_signals(self) -> Generator[None, None, None]:
        """Capture nothing."""
        yield

    async def serve(self, sockets: list[socket.socket] | None = None) -> None:
        """Serve until told to exit; of faults only some are logged."""
        few = FewFaults()
        logs = [logging.getLogger(name) for name in ("uvicorn.error", "asyncio")]
        for log in logs:
            log.addFilter(few)
        try:
            await super().serve(sockets)
        finally:
            for log in logs:
                log.removeFilter(few)


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
        raise PortTaken(say("server-cannot-listen", host_address=host, port=port, reason=str(error))) from error
    return bound


async def serve(
    watch: Watch,
    version: str,
    bound: socket.socket,
    until: Callable[[], Coroutine[None, None, None]],
    ready: Callable[[], None] = lambda: None,
    access: Access | None = None,
    hall: Hall | None = None,
    beside: Callable[[], Coroutine[None, None, None]] | None = None,
) -> None:
    """Serve the bench on this socket until SIGINT, SIGTERM, or `until` returns; then let everything go in order.

    `ready` is called once a signal ends the station as it should, before anything happens on the bench. `beside` is
    work whose end ends nothing. With a `hall` practice cups are served beside the bench.
    """
    app = make_app(watch, version, access)
    server = server_of(app if hall is None else hall.beside(app))
    stop = stopped_by_signal()
    ready()
    watch.begin()
    tasks = [asyncio.create_task(work) for work in (watch.bench.run(), server.serve([bound]), until(), stop())]
    other = asyncio.create_task(stop() if beside is None else beside())
    cups = asyncio.create_task(stop() if hall is None else hall.run())
    watchdog.ready()
    try:
        done, _ = await asyncio.wait(tasks, return_when=asyncio.FIRST_COMPLETED)
    finally:
        watchdog.stopping()
        watch.hub.close()
        if hall is not None:
            hall.close()
        await watch.predictor.close()
        server.should_exit = True
        await asyncio.wait({tasks[1]}, timeout=GRACE_S + 1)
        await watch.calculator.close()
        for task in (*tasks, other, cups):
            task.cancel()
        await asyncio.wait({*tasks, other, cups})
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
