"""A class in which everything is killed at random: benches, collector and broker are processes of their own.

    OPENBLAS_NUM_THREADS=1 python -m tests.room.chaos --benches 6 --minutes 20 --speed 20 --seed 1

Duplicated and reordered batches come from a client that listens with the room's rights and sends old batches again. At
the end every event of every bench must be in the store exactly once, in order.
"""

import argparse
import asyncio
import contextlib
import random
import sqlite3
import subprocess
import sys
import time
from collections import deque
from dataclasses import dataclass, replace
from datetime import UTC, datetime, timedelta
from pathlib import Path
from tempfile import TemporaryDirectory

from station.bench.clock import Clock
from station.bench.loop import Bench, last_event
from station.bench.panel.panel import open_panel
from station.bench.panel.pins import PanelPins
from station.practical import events as e
from station.record.journal import Journal, JournalError, Moment, open_to_read, read_events
from station.room import wire
from station.room.broker import PrivateBroker
from station.room.collector import Collector
from station.room.link.link import Link
from station.room.mqtt import BrokerLost, connected
from station.room.store.store import RoomStore
from station.room.wire import BrokerAddress
from tests.conftest import free_port
from tests.room.class_room import killed
from tests.server.live import PLAN, STARTED, HandProbe

PATIENCE_S = 300.0


@dataclass(frozen=True)
class Report:
    """What was done to the class, and what came of it."""

    events: int
    killed: dict[str, int]
    resent: int
    wrong: tuple[str, ...]
    seconds: float
    caught_up_s: float


class OffClock(Clock):
    """A clock of a board that was set wrong."""

    off_days = 0

    def moment(self, time_s: float | None = None) -> Moment:
        wall = datetime.now(UTC) + timedelta(days=self.off_days)
        return replace(super().moment(time_s), wall=wall.isoformat(timespec="milliseconds"))


async def bench_process(folder: Path, address: BrokerAddress, speed: float, until_seq: int, off_days: int) -> None:
    """A bench that samples once a virtual second and is told things now and then, until its record is long enough."""
    journal = Journal(folder)
    OffClock.off_days = off_days
    clock = OffClock.started(last_event(journal))
    bench = Bench.opened(journal, clock, HandProbe(clock), open_panel("none", PanelPins(), lambda: None))
    await bench.start(PLAN, STARTED)
    linking = asyncio.create_task(Link(bench, "Bench", address).run())
    draw = random.Random()
    while bench.seq < until_seq:
        await bench._keep([e.SampleTaken(20.0 + draw.randint(0, 64) / 16)])
        if draw.random() < 0.05:
            await bench.do({"act": "group", "label": f"group {draw.randint(1, 9)}", "key": f"{time.monotonic_ns()}"})
        await asyncio.sleep(1.0 / speed)
    await linking


async def room_process(folder: Path, address: BrokerAddress) -> None:
    await Collector(RoomStore(folder), address).run()


class Class:
    """The processes of a class, and what is done to them."""

    def __init__(self, folder: Path, benches: int, events: int, speed: float, seed: int) -> None:
        self.folder, self.events, self.speed = folder, events, speed
        self.draw = random.Random(seed)
        self.users = {f"bench-{number}": f"password-{number}" for number in range(1, benches + 1)}
        self.broker = PrivateBroker(folder / "broker", "127.0.0.1", free_port())
        self.broker.add_users(self.users)
        self.broker.start()
        self.killed = {"bench": 0, "room": 0, "broker": 0}
        self.resent = 0
        self.processes: dict[str, subprocess.Popen[bytes]] = {}
        for name in ("room", *self.users):
            self.start(name)

    def start(self, name: str) -> None:
        address = self.broker.address
        port, password = str(address.port), self.users.get(name, address.password or "")
        off_days = str(365 * (sum(name.encode()) % 3 - 1))
        words = [str(self.folder / name), port, name, password, str(self.speed), str(self.events), off_days]
        self.processes[name] = subprocess.Popen([sys.executable, "-m", "tests.room.chaos", "--process", *words])

    async def kill_something(self) -> None:
        what = self.draw.choice(["bench", "bench", "room", "broker"])
        self.killed[what] += 1
        if what == "broker":
            killed(self.broker)
            return
        name = "room" if what == "room" else self.draw.choice(list(self.users))
        self.processes[name].kill()
        self.processes[name].wait()
        await asyncio.sleep(self.draw.uniform(0.0, 1.5))
        self.start(name)

    async def send_again(self) -> None:
        """Send batches again that were sent before, one or a few later, in any order."""
        old: deque[tuple[str, bytes]] = deque(maxlen=40)

        def hear(topic: str, payload: bytes, _: bool) -> None:
            old.append((topic, payload))

        while True:
            with contextlib.suppress(BrokerLost):
                async with connected(self.broker.address, hear) as client:
                    await client.subscribe({f"{wire.PREFIX}/+/{wire.EVENTS_TOPIC}": 1})
                    while not client._lost.done():
                        await asyncio.sleep(0.1)
                        for topic, payload in self.draw.sample(old, min(len(old), 2)):
                            self.resent += 1
                            await client.publish(topic, payload, qos=1)
            await asyncio.sleep(0.3)

    def behind(self) -> dict[str, tuple[int, int]]:
        """Return the benches whose record is not long enough yet, or not whole in the store: kept, and there."""
        kept = {each.bench: each.last_seq for each in self.store.benches()} if self.has_store else {}
        both = {name: (kept.get(name, 0), _last_seq(self.folder / name)) for name in self.users}
        return {name: (here, there) for name, (here, there) in both.items() if here < max(self.events, there)}

    @property
    def has_store(self) -> bool:
        return (self.folder / "room" / "room.sqlite3").is_file()

    @property
    def store(self) -> RoomStore:
        return RoomStore(self.folder / "room")

    def wrong(self) -> tuple[str, ...]:
        """Return what is not as it must be."""
        found = []
        store = self.store
        for name in self.users:
            there = list(read_events(self.folder / name))
            histories = store.histories(name)
            if len(histories) != 1:
                found.append(f"{name}: {len(histories)} histories")
            if list(store.events(name)) != there:
                found.append(f"{name}: the room has another record than the bench ({len(there)} events)")
        (rows,) = store._rows("SELECT count(*) FROM events")[0]
        whole = sum(len(list(read_events(self.folder / name))) for name in self.users)
        if rows != whole:
            found.append(f"{rows} events in the store, {whole} at the benches")
        return tuple(found)

    def end(self) -> None:
        for process in self.processes.values():
            process.kill()
            process.wait()
        self.broker.stop()


async def chaos(folder: Path, *, benches: int, minutes: float, speed: float, seed: int, every_s: float) -> Report:
    """Run a class of so many virtual minutes, killing something about every `every_s` real seconds."""
    began_s = time.monotonic()
    events = round(minutes * 60)
    school = Class(folder, benches, events, speed, seed)
    tasks = [asyncio.create_task(school.broker.run()), asyncio.create_task(school.send_again())]
    try:
        while time.monotonic() - began_s < events / speed:
            await asyncio.sleep(school.draw.uniform(0.3, 1.7) * every_s)
            await school.kill_something()
        calm_s = time.monotonic()
        while behind := school.behind():
            if time.monotonic() - calm_s > PATIENCE_S:
                raise TimeoutError(f"after {PATIENCE_S} s of calm: {behind}")
            await asyncio.sleep(0.1)
        caught_up_s = time.monotonic() - calm_s
        for task in tasks:
            task.cancel()
        await asyncio.wait(tasks)
        for process in school.processes.values():
            process.kill()
            process.wait()
        return Report(
            events * benches, school.killed, school.resent, school.wrong(), time.monotonic() - began_s, caught_up_s
        )
    finally:
        school.end()


def _last_seq(folder: Path) -> int:
    try:
        with contextlib.closing(open_to_read(folder)) as connection:
            return int(connection.execute("SELECT coalesce(max(seq), 0) FROM events").fetchone()[0])
    except (JournalError, sqlite3.Error):  # killed before it began
        return 0


def _process(words: list[str]) -> None:
    folder, port, name, password, speed, events, off_days = words
    address = BrokerAddress("127.0.0.1", int(port), name, password)
    if name == "room":
        asyncio.run(room_process(Path(folder), address))
    else:
        asyncio.run(bench_process(Path(folder), address, float(speed), int(events), int(off_days)))


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--process", nargs=7)
    parser.add_argument("--benches", type=int, default=6)
    parser.add_argument("--minutes", type=float, default=20.0)
    parser.add_argument("--speed", type=float, default=20.0)
    parser.add_argument("--seed", type=int, default=1)
    options = parser.parse_args()
    if options.process:
        _process(options.process)
        return
    with TemporaryDirectory(prefix="benchwarm-chaos-") as folder:
        report = asyncio.run(
            chaos(
                Path(folder),
                benches=options.benches,
                minutes=options.minutes,
                speed=options.speed,
                seed=options.seed,
                every_s=2.0,
            )
        )
    print(report)
    sys.exit(1 if report.wrong else 0)


if __name__ == "__main__":
    main()
