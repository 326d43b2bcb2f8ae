"""The link: sends the journal to the room and does what the room orders. A bench without it works just the same.

The room's answer is what counts, not the broker's: the next batch goes when the room keeps the last one, and all that
it does not keep is sent again, from the journal. So memory stays as it is, whatever the network does, and sampling
never waits.
"""

import asyncio
import contextlib
import random
import time
from collections.abc import Sequence
from contextlib import AbstractAsyncContextManager
from secrets import randbits, token_hex
from typing import Final

from station.bench.loop import Bench
from station.practical import events as e
from station.record.journal import JournalError
from station.room import wire
from station.room.asks import Ask, KitTold
from station.room.link.kit import AskTaker, KitDoor
from station.room.link.outbox import OrderTaker, Outbox
from station.room.link.state import FAILED, NO_BROKER, NO_ENTRY, NO_ROOM, NOT_YET, UP, About, LinkState
from station.room.mqtt import BrokerLost, Connection, Publication, connected, new_identifier
from station.room.wire import BrokerAddress, Here, KeptMessage, Live, Orders, WireError, packed, unpacked
from station.words import Message, say

SAMPLES_S: Final = 5.0
"""How long samples wait for one another; whatever else happened goes at once, and they with it."""
PACE_S: Final = 0.1
"""Between two batches, also when there is much to catch up with: the room has other benches."""
PLENTY: Final = 100
LIVE_S: Final = 0.5
SIGN_OF_LIFE_S: Final = 10.0
ANSWER_WITHIN_S: Final = (10.0, 60.0)
RECONNECT_S: Final = (1.0, 30.0)
SAVE_EVERY_S: Final = 60.0
MOST_UNREAD: Final = 100


class Link:
    """The link of a bench at work: `await run()` until it is cancelled; `state` tells how it is."""

    def __init__(
        self,
        bench: Bench,
        name: str,
        broker: BrokerAddress,
        about: About | None = None,
        door: KitDoor | None = None,
    ) -> None:
        if broker.user is None:
            raise ValueError(say("link-needs-user"))
        self.bench, self.broker, self.user = bench, broker, broker.user
        self._own_name, self._about = name, about or About()
        self._kit = token_hex(8)
        # The same for each connection: the broker then says the will of one that hangs before we say that we are here,
        # and not after. Another kit with this user has another, or neither would be heard.
        self._identifier = new_identifier()
        self._text, self._detail, self._up = NOT_YET, "", False
        self._outbox = Outbox(bench.journal.path.parent)
        self._room, self._asked, self._said_name = "", 0, ""
        self._more, self._answered, self._fresh = (asyncio.Event() for _ in range(3))
        self._taker = OrderTaker(bench)
        self._asks = AskTaker(bench, self._kit, door)
        self._inbox: asyncio.Queue[tuple[str, bytes]] = asyncio.Queue(MOST_UNREAD)
        self._saved_s = time.monotonic()
        bench.listen(self._happened)

    @property
    def state(self) -> LinkState:
        """How the link is now."""
        waiting = max(self.bench.seq - self._outbox.acknowledged, 0)
        return LinkState(self._up, self._text, waiting, self._detail)

    @property
    def _name(self) -> str:
        return self.bench.state.name or self._own_name

    async def run(self) -> None:
        """Connect, send and take orders until cancelled, over every loss; nothing that fails here ends the bench."""
        pause_s = RECONNECT_S[0]
        try:
            while True:
                began_s = time.monotonic()
                await self._connected_once()
                self._up = False
                if time.monotonic() - began_s > RECONNECT_S[1]:
                    pause_s = RECONNECT_S[0]
                # Spread: after the broker's return a whole class would come in the same moment.
                await asyncio.sleep(random.uniform(0.1, 1.0) * pause_s)  # noqa: S311
                pause_s = min(2 * pause_s, RECONNECT_S[1])
        finally:
            with contextlib.suppress(JournalError):
                self._outbox.save()

    async def _connected_once(self) -> None:
        # In a task of its own: a task group that ends by an error forgets that its task was told to end (before 3.13).
        work = asyncio.create_task(self._work())
        try:
            await asyncio.wait({work})
        finally:
            work.cancel()
            await asyncio.wait({work})

    async def _work(self) -> None:
        try:
            self._outbox = await asyncio.to_thread(Outbox.opened, self._outbox.folder)
            self._inbox = asyncio.Queue(MOST_UNREAD)
            async with self._connected() as client:
                await client.subscribe({wire.topic(self.user, what): 1 for what in wire.TO_BENCH})
                async with asyncio.TaskGroup() as tasks:
                    tasks.create_task(client.lost())
                    tasks.create_task(self._taker.run())
                    tasks.create_task(self._asks.run(lambda told: self._tell_of_kit(client, told)))
                    for work in (self._receive, self._send, self._send_live):
                        tasks.create_task(work(client))
        except* BrokerLost as errors:
            lost = _first(errors)
            self._say_down(NO_ENTRY if getattr(lost, "refused", False) else NO_BROKER, lost)
        except* Exception as errors:  # the bench goes on; the next try begins from what the journal says
            self._say_down(FAILED, _first(errors))

    def _say_down(self, text: Message, error: BaseException) -> None:
        self._up, self._text, self._detail = False, text, str(error) or type(error).__name__

    def _connected(self) -> AbstractAsyncContextManager[Connection]:
        gone = packed(self._here().model_copy(update={"gone": True}))
        will = Publication(wire.topic(self.user, wire.HERE), gone, qos=1, retain=True)
        return connected(self.broker, self._heard, will, self._identifier)

    def _heard(self, topic: str, payload: bytes, _: bool) -> None:
        with contextlib.suppress(asyncio.QueueFull):  # what is lost is said again
            self._inbox.put_nowait((topic, payload))

    def _happened(self, stamped: Sequence[e.Stamped]) -> None:
        self._fresh.set()
        if any(not isinstance(each.event, e.SampleTaken) for each in stamped):
            self._more.set()

    def _here(self) -> Here:
        return Here.said(
            journal=self._outbox.journal,
            kit=self._kit,
            name=self._name,
            boot=self.bench.clock.boot,
            version=self._about.version,
            board=self._about.board,
            addresses=self._about.addresses(),
            last_seq=self.bench.seq,
            asked=self._asked,
        )

    async def _send(self, client: Connection) -> None:
        """One batch at a time: the next one when the room keeps it, or again from where the room says."""
        much = await self._greet(client)
        while True:
            if not much:
                with contextlib.suppress(TimeoutError):
                    async with asyncio.timeout(SAMPLES_S):
                        await self._more.wait()
            self._more.clear()
            if self._name != self._said_name:
                await self._say_here(client)
            count, batch = await asyncio.to_thread(self._outbox.next_batch, self._kit)
            much = count >= PLENTY
            if not count:
                continue
            self._answered.clear()
            await client.publish(wire.topic(self.user, wire.EVENTS_TOPIC), batch, qos=1)
            if not await self._answer_within(ANSWER_WITHIN_S[0]):
                much = await self._greet(client)
            await asyncio.sleep(PACE_S)

    async def _greet(self, client: Connection) -> bool:
        """Say who is here until the room says up to where it keeps the journal; then there may be much to send."""
        patience_s = ANSWER_WITHIN_S[0]
        while True:
            self._answered.clear()
            self._asked = randbits(40)
            await self._say_here(client)
            if await self._answer_within(patience_s * random.uniform(0.7, 1.0)):  # noqa: S311
                return True
            self._up, self._text, self._detail = False, NO_ROOM, ""
            patience_s = min(2 * patience_s, ANSWER_WITHIN_S[1])

    async def _say_here(self, client: Connection) -> None:
        here = self._here()
        self._said_name = here.name
        await client.publish(wire.topic(self.user, wire.HERE), packed(here), qos=1, retain=True)

    async def _answer_within(self, patience_s: float) -> bool:
        try:
            async with asyncio.timeout(patience_s):
                await self._answered.wait()
        except TimeoutError:
            return False
        return True

    async def _receive(self, client: Connection) -> None:
        while True:
            topic, payload = await self._inbox.get()
            with contextlib.suppress(WireError):  # what cannot be read is as good as not sent
                if topic.endswith(f"/{wire.KEPT}"):
                    await self._kept(client, unpacked(KeptMessage, payload))
                elif topic.endswith(f"/{wire.ASKS}"):
                    self._asks.told(unpacked(Ask, payload))
                elif payload:
                    self._taker.told(unpacked(Orders, payload), self._outbox.journal)

    async def _kept(self, client: Connection, told: KeptMessage) -> None:
        """Take the room's answer: a later one, or one that was asked for, which may also be an earlier one."""
        outbox = self._outbox
        if (told.journal, told.kit) != (outbox.journal, self._kit):
            return
        asked = told.asked == self._asked
        if asked:
            self._room = told.room
        if told.room != self._room or not (asked or told.differs or told.seq > outbox.acknowledged):
            return
        if told.differs or not await asyncio.to_thread(outbox.forget, told.seq, told.digest):
            # The room keeps other events under this name: a copied card, or a record put back by hand.
            await asyncio.to_thread(outbox.begin_anew)
            self._asked = randbits(40)
            await self._say_here(client)
            return
        self._up, self._text, self._detail = True, UP, ""
        if time.monotonic() - self._saved_s > SAVE_EVERY_S:
            self._saved_s = time.monotonic()
            await asyncio.to_thread(outbox.save)
        self._answered.set()

    async def _tell_of_kit(self, client: Connection, told: KitTold) -> None:
        await client.publish(wire.topic(self.user, wire.KIT), packed(told), qos=1)

    async def _send_live(self, client: Connection) -> None:
        while True:
            with contextlib.suppress(TimeoutError):
                async with asyncio.timeout(SIGN_OF_LIFE_S):
                    await self._fresh.wait()
            self._fresh.clear()
            live = Live(kit=self._kit, temperature_c=self._temperature_c())
            await client.publish(wire.topic(self.user, wire.LIVE), packed(live))
            await asyncio.sleep(LIVE_S)

    def _temperature_c(self) -> float | None:
        state = self.bench.state
        if state.probe == "lost":
            return None
        good = (each.temperature_c for each in reversed(state.recent) if each.temperature_c is not None)
        return next(good, None)


def _first(errors: BaseExceptionGroup[BaseException]) -> BaseException:
    error: BaseException = errors
    while isinstance(error, BaseExceptionGroup):
        error = error.exceptions[0]
    return error
