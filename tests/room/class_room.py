"""A room for tests: the real Mosquitto as a private child, real benches with a probe in our hand, a real collector."""

import asyncio
from collections.abc import AsyncIterator, Callable, Coroutine, Iterator
from contextlib import asynccontextmanager, contextmanager
from pathlib import Path

from station.bench.clock import Clock
from station.bench.loop import Bench, last_event
from station.bench.panel.panel import open_panel
from station.bench.panel.pins import PanelPins
from station.practical import events as e
from station.record.journal import Journal, read_events
from station.room.broker import PrivateBroker
from station.room.collector import Collector
from station.room.link.link import Link
from station.room.store.store import RoomStore
from station.room.wire import BrokerAddress
from tests.conftest import PATIENCE_S, free_port
from tests.server.live import PLAN, STARTED, HandProbe

USERS = {f"bench-{number}": f"password-{number}" for number in range(1, 9)}


@contextmanager
def broker_in(folder: Path) -> Iterator[PrivateBroker]:
    """Yield a Mosquitto that knows USERS."""
    folder.mkdir(parents=True, exist_ok=True)
    broker = PrivateBroker(folder, "127.0.0.1", free_port())
    broker.add_users(USERS)
    broker.start()
    try:
        yield broker
    finally:
        broker.stop()


def killed(broker: PrivateBroker) -> bool:
    """Kill the broker's child, if there is one just now: it may have ended, and may be about to be started again."""
    process = broker._process
    if process is None or process.poll() is not None:
        return False
    process.kill()
    return True


def address_of(broker: PrivateBroker, user: str) -> BrokerAddress:
    return BrokerAddress(broker.address.host, broker.address.port, user, USERS[user])


class BenchAtWork:
    """A bench whose samples are taken by `sample`; it may be linked to a room."""

    def __init__(self, folder: Path, bench: Bench) -> None:
        self.folder, self.bench = folder, bench

    async def sample(self, celsius: float) -> None:
        await self.bench._keep([e.SampleTaken(celsius)])

    def events(self) -> list[e.Stamped]:
        return list(read_events(self.folder))


@asynccontextmanager
async def bench_at_work(folder: Path, *, anew: bool = False) -> AsyncIterator[BenchAtWork]:
    """Yield a bench as its journal left it."""
    journal = Journal(folder)
    clock = Clock.started(last_event(journal))
    bench = Bench.opened(journal, clock, HandProbe(clock), open_panel("none", PanelPins(), lambda: None))
    await bench.start(PLAN, STARTED, anew=anew)
    try:
        yield BenchAtWork(folder, bench)
    finally:
        bench.close()


@asynccontextmanager
async def linked(at_work: BenchAtWork, broker: PrivateBroker, user: str) -> AsyncIterator[Link]:
    link = Link(at_work.bench, user.capitalize(), address_of(broker, user))
    async with running(link.run()):
        yield link


@asynccontextmanager
async def collecting(
    folder: Path, broker: PrivateBroker, address: BrokerAddress | None = None
) -> AsyncIterator[Collector]:
    store = RoomStore(folder)
    collector = Collector(store, address or broker.address)
    async with running(collector.run()):
        yield collector
    store.close()


@asynccontextmanager
async def running(work: Coroutine[None, None, None]) -> AsyncIterator[None]:
    """Run it beside; whatever it raises is raised at the end."""
    task = asyncio.create_task(work)
    try:
        yield
    finally:
        task.cancel()
        await asyncio.wait({task}, timeout=PATIENCE_S)
        assert task.done()
        if not task.cancelled():
            task.result()


async def until(true: Callable[[], object], within_s: float = PATIENCE_S) -> None:
    """Wait until something is so."""
    async with asyncio.timeout(within_s):
        while not true():  # noqa: ASYNC110 - it comes over a socket, and nothing tells
            await asyncio.sleep(0.01)
