"""How many connections there may be, and how long a request may take to arrive.

A web server holds a connection for as long as its other end likes; a handful of scripts on one phone could so keep
a class out. Here a request arrives within `REQUEST_WITHIN_S`, and where there is no room left, whoever holds the most
connections gives up one on which nothing is being answered.
"""

import asyncio
import resource
from collections import Counter
from typing import Any

import h11
from uvicorn.protocols.http.h11_impl import H11Protocol

from station.server.access_network import network_of

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
    spare = [each for each in newest.connections if each.network == crowded and each.is_spare and each is not newest]
    return min(spare, key=lambda each: each.opened_s, default=newest)
