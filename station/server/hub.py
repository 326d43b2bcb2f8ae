"""Who listens to the live stream. A slow listener loses its stream, never anybody else's time."""

import asyncio
from collections import Counter
from dataclasses import dataclass, field

from station.server.messages import RESET

QUEUE_LENGTH = 200
MOST_LISTENERS = 200


@dataclass(eq=False)
class Listener:
    """One open stream: numbered messages (sequence number, bytes) or unnumbered (0, bytes); None ends it."""

    network: str = ""
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

    def join(self, network: str = "") -> Listener | None:
        """Return a new listener at this address; None when there are too many, or the station is closing.

        Where there are too many, an address with more streams than this one gives up its oldest.
        """
        if self._closed or (len(self._listeners) >= MOST_LISTENERS and not self._made_room(network)):
            return None
        listener = Listener(network)
        self._listeners[listener] = None
        return listener

    def leave(self, listener: Listener) -> None:
        """Forget a listener; a second call does nothing."""
        self._listeners.pop(listener, None)

    def _made_room(self, network: str) -> bool:
        counts = Counter(each.network for each in self._listeners)
        crowded, most = counts.most_common(1)[0]
        if most <= counts[network] + 1:
            return False
        oldest = next(each for each in self._listeners if each.network == crowded)
        self.leave(oldest)
        oldest.end()
        return True

    def send(self, message: bytes, seq: int = 0) -> None:
        """Hand a message to all; who is too far behind is told to load the state anew."""
        for listener in tuple(self._listeners):
            try:
                listener.queue.put_nowait((seq, message))
            except asyncio.QueueFull:
                self.leave(listener)
                listener.end(RESET)

    def close(self) -> None:
        """End all streams, so that the server can stop."""
        self._closed = True
        for listener in tuple(self._listeners):
            listener.end()
        self._listeners.clear()
