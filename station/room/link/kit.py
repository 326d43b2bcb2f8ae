"""What the room asks of the kit itself, beside the practical: look at it, a check in ice, the record, the power.

An ask is for now: a kit that is away hears nothing of it, and never does it later. What came of it goes back at once.
"""

import asyncio
import contextlib
from collections import deque
from collections.abc import Awaitable, Callable, Mapping
from typing import Any, Final, Protocol

from station.bench.check.finding import FindingsShown
from station.bench.loop import Bench
from station.practical.acts import ActRefused
from station.practical.staff import StaffAct
from station.record.journal import JournalError
from station.room.asks import Ask, FoundOnKit, KitTold, request_of
from station.words import Message, say

LEFT: Final = say("kit-ask-done")
NO_DOOR: Final = say("kit-cannot-look")
MOST_WAITING: Final = 20
_REMEMBERED: Final = 100


class KitDoor(Protocol):
    """The kit's hands, which only the command line has."""

    async def look(self) -> tuple[FindingsShown, float]:
        """Return what the pre-flight finds, and how old that is in seconds."""
        ...

    def ask(self, request: Mapping[str, Any], /) -> Awaitable[tuple[bool, Message, Mapping[str, Any]]]:
        """Have the helper do it: whether it was done, what to tell, and what was found."""
        ...


class AskTaker:
    """Does what the room asks, one after the other: `told` when it comes, `await run(send)` beside."""

    def __init__(self, bench: Bench, kit: str, door: KitDoor | None) -> None:
        self._bench, self._kit, self._door = bench, kit, door
        self._waiting: asyncio.Queue[Ask] = asyncio.Queue(MOST_WAITING)
        self._seen: deque[tuple[str, int]] = deque(maxlen=_REMEMBERED)

    def told(self, ask: Ask) -> None:
        """Take an ask; the same one again, which a broker may bring twice, is left alone."""
        if (ask.room, ask.ask) in self._seen:
            return
        self._seen.append((ask.room, ask.ask))
        with contextlib.suppress(asyncio.QueueFull):  # nothing comes back, so it is asked again
            self._waiting.put_nowait(ask)

    async def run(self, send: Callable[[KitTold], Awaitable[None]]) -> None:
        """Do what comes, until cancelled."""
        while True:
            ask = await self._waiting.get()
            try:
                told = await self._done(ask)
            except (ActRefused, JournalError) as refused:
                told = self._answer(ask, str(refused), done=False)
            await send(told)

    async def _done(self, ask: Ask) -> KitTold:
        match ask.do:
            case "look":
                return await self._looked(ask)
            case "ice-begin":
                await self._act(ask, "begun", act="check_begin", check="ice")
                await self._act(ask, "in", act="check_step", step="in")
            case "ice-save":
                await self._act(ask, "saved", act="check_save")
            case "ice-discard":
                await self._act(ask, "discarded", act="check_discard")
            case _:
                return await self._helped(ask)
        return self._answer(ask, LEFT)

    async def _act(self, ask: Ask, key: str, **values: Any) -> None:
        """Do an act of staff on the bench. Raises ActRefused, JournalError."""
        key = f"room-{ask.room}-ask-{ask.ask}-{key}"
        await self._bench.do(StaffAct.model_validate({**values, "key": key, "by": "technician"}))

    async def _looked(self, ask: Ask) -> KitTold:
        if self._door is None:
            return self._answer(ask, NO_DOOR, done=False)
        found, age_s = await self._door.look()
        told = tuple(FoundOnKit.of(each) for each in found["findings"])
        return KitTold(kit=self._kit, ask=ask.ask, done=True, status=found["status"], found=told, age_s=age_s)

    async def _helped(self, ask: Ask) -> KitTold:
        if self._door is None:
            return self._answer(ask, NO_DOOR, done=False)
        done, told, _ = await self._door.ask(request_of(ask))
        return self._answer(ask, told, done=done)

    def _answer(self, ask: Ask, text: str, *, done: bool = True) -> KitTold:
        return KitTold.answering(self._kit, ask.ask, text, done=done)
