"""What a room costs: collector and broker with 30 stations, then with 100, 300 and 1,000 light publishers.

    OPENBLAS_NUM_THREADS=1 nice python -m tests.benchmarks.bench_link [--seconds 60]

Processor time is that of the processes of broker and collector, in % of one core; latency is from the publishing of a
batch to the room's answer that it is kept. A light publisher sends one event a second, each alone; a station is a real
bench with journal and link, which sends samples in batches and its temperature beside them.
"""

import argparse
import asyncio
import json
import os
import resource
import statistics
import subprocess
import sys
import time
from dataclasses import dataclass, field
from pathlib import Path
from tempfile import TemporaryDirectory

from station.practical import events as e
from station.room import wire
from station.room.broker import PrivateBroker
from station.room.collector import Collector
from station.room.link.link import Link
from station.room.mqtt import connected
from station.room.store.store import RoomStore, row_of
from station.room.wire import BrokerAddress, KeptMessage, Row, WireError, packed_batch, unpacked
from tests.room.class_room import bench_at_work, running, until

JOURNAL, KIT = "0123456789abcdef", "fedcba9876543210"
TICKS = os.sysconf("SC_CLK_TCK")
WORKERS = 2
AGAIN_S = 10.0


def cpu_s(pid: int) -> float:
    """Processor time of a process and its threads, in s (proc(5), stat: utime and stime)."""
    words = Path(f"/proc/{pid}/stat").read_text().rpartition(")")[2].split()
    return (int(words[11]) + int(words[12])) / TICKS


def memory_mb(pid: int) -> float:
    lines = Path(f"/proc/{pid}/status").read_text().splitlines()
    return next(int(line.split()[1]) / 1024 for line in lines if line.startswith("VmRSS"))


@dataclass
class LightBench:
    """One event a second; what the room has not kept after `AGAIN_S` goes again with the next."""

    user: str
    address: BrokerAddress
    rows: list[Row] = field(default_factory=list)
    kept: int = 0
    published: int = 0
    heard_s: float = 0.0
    again: int = 0
    sent_s: dict[int, float] = field(default_factory=dict)
    latency_s: list[float] = field(default_factory=list)

    def hear(self, _: str, payload: bytes, __: bool) -> None:
        try:
            told = unpacked(KeptMessage, payload)
        except WireError:
            return
        for seq in range(self.kept + 1, told.seq + 1):
            self.latency_s.append(time.monotonic() - self.sent_s.pop(seq, time.monotonic()))
        self.kept, self.heard_s = max(self.kept, told.seq), time.monotonic()

    async def run(self, seconds: int, offset_s: float) -> None:
        await asyncio.sleep(2.0 * offset_s)
        async with connected(self.address, self.hear) as client:
            await client.subscribe({wire.topic(self.user, wire.KEPT): 1})
            began_s = time.monotonic()
            next_s = began_s + offset_s
            while len(self.rows) < seconds or self.kept < seconds:
                await asyncio.sleep(max(next_s - time.monotonic(), 0.0))
                next_s += 1.0
                if len(self.rows) < seconds:
                    seq = len(self.rows) + 1
                    event = e.Stamped(seq, "b", seq, seq, "2026-01-01", "none", e.SampleTaken(20.0 + seq % 64 / 16))
                    self.rows.append(row_of(event))
                    self.sent_s[seq] = time.monotonic()
                if self.kept < self.published and time.monotonic() - max(self.heard_s, began_s) > AGAIN_S:
                    self.published, self.heard_s = self.kept, time.monotonic()
                    self.again += 1
                if self.published == len(self.rows):
                    continue
                batch = packed_batch(JOURNAL, KIT, self.rows[self.published :])
                self.published = len(self.rows)
                client.post(wire.topic(self.user, wire.EVENTS_TOPIC), batch, qos=1)


async def publish(users: list[str], port: int, seconds: int) -> dict[str, list[float]]:
    benches = [LightBench(user, BrokerAddress("127.0.0.1", port, user, user)) for user in users]
    await asyncio.gather(*(each.run(seconds, at / len(benches)) for at, each in enumerate(benches)))
    return {
        "latency_s": [each for bench in benches for each in bench.latency_s],
        "again": [bench.again for bench in benches],
    }


async def collect(folder: Path, address: BrokerAddress) -> None:
    collector = Collector(RoomStore(folder), address)
    async with running(collector.run()):
        await until(lambda: collector.fault is None, 60.0)
        print("ready", flush=True)
        await asyncio.Event().wait()


def child(*words: str) -> "subprocess.Popen[str]":
    command = [sys.executable, "-m", "tests.benchmarks.bench_link", *words]
    return subprocess.Popen(command, stdout=subprocess.PIPE, text=True)


@dataclass(frozen=True)
class Cost:
    broker: float
    room: float
    broker_mb: float
    room_mb: float


class Measured:
    """Broker and collector at work, and what they use while something is done."""

    def __init__(self, folder: Path, users: list[str]) -> None:
        self.folder = folder
        self.broker = PrivateBroker(folder / "broker", "127.0.0.1", 0)
        self.broker.add_users({user: user for user in users})
        self.broker.start()
        address = self.broker.address
        self.room = child("--room", str(folder / "room"), str(address.port), str(address.password))
        assert self.room.stdout is not None
        assert self.room.stdout.readline() == "ready\n"

    def begin(self) -> None:
        self._began_s = time.monotonic()
        self._before = [cpu_s(pid) for pid in self._pids]

    def cost(self) -> Cost:
        passed_s = time.monotonic() - self._began_s
        used = [(cpu_s(pid) - before) / passed_s * 100 for pid, before in zip(self._pids, self._before, strict=True)]
        return Cost(used[0], used[1], *(memory_mb(pid) for pid in self._pids))

    @property
    def _pids(self) -> list[int]:
        assert self.broker.pid is not None
        return [self.broker.pid, self.room.pid]

    def end(self) -> None:
        self.room.kill()
        self.room.wait()
        self.broker.stop()


def light(count: int, seconds: int) -> None:
    users = [f"light-{number}" for number in range(1, count + 1)]
    with TemporaryDirectory(prefix="benchwarm-link-") as folder:
        measured = Measured(Path(folder), users)
        try:
            port = str(measured.broker.address.port)
            shares = [users[at::WORKERS] for at in range(WORKERS)]
            publishers = [child("--publish", port, str(seconds), json.dumps(share)) for share in shares]
            time.sleep(5.0)  # all are connected
            measured.begin()
            time.sleep(max(seconds - 8.0, 1.0))
            cost = measured.cost()
            answers = [json.loads(each.communicate()[0]) for each in publishers]
            store = RoomStore(Path(folder) / "room")
            kept = [each.last_seq for each in store.benches()]
            lost = count * seconds - sum(kept)
        finally:
            measured.end()
    latencies = sorted(each for answer in answers for each in answer["latency_s"])
    again = round(sum(each for answer in answers for each in answer["again"]))
    p50, p99 = latencies[len(latencies) // 2], latencies[len(latencies) * 99 // 100]
    print(
        f"{count:>5} publishers  broker {cost.broker:5.1f} %  room {cost.room:5.1f} %  each "
        f"{(cost.broker + cost.room) / count:6.3f} %  p50 {p50 * 1000:6.1f} ms  p99 {p99 * 1000:7.1f} ms  "
        f"memory {cost.broker_mb:.0f} + {cost.room_mb:.0f} MB  sent again {again}  lost {lost}",
        flush=True,
    )


async def stations(count: int, seconds: int) -> None:
    users = [f"bench-{number}" for number in range(1, count + 1)]
    with TemporaryDirectory(prefix="benchwarm-link-") as folder:
        measured = Measured(Path(folder), users)
        port = measured.broker.address.port

        async def station(user: str, offset_s: float) -> Link:
            async with bench_at_work(Path(folder) / user) as bench:
                link = Link(bench.bench, user, BrokerAddress("127.0.0.1", port, user, user))
                async with running(link.run()):
                    await asyncio.sleep(offset_s)
                    for second in range(seconds):
                        began_s = time.monotonic()
                        await bench.sample(20.0 + second % 64 / 16)
                        if second % 20 == 10:
                            await bench.bench.do({"act": "group", "label": f"group {second}", "key": f"k{second}"})
                        await asyncio.sleep(max(1.0 - (time.monotonic() - began_s), 0.0))
                    await until(lambda: link.state.waiting == 0, 60.0)
            return link

        work = asyncio.gather(*(station(user, at / count) for at, user in enumerate(users)))
        try:
            await asyncio.sleep(8.0)
            measured.begin()
            await asyncio.sleep(max(seconds - 10.0, 1.0))
            cost = measured.cost()
            await work
            kept = sum(each.last_seq for each in RoomStore(Path(folder) / "room").benches())
        finally:
            measured.end()
    own = resource.getrusage(resource.RUSAGE_SELF)
    print(
        f"{count:>5} stations    broker {cost.broker:5.1f} %  room {cost.room:5.1f} %  together "
        f"{cost.broker + cost.room:5.1f} % of a core  memory {cost.broker_mb:.0f} + {cost.room_mb:.0f} MB  {kept} "
        f"events kept  (the stations themselves {(own.ru_utime + own.ru_stime) / seconds / count * 100:.2f} % each)",
        flush=True,
    )


def main() -> None:
    parser = argparse.ArgumentParser(description=__doc__)
    parser.add_argument("--room", nargs=3)
    parser.add_argument("--publish", nargs=3)
    parser.add_argument("--seconds", type=int, default=60)
    options = parser.parse_args()
    _, most = resource.getrlimit(resource.RLIMIT_NOFILE)
    resource.setrlimit(resource.RLIMIT_NOFILE, (most, most))
    if options.room:
        folder, port, password = options.room
        asyncio.run(collect(Path(folder), BrokerAddress("127.0.0.1", int(port), "room", password)))
    elif options.publish:
        port, seconds, users = options.publish
        json.dump(asyncio.run(publish(json.loads(users), int(port), int(seconds))), sys.stdout)
    else:
        asyncio.run(stations(30, options.seconds))
        for count in (100, 300, 1000):
            light(count, options.seconds)
        print(f"load while measuring: {statistics.mean(os.getloadavg()):.1f} on {os.cpu_count()} cores")


if __name__ == "__main__":
    main()
