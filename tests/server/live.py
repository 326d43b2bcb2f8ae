"""A bench with a probe in our hand and everything else real: journal, loop, application, server, streams."""

import asyncio
import json
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager, suppress
from dataclasses import dataclass, field
from functools import partial
from pathlib import Path
from typing import Any, Self

import httpx
from starlette.types import ASGIApp

from station.bench.check.finding import FindingsShown, Kit, as_json
from station.bench.check.run import check_kit
from station.bench.clock import Clock
from station.bench.loop import Bench, last_event
from station.bench.panel.panel import open_panel
from station.bench.panel.pins import PanelPins
from station.bench.probes.probe import Deliver, ProbeReading
from station.kit.helper.asking import asked
from station.kit.on_page import NO_WHEELS, made_on_page
from station.practical import events as e
from station.practical.kinds import read_plan
from station.practical.kinds.portions.plan import PortionsPlan
from station.practical.plan import Plan
from station.record.journal import Journal
from station.server.bench.app import make_app
from station.server.bench.contract import About
from station.server.bench.desk import KitDesk, Looks
from station.server.bench.watch import Watch
from station.server.door.access import Access
from station.server.door.hosts import Hosts
from station.server.door.secrets import Secrets
from station.server.serve import listen, serve, server_of
from tests.conftest import PATIENCE_S
from tests.records import PLAN_TEXT

PLAN = read_plan(PLAN_TEXT)
STARTED = e.StationStarted("0", "hand", None, "none")
ADDRESSES = ("http://192.0.2.7:8080/", "http://127.0.0.1:8080/")
ABOUT: About = {"name": "Bench 7", "virtual": False, "panel": "none"}


class HandProbe:
    """A probe that reads what the test says, when it says it."""

    probe_id = "28-0316a2795fee"

    def __init__(self, clock: Clock) -> None:
        self._clock = clock
        self._deliver: Deliver | None = None

    def start(self, deliver: Deliver) -> None:
        self._deliver = deliver

    def close(self) -> None:
        self._deliver = None

    def read(self, celsius: float | None, bad: str | None = None) -> None:
        assert self._deliver is not None
        self._deliver(ProbeReading(self._clock.time_s(), celsius, bad, None, 0.7))


@dataclass
class Station:
    """A bench at work and how to reach it."""

    watch: Watch
    probe: HandProbe
    client: httpx.AsyncClient
    access: Access
    port: int = 0
    keys: int = 0

    @property
    def bench(self) -> Bench:
        return self.watch.bench

    async def act(self, act: str, **values: Any) -> httpx.Response:
        """Post an act with a new key."""
        self.keys += 1
        return await self.client.post("/api/acts", json={"act": act, "key": f"key {self.keys}", **values})

    async def done(self, act: str, **values: Any) -> dict[str, Any]:
        """Post an act that must be accepted; return the answer."""
        answer = await self.act(act, **values)
        assert answer.status_code == 200, answer.text
        body: dict[str, Any] = answer.json()
        return body

    async def sample(self, celsius: float | None, bad: str | None = None) -> int:
        """Let the probe read; return the sequence number once it is kept."""
        before = self.bench.seq
        self.probe.read(celsius, bad)
        while self.bench.seq == before:  # noqa: ASYNC110 - nothing tells of a mere sample
            await asyncio.sleep(0)
        return self.bench.seq

    async def state(self) -> dict[str, Any]:
        body: dict[str, Any] = (await self.client.get("/api/state")).json()
        return body


async def _watch(folder: Path, plan: Plan) -> tuple[Watch, HandProbe]:
    journal = Journal(folder)
    clock = Clock.started(last_event(journal))
    probe = HandProbe(clock)
    bench = Bench.opened(journal, clock, probe, open_panel("none", PanelPins(), lambda: None))
    await bench.start(plan, STARTED)
    watch = Watch(bench, ABOUT)
    look = partial(_looked, Kit(driver="none", folder=folder))
    watch.desk = KitDesk(
        Looks(look), lambda: list(ADDRESSES), partial(made_on_page, wheels=None), lambda: NO_WHEELS, asked
    )
    return watch, probe


async def _looked(kit: Kit) -> FindingsShown:
    return as_json(await asyncio.to_thread(check_kit, kit))


def here(secrets: Secrets | None = None, **known: Any) -> Access:
    """Who may do what on a bench that is called bench.local."""
    return Access(secrets, hosts=Hosts(["bench.local"]), **known)


@asynccontextmanager
async def in_process(folder: Path, plan: Plan = PLAN, access: Access | None = None) -> AsyncIterator[Station]:
    """A bench whose application is called without a network."""
    watch, probe = await _watch(folder, plan)
    access = access or here()
    running = asyncio.create_task(watch.bench.run())
    await asyncio.sleep(0)
    transport = httpx.ASGITransport(make_app(watch, "0", access), raise_app_exceptions=False)
    try:
        async with httpx.AsyncClient(transport=transport, base_url="http://bench.local") as client:
            yield Station(watch, probe, client, access)
    finally:
        await watch.calculator.close()
        running.cancel()
        with suppress(asyncio.CancelledError):
            await running


@asynccontextmanager
async def served(folder: Path, plan: Plan = PLAN, access: Access | None = None) -> AsyncIterator[Station]:
    """A bench served on a free port, as `station serve` does it."""
    watch, probe = await _watch(folder, plan)
    access = access or Access()
    bound = listen("127.0.0.1", 0)
    port = bound.getsockname()[1]
    enough = asyncio.Event()

    async def until() -> None:
        await enough.wait()

    serving = asyncio.create_task(serve(watch, "0", bound, until, access=access))
    try:
        async with httpx.AsyncClient(base_url=f"http://127.0.0.1:{port}", timeout=PATIENCE_S) as client:
            yield Station(watch, probe, client, access, port)
    finally:
        enough.set()
        await serving


@asynccontextmanager
async def at_a_port(app: ASGIApp) -> AsyncIterator[int]:
    """Serve an application as every page here is served; return the port."""
    bound, server = listen("127.0.0.1", 0), server_of(app)
    serving = asyncio.create_task(server.serve([bound]))
    try:
        yield bound.getsockname()[1]
    finally:
        server.should_exit = True
        await serving


@dataclass(frozen=True)
class Message:
    """One server-sent event; a comment has the event name ":"."""

    event: str
    data: Any
    seq: int | None = None


@dataclass
class Stream:
    """One open `GET /api/stream`, read message by message from a plain socket."""

    reader: asyncio.StreamReader
    writer: asyncio.StreamWriter
    head: str = ""
    retry_ms: int | None = None
    seen: list[Message] = field(default_factory=list)
    _text: str = ""

    @classmethod
    async def opened(cls, port: int, after: int | None = None, last_event_id: str | None = None) -> Self:
        """Open a stream and read the reply's head."""
        reader, writer = await asyncio.open_connection("127.0.0.1", port)
        query = "" if after is None else f"?after={after}"
        resume = "" if last_event_id is None else f"Last-Event-ID: {last_event_id}\r\n"
        writer.write(f"GET /api/stream{query} HTTP/1.1\r\nHost: 127.0.0.1:{port}\r\n{resume}\r\n".encode())
        head = (await asyncio.wait_for(reader.readuntil(b"\r\n\r\n"), PATIENCE_S)).decode()
        return cls(reader, writer, head)

    async def next(self) -> Message | None:
        """Return the next message; None when the stream has ended."""
        while "\n\n" not in self._text:
            chunk = await asyncio.wait_for(self._chunk(), PATIENCE_S)
            if not chunk:
                await self.close()
                return None
            self._text += chunk
        block, _, self._text = self._text.partition("\n\n")
        message = self._parsed(block)
        if message is None:
            return await self.next()
        self.seen.append(message)
        return message

    async def rest(self) -> None:
        """Read on to the end of the stream."""
        while await self.next() is not None:
            pass

    async def until(self, event: str, seq: int | None = None) -> Message:
        """Read on to a message of this name (and sequence number)."""
        while (message := await self.next()) is not None:
            if message.event == event and seq in {None, message.seq}:
                return message
        raise AssertionError(f"the stream ended before {event} {seq or ''}; it had {self.seen}")

    def happened(self) -> list[int]:
        """Return the sequence numbers seen so far."""
        return [each.seq for each in self.seen if each.seq is not None]

    async def close(self) -> None:
        self.writer.close()
        with suppress(ConnectionError):
            await self.writer.wait_closed()

    async def _chunk(self) -> str:
        """Read one chunk (RFC 9112, 7.1)."""
        try:
            size = int(await self.reader.readline() or b"0", 16)
            return (await self.reader.readexactly(size + 2))[:size].decode()
        except (asyncio.IncompleteReadError, ConnectionError):
            return ""

    def _parsed(self, block: str) -> Message | None:
        """Read one block as the WHATWG standard's server-sent events say."""
        fields: dict[str, str] = {}
        for line in block.split("\n"):
            name, _, value = line.partition(":")
            fields[name] = value.removeprefix(" ")
        if "retry" in fields:
            self.retry_ms = int(fields["retry"])
            return None
        if "data" not in fields:
            return Message(":", fields.get("", ""))
        seq = int(fields["id"]) if "id" in fields else None
        return Message(fields.get("event", "message"), json.loads(fields["data"]), seq)


def portions_plan(**portions: Any) -> PortionsPlan:
    """The ready plan with these portions."""
    assert isinstance(PLAN, PortionsPlan)
    return PLAN.model_copy(update={"portions": PLAN.portions.model_copy(update=portions)})
