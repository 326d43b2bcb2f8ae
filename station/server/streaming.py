"""Who listens to the live stream. A slow listener loses its stream, never anybody else's time."""

import asyncio
import json
from collections import Counter
from collections.abc import Mapping
from dataclasses import dataclass, field
from typing import Any

from station.practical.events import Stamped, Unknown
from station.words import beside, members

# The messages of the live stream, built once as bytes for all who listen (WHATWG server-sent events).


RETRY = b"retry: 1500\n\n"
# Proxies that buffer let the first bytes through once there are enough of them.
PADDING = b":" + b" " * 2048 + b"\n\n"
HEARTBEAT = b": alive\n\n"
RESET = b"event: reset\ndata: {}\n\n"


def happened(stamped: Stamped) -> bytes:
    """Return the message of one journal event; its id is the sequence number."""
    event = stamped.event
    kind, body = (event.name, event.body) if isinstance(event, Unknown) else (event.kind, event.to_body())
    data = {"seq": stamped.seq, "time_s": stamped.time_s, "kind": kind, "body": body}
    return f"id: {stamped.seq}\nevent: happened\ndata: {compact(data)}\n\n".encode()


def unnumbered(event: str, data: Mapping[str, object]) -> bytes:
    """Return a message without an id: it can be missed, since the next one replaces it."""
    return f"event: {event}\ndata: {compact(beside(data))}\n\n".encode()


def compact(data: Any) -> str:
    """Return JSON without spaces; a NaN is an error of ours, never sent."""
    return json.dumps(data, ensure_ascii=False, separators=(",", ":"), allow_nan=False, default=members)


QUEUE_LENGTH = 200
MOST_LISTENERS = 200


@dataclass(eq=False)
class Listener:
    """One open stream: numbered messages (sequence number, bytes) or unnumbered (0, bytes); None ends it."""

    network: str = ""
    is_staff: bool = False
    is_short: bool = False
    queue: "asyncio.Queue[tuple[int, bytes] | None]" = field(
        default_factory=lambda: asyncio.Queue(maxsize=QUEUE_LENGTH)
    )

    def end(self, last: bytes | None = None) -> None:
        """End the stream, after this last message."""
        while not self.queue.empty():
            self.queue.get_nowait()
        if last is not None:
            self.queue.put_nowait((0, last))
        self.queue.put_nowait(None)


class Hub:
    """Hands each message to every listener."""

    def __init__(self) -> None:
        self._listeners: dict[Listener, None] = {}  # the oldest first
        self._closed = False

    @property
    def count(self) -> int:
        """How many streams are open."""
        return len(self._listeners)

    def join(self, network: str = "", *, is_staff: bool = False) -> Listener | None:
        """Return a new listener at this address; None when there are too many, or the station is closing.

        Where there are too many, an address with more streams than this one gives up its oldest; for staff any other
        does, and staff give theirs up for nobody else.
        """
        if self._closed or (len(self._listeners) >= MOST_LISTENERS and not self._made_room(network, is_staff)):
            return None
        listener = Listener(network, is_staff)
        self._listeners[listener] = None
        return listener

    def leave(self, listener: Listener) -> None:
        """Forget a listener; a second call does nothing."""
        self._listeners.pop(listener, None)

    def _made_room(self, network: str, is_staff: bool) -> bool:
        counts = Counter(each.network for each in self._listeners if not each.is_staff)
        crowded, most = next(iter(counts.most_common(1)), ("", 0))
        if most == 0 or (most <= counts[network] + 1 and not is_staff):
            return False
        oldest = next(each for each in self._listeners if each.network == crowded and not each.is_staff)
        self.leave(oldest)
        oldest.end()
        return True

    def send(self, message: bytes, seq: int = 0, *, short: bytes | None = None) -> None:
        """Hand a message to all, to some in its short form; who is too far behind is told to load the state anew."""
        for listener in tuple(self._listeners):
            try:
                listener.queue.put_nowait((seq, short if short is not None and listener.is_short else message))
            except asyncio.QueueFull:
                self.leave(listener)
                listener.end(RESET)

    def close(self) -> None:
        """End all streams, so that the server can stop."""
        self._closed = True
        for listener in tuple(self._listeners):
            listener.end()
        self._listeners.clear()
