"""The collector: hears all benches, keeps what they send, tells each up to where, and hands on the room's orders.

What came is acknowledged after its commit, many benches in one. Anything a bench can do wrong is noted under its
name, and costs the others nothing.
"""

import asyncio
import contextlib
import random
import sys
import time
from collections.abc import Callable, Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass, field
from typing import Any, Final

from station.practical.events import Stamped, Unknown
from station.practical.events.bench import OrderTaken
from station.room import wire
from station.room.asks import Ask, Doing, KitTold
from station.room.mqtt import BrokerLost, Connection, connected
from station.room.orders import SUPERSEDES, checked_order
from station.room.store.database import StoreError
from station.room.store.store import Differs, Kept, RoomStore, Sent, Unusable
from station.room.wire import (
    Batch,
    BrokerAddress,
    Here,
    KeptMessage,
    Live,
    Order,
    Orders,
    Row,
    WireError,
    packed,
    stamped,
    unpacked,
)
from station.words import Message, join, say

# What the collector notices about benches: who floods, who sends rubbish, and where two kits are one bench.


MESSAGES_A_SECOND = 25.0
BURST = 100.0
BYTES_A_SECOND = 250_000
"""More than twice what a bench sends that catches up."""
BURST_BYTES = 5_000_000
STAYS_S = 60.0
"""How long a trouble is told after it was last seen, and how long a silent kit is remembered."""
MOST_BENCHES = 5000
MOST_KITS = 8

Monotonic = Callable[[], float]


@dataclass
class _Watched:
    tokens: float = BURST
    spare_bytes: float = BURST_BYTES
    at_s: float = 0.0
    kit: str = ""
    kits: dict[str, float] = field(default_factory=dict)
    here: dict[str, Here] = field(default_factory=dict)
    troubles: dict[str, tuple[Message, float]] = field(default_factory=dict)


class Watchers:
    """One record a bench, bounded in number and in size."""

    def __init__(self, monotonic: Monotonic = time.monotonic) -> None:
        self._monotonic = monotonic
        self._benches: dict[str, _Watched] = {}

    def troubles(self) -> dict[str, Message]:
        """Return what is wrong with which bench, in words."""
        now_s = self._monotonic()
        found: dict[str, Message] = {}
        for bench, watched in self._benches.items():
            fresh = [text for text, at_s in watched.troubles.values() if now_s - at_s < STAYS_S]
            if fresh:
                found[bench] = join(fresh)
        return found

    def may_speak(self, bench: str, size_bytes: int = 0) -> bool:
        """Whether another message of this bench is read now; who floods (in number, in bytes) is named and not read."""
        watched = self._of(bench)
        if watched is None:
            return False
        now_s = self._monotonic()
        passed_s = now_s - watched.at_s
        watched.tokens = min(BURST, watched.tokens + passed_s * MESSAGES_A_SECOND)
        watched.spare_bytes = min(BURST_BYTES, watched.spare_bytes + passed_s * BYTES_A_SECOND)
        watched.at_s = now_s
        if watched.spare_bytes < size_bytes:
            self.tell(bench, "flood", say("bench-too-many-bytes", kilobytes=BYTES_A_SECOND // 1000))
            return False
        watched.spare_bytes -= size_bytes
        if watched.tokens < 1.0:
            self.tell(bench, "flood", say("bench-too-many-messages", count=f"{MESSAGES_A_SECOND:.0f}"))
            return False
        watched.tokens -= 1.0
        return True

    def tell(self, bench: str, kind: str, text: Message) -> None:
        """Name a trouble of a bench; the newest of a kind is told."""
        watched = self._of(bench)
        if watched is not None:
            watched.troubles[kind] = (text, self._monotonic())

    def heard(self, bench: str, kit: str, here: Here | None = None) -> None:
        """Note which kit spoke as this bench. Two that speak in turn are named: a restarted kit never comes back."""
        watched = self._of(bench)
        if watched is None:
            return
        now_s = self._monotonic()
        if here is not None:
            watched.here[kit] = here
        before, watched.kit = watched.kit, kit
        back_s = watched.kits.get(kit)
        watched.kits[kit] = now_s
        if before not in ("", kit) and back_s is not None and now_s - back_s < STAYS_S:
            both = join(sorted(_called(watched.here.get(each), each) for each in (before, kit)), "list-and")
            self.tell(bench, "two", say("room-two-kits", bench=bench, both=both))
        while len(watched.kits) > MOST_KITS:
            oldest = min(watched.kits, key=lambda each: watched.kits[each])
            del watched.kits[oldest]
            watched.here.pop(oldest, None)

    def _of(self, bench: str) -> _Watched | None:
        if bench not in self._benches and len(self._benches) >= MOST_BENCHES:
            return None
        return self._benches.setdefault(bench, _Watched(at_s=self._monotonic()))


def _called(here: Here | None, kit: str) -> Message:
    """How a kit can be told from its twin: the end of its board's number, its name, its address."""
    number = say("room-kit", kit_name=kit[:6])
    if here is None:
        return number
    board = say("room-board", board_name=here.board[-6:]) if here.board else number
    if here.addresses:
        return say("room-kit-at", bench_name=here.name, board=board, address=here.addresses[0])
    return say("room-kit-named", bench_name=here.name, board=board)


MOST_WAITING: Final = 2000
"""Batches that wait for the store; what comes beyond is not acknowledged, so it is sent again."""
GATHER_S: Final = 0.02
"""How long a commit waits for further benches: a thousand commits a second would cost more than all else."""
RETRY_S: Final = (0.5, 5.0)
SWITCH_S: Final = 0.0003
_HEARD: Final = {wire.EVENTS_TOPIC: 1, wire.HERE: 1, wire.LIVE: 0, wire.KIT: 1}

Listener = Callable[[str, str, Stamped], None]


@dataclass(frozen=True)
class Latest:
    """What a bench said last: its temperature in °C, None when its probe gives none, and when (monotonic s)."""

    temperature_c: float | None
    heard: float


@dataclass
class KitHeard:
    """What a kit was asked last, what came of that, and what its pre-flight found last, each when (monotonic s)."""

    asked: Ask | None = None
    asked_s: float = 0.0
    answer: KitTold | None = None
    looked: KitTold | None = None
    looked_s: float = 0.0


@dataclass(frozen=True)
class _Asked:
    """What waits for the store, and whose answer it is."""

    sent: Sent
    kit: str
    asked: int | None = None


class Collector:
    """Collects into a store from a broker: `await run()` until it is cancelled.

    `latest` and `here` are what each bench said last of its temperature and of itself, `kits` of its kit.
    """

    def __init__(
        self, store: RoomStore, broker: BrokerAddress, monotonic: Callable[[], float] = time.monotonic
    ) -> None:
        self.store, self.broker = store, broker
        self.latest: dict[str, Latest] = {}
        self.here: dict[str, Here] = {}
        self.kits: dict[str, KitHeard] = {}
        self._broker_fault: str | None = say("room-broker-not-answered", address=str(broker))
        self._store_fault: str | None = None
        self._monotonic = monotonic
        self._watchers = Watchers(monotonic)
        self._listeners: list[Listener] = []
        self._waiting: asyncio.Queue[_Asked] = asyncio.Queue(MOST_WAITING)
        self._client: Connection | None = None
        self._ordering = asyncio.Lock()

    @property
    def fault(self) -> str | None:
        """Why nothing can be collected now, in words; None while all is well."""
        return self._store_fault or self._broker_fault

    @property
    def troubles(self) -> dict[str, Message]:
        """What is wrong with which bench, in words: floods, rubbish, two kits with one id, a record that differs."""
        return self._watchers.troubles()

    def listen(self, listener: Listener) -> None:
        """Call `listener(bench, journal, event)` in the event loop when an event is kept: each once, in order."""
        self._listeners.append(listener)

    async def order(self, benches: Sequence[str], order: Mapping[str, Any]) -> int:
        """Give an order to these benches; return its number once it is kept. Those that are away do it later.

        Orders are those of orders.ORDERS. Raises OrderError, StoreError.
        """
        values = checked_order(order)
        supersedes = SUPERSEDES.get(str(values["act"]), ())
        number = await asyncio.to_thread(self.store.give, benches, values, supersedes)
        await self._send_orders(benches)
        return number

    async def begin_lesson(self, label: str, orders: Sequence[tuple[Sequence[str], Mapping[str, Any]]]) -> int:
        """Begin a lesson with these orders, each to its benches: all of it is kept, or nothing. Return its number.

        Raises OrderError, StoreError.
        """
        checked = [(benches, checked_order(order)) for benches, order in orders]
        given = [(benches, order, SUPERSEDES.get(str(order["act"]), ())) for benches, order in checked]
        lesson = await asyncio.to_thread(self.store.begin_lesson, label, given)
        await self._send_orders([bench for benches, _ in checked for bench in benches])
        return lesson

    async def ask(self, benches: Sequence[str], do: Doing, more: Mapping[str, str]) -> None:
        """Ask these kits to do something now; one that is away never hears of it. Raises BrokerLost, ValueError."""
        if self._client is None:
            raise BrokerLost(self._broker_fault or "")
        for bench in benches:
            ask = Ask(room=self.store.room, ask=random.getrandbits(40), do=do, **more)
            heard = self.kits.setdefault(bench, KitHeard())
            heard.asked, heard.asked_s, heard.answer = ask, self._monotonic(), None
            await self._client.publish(wire.topic(bench, wire.ASKS), packed(ask), qos=1)

    async def withdraw(self, benches: Sequence[str]) -> None:
        """Take back what these benches have not done yet."""
        await asyncio.to_thread(self.store.withdraw, benches)
        await self._send_orders(benches)

    async def run(self) -> None:
        """Collect until cancelled, over every loss of the broker."""
        # The store's thread gives the interpreter away at each statement. Coming back after Python's 5 ms, it would do
        # 200 statements a second beside a busy loop, and a thousand benches would wait for half a minute.
        sys.setswitchinterval(SWITCH_S)
        async with asyncio.TaskGroup() as tasks:
            tasks.create_task(self._keep())
            tasks.create_task(self._hear())

    async def _hear(self) -> None:
        while True:
            try:
                async with connected(self.broker, self._received) as client:
                    self._client = client
                    await self._begin(client)
                    self._broker_fault = None
                    await client.lost()
            except (BrokerLost, StoreError) as error:
                self._broker_fault = _why(self.broker, error)
            finally:
                self._client = None
            await asyncio.sleep(random.uniform(*RETRY_S))  # noqa: S311 - only to spread the benches

    async def _begin(self, client: Connection) -> None:
        """Say first what is still to be done: the broker may have lost it."""
        await client.subscribe({f"{wire.PREFIX}/+/{what}": qos for what, qos in _HEARD.items()})
        known = await asyncio.to_thread(self.store.benches)
        waiting = await asyncio.to_thread(self.store.ordered)
        await self._send_orders([*(each.bench for each in known), *waiting])

    def _received(self, name: str, payload: bytes, retained: bool) -> None:
        told = wire.parts(name)
        if told is None:
            return
        bench, what = told
        if not self._watchers.may_speak(bench, len(payload)):
            return
        try:
            if what == wire.EVENTS_TOPIC:
                self._events(bench, unpacked(Batch, payload))
            elif what == wire.LIVE:
                self._live(bench, unpacked(Live, payload))
            elif what == wire.KIT:
                self._kit_told(bench, unpacked(KitTold, payload))
            elif what == wire.HERE and payload:
                self._is_here(bench, unpacked(Here, payload), retained=retained)
        except WireError as error:
            self._watchers.tell(bench, "rubbish", say("bench-sends-unreadable", reason=str(error)))

    def _events(self, bench: str, batch: Batch) -> None:
        rows = batch.rows
        self._watchers.heard(bench, batch.kit)
        self._wait(_Asked(Sent(bench, batch.journal, rows), batch.kit))

    def _kit_told(self, bench: str, told: KitTold) -> None:
        """Only the answer to what was asked of this kit is believed."""
        heard = self.kits.get(bench)
        if heard is None or heard.asked is None or heard.asked.ask != told.ask:
            return
        heard.answer = told
        if heard.asked.do == "look" and told.done:
            heard.looked, heard.looked_s = told, self._monotonic() - told.age_s

    def _live(self, bench: str, live: Live) -> None:
        self._watchers.heard(bench, live.kit)
        self.latest[bench] = Latest(live.temperature_c, self._monotonic())

    def _is_here(self, bench: str, here: Here, *, retained: bool) -> None:
        """Also a retained one is answered: whoever it is about may have come before the room."""
        if here.gone:
            return
        self.here[bench] = here
        if not retained:
            self._watchers.heard(bench, here.kit, here)
        self._wait(_Asked(Sent(bench, here.journal, name=here.name), here.kit, here.asked))

    def _wait(self, asked: _Asked) -> None:
        with contextlib.suppress(asyncio.QueueFull):  # not acknowledged, so it comes again
            self._waiting.put_nowait(asked)

    async def _keep(self) -> None:
        while True:
            asked = [await self._waiting.get()]
            await asyncio.sleep(GATHER_S)
            while not self._waiting.empty():
                asked.append(self._waiting.get_nowait())
            try:
                answers = await asyncio.to_thread(self.store.keep_many, [each.sent for each in asked])
            except StoreError as error:
                self._store_fault = str(error)  # nothing is acknowledged, so all of it comes again
                await asyncio.sleep(RETRY_S[0])
                continue
            self._store_fault = None
            for bench, message in _last_words(self._answers(asked, answers)):
                if self._client is not None:
                    self._client.post(wire.topic(bench, wire.KEPT), packed(message))
            await self._send_orders(
                [each.sent.bench for each, answer in zip(asked, answers, strict=True) if _took(answer)]
            )

    def _answers(
        self, asked: Sequence[_Asked], answers: Sequence[Kept | Differs | Unusable]
    ) -> Iterator[tuple[str, KeptMessage]]:
        """Tell the listeners what is new, and yield what each kit is to be told."""
        for each, answer in zip(asked, answers, strict=True):
            bench, journal = each.sent.bench, each.sent.journal
            told = KeptMessage(room=self.store.room, journal=journal, kit=each.kit, seq=0, asked=each.asked)
            if isinstance(answer, Differs):
                self._watchers.tell(bench, "differs", say("bench-goes-on-as-another", reason=str(answer)))
                yield bench, told.model_copy(update={"differs": True})
                continue
            if isinstance(answer, Unusable):
                self._watchers.tell(bench, "rubbish", say("bench-cannot-be-kept", reason=answer.why))
                continue
            for row in answer.fresh:
                self._tell(bench, journal, row)
            yield bench, told.model_copy(update={"seq": answer.seq, "digest": answer.digest})

    def _tell(self, bench: str, journal: str, row: Row) -> None:
        """Tell the listeners of an event; whatever it leads to, the others are still heard."""
        try:
            event = stamped(row)
            if isinstance(event.event, Unknown):
                self._watchers.tell(bench, "newer", say("bench-event-not-understood", kind=row[0]))
            for listener in self._listeners:
                listener(bench, journal, event)
        except Exception as error:
            told = say("bench-event-no-sense", kind=row[0], fault=type(error).__name__)
            self._watchers.tell(bench, "listener", told)

    async def _send_orders(self, benches: Sequence[str]) -> None:
        """Tell these benches all that they are still to do: one retained message, which replaces the one before."""
        async with self._ordering:
            for bench in dict.fromkeys(benches):
                pending = await asyncio.to_thread(self.store.pending, bench)
                orders = tuple(Order(order=each.order, act=each.act) for each in pending)
                payload = packed(Orders(room=self.store.room, orders=orders)) if orders else b""
                if self._client is not None:
                    with contextlib.suppress(BrokerLost):  # said again at the next connection
                        await self._client.publish(wire.topic(bench, wire.ORDERS), payload, qos=1, retain=True)


def _last_words(answers: Iterable[tuple[str, KeptMessage]]) -> Iterator[tuple[str, KeptMessage]]:
    """Leave out what is said again, and more, right after."""
    last = {(bench, told.kit, told.asked, told.differs): (bench, told) for bench, told in answers}
    yield from last.values()


def _took(answer: Kept | Differs | Unusable) -> bool:
    return isinstance(answer, Kept) and any(row[6] == OrderTaken.kind for row in answer.fresh)


def _why(broker: BrokerAddress, error: Exception) -> str:
    if isinstance(error, BrokerLost):
        return say(
            "room-broker-refuses" if error.refused else "room-broker-silent", address=str(broker), reason=str(error)
        )
    return str(error)
