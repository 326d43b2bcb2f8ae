"""Requests that no browser would send, to real servers of a bench and of a room: odd headers, paths, bodies."""

import asyncio
import io
import json
import logging
import time
from collections import Counter
from collections.abc import AsyncIterator, Callable, Iterator, Mapping
from contextlib import AbstractAsyncContextManager, asynccontextmanager, contextmanager, suppress
from copy import deepcopy
from dataclasses import dataclass, field
from pathlib import Path
from random import Random
from typing import Any

import httpx

from station.room.collector import Latest
from station.server.door.access import Access
from station.server.door.secrets import Holder
from tests.conftest import PATIENCE_S
from tests.records import PLAN_TEXT
from tests.reliability import seeds
from tests.reliability.mutate import mutated
from tests.room.lesson_in_jumps import events_of, until
from tests.server.live import PLAN, at_a_port, here, served
from tests.server.room_live import room_in_process

DEEP: Any = 1
for _ in range(120):
    DEEP = [DEEP]
HUGE = 10**400
LEAVES: tuple[Any, ...] = (
    "\ud800", "a\udfff", "\0", "", " ", "\u202e", "🧪" * 30, "x" * 9000, "9" * 400, "nan", "=1+1", "../..", "bench-1",
    5e-324, 1e-320, -1e-320, 1e-200, 1e-9, 1e300, -0.0, float("nan"), float("inf"), float("-inf"), HUGE, -HUGE, 2**53,
    2**63, 2**64, -1, 0, 1, 1.5, True, False, None, [], {}, [[]], [None], {"": {}}, {"\udfff": 1}, DEEP,
)  # fmt: skip
NUMBERS = (
    "5e-324",
    "1e-320",
    "1e-9",
    "nan",
    "inf",
    "-inf",
    "1e400",
    "1" * 400,
    "-0.0",
    "0",
    "true",
    '"\\uD800"',
    "[[1]]",
    "1" * 5000,
    "[" * 3000,
    "1\nx" + ".y" * 3000 + " = 1",
)
VALUES = (
    b"", b"null", b"*", b"http://[", b"http://[::1", b"http://]", b"http://a@b", b"http://%ff", b"//", b"://",
    b"http://",
    b"\xff\xfe", b"\xed\xa0\x80", b"\xc3\x28", b"[::1]", b"[:::]", b"[1.2.3.4.5]", b"localhost:99999", b"localhost:",
    b"a" * 3000, b"=;=;=", b'"', b'x="\\400"', b";" * 500, b"\x80" * 100, b"%00", b"%", b"%zz", b"\t", b"1e400", b"-1",
    b"NaN",
    b"9" * 400, b"bytes=0-0", b"bytes=9-1", b"bytes=--", b"bytes=0-,0-,0-", b"Mon, 32 Foo 99999", b'W/"', b"gzip;q=nan",
    b"application/json", b"application/json; charset=\xff", b"application/json;=", b"/", b"application/", b"*/*",
    b"multipart/form-data", b"text/json", b"APPLICATION/JSON", b"application/vnd.x+json", b"identity, chunked",
    b"utf-16",
)  # fmt: skip
FITTING = {
    b"Origin": VALUES[1:13],
    b"Range": tuple(each for each in VALUES if each.startswith(b"bytes")),
    b"Cookie": (b"=;=;=", b'x="\\400"', b"a=\xff", b"$Version=1; x", b"bench_12345678=teacher.1.1.aa.bb"),
    b"Content-Type": tuple(each for each in VALUES if b"/" in each),
}
HEADERS = (
    b"Origin", b"Origin", b"Host", b"Cookie", b"Cookie", b"Content-Type", b"Accept-Encoding", b"Range", b"If-Range",
    b"If-None-Match", b"If-Modified-Since", b"Last-Event-ID", b"Content-Length", b"Transfer-Encoding", b"Expect",
    b"Upgrade",
    b"Connection", b"Content-Encoding", b"Authorization", b"Accept", b"Accept-Language", b"X-Forwarded-For", b"X-\xff",
    b"Access-Control-Request-Method",
)  # fmt: skip
PIECES = (
    b"%00", b"%ff", b"%c0%ae", b"%2e%2e/", b"..", b"//", b"%", b"%zz", b"%ed%a0%80", b"%F0%9F%A7%AA", b"\\", b";",
    b"%0d%0a",
    b"?", b"#", b"a" * 300, b"%25", b"*", b"%5B", b"[", b"|",
)  # fmt: skip
METHODS = (b"GET", b"POST", b"HEAD", b"PUT", b"PATCH", b"DELETE", b"OPTIONS", b"TRACE", b"CONNECT", b"get", b"X-Y")
PAGES = (
    b"/",
    b"/plan",
    b"/kit",
    b"/page/",
    b"/page/index.html",
    b"/page/..",
    b"/room",
    b"/room/bench/bench-1",
    b"/nothing",
)
SELDOM = {"/api/plan/prediction", "/api/kit", "/api/records.zip", "/api/kit/cards"}
"""What starts a process or takes long: asked for one time in twenty, so that the others get their turn."""


BAD_ORIGIN = b"POST /api/nothing HTTP/1.1\r\nHost: localhost\r\nOrigin: http://[\r\nConnection: close\r\n\r\n"


@dataclass
class Answers:
    """How often each status came, what was asked where it was a five-hundred, and how much the log grew."""

    statuses: Counter[int] = field(default_factory=Counter)
    failures: list[bytes] = field(default_factory=list)
    log: str = ""
    took_s: float = 0.0

    @property
    def log_bytes_per_s(self) -> float:
        """How fast the log grew."""
        return len(self.log.encode("utf-8", "replace")) / self.took_s


@dataclass(frozen=True)
class Target:
    """A server, what its own document says may be asked, bodies that it takes, and a cookie of staff as it is now."""

    port: int
    paths: Mapping[str, Mapping[str, Any]]
    bodies: Mapping[str, list[Any]]
    cookie: Callable[[], bytes]


_PLAN: dict[str, Any] = PLAN.model_dump(mode="json")
_PLANS: list[Any] = [{"plan": _PLAN}, *({"plan_toml": text.decode()} for text in seeds.PLANS)]
_CHOICES = [{"act": "choose_plan", "confirmed": True, **plan} for plan in _PLANS]
_ACTS = [json.loads(text) for text in seeds.ACTS]
BENCH_BODIES: dict[str, list[Any]] = {
    "/api/acts": _ACTS,
    "/api/staff": [*_ACTS, *_CHOICES * 4],
    "/api/session": [{"code": "x"}, {"role": "teacher", "passphrase": "x"}, {"recovery": True}],
    "/api/plan": _PLANS,
    "/api/plan/prediction": [{**plan, "page": "one"} for plan in _PLANS],
    "/api/preparation": [{**plan, "benches": 3, "stocks": {"nitric acid": 2.0}} for plan in _PLANS],
    "/api/kit/cards": [{"kits_toml": seeds.KITS[0].decode(), "plan_toml": PLAN_TEXT}],
}
_BENCHES = [["bench-1"], ["bench-8"], ["bench-1", "bench-8"], ["nobody"], ["no user"]]
ROOM_BODIES: dict[str, list[Any]] = {
    "/api/room/orders": [
        {"benches": benches, "act": act}
        for benches in _BENCHES
        for act in (
            *({"act": "pause"}, {"act": "quiet", "silent": True}, {"act": "rename", "name": "By the door"}),
            *({"act": "set_aside", "repeat": 1, "reason": "warm cup"}, {"act": "show_results", "shown": True}),
            *({"act": "resume", "practical": ["a1b2c3d4e5f60718", 1]}, *_CHOICES),
        )
    ],
    "/api/room/orders/withdrawn": [{"benches": benches} for benches in _BENCHES],
    "/api/room/lessons": [{"label": "10B"}, *({"label": "10C", **plan, "confirmed": True} for plan in _PLANS)],
    "/api/session": BENCH_BODIES["/api/session"],
}


def spoilt_request(target: Target, chance: Random) -> bytes:
    """Return the bytes of one request, nearly right but for a few things that nobody expects."""
    known = target.bodies if chance.random() < 0.5 else target.paths
    path = chance.choice([each for each in known if each not in SELDOM or chance.random() < 0.05])
    method = b"POST" if known is target.bodies else chance.choice(list(target.paths[path])).upper().encode()
    body = b"" if method == b"GET" else _body(target.bodies.get(path, [{}]), chance)
    where = _path(path, target.paths[path], chance)
    if chance.random() < 0.1:
        method, where = chance.choice(METHODS), chance.choice((*PAGES, where))
    headers = [(b"Host", b"localhost"), (b"Cookie", target.cookie()), (b"Connection", b"close")]
    if method not in (b"GET", b"HEAD"):
        headers += [(b"Content-Type", b"application/json"), (b"Content-Length", b"%d" % len(body))]
    for _ in range(chance.choice((0, 0, 0, 1, 1, 2, 5))):
        name = chance.choice(HEADERS)
        value = chance.choice(FITTING[name] if name in FITTING and chance.random() < 0.5 else VALUES)
        headers = [each for each in headers if each[0] != name or chance.random() < 0.1] + [(name, value)]
    lines = [method + b" " + where + b" HTTP/1.1", *(b": ".join(each) for each in headers)]
    return b"\r\n".join(lines) + b"\r\n\r\n" + body


def _path(path: str, known: Mapping[str, Any], chance: Random) -> bytes:
    filled = path.replace("{bench}", chance.choice(("bench-1", "bench-8", "nobody", "%ff", "a%20b", "%F0%9F%A7%AA")))
    raw = filled.encode()
    names = [
        each["name"] for method in known.values() for each in method.get("parameters", ()) if each["in"] == "query"
    ]
    query = [b"%s=%s" % (name.encode(), _in_query(chance)) for name in names if chance.random() < 0.7]
    if chance.random() < 0.1:
        place = chance.randrange(1, len(raw) + 1)
        raw = raw[:place] + chance.choice(PIECES) + raw[place:]
    return raw + (b"?" + b"&".join(query) if query else b"")


def _in_query(chance: Random) -> bytes:
    if chance.random() < 0.5:
        return chance.choice((b"1", b"0", b"2", b"true", b"comma", b"100000"))
    return chance.choice(
        (*PIECES, b"-1", b"1e400", b"NaN", b"9" * 30, b"9" * 5000, b"%D9%A3", b"1_0", b"0x1", b"")
    ).replace(b"#", b"")


def _body(known: list[Any], chance: Random) -> bytes:
    values = json.loads(json.dumps(chance.choice(known)))
    if isinstance(values, dict) and "key" in values:
        values["key"] = f"key {chance.random()}"
    for _ in range(chance.choice((0, 1, 1, 2, 3))):
        _spoil(values, chance)
    text = json.dumps(values, ensure_ascii=chance.random() < 0.8).encode("utf-8", "surrogatepass")
    if chance.random() < 0.1:
        return mutated([text], chance)
    return text if chance.random() < 0.97 else text.decode("utf-8", "replace").encode("utf-16")


def _spoil(values: Any, chance: Random) -> None:
    """Put something odd somewhere into these tables, at a key, or into a number of a text of TOML or CSV."""
    places = list(_places(values))
    if not places:
        return
    table, key = chance.choice(places)
    value = table[key]
    if isinstance(value, str) and "\n" in value:
        table[key] = _spoilt_text(value, chance)
    elif isinstance(table, dict) and chance.random() < 0.1:
        table[chance.choice(("\ud800", "", "x" * 500, "\0", "act", "plan"))] = table.pop(key)
    else:
        table[key] = deepcopy(chance.choice(LEAVES))


def _spoilt_text(text: str, chance: Random) -> str:
    lines = text.splitlines()
    place = chance.randrange(len(lines))
    name, equals, _ = lines[place].partition("=")
    lines[place] = (
        f"{name}{equals} {chance.choice(NUMBERS)}" if equals else lines[place] + chance.choice(("\ud800", ",", "="))
    )
    return "\n".join(lines)


def _places(values: Any) -> Iterator[tuple[Any, Any]]:
    inner = list(values.items() if isinstance(values, dict) else enumerate(values))
    for key, value in inner:
        yield values, key
        if isinstance(value, dict | list):
            yield from _places(value)


async def answers(target: Target, count: int, seed: int = 0) -> Answers:
    """Send so many spoilt requests, each on a connection of its own, from many addresses, a few at a time."""
    found, chance = Answers(), Random(seed)
    # Made one by one: a session that a request has ended is begun anew for the next.
    todo = ((number, spoilt_request(target, chance)) for number in range(count))

    async def work() -> None:
        for number, request in todo:
            status = await _status(target.port, request, f"127.0.{1 + number // 200 % 250}.{2 + number % 200}")
            found.statuses[status] += 1
            if status >= 500:
                found.failures.append(request[:600])

    with _logged() as log:
        begun_s = time.monotonic()
        await asyncio.gather(*(work() for _ in range(6)))
        found.took_s, found.log = time.monotonic() - begun_s, log.getvalue()
    return found


async def flooded(target: Target, request: bytes, seconds: float) -> Answers:
    """Send the same request from one address for so long, as fast as it is answered."""
    found = Answers()

    async def work() -> None:
        while time.monotonic() < until_s:
            found.statuses[await _status(target.port, request, "127.0.0.9")] += 1

    with _logged() as log:
        begun_s = time.monotonic()
        until_s = begun_s + seconds
        await asyncio.gather(*(work() for _ in range(6)))
        found.took_s, found.log = time.monotonic() - begun_s, log.getvalue()
    return found


async def _status(port: int, request: bytes, address: str) -> int:
    """Return the status that a request gets; 0 where it is not answered."""
    reader, writer = await asyncio.open_connection("127.0.0.1", port, local_addr=(address, 0))
    try:
        writer.write(request)
        with suppress(OSError):
            await writer.drain()
            async with asyncio.timeout(30):
                head = await reader.read(12)
            return int(head[9:12] or 0)
        return 0
    finally:
        writer.close()


@contextmanager
def _logged() -> Iterator[io.StringIO]:
    """What the servers of this process write into the log meanwhile, as it would stand in the system's."""
    text = io.StringIO()
    handler = logging.StreamHandler(text)
    logging.getLogger().addHandler(handler)
    try:
        yield text
    finally:
        logging.getLogger().removeHandler(handler)


@asynccontextmanager
async def bench(folder: Path) -> AsyncIterator[Target]:
    """A bench with staff, served as `station serve` does it."""
    async with served(folder, access=here(seeds.ACCESS)) as station:
        await station.state()
        await station.sample(20.5)
        yield await _target(station.port, station.access, "technician", BENCH_BODIES)


@asynccontextmanager
async def room(folder: Path) -> AsyncIterator[Target]:
    """A room whose store holds a bench under way, and which has heard of one without events; no broker answers."""
    lesson = {"bench-1": until(events_of(1), 200.0)}
    async with room_in_process(folder, lesson, seeds.ACCESS, running=True) as opened:
        opened.desk.collector.latest["bench-8"] = Latest(20.5, time.monotonic())
        async with at_a_port(opened.app) as port:
            yield await _target(port, opened.access, "teacher", ROOM_BODIES)


async def _target(port: int, access: Access, role: Holder, bodies: Mapping[str, list[Any]]) -> Target:
    async with httpx.AsyncClient(base_url=f"http://127.0.0.1:{port}", timeout=PATIENCE_S) as client:
        paths = (await client.get("/api/openapi.json")).json()["paths"]

    def cookie() -> bytes:
        return f"{access.sessions.cookie_name}={access.sessions.issue(role)}".encode()

    return Target(port, paths, bodies, cookie)


Opened = Callable[[Path], AbstractAsyncContextManager[Target]]
TARGETS: dict[str, Opened] = {"bench": bench, "room": room}
