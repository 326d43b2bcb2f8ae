"""The hall: gives whoever comes a virtual cup of their own, and serves each at its own address.

`/practise` leads to the cup of the device that asks, a new one at first; `/practise/CUP` is the page of a cup, and
`/api/practise/CUP/…` is to it what `/api/…` is to a bench.
"""

import asyncio
import secrets
import time
from collections.abc import Callable
from dataclasses import dataclass, field
from typing import Final

from starlette.requests import Request
from starlette.responses import PlainTextResponse, RedirectResponse, Response
from starlette.types import ASGIApp, Receive, Scope, Send

from station.practical.state import State
from station.server.door.access import Access
from station.server.door.guard import Guard
from station.server.door.hosts import Hosts
from station.server.door.reader import reader_language
from station.server.practise.cup import Cup, practice_app
from station.server.problems import problem
from station.words import in_language, say

PAGE: Final = "/practise"
API: Final = "/api/practise/"
COOKIE: Final = "benchwarm-practise"
IDLE_S: Final = 900.0
"""A cup that no page has asked anything of for so long, and that none listens to, is washed up."""
GIVES_WAY_S: Final = 60.0
"""Where all are in use, one that was left for so long goes to who comes."""
LOOK_S: Final = 30.0
KEPT_S: Final = 86_400


@dataclass
class _Served:
    """A cup with its application; `asked_s` is when it was asked last, of the machine's monotonic clock."""

    cup: Cup
    app: ASGIApp
    task: "asyncio.Task[None]"
    asked_s: float


@dataclass
class Hall:
    """Up to `most` cups; `opened` makes one. Everybody may use the cup whose address they have.

    `is_open` says whether there may be another cup now: a bench at work needs its time for itself.
    """

    opened: Callable[[], Cup]
    most: int
    version: str
    names: tuple[str, ...] = ()
    is_open: Callable[[], bool] = lambda: True
    monotonic: Callable[[], float] = time.monotonic
    cups: dict[str, _Served] = field(default_factory=dict)

    def __post_init__(self) -> None:
        self._hosts = Hosts(self.names)
        self._door = Guard(self._doorkeeper, Access(hosts=self._hosts))
        self._opening = asyncio.Lock()

    def beside(self, app: ASGIApp) -> ASGIApp:
        """Return the application that serves this hall, and `app` at all other addresses."""

        async def both(scope: Scope, receive: Receive, send: Send) -> None:
            path = scope.get("path", "")
            ours = path == PAGE or path.startswith((f"{PAGE}/", API))
            await (self if ours else app)(scope, receive, send)

        return both

    async def __call__(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Serve one request."""
        name, rest = _parted(scope["path"])
        served = self.cups.get(name)
        if served is None:
            await self._door(scope, receive, send)
            return
        served.asked_s = self.monotonic()
        await served.app({**scope, "path": rest, "raw_path": rest.encode()}, receive, send)

    def states(self) -> list[State]:
        """Return how each cup stands, in the order in which they came."""
        return [served.cup.watch.bench.state for served in self.cups.values()]

    async def _made_room(self) -> bool:
        """Wash up the cup that was left first, if one was left for long enough."""
        left = [name for name, served in self.cups.items() if self._is_left(served, GIVES_WAY_S)]
        if left:
            await self._wash_up(min(left, key=lambda name: self.cups[name].asked_s))
        return bool(left)

    def _is_left(self, served: _Served, for_s: float) -> bool:
        return self.monotonic() - served.asked_s > for_s and served.cup.watch.hub.count == 0

    async def run(self) -> None:
        """Wash up what nobody uses any more, until cancelled; then all."""
        try:
            while True:
                await asyncio.sleep(LOOK_S)
                await self.wash_up_left()
        finally:
            await self.end()

    async def wash_up_left(self) -> None:
        """Wash up the cups that were left, and those whose bench works no more."""
        for name, served in tuple(self.cups.items()):
            if self._is_left(served, IDLE_S) or served.task.done():
                await self._wash_up(name)

    async def end(self) -> None:
        """Wash up all."""
        for name in tuple(self.cups):
            await self._wash_up(name)

    def close(self) -> None:
        """End all streams, so that the server can stop."""
        for served in self.cups.values():
            served.cup.watch.hub.close()

    async def cup_for(self, name: str) -> str | None:
        """Return the name of this device's cup, or of a new one; None when all are in use."""
        async with self._opening:
            if name in self.cups:
                return name
            if not self.is_open() or (len(self.cups) >= self.most and not await self._made_room()):
                return None
            name, cup = secrets.token_hex(4), self.opened()
            await cup.begin()
            app = practice_app(cup, self.version, Access(hosts=self._hosts))
            task = asyncio.get_running_loop().create_task(cup.run())
            await asyncio.sleep(0)  # a task that is cancelled before it began never closes its cup
            self.cups[name] = _Served(cup, app, task, self.monotonic())
            return name

    async def _doorkeeper(self, scope: Scope, receive: Receive, send: Send) -> None:
        """Serve who has no cup yet, or one that is washed up."""
        if scope["type"] != "http":
            return
        request = Request(scope)
        answer: Response
        if request.url.path.startswith(API):
            answer = problem(404, "no_such_cup", say("practise-no-such-cup"))
        elif request.method not in ("GET", "HEAD"):
            answer = problem(405, "not_allowed", say("practise-no-such-cup"))
        elif request.url.path != PAGE:
            answer = RedirectResponse(PAGE, 303)
        else:
            answer = await self._led(request)
        await answer(scope, receive, send)

    async def _led(self, request: Request) -> Response:
        name = await self.cup_for(request.cookies.get(COOKIE, ""))
        if name is None:
            language = reader_language(request.headers.get("accept-language", ""))
            why = say("practise-full") if self.is_open() else say("practise-bench-at-work")
            return PlainTextResponse(
                in_language(why, language) + "\n", 503, {"Content-Language": language, "Retry-After": "60"}
            )
        answer = RedirectResponse(f"{PAGE}/{name}", 303, {"Cache-Control": "no-store"})
        answer.set_cookie(COOKIE, name, max_age=KEPT_S, httponly=True, samesite="strict", path=PAGE)
        return answer

    async def _wash_up(self, name: str) -> None:
        served = self.cups.pop(name, None)
        if served is not None:
            served.task.cancel()
            await asyncio.wait({served.task})


def _parted(path: str) -> tuple[str, str]:
    """Return the cup that a path is about, and the path as the cup's own application has it."""
    if path.startswith(API):
        name, _, rest = path.removeprefix(API).partition("/")
        return name, f"/api/{rest}"
    name, _, rest = path.removeprefix(PAGE).removeprefix("/").partition("/")
    return name, f"/{rest}"


def hall_alone(hall: Hall, page: ASGIApp) -> ASGIApp:
    """Return the application of a station that only practises: `page` has the page's files and the manual."""

    async def alone(scope: Scope, receive: Receive, send: Send) -> None:
        is_front = scope["type"] == "http" and scope["path"] == "/"
        await (front if is_front else rest)(scope, receive, send)

    front, rest = RedirectResponse(PAGE, 303), hall.beside(page)
    return alone
