"""What comes in from outside, and what may come of it: for each door a context that takes one spoilt input at a time.

A door raises AssertionError when a promise is broken; anything else that it raises is a traceback somebody would see.
"""

import asyncio
import json
import tempfile
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from pathlib import Path
from random import Random
from typing import Any

from starlette.types import Message

from station.bench.clock import Clock
from station.bench.probes.one_wire import OneWireReader
from station.command.settings import load_settings
from station.command.terminal import CommandError
from station.kit.table import KitError, read_kits
from station.practical import events as e
from station.practical.fold import fold_all
from station.practical.kinds import read_plan
from station.practical.plan import PlanError
from station.practical.readings_text import readings_from_text
from station.practical.view import view
from station.record.exchange_in import ExchangeError, read_exchange
from station.record.journal import FILE_NAME, first_broken, read_events
from station.record.salvage import opened_journal
from station.room.board import Board
from station.room.collector import Collector
from station.room.store.store import RoomStore
from station.room.wire import BrokerAddress, packed
from station.server.bench.app import make_app
from station.server.door.limits import Rate
from station.words import members
from tests.reliability import seeds
from tests.reliability.mutate import mutated, spoilt_card
from tests.server.live import here, in_process

Door = Callable[[Random], None]
MEMORY = "/dev/shm"
KINDS = {"empty", "garbled", "zeros", "crc", "power_on", "gone", "not_read"}


@contextmanager
def probe_text() -> Iterator[Door]:
    """The kernel's text of a probe, through the real reader."""
    with tempfile.TemporaryDirectory(dir=MEMORY) as folder:
        probe = Path(folder) / "28-0316a2795fee"
        probe.mkdir()
        reader = OneWireReader(Clock(0.0), Path(folder), probe.name)

        def door(chance: Random) -> None:
            (probe / "w1_slave").write_bytes(mutated(seeds.PROBE, chance))
            taken = reader.read()
            if taken.bad is None:
                assert taken.temperature_c is not None
                assert -2048 <= taken.temperature_c <= 2048
            else:
                assert taken.temperature_c is None
                assert taken.bad in KINDS - {"not_read"}, (taken.bad, taken.text)

        try:
            yield door
        finally:
            reader.close()


@contextmanager
def csv_files() -> Iterator[Door]:
    """Records and readings, as `station analyse` and another bench's readings take them."""

    def door(chance: Random) -> None:
        text = mutated(seeds.CSV, chance).decode("utf-8", "replace")
        with suppress(ExchangeError):
            assert read_exchange(text, "a.csv", once=chance.random() < 0.2)
        try:
            assert readings_from_text(text)
        except ValueError as error:
            one_line(error)

    yield door


@contextmanager
def plans() -> Iterator[Door]:
    """plan.toml, and the first screen of what is accepted."""

    def door(chance: Random) -> None:
        text = mutated(seeds.PLANS, chance).decode("utf-8", "replace")
        try:
            plan = read_plan(text)
        except PlanError as error:
            one_line(error)
            return
        shown = fold_all([e.Stamped(1, "", 0.0, 0.0, "", "", e.PlanChosen(plan.model_dump(mode="json")))])
        json.dumps(view(shown, 1.0), allow_nan=False, default=members)

    yield door


@contextmanager
def settings_files() -> Iterator[Door]:
    """station.toml, from the file on."""
    with tempfile.TemporaryDirectory(dir=MEMORY) as folder:
        file = Path(folder) / "station.toml"

        def door(chance: Random) -> None:
            file.write_bytes(mutated(seeds.SETTINGS, chance))
            try:
                load_settings(file)
            except CommandError as error:
                one_line(error)
                assert seeds.SECRET not in str(error)

        yield door


@contextmanager
def kits_files() -> Iterator[Door]:
    """kits.toml, from the file on."""
    with tempfile.TemporaryDirectory(dir=MEMORY) as folder:
        file = Path(folder) / "kits.toml"

        def door(chance: Random) -> None:
            file.write_bytes(mutated(seeds.KITS, chance))
            try:
                read_kits(file)
            except KitError as error:
                one_line(error)
                assert seeds.SECRET not in str(error)

        yield door


@contextmanager
def acts() -> Iterator[Door]:
    """JSON bodies of acts, staff's acts and credentials, through the whole application into a real journal."""
    loop = asyncio.new_event_loop()
    with tempfile.TemporaryDirectory(dir=MEMORY) as folder:
        work = in_process(Path(folder), access=here(seeds.ACCESS))
        station = loop.run_until_complete(work.__aenter__())
        app = make_app(station.watch, "0", station.access)
        station.access.rate = station.access.looks = Rate(1e9, 1_000_000_000)
        cookie = f"{station.access.sessions.cookie_name}={station.access.sessions.issue('technician')}"

        def door(chance: Random) -> None:
            path = chance.choice(("/api/acts", "/api/acts", "/api/acts", "/api/staff", "/api/session", "/api/plan"))
            body = mutated(seeds.ACTS, chance)
            if path == "/api/plan" and chance.random() < 0.8:
                text = mutated(seeds.PLANS, chance).decode("utf-8", "replace")
                body = json.dumps({"plan_toml": text}).encode()
            if chance.random() < 0.002:  # a practical that is full refuses everything: begin another
                loop.run_until_complete(asked(app, "/api/staff", seeds.NEW_PLAN, cookie))
            status, kind, body = loop.run_until_complete(asked(app, path, body, cookie))
            assert status in {200, 204, 400, 403, 409, 413, 422, 429}, (status, body)
            assert status == 204 or json.loads(body)
            assert status < 400 or kind == "application/problem+json"
            if chance.random() < 0.02:
                loop.run_until_complete(station.sample(20.0 + chance.random()))
                assert json.dumps(station.watch.whole(), allow_nan=False, default=members)

        try:
            yield door
        finally:
            loop.run_until_complete(work.__aexit__(None, None, None))
            loop.close()


async def asked(app: Any, path: str, body: bytes, cookie: str) -> tuple[int, str, bytes]:
    """Post a body; return status, content type and the reply's body."""
    sent: list[Message] = []
    given = [{"type": "http.request", "body": body, "more_body": False}]

    async def receive() -> Message:
        return given.pop() if given else {"type": "http.disconnect"}

    async def send(message: Message) -> None:
        sent.append(message)

    headers = [(b"host", b"bench.local"), (b"content-type", b"application/json"), (b"cookie", cookie.encode())]
    scope = {
        "type": "http", "asgi": {"version": "3.0"}, "http_version": "1.1", "method": "POST", "scheme": "http",
        "path": path, "raw_path": path.encode(), "query_string": b"", "root_path": "", "headers": headers,
        "client": ("192.0.2.1", 1), "server": ("192.0.2.2", 80), "state": {},
    }  # fmt: skip
    await app(scope, receive, send)
    told = dict(sent[0]["headers"]).get(b"content-type", b"").decode()
    return sent[0]["status"], told, b"".join(each.get("body", b"") for each in sent[1:])


@contextmanager
def mqtt_payloads() -> Iterator[Door]:
    """What a bench, or whoever has its password, may publish: through the collector into a real store and the board."""
    with tempfile.TemporaryDirectory(dir=MEMORY) as folder:
        store, board, now_s = RoomStore(Path(folder)), Board(), [0.0]
        collector = Collector(store, BrokerAddress("localhost"), lambda: now_s[0])
        collector.listen(lambda bench, journal, event: board.take(bench, journal, [event]))

        def door(chance: Random) -> None:
            now_s[0] += 10.0
            topic = f"benchwarm/1/bench-{chance.randrange(3)}/{chance.choice(('events', 'events', 'live', 'here'))}"
            if chance.random() < 0.1:
                topic = mutated([topic.encode()], chance).decode("utf-8", "replace")
            collector._received(topic, mutated(seeds.mqtt(), chance), chance.random() < 0.1)
            asked = []
            while not collector._waiting.empty():
                asked.append(collector._waiting.get_nowait())
            answers = store.keep_many([each.sent for each in asked]) if asked else []
            for _, message in collector._answers(asked, answers):
                assert packed(message)
            assert all(len(words) < 500 for words in collector.troubles.values())

        try:
            yield door
        finally:
            store.close()


@contextmanager
def stored_journals() -> Iterator[Door]:
    """Journals as a card gives them back: the station starts, goes on, and invents nothing."""
    with tempfile.TemporaryDirectory(dir=MEMORY) as folder:
        file, wal, written = seeds.journal(Path(folder) / "seed")
        number = 0

        def door(chance: Random) -> None:
            nonlocal number
            number += 1
            record = Path(folder) / str(number)
            record.mkdir()
            begun = chance.random() < 0.5
            (record / FILE_NAME).write_bytes(spoilt_card(file, chance) if begun or not wal else file)
            if wal and (not begun or chance.random() < 0.5):
                (record / f"{FILE_NAME}-wal").write_bytes(spoilt_card(wal, chance, 4120))
            _goes_on(record, written)
            for each in sorted(record.rglob("*"), reverse=True):
                each.unlink() if each.is_file() else each.rmdir()
            record.rmdir()

        yield door


def _goes_on(record: Path, written: set[tuple[str, str]]) -> None:
    journal, _ = opened_journal(record)
    journal.append([(seeds.at(1e6), e.NoteWritten(1, "afterwards"))]).result()
    journal.close()
    assert first_broken(record) is None
    events = list(read_events(record))
    fold_all(events)
    for each in events[:-1]:
        assert (each.event.kind, json.dumps(each.event.to_body())) in written, f"invented: {each}"


def one_line(error: Exception) -> None:
    """Hold that this is a line for a person."""
    assert str(error).strip()
    assert "\n" not in str(error), str(error)
    assert len(str(error)) < 1000, str(error)


DOORS = {
    "text of the probe": probe_text,
    "CSV files": csv_files,
    "plan.toml": plans,
    "station.toml": settings_files,
    "kits.toml": kits_files,
    "JSON of acts": acts,
    "MQTT payloads": mqtt_payloads,
    "stored journals": stored_journals,
}
