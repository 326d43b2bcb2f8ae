"""What a bored student with a script does to a real station, and what the others notice of it."""

import asyncio
import re
import socket
import time
from collections import Counter
from collections.abc import Sequence
from contextlib import suppress
from dataclasses import dataclass
from random import Random

import httpx

from station.room import wire
from station.room.mqtt import BrokerLost, connected
from station.room.wire import BrokerAddress
from tests.benchmarks.bench_station import percentile
from tests.command.child import Served
from tests.reliability.mutate import mutated

NOISE = [
    b"GET /api/state HTTP/1.1\r\nHost: localhost\r\nConnection: close\r\n\r\n",
    b"POST /api/acts HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\nContent-Length: 30\r\n"
    b'Connection: close\r\n\r\n{"act": "begin", "key": "key"}',
    b"POST /api/session HTTP/1.1\r\nHost: localhost\r\nContent-Type: application/json\r\n"
    b'Transfer-Encoding: chunked\r\nConnection: close\r\n\r\n10\r\n{"code": "abcde"}\r\n0\r\n\r\n',
    b"GET /api/stream?after=7 HTTP/1.1\r\nHost: localhost\r\nLast-Event-ID: 9\r\nConnection: close\r\n\r\n",
    b"GET /page/../../../etc/passwd HTTP/1.1\r\nHost: localhost\r\nRange: bytes=0-1\r\nConnection: close\r\n\r\n",
    b"HEAD / HTTP/1.0\r\nHost: localhost\r\nCookie: bench_12345678=teacher.1.1.aa.bb\r\nUpgrade: h2c\r\n\r\n",
]


@dataclass(frozen=True)
class Noticed:
    """How long another device waited for the state meanwhile, in ms, and how often it got none."""

    p50_ms: float
    p99_ms: float
    failed: int


def guesses(station: Served, count: int, addresses: int) -> Counter[int]:
    """Guess a passphrase so often, from so many addresses, as fast as they are answered; return the statuses."""
    seen: Counter[int] = Counter()
    clients = [
        httpx.Client(base_url=station.url, transport=httpx.HTTPTransport(local_address=f"127.0.1.{number + 1}"))
        for number in range(addresses)
    ]
    for number in range(count):
        guess = {"role": "teacher", "passphrase": f"guess number {number}"}
        seen[clients[number % addresses].post("/api/session", json=guess).status_code] += 1
    for client in clients:
        client.close()
    return seen


def noise(station: Served, count: int, seed: int = 0) -> int:
    """Send so many spoilt requests, each on a connection of its own; return how many were answered with a 5xx."""
    chance, failures = Random(seed), 0
    for number in range(count):
        with socket.socket() as client:
            client.settimeout(2)
            client.bind((f"127.0.{2 + number // 200 % 250}.{1 + number % 200}", 0))
            client.connect(("127.0.0.1", station.port))
            with suppress(OSError):
                client.sendall(mutated(NOISE, chance))
                client.shutdown(socket.SHUT_WR)
                failures += client.recv(16)[9:10] == b"5"
    return failures


async def slow_connections(station: Served, count: int, seconds: float) -> Noticed:
    """Open so many connections at one address, send each a byte now and then, and open again what is closed."""
    until_s = time.monotonic() + seconds
    crowd = [asyncio.create_task(_drip(station.port, until_s)) for _ in range(count)]
    noticed = await _others(station, until_s)
    for each in crowd:
        each.cancel()
    await asyncio.wait(crowd)
    return noticed


async def _drip(port: int, until_s: float) -> None:
    while time.monotonic() < until_s:
        with suppress(OSError):
            reader, writer = await asyncio.open_connection("127.0.0.1", port, local_addr=("127.0.0.3", 0))
            try:
                writer.write(b"POST /api/acts HTTP/1.1\r\nHost: localhost\r\n")
                while not reader.at_eof() and time.monotonic() < until_s:
                    writer.write(b"X")
                    await writer.drain()
                    await asyncio.sleep(0.5)
            finally:
                writer.close()
        await asyncio.sleep(0.1)


async def downloads(station: Served, count: int, seconds: float) -> Noticed:
    """Ask for the whole record without end from so many connections of one address, reading nothing of it."""
    until_s = time.monotonic() + seconds
    crowd = [asyncio.create_task(_ask_for_all(station.port, until_s)) for _ in range(count)]
    noticed = await _others(station, until_s)
    for each in crowd:
        each.cancel()
    await asyncio.wait(crowd)
    return noticed


async def _ask_for_all(port: int, until_s: float) -> None:
    paths = (b"record.csv", b"journal.jsonl", b"record.xlsx", b"state", b"samples?repeat=1")
    while time.monotonic() < until_s:
        with suppress(OSError):
            _, writer = await asyncio.open_connection("127.0.0.1", port, local_addr=("127.0.0.3", 0))
            for path in paths:
                writer.write(b"GET /api/%s HTTP/1.1\r\nHost: localhost\r\n\r\n" % path)
            await asyncio.sleep(0.5)
            writer.close()


async def _others(station: Served, until_s: float) -> Noticed:
    """Ask for the state twice a second from another address."""
    took_ms, failed = [], 0
    async with httpx.AsyncClient(base_url=station.url, timeout=5) as client:
        while time.monotonic() < until_s:
            begun_s = time.monotonic()
            try:
                failed += (await client.get("/api/state")).status_code != 200
                took_ms.append(1000 * (time.monotonic() - begun_s))
            except httpx.TransportError:
                failed += 1
            await asyncio.sleep(0.2)
    return Noticed(percentile(took_ms, 50), percentile(took_ms, 99), failed)


async def takeovers(address: BrokerAddress, others: Sequence[str], seconds: float) -> tuple[int, set[str]]:
    """Come to the broker with one bench's credentials, under each client id of another that can be guessed or heard.

    Each is tried once or more. Returns how many connections the broker let in, and what was heard.
    """
    heard: set[str] = set()
    until_s, let_in, again = time.monotonic() + seconds, 0, True

    def hear(_: str, payload: bytes, __: bool) -> None:
        heard.update(re.findall(r"[0-9a-f]{8,32}", payload.decode(errors="replace")))

    async with connected(address, hear) as listening:
        await listening.subscribe({wire.topic(str(address.user), what): 1 for what in wire.TO_BENCH})
        while again or time.monotonic() < until_s:
            again = not heard
            users = ["room", str(address.user), *others]
            ends = ["", "-check", "-x", *(f"-{each}" for each in heard)]
            for identifier in [*heard, *(f"{user}{end}" for user in users for end in ends)]:
                with suppress(BrokerLost):
                    async with connected(address, lambda *_: None, identifier=identifier):
                        let_in += 1
    return let_in, heard
