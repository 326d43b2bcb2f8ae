"""Asking a room over HTTP, from this machine."""

import json
from collections.abc import Callable, Coroutine
from dataclasses import dataclass, replace
from pathlib import Path
from typing import TYPE_CHECKING, Any
from urllib.error import HTTPError, URLError
from urllib.request import HTTPCookieProcessor, ProxyHandler, Request, build_opener

from station.bench.check.finding import text_of
from station.bench.loop import Bench
from station.command.settings import Settings
from station.room.link.state import UNREADABLE, About, LinkState
from station.words import understood

# The link to the room, where the settings name its broker: only then is its code loaded.


_SERIAL = Path("/proc/device-tree/serial-number")


if TYPE_CHECKING:
    from station.room.link.kit import KitDoor

Work = Callable[[], Coroutine[None, None, None]]


def link_of(
    settings: Settings,
    bench: Bench,
    version: str,
    addresses: Callable[[], list[str]],
    door: "KitDoor | None" = None,
) -> tuple[Callable[[], LinkState | None], Work]:
    """Return how the link is (None where no broker is set), and its work. `door`: what the room may ask of the kit.

    A password that cannot be read ends no bench: it works alone, and says why.
    """
    chosen = settings.link
    if chosen.broker is None:
        return (lambda: None), _nothing
    from station.room.link.link import Link  # noqa: PLC0415 - 3 MB and 0.1 s that a bench alone need not pay
    from station.room.wire import AddressError, BrokerAddress  # noqa: PLC0415

    try:
        broker = BrokerAddress.read(chosen.broker, chosen.user, chosen.password_file)
        if chosen.password is not None:
            broker = replace(broker, password=chosen.password)
    except AddressError as error:
        state = LinkState(False, UNREADABLE, detail=str(error))
        return (lambda: state), _nothing
    board = (text_of(_SERIAL) or "")[-8:]
    link = Link(bench, settings.bench.name, broker, About(version, board, addresses), door)
    return (lambda: link.state), link.run


async def _nothing() -> None:
    """There is no work."""


@dataclass(frozen=True)
class Answer:
    """Status, JSON body (empty where there is none), and how long to wait before the next try, in s."""

    status: int
    body: dict[str, Any]
    wait_s: float = 0.0


class Asking:
    """Asks the room at this address, `http://…/`; whoever signed in stays signed in."""

    def __init__(self, url: str) -> None:
        self.url = url
        self._opener = build_opener(ProxyHandler({}), HTTPCookieProcessor())  # a school's proxy has no part in this

    def ask(self, path: str, body: dict[str, Any] | None = None, within_s: float = 10.0) -> Answer | None:
        """GET, or POST a body; None when nobody answers."""
        content = None if body is None else json.dumps(body).encode()
        request = Request(f"{self.url}{path}", content, {"Content-Type": "application/json"})  # noqa: S310 - http
        try:
            with self._opener.open(request, timeout=within_s) as reply:
                return Answer(reply.status, _json(reply.read()))
        except HTTPError as error:
            return Answer(error.code, _json(error.read()), float(error.headers.get("Retry-After", 0)))
        except (URLError, OSError, ValueError):
            return None


def _json(text: bytes) -> dict[str, Any]:
    try:
        found = json.loads(text)
    except ValueError:
        return {}
    return understood(found) if isinstance(found, dict) else {}
