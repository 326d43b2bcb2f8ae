"""What a bench keeps, the room keeps: once, in order, whole; and what the room orders is done once."""

import asyncio
import shutil
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from pathlib import Path
from typing import Any

import pytest

from station.bench import loop
from station.practical import events as e
from station.practical import procedure
from station.practical.acts import ActRefused
from station.practical.fold import fold_all
from station.practical.staff import StaffAct
from station.practical.state import State
from station.record.upkeep import backup, restore, wipe
from station.room.broker import PrivateBroker
from station.room.link import state as link_state
from station.room.link.link import Link
from station.room.link.outbox import FAILED
from station.room.mqtt import BrokerLost, Connection, connected
from station.room.wire import BrokerAddress
from tests.conftest import PATIENCE_S
from tests.room.class_room import address_of, bench_at_work, broker_in, collecting, killed, linked, running, until

NOTHING_TO_PAUSE = "No repeat is under way: there is nothing to pause."


async def test_a_bench_is_in_the_room_whole_and_in_order(broker: PrivateBroker, tmp_path: Path) -> None:
    heard: list[e.Stamped] = []
    async with (
        collecting(tmp_path / "room", broker) as room,
        bench_at_work(tmp_path / "bench") as bench,
        linked(bench, broker, "bench-1") as link,
    ):
        room.listen(lambda who, _, event: heard.append(event) if who == "bench-1" else None)
        await until(lambda: link.state.up)
        await bench.sample(21.5)
        await bench.bench.do({"act": "note", "text": "good", "key": "k"})
        await until(lambda: len(heard) == 4)
        await until(lambda: "bench-1" in room.latest)
        assert room.latest["bench-1"].temperature_c == 21.5
        assert heard == bench.events() == list(room.store.events("bench-1"))
        assert room.here["bench-1"].name == "Bench-1"
        await until(lambda: link.state.waiting == 0)
        assert link.state.text == link_state.UP
        assert room.troubles == {}


@pytest.mark.fault("broker-killed")
async def test_a_broker_that_is_killed_and_a_room_that_comes_last_lose_nothing(tmp_path: Path) -> None:
    with broker_in(tmp_path / "broker") as broker:
        async with (
            running(broker.run()),
            bench_at_work(tmp_path / "bench") as bench,
            linked(bench, broker, "bench-1") as link,
        ):
            await until(lambda: link.state.text == link_state.NO_ROOM)
            for celsius in range(200):
                await bench.sample(celsius / 16)
            async with collecting(tmp_path / "room", broker) as room:
                await until(lambda: link.state.up)
                assert killed(broker)
                await until(lambda: link.state.text == link_state.NO_BROKER)
                await bench.sample(50.0)
                await until(lambda: link.state.up and link.state.waiting == 0)
                assert list(room.store.events("bench-1")) == bench.events()


@pytest.mark.fault("broker-killed")
async def test_a_room_that_begins_anew_gets_everything_again(broker: PrivateBroker, tmp_path: Path) -> None:
    async with bench_at_work(tmp_path / "bench") as bench, linked(bench, broker, "bench-1") as link:
        async with collecting(tmp_path / "room", broker):
            await until(lambda: link.state.up and link.state.waiting == 0)
        async with collecting(tmp_path / "other room", broker) as room:
            await bench.sample(20.0)
            await until(lambda: [each.last_seq for each in room.store.benches()] == [3])
            assert list(room.store.events("bench-1")) == bench.events()


async def test_a_wiped_and_a_restored_record_are_other_histories(broker: PrivateBroker, tmp_path: Path) -> None:
    folder, copy = tmp_path / "bench", tmp_path / "copy"
    async with collecting(tmp_path / "room", broker) as room:
        told = []
        for number in range(3):
            async with bench_at_work(folder) as bench:
                await bench.sample(20.0 + number)
                async with linked(bench, broker, "bench-3") as link:
                    await until(lambda link=link: link.state.up and link.state.waiting == 0)  # type: ignore[misc]
                if number == 0:
                    backup(folder, copy)
                await bench.sample(30.0 + number)
                async with linked(bench, broker, "bench-3") as link:
                    await until(lambda link=link: link.state.up and link.state.waiting == 0)  # type: ignore[misc]
                told.append(bench.events())
            if number == 0:
                restore(copy, folder)
            else:
                wipe(folder)
                assert not (folder / "link.json").exists()
        kept = [list(room.store.events("bench-3", journal=each.journal)) for each in room.store.histories("bench-3")]
        assert kept == told
        assert room.troubles == {}


@pytest.mark.fault("copied-card")
async def test_a_copied_card_is_named_and_neither_bench_loses_an_event(broker: PrivateBroker, tmp_path: Path) -> None:
    async with collecting(tmp_path / "room", broker) as room:
        async with bench_at_work(tmp_path / "one") as one, linked(one, broker, "bench-4") as link:
            await until(lambda: link.state.up and link.state.waiting == 0)
        shutil.copytree(tmp_path / "one", tmp_path / "two")
        async with (
            bench_at_work(tmp_path / "one") as one,
            bench_at_work(tmp_path / "two") as two,
            linked(one, broker, "bench-4") as first,
            linked(two, broker, "bench-4") as second,
        ):
            for number in range(6):
                await one.sample(20.0 + number)
                await two.sample(40.0 + number)
                await asyncio.sleep(0.05)
            await until(lambda: all(link.state.up and link.state.waiting == 0 for link in (first, second)))
            await until(lambda: "Two kits are bench-4" in room.troubles.get("bench-4", ""))
            kept = [
                list(room.store.events("bench-4", journal=each.journal)) for each in room.store.histories("bench-4")
            ]
            assert one.events() in kept
            assert two.events() in kept
            assert set(room.troubles) == {"bench-4"}


async def test_orders_are_done_once_each_in_turn_and_are_in_the_record(broker: PrivateBroker, tmp_path: Path) -> None:
    async with collecting(tmp_path / "room", broker) as room, bench_at_work(tmp_path / "bench") as bench:
        await room.order(["bench-2"], {"act": "show_results", "shown": False})
        shown = await room.order(["bench-2"], {"act": "show_results", "shown": True})
        paused = await room.order(["bench-2"], {"act": "pause"})
        async with linked(bench, broker, "bench-2"):
            await until(lambda: not room.store.pending("bench-2"))
        results, order, other = [each.event for each in bench.events()][2:]
        assert results == e.ResultsShown(True, "teacher", f"room-{room.store.room}-{shown}")
        assert order == e.OrderTaken(room.store.room, shown, "show_results")
        assert other == e.OrderTaken(room.store.room, paused, "pause", NOTHING_TO_PAUSE)
        states = [(each.state, each.why) for each in room.store.orders()]
        assert states == [("superseded", None), ("taken", None), ("refused", NOTHING_TO_PAUSE)]


async def test_a_pause_from_the_room_is_ended_by_the_room_and_a_repeat_counts_again(
    broker: PrivateBroker, tmp_path: Path
) -> None:
    async with collecting(tmp_path / "room", broker) as room, bench_at_work(tmp_path / "bench") as bench:
        await bench.bench.do({"act": "begin", "key": "begin"})
        await bench.sample(20.0)
        await bench.bench.do({"act": "portion_added", "portion": 1, "key": "one"})
        await room.order(["bench-2"], {"act": "pause"})
        async with linked(bench, broker, "bench-2"):
            await until(lambda: not room.store.pending("bench-2"))
            with pytest.raises(ActRefused, match="Your teacher paused"):
                await bench.bench.do({"act": "resume", "key": "press"})
            for act in (
                {"act": "resume"},
                {"act": "set_aside", "repeat": 1, "reason": "the lid was off"},
                {"act": "restore", "repeat": 1},
            ):
                await room.order(["bench-2"], act)
            await until(lambda: not room.store.pending("bench-2"))
        assert [each.state for each in room.store.orders()] == ["taken"] * 4
        assert bench.bench.state.repeats[0].status == "ended"
        assert fold_all(bench.events()).repeats == bench.bench.state.repeats


async def test_an_order_that_comes_again_after_a_restart_is_not_done_again(
    broker: PrivateBroker, tmp_path: Path
) -> None:
    async with collecting(tmp_path / "room", broker) as room:
        number = await room.order(["bench-2"], {"act": "rename", "name": "Sink"})
        async with bench_at_work(tmp_path / "bench") as bench, linked(bench, broker, "bench-2"):
            await until(lambda: not room.store.pending("bench-2"))
        async with bench_at_work(tmp_path / "bench", anew=True) as bench:
            before = len(bench.events())
            for again in (number, number - 1):
                await bench.bench.take_order(None, e.OrderTaken(room.store.room, again, "rename"), None)
            assert len(bench.events()) == before
            assert bench.bench.state.name == "Sink"
            await bench.bench.take_order(None, e.OrderTaken("another room", number, "rename"), None)
            assert len(bench.events()) == before + 1


async def test_what_was_meant_for_a_practical_that_is_over_is_refused(broker: PrivateBroker, tmp_path: Path) -> None:
    async with collecting(tmp_path / "room", broker) as room, bench_at_work(tmp_path / "bench") as bench:
        async with linked(bench, broker, "bench-2") as link:
            await until(lambda: link.state.up)
        journal, began = room.here["bench-2"].journal, bench.bench.practical_seq
        for practical in ([journal, began + 1], ["0123456789abcdef", began], [journal, began]):
            order = {"act": "set_aside", "repeat": 1, "reason": "spilt", "practical": practical}
            await room.order(["bench-2"], order)
        async with linked(bench, broker, "bench-2"):
            await until(lambda: not room.store.pending("bench-2"))
        over = "That was for a practical that has already ended."
        assert [each.why for each in room.store.orders()] == [over, over, "There is no repeat 1."]


async def test_an_order_that_fails_ends_neither_the_link_nor_those_after_it(
    broker: PrivateBroker, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    def fails(state: State, act: StaffAct, time_s: float) -> tuple[e.Event, ...]:
        return procedure.advance(state, act, time_s) if act.act != "quiet" else (1 // 0,)  # type: ignore[return-value]

    monkeypatch.setattr(loop, "advance", fails)
    async with collecting(tmp_path / "room", broker) as room, bench_at_work(tmp_path / "bench") as bench:
        await room.order(["bench-2"], {"act": "quiet", "silent": True})
        await room.order(["bench-2"], {"act": "rename", "name": "Sink"})
        async with linked(bench, broker, "bench-2") as link:
            await until(lambda: not room.store.pending("bench-2"))
            assert link.state.up
        assert [(each.state, each.why) for each in room.store.orders()] == [("refused", FAILED), ("taken", None)]
        assert bench.bench.state.name == "Sink"


async def test_a_plan_from_the_room_begins_a_practical(broker: PrivateBroker, tmp_path: Path) -> None:
    async with (
        collecting(tmp_path / "room", broker) as room,
        bench_at_work(tmp_path / "bench") as bench,
        linked(bench, broker, "bench-2"),
    ):
        plan = bench.bench.state.plan.model_dump(mode="json")
        plan["acid"] = {**plan["acid"], "prepared_mol_dm3": 0.412}
        await room.order(["bench-2"], {"act": "choose_plan", "plan": {**plan, "title": "From the room"}})
        await until(lambda: bench.bench.state.plan.name == "From the room")
        assert b"0.412" not in (tmp_path / "bench" / "journal.sqlite3-wal").read_bytes()


@pytest.mark.fault("no-broker")
async def test_without_broker_a_bench_works_alone_and_says_so(tmp_path: Path) -> None:
    async with bench_at_work(tmp_path) as bench:
        link = Link(bench.bench, "Bench 1", BrokerAddress("127.0.0.1", 9, "bench-1", "x"))
        assert link.state.text == link_state.NOT_YET
        async with running(link.run()):
            await until(lambda: link.state.text == link_state.NO_BROKER)
            await bench.sample(20.0)
            assert (link.state.up, link.state.waiting) == (False, 3)


@pytest.mark.parametrize("turns", range(6))
async def test_a_stop_in_the_moment_in_which_the_broker_is_lost_ends_the_link(
    broker: PrivateBroker, tmp_path: Path, monkeypatch: pytest.MonkeyPatch, turns: int
) -> None:
    """So many turns of the event loop after the loss: while the link gives up what it was doing."""
    connections: list[Connection] = []

    @asynccontextmanager
    async def seen(*arguments: Any) -> AsyncIterator[Connection]:
        async with connected(*arguments) as connection:
            connections.append(connection)
            yield connection

    monkeypatch.setattr("station.room.link.link.connected", seen)
    async with bench_at_work(tmp_path / "bench") as bench:
        link = Link(bench.bench, "Bench 1", address_of(broker, "bench-1"))
        working = asyncio.create_task(link.run())
        await until(lambda: connections)
        connections[-1]._lose(BrokerLost("gone"))
        for _ in range(turns):
            await asyncio.sleep(0)
        working.cancel()
        await asyncio.wait({working}, timeout=PATIENCE_S)
        assert working.cancelled()


@pytest.mark.fault("no-broker")
async def test_a_wrong_password_is_told(broker: PrivateBroker, tmp_path: Path) -> None:
    async with bench_at_work(tmp_path) as bench:
        right = address_of(broker, "bench-1")
        link = Link(bench.bench, "Bench 1", BrokerAddress(right.host, right.port, "bench-1", "wrong"))
        async with running(link.run()):
            await until(lambda: link.state.text == link_state.NO_ENTRY)


@pytest.mark.parametrize(
    "address", ["", "room.local", "http://room.local", "mqtt://", "mqtt://a:0", "mqtt://a/b", "mqtt://u@a"]
)
def test_what_is_no_address_of_a_broker_is_told(address: str) -> None:
    with pytest.raises(ValueError, match="write it like"):
        BrokerAddress.read(address)


def test_addresses_and_the_password_beside(tmp_path: Path) -> None:
    (tmp_path / "p").write_text("secret word\r\n")
    read = BrokerAddress.read("mqtt://[fe80::1]:1884", "bench-1", tmp_path / "p")
    assert (read.host, read.port, read.password, str(read)) == ("fe80::1", 1884, "secret word", "mqtt://[fe80::1]:1884")
    assert "secret" not in repr(read)
    assert BrokerAddress.read("mqtt://room.local").port == 1883
    for content in (b"", b"\n", b"a\nb", b"\xff", b"x" * 2000):
        (tmp_path / "p").write_bytes(content)
        with pytest.raises(ValueError, match="one line with the password"):
            BrokerAddress.read("mqtt://room.local", "bench-1", tmp_path / "p")
    with pytest.raises(ValueError, match="cannot be read"):
        BrokerAddress.read("mqtt://room.local", "bench-1", tmp_path / "none")
