"""The technician's page of the room: what kits tell over a real broker, what they are asked, and their backups."""

import io
import zipfile
from collections.abc import AsyncIterator, Awaitable, Mapping
from contextlib import asynccontextmanager
from pathlib import Path
from typing import Any

import httpx
import pytest
from hypothesis import given
from hypothesis import strategies as st

from station.bench.check.finding import Finding, FindingsShown, as_json
from station.practical.events import ProbeCheckBegun, StationStarted
from station.record.journal import read_events
from station.record.upkeep import checked, restore
from station.room.asks import Ask, KitTold
from station.room.broker import PrivateBroker
from station.room.collector import Collector
from station.room.link.link import Link
from station.room.store.store import RoomStore
from station.room.wire import WireError, packed, unpacked
from station.server.room.app import make_room_app
from station.server.room.desk import RoomDesk
from station.words import Message, say
from tests.room.class_room import BenchAtWork, address_of, bench_at_work, broker_in, running, until
from tests.server.live import here
from tests.server.room_live import NOWHERE

FREE = say("check-storage-free", megabytes="1200")


class Door:
    """A kit's hands that remember what they were asked; the helper refuses to restore."""

    def __init__(self) -> None:
        self.asked: list[dict[str, Any]] = []

    async def look(self) -> tuple[FindingsShown, float]:
        return as_json(
            [Finding("free_space", "green", FREE), Finding("power", "amber", say("check-power-was-weak"))]
        ), 61.0

    def ask(self, request: Mapping[str, Any], /) -> Awaitable[tuple[bool, Message, Mapping[str, Any]]]:
        self.asked.append(dict(request))
        return self._done(request["do"] != "restore")

    async def _done(self, done: bool) -> tuple[bool, Message, Mapping[str, Any]]:
        return done, say("kit-ask-done") if done else say("helper-none"), {}


class Class:
    """A room with its client, and two benches linked to it through a real Mosquitto."""

    def __init__(
        self, client: httpx.AsyncClient, desk: RoomDesk, benches: list[BenchAtWork], doors: list[Door]
    ) -> None:
        self.client, self.desk, self.benches, self.doors = client, desk, benches, doors

    async def rows(self) -> dict[str, Any]:
        return {each["bench"]: each for each in (await self.client.get("/api/room/kits")).json()["kits"]}

    async def ask(self, *benches: str, **more: Any) -> httpx.Response:
        return await self.client.post("/api/room/kits", json={"benches": benches or ("bench-1", "bench-2"), **more})

    async def answered(self, **more: Any) -> dict[str, Any]:
        """Ask both kits, and wait until both have answered."""
        assert (await self.ask(**more)).status_code == 200
        await until(lambda: all(each.answer is not None for each in self.desk.collector.kits.values()))
        return await self.rows()


@asynccontextmanager
async def class_of_two(folder: Path, broker: PrivateBroker) -> AsyncIterator[Class]:
    store = RoomStore(folder / "room")
    desk = RoomDesk(store, Collector(store, broker.address))
    await desk.begin()
    app = make_room_app(desk, "0", here(None, everyone="teacher"))
    doors = [Door(), Door()]
    transport = httpx.ASGITransport(app, raise_app_exceptions=False)
    async with (
        bench_at_work(folder / "1") as one,
        bench_at_work(folder / "2") as two,
        httpx.AsyncClient(transport=transport, base_url="http://bench.local") as client,
        running(desk.collector.run()),
    ):
        links = [
            Link(bench.bench, f"Bench {n}", address_of(broker, f"bench-{n}"), None, door)
            for n, (bench, door) in enumerate(zip((one, two), doors, strict=True), 1)
        ]
        async with running(links[0].run()), running(links[1].run()):
            for bench in (one, two):
                await bench.bench._keep([StationStarted("0", "one-wire", "28-00000b5eca01", "none")])
            await until(lambda: all(link.state.up and not link.state.waiting for link in links))
            await until(lambda: len(desk.collector.latest) == 2)
            yield Class(client, desk, [one, two], doors)
    await app.state.views.ended()
    store.close()


async def test_every_kit_tells_what_it_finds(tmp_path: Path) -> None:
    with broker_in(tmp_path / "broker") as broker:
        async with class_of_two(tmp_path, broker) as room:
            before = await room.rows()
            assert [(each["name"], each["status"], each["state"]) for each in before.values()] == [
                ("Bench 1", None, "idle"),
                ("Bench 2", None, "idle"),
            ]
            for row in (await room.answered(do="look")).values():
                assert (row["here"], row["status"], row["state"]) == (True, "amber", "done")
                assert row["looked_s"] == pytest.approx(61.0, abs=30.0), "the kit's own look is a minute old"
                assert {each["name"]: each["text"] for each in row["findings"]}["free_space"] == str(FREE)
            told = (await room.client.get("/api/room/kits")).json()["messages"]
            assert told[str(FREE)] == {"id": "check-storage-free", "values": {"megabytes": "1200"}}


async def test_the_ice_point_of_all_probes_is_one_press_and_one_more(tmp_path: Path) -> None:
    with broker_in(tmp_path / "broker") as broker:
        async with class_of_two(tmp_path, broker) as room:
            begun = await room.answered(do="ice-begin")
            assert [each["state"] for each in begun.values()] == ["done", "done"]
            await until(lambda: all(each.state.probes.check for each in room.desk.board.benches.values()))
            assert {each["ice"]["phase"] for each in (await room.rows()).values()} == {"settling"}
            again = await room.answered(do="ice-begin")
            assert {each["state"] for each in again.values()} == {"refused"}
            assert all(each["told"] for each in again.values())
            early = await room.answered(do="ice-save")
            assert {each["state"] for each in early.values()} == {"refused"}, "nothing is found yet"
            await room.answered(do="ice-discard")
            await until(lambda: not any(each.state.probes.check for each in room.desk.board.benches.values()))
            by = [each.event.by for each in room.benches[0].events() if isinstance(each.event, ProbeCheckBegun)]
            assert by == ["technician"]


async def test_the_helper_is_asked_once_by_name_and_what_it_would_not_do_is_told(tmp_path: Path) -> None:
    with broker_in(tmp_path / "broker") as broker:
        async with class_of_two(tmp_path, broker) as room:
            rows = await room.answered(do="restore", place="card", file="a.backup", sure=True)
            assert {(each["state"], each["told"]) for each in rows.values()} == {("refused", str(say("helper-none")))}
            await room.answered(do="update", sha256="0123456789abcdef")
            assert [door.asked for door in room.doors] == 2 * [
                [
                    {"do": "restore", "place": "card", "file": "a.backup"},
                    {"do": "update", "sha256": "0123456789abcdef"},
                ]
            ]
            for do in ("wipe", "restore"):
                answer = await room.ask(do=do)
                assert (answer.status_code, answer.json()["code"]) == (422, "not_sure")
            assert (await room.ask("bench-99", do="look")).status_code == 422
            assert (await room.ask(do="settings")).status_code == 422, (
                "names, codes and networks are the kit's own page's"
            )


async def test_a_kit_that_is_away_does_nothing_later(tmp_path: Path) -> None:
    with broker_in(tmp_path / "broker") as broker:
        async with class_of_two(tmp_path, broker) as room:
            collector = room.desk.collector
        store = RoomStore(tmp_path / "room")
        late = Collector(store, broker.address)
        late.here.update(collector.here)
        door = Door()
        async with running(late.run()):
            await until(lambda: late._client is not None)
            await late.ask(["bench-1"], "wipe", {})
            async with bench_at_work(tmp_path / "1") as back:
                link = Link(back.bench, "Bench 1", address_of(broker, "bench-1"), None, door)
                async with running(link.run()):
                    await until(lambda: link.state.up)
                    await late.ask(["bench-1"], "look", {})
                    await until(lambda: late.kits["bench-1"].answer is not None)
        assert door.asked == []
        store.close()


async def test_the_backup_of_all_is_what_each_station_restores(tmp_path: Path) -> None:
    with broker_in(tmp_path / "broker") as broker:
        async with class_of_two(tmp_path, broker) as room:
            zipped = (await room.client.get("/api/room/backups.zip")).content
            theirs = [bench.events() for bench in room.benches]
    with zipfile.ZipFile(io.BytesIO(zipped)) as opened:
        assert opened.namelist() == ["bench-1.backup", "bench-2.backup"]
        opened.extractall(tmp_path / "out")
    for number, events in enumerate(theirs, 1):
        file = tmp_path / "out" / f"bench-{number}.backup"
        assert checked(file) == len(events)
        restore(file, tmp_path / f"restored-{number}")
        assert list(read_events(tmp_path / f"restored-{number}")) == events


def test_only_an_answer_to_what_was_asked_is_believed(tmp_path: Path) -> None:
    store = RoomStore(tmp_path)
    collector = Collector(store, NOWHERE)
    collector._received("benchwarm/1/bench-1/kit", packed(KitTold(kit="ab" * 8, ask=7, done=True)), False)
    assert collector.kits == {}
    store.close()


@given(st.binary(max_size=300))
def test_any_bytes_are_no_answer_of_a_kit(payload: bytes) -> None:
    with pytest.raises(WireError):
        unpacked(KitTold, payload)


@given(
    st.recursive(st.text(max_size=30) | st.integers() | st.none(), lambda of: st.dictionaries(st.text(max_size=8), of))
)
def test_whatever_a_kit_says_is_cut_and_plain(words: object) -> None:
    told = {"kit": "ab" * 8, "ask": 1, "done": False, "text": words}
    try:
        found = unpacked(KitTold, packed(told))
    except WireError:
        return
    assert found.text.isprintable()
    assert len(found.text) <= 500


def test_an_ask_is_one_of_those_that_a_kit_does() -> None:
    with pytest.raises(WireError):
        unpacked(Ask, packed({"room": "ab" * 8, "ask": 1, "do": "network"}))
