"""One live stream: what was missed from the journal, then everything as it happens."""

import asyncio
from collections.abc import AsyncIterator, Callable

from fastapi.responses import StreamingResponse
from starlette.types import Receive, Scope, Send

from station.record.journal import JournalError, read_events
from station.server.bench.watch import Watch
from station.server.streaming import HEARTBEAT, PADDING, RESET, RETRY, Listener, happened

HEARTBEAT_S = 4.0
MOST_MISSED = 1000
"""Who has missed more loads the state anew, which costs less than a quarter of an hour of samples one by one."""


EVENT_STREAM = "text/event-stream"

UNKNOWN = 1 << 62
"""A sequence number that no journal has reached."""


def sequence_number(last_event_id: str) -> int:
    """Return the sequence number in a `Last-Event-ID`; `UNKNOWN` when it is not one of ours."""
    return (
        int(last_event_id)
        if last_event_id.isascii() and last_event_id.isdigit() and len(last_event_id) < 19
        else UNKNOWN
    )


class Streamed(StreamingResponse):
    """A live stream; `leave` is called at its end, also where its client went before the first byte was made."""

    def __init__(self, content: AsyncIterator[bytes], leave: Callable[[], None]) -> None:
        headers = {"Cache-Control": "no-cache, no-transform", "X-Accel-Buffering": "no"}
        super().__init__(content, media_type=EVENT_STREAM, headers=headers)
        self._leave = leave

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Send it."""
        try:
            await super().__call__(scope, receive, send)
        finally:
            self._leave()


async def stream(watch: Watch, listener: Listener, after: int) -> AsyncIterator[bytes]:
    """Yield the bytes of a stream that goes on after sequence number `after`.

    The listener joined before the journal is read, so nothing falls between the two.
    """
    yield RETRY + PADDING
    seq = watch.bench.seq
    if after > seq or seq - after > MOST_MISSED:
        yield RESET
        return
    missed: list[tuple[int, bytes]] = []
    if after < seq:
        folder = watch.bench.journal.path.parent
        try:
            missed = await asyncio.to_thread(lambda: [(e.seq, happened(e)) for e in read_events(folder, after)])
        except JournalError:  # a card that is gone: the state is all there is, and it says so
            yield RESET
            return
    sent = missed[-1][0] if missed else after
    yield b"".join(message for _, message in missed) + watch.view_message()
    async for message in heard(listener, sent):
        yield message


async def heard(listener: Listener, sent: int = 0) -> AsyncIterator[bytes]:
    """Yield what a listener hears until its stream is ended, and signs of life; numbers up to `sent` are left out."""
    while True:
        try:
            async with asyncio.timeout(HEARTBEAT_S):
                item = await listener.queue.get()
        except TimeoutError:
            yield HEARTBEAT
            continue
        waiting = []
        while item is not None:
            number, message = item
            if number == 0 or number > sent:
                waiting.append(message)
            if listener.queue.empty():
                break
            item = listener.queue.get_nowait()
        if waiting:  # what came together goes out together
            yield b"".join(waiting)
        if item is None:
            return
