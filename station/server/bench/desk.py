"""What the page `/kit` asks for and only the command line knows how to do: given by it, since it stands above."""

import asyncio
import time
from collections.abc import Awaitable, Callable, Iterator, Mapping
from dataclasses import dataclass
from typing import Any

from station.bench.check.finding import FindingsShown
from station.words import Message

FRESH_S, REST = 5.0, 3.0
"""A look is not repeated sooner than this, nor sooner than so many times as long as it took: whoever asks all the time
has a quarter of one core at most, with a low priority."""

Look = Callable[[], Awaitable[FindingsShown]]
AskMachine = Callable[[Mapping[str, Any]], Awaitable[tuple[bool, Message, Mapping[str, Any]]]]
MakeCards = Callable[[str, str | None], Iterator[bytes]]


class Looks:
    """Looks at the kit: one look at a time, however many ask, and none so soon after another."""

    def __init__(self, look: Look, monotonic: Callable[[], float] = time.monotonic) -> None:
        self._look, self._monotonic = look, monotonic
        self._task: asyncio.Task[FindingsShown] | None = None
        self._since_s, self._rest_s = 0.0, FRESH_S

    async def newest(self) -> tuple[FindingsShown, float]:
        """Return what `station check --json` says, and how old it is in seconds."""
        if self._task is None or (self._task.done() and self._age_s() > self._rest_s):
            self._task = asyncio.get_running_loop().create_task(self._looked())
        found = await asyncio.shield(self._task)  # whoever goes away does not end it for the others
        return found, self._age_s()

    async def _looked(self) -> FindingsShown:
        begun_s = self._monotonic()
        found = await self._look()
        self._since_s = self._monotonic()
        self._rest_s = max(FRESH_S, REST * (self._since_s - begun_s))
        return found

    def _age_s(self) -> float:
        return self._monotonic() - self._since_s


@dataclass(frozen=True)
class KitDesk:
    """`looks` looks at the kit, `addresses` are the page's, loopback last.

    `make_cards` turns the texts of kits.toml and perhaps plan.toml into the pieces of a zip, or raises ValueError with
    the line that says what to change, before it gives any; `cards_lack` says what the zip will lack, None for nothing.
    `ask` has what needs root done by name: whether it was, what to tell, and what was found.
    """

    looks: Looks
    addresses: Callable[[], list[str]]
    make_cards: MakeCards
    cards_lack: Callable[[], str | None]
    ask: AskMachine

    async def look(self) -> tuple[FindingsShown, float]:
        """Return what the pre-flight finds, and how old that is: the room asks for it too."""
        return await self.looks.newest()
