"""The helper's process: one line of JSON in, one line out, on the socket that systemd hands over; ends when idle."""

import asyncio
import json
import os
import socket
from collections.abc import Callable
from typing import Any, Final

from station.kit.helper.requests import LONGEST_BYTES, read
from station.kit.helper.work import Helper, Refused, System
from station.words import Message, say, written

IDLE_S: Final = 120.0
HEARD_WITHIN_S: Final = 5.0
FIRST_FD: Final = 3
"""Where systemd puts the first socket (sd_listen_fds(3))."""


class Desk:
    """Takes requests one at a time; what is still at work when another comes says so."""

    def __init__(self, helper: Helper) -> None:
        self._helper = helper
        self._lock = asyncio.Lock()
        self._after: set[asyncio.Task[None]] = set()

    @property
    def busy(self) -> bool:
        """Whether something is being done."""
        return self._lock.locked() or bool(self._after)

    async def talk(self, reader: asyncio.StreamReader, writer: asyncio.StreamWriter) -> None:
        """Answer one request, then do what follows from it."""
        then: Callable[[], object] | None = None
        try:
            line = await asyncio.wait_for(reader.readline(), HEARD_WITHIN_S)
            answer, then = await self._answer(line)
            writer.write(json.dumps(answer, ensure_ascii=False).encode() + b"\n")
            await writer.drain()
        except (OSError, TimeoutError, ValueError):
            pass
        finally:
            writer.close()
        if then is not None:
            task = asyncio.create_task(self._follow(then))
            self._after.add(task)
            task.add_done_callback(self._after.discard)

    async def _answer(self, line: bytes) -> tuple[dict[str, Any], Callable[[], object] | None]:
        try:
            asked = read(line)
        except ValueError:
            return _reply(False, say("helper-not-known")), None
        if asked.do == "look":
            done = self._helper.do(asked)
            return _reply(True, done.told, done.found), None
        if self.busy:
            return _reply(False, say("helper-busy")), None
        async with self._lock:
            try:
                done = await asyncio.to_thread(self._helper.do, asked)
            except Refused as error:
                return _reply(False, error.args[0]), None
        return _reply(True, done.told, done.found), done.then

    async def _follow(self, then: Callable[[], object]) -> None:
        async with self._lock:
            await asyncio.to_thread(then)


def _reply(went_well: bool, told: Message, found: dict[str, Any] | None = None) -> dict[str, Any]:
    return {"done": went_well, "told": written(told), "found": found or {}}


async def serve(bound: socket.socket, helper: Helper, idle_s: float = IDLE_S) -> None:
    """Answer on this socket until nobody has asked for `idle_s` and nothing is at work."""
    desk = Desk(helper)
    heard = asyncio.get_running_loop().time()

    async def talk(reader: asyncio.StreamReader, writer: asyncio.StreamWriter) -> None:
        nonlocal heard
        heard = asyncio.get_running_loop().time()
        await desk.talk(reader, writer)

    async with await asyncio.start_unix_server(talk, sock=bound, limit=LONGEST_BYTES):
        while desk.busy or asyncio.get_running_loop().time() < heard + idle_s:  # noqa: ASYNC110 - clock and requests
            await asyncio.sleep(min(1.0, idle_s))


def main() -> None:
    """Serve on the socket that systemd handed over."""
    if os.environ.get("LISTEN_PID") != str(os.getpid()):
        raise SystemExit("systemd starts this (station-helper.socket)")
    asyncio.run(serve(socket.socket(fileno=FIRST_FD), Helper(System())))


if __name__ == "__main__":
    main()
