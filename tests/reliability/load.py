"""Forty open pages, one that reads slowly and one that reads no more, on a real station with its virtual cup."""

import asyncio
import socket
import time
from contextlib import suppress
from dataclasses import dataclass

from station.practical import events as e
from station.record.journal import read_events
from tests.benchmarks.bench_station import percentile, resident_mb
from tests.command.child import Served
from tests.server.live import Stream

STREAMS = 40


@dataclass(frozen=True)
class Held:
    """What the station did meanwhile. Times in wall seconds."""

    streams: int
    samples: int
    missing: int
    unheard: int
    late_p99_ms: float
    late_worst_ms: float
    before_mb: float
    after_mb: float


async def held(station: Served, seconds: float) -> Held:
    """Keep the pages open for so long while a repeat is under way; `station` runs at any speed."""
    station.act("begin", "load 1")
    streams = [await Stream.opened(station.port, after=0) for _ in range(STREAMS)]
    asleep = [_reads_nothing(station.port), _reads_nothing(station.port)]
    slow = asyncio.create_task(_reads_slowly(station.port))
    await asyncio.sleep(min(5.0, seconds / 4))
    before_mb = resident_mb(station.process.pid)
    heard = await asyncio.gather(*(_heard(stream, seconds) for stream in streams))
    after_mb = resident_mb(station.process.pid)
    slow.cancel()
    for client in asleep:
        client.close()
    for stream in streams:
        await stream.close()
    taken = [(each.seq, each.monotonic_s) for each in read_events(station.record, kinds=(e.SampleTaken.kind,))]
    moments_s = [moment for _, moment in taken]
    period_s = 1.0 / station.state()["speed"]
    slots = round((moments_s[-1] - moments_s[0]) / period_s) + 1
    late_s = _late_s(moments_s, period_s)
    expected = {seq for seq, _ in taken}
    newest = min(max(numbers) for numbers in heard)
    return Held(
        sum(max(numbers) >= newest for numbers in heard),
        len(taken),
        max(slots - len(taken), 0),
        sum(len({seq for seq in expected if seq <= newest} - set(numbers)) for numbers in heard),
        1000 * percentile(late_s, 99),
        1000 * max(late_s),
        before_mb,
        after_mb,
    )


def _late_s(moments_s: list[float], period_s: float) -> list[float]:
    """How far each sample is from its slot; the slots lie where most samples do."""
    off = sorted(moment - place * period_s for place, moment in enumerate(moments_s))
    return [abs(each - off[len(off) // 2]) for each in off]


async def _heard(stream: Stream, seconds: float) -> list[int]:
    until_s = time.monotonic() + seconds
    while time.monotonic() < until_s:
        await stream.until("happened")
        stream.seen = stream.seen[-1:]
        _numbers(stream).append(stream.seen[-1].seq or 0)
    return _numbers(stream)


def _numbers(stream: Stream) -> list[int]:
    numbers: list[int] = stream.__dict__.setdefault("numbers", [])
    return numbers


def _reads_nothing(port: int) -> socket.socket:
    client = socket.socket()
    client.setsockopt(socket.SOL_SOCKET, socket.SO_RCVBUF, 4096)
    client.connect(("127.0.0.1", port))
    client.sendall(b"GET /api/stream?after=0 HTTP/1.1\r\nHost: localhost\r\n\r\n")
    return client


async def _reads_slowly(port: int) -> None:
    reader, writer = await asyncio.open_connection("127.0.0.1", port, limit=2**12)
    writer.write(b"GET /api/stream?after=0 HTTP/1.1\r\nHost: localhost\r\n\r\n")
    with suppress(ConnectionError):
        while await reader.read(16):  # noqa: ASYNC110 - slow on purpose
            await asyncio.sleep(0.05)
