"""One bench that sends anything at all changes nothing for the others, and is named."""

import asyncio
import json
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from pathlib import Path

import pytest

from station.practical import events as e
from station.practical.events import Stamped
from station.practical.kinds import read_plan
from station.practical.staff import StaffAct
from station.room import wire
from station.room.board import Board
from station.room.broker import PrivateBroker
from station.room.collector import BURST, STAYS_S, Collector, Watchers
from station.room.mqtt import BrokerLost, Connection, connected
from station.room.orders import OrderError, act_of, checked_order
from station.room.store.store import RoomStore, row_of
from station.room.wire import BrokerAddress, Here, KeptMessage, Live, digest_of, packed, packed_batch, unpacked
from station.words import in_language, say
from tests.conftest import PATIENCE_S
from tests.records import PLAN_TEXT
from tests.reliability.attacks import takeovers
from tests.room.class_room import address_of, bench_at_work, broker_in, collecting, linked, running, until

JOURNAL, KIT = "0123456789abcdef", "fedcba9876543210"


class Raw:
    """A client of the broker that sends what it likes."""

    def __init__(self) -> None:
        self.heard: list[tuple[str, bytes]] = []
        self.connection: Connection | None = None

    def hear(self, topic: str, payload: bytes, _: bool) -> None:
        self.heard.append((topic, payload))

    async def send(self, topic: str, payload: bytes, *, retain: bool = False) -> None:
        assert self.connection is not None
        await self.connection.publish(topic, payload, qos=1, retain=retain)


@asynccontextmanager
async def raw(address: BrokerAddress) -> AsyncIterator[Raw]:
    client = Raw()
    async with connected(address, client.hear) as client.connection:
        yield client


def batch(count: int = 1) -> bytes:
    events = [e.Stamped(seq, "b", 0.0, 0.0, "", "none", e.ProbeFound()) for seq in range(1, count + 1)]
    return packed_batch(JOURNAL, KIT, [row_of(each) for each in events])


@pytest.mark.fault("another-branch")
async def test_a_bench_writes_its_own_branch_only_and_reads_no_other(broker: PrivateBroker, tmp_path: Path) -> None:
    """What the ACL denies is acknowledged all the same, so only what arrives tells."""
    async with collecting(tmp_path, broker) as room, raw(address_of(broker, "bench-5")) as bench:
        connection = bench.connection
        assert connection is not None
        await until(lambda: room.fault is None)
        for what in (*wire.FROM_BENCH, *wire.TO_BENCH):
            await bench.send(f"benchwarm/1/bench-6/{what}", batch(), retain=True)
        for what in wire.TO_BENCH:
            await bench.send(f"benchwarm/1/bench-5/{what}", batch(), retain=True)
        for topic in (
            "#",
            "benchwarm/1/#",
            "benchwarm/1/+/events",
            "benchwarm/1/bench-6/kept",
            "benchwarm/1/room/here",
        ):
            await connection.subscribe({topic: 1})
        await bench.send("benchwarm/1/bench-5/events", batch(2))
        await room.order(["bench-6"], {"act": "pause"})
        await room.order(["bench-5"], {"act": "pause"})
        await until(lambda: [each.bench for each in room.store.benches()] == ["bench-5"])
        await until(lambda: len(bench.heard) >= 2)
        await asyncio.sleep(0.1)
        assert {topic for topic, _ in bench.heard} == {"benchwarm/1/bench-5/kept", "benchwarm/1/bench-5/orders"}
        assert room.troubles == {}
        await room.withdraw(["bench-5", "bench-6"])


@pytest.mark.fault("stolen-client-id")
async def test_one_benchs_credentials_throw_out_neither_the_room_nor_a_bench(tmp_path: Path) -> None:
    """The broker ends a connection when another comes under its client id: so nobody is told that of another."""
    gone: list[str] = []

    def hear(topic: str, payload: bytes, _: bool) -> None:
        if unpacked(Here, payload).gone:
            gone.append(topic)

    with broker_in(tmp_path / "broker") as broker:
        async with (
            collecting(tmp_path / "room", broker) as room,
            bench_at_work(tmp_path / "5") as first,
            bench_at_work(tmp_path / "6") as second,
            linked(first, broker, "bench-5") as link,
            linked(second, broker, "bench-6") as other,
            connected(broker.address, hear) as looking,
        ):
            await until(lambda: link.state.up and other.state.up)
            await looking.subscribe({wire.topic(bench, wire.HERE): 1 for bench in ("bench-5", "bench-6")})
            connection = room._client
            trying = asyncio.create_task(takeovers(address_of(broker, "bench-5"), ["bench-6"], 2.0))
            while not trying.done():
                await first.sample(20.0)
                await asyncio.wait({trying}, timeout=0.05)
            let_in, heard = trying.result()
            assert room.store.room in heard, "a bench is told which room it is"
            assert let_in > 0
            live = packed(Live(kit=KIT, temperature_c=31.0))
            await looking.publish(wire.topic("bench-3", wire.LIVE), live, qos=1)
            await until(lambda: "bench-3" in room.latest)  # after all that went before
            assert room._client is connection
            assert gone == []


@pytest.mark.parametrize("password", [None, "", "wrong"])
async def test_nobody_is_anonymous(broker: PrivateBroker, password: str | None) -> None:
    right = address_of(broker, "bench-5")
    user = None if password is None else "bench-5"
    with pytest.raises(BrokerLost) as caught:
        async with raw(BrokerAddress(right.host, right.port, user, password)):
            pytest.fail("let in")
    assert caught.value.refused


HOSTILE = {
    "rubbish": b"\xff" * 100,
    "html": json.dumps({"journal": JOURNAL, "kit": KIT, "name": "<img src=x onerror=alert(1)>" * 9}).encode(),
    "huge": b"{" + b" " * 120_000 + b"}",
    "deep": b"[" * 100_000,
}


@pytest.mark.fault("rubbish-from-a-bench")
@pytest.mark.parametrize("payload", HOSTILE.values(), ids=HOSTILE.keys())
async def test_rubbish_is_named_and_others_are_kept(broker: PrivateBroker, tmp_path: Path, payload: bytes) -> None:
    async with (
        collecting(tmp_path / "room", broker) as room,
        bench_at_work(tmp_path / "bench") as bench,
        linked(bench, broker, "bench-7") as link,
        raw(address_of(broker, "bench-8")) as other,
    ):
        for what in wire.FROM_BENCH:
            await other.send(f"benchwarm/1/bench-8/{what}", payload)
        await bench.sample(20.0)
        await until(lambda: link.state.up and link.state.waiting == 0)
        await until(lambda: "bench-8" in room.troubles)
        assert set(room.troubles) == {"bench-8"}
        assert "cannot be read" in room.troubles["bench-8"]
        assert "<" not in room.troubles["bench-8"]


@pytest.mark.fault("hostile-texts")
async def test_texts_of_any_length_and_direction_marks_reach_no_board(broker: PrivateBroker, tmp_path: Path) -> None:
    long, turned = "W" * 100_000, "Bench\u202e\u2066\x1b[2J\n8\u200f"
    happened = (
        e.PlanChosen(read_plan(PLAN_TEXT, "plan").model_dump(mode="json")),
        e.BenchRenamed(long, "teacher"),
        e.GroupNamed(turned + long),
        e.NoteWritten(1, turned),
        e.SampleTaken(None, long, None, long),
        e.Unknown("tea_served", {turned: [long, {"milk": turned}]}),
        e.BenchRenamed(turned, "teacher"),
    )
    rows = [row_of(e.Stamped(seq, "b", 0.0, 0.0, "", "none", each)) for seq, each in enumerate(happened, 1)]
    board = Board()
    names = []

    def listener(bench: str, journal: str, event: e.Stamped) -> None:
        board.take(bench, journal, (event,))
        names.append(board.tiles(0.0, {}, {})["bench-8"]["name"])

    async with collecting(tmp_path / "room", broker) as room, raw(address_of(broker, "bench-8")) as bench:
        room.listen(listener)
        await until(lambda: room.fault is None)
        assert bench.connection is not None
        await bench.connection.subscribe({wire.topic("bench-8", wire.KEPT): 1})
        await bench.send("benchwarm/1/bench-8/events", packed_batch(JOURNAL, KIT, rows))
        await until(lambda: len(names) == len(rows) and bench.heard)
        told = unpacked(KeptMessage, bench.heard[-1][1])
        assert (told.seq, told.digest) == (len(rows), digest_of(rows[-1])), "what is kept is what was sent"
        assert names[1] == "W" * 24
        assert names[-1] == "Bench[2J 8"
        kept = [row_of(each)[7] for each in room.store.events("bench-8")]
    assert all(each.isprintable() and "\\" not in each for each in kept), "a control character would be escaped"
    assert max(map(len, kept[1:])) < 2000


@pytest.mark.fault("rubbish-from-a-bench")
async def test_a_flood_is_named_and_others_go_on_at_once(broker: PrivateBroker, tmp_path: Path) -> None:
    """As many messages as there is time for; another bench's events meanwhile."""
    async with (
        collecting(tmp_path / "room", broker) as room,
        bench_at_work(tmp_path / "bench") as bench,
        linked(bench, broker, "bench-7") as link,
        raw(address_of(broker, "bench-8")) as other,
    ):
        await until(lambda: link.state.up)

        async def flood() -> None:
            assert other.connection is not None
            while True:
                await asyncio.gather(*(other.send("benchwarm/1/bench-8/events", batch()) for _ in range(100)))
                await asyncio.sleep(0.05)

        async with running(flood()):
            await until(lambda: "messages a second" in room.troubles.get("bench-8", ""))
            for number in range(8):
                await bench.bench.do({"act": "note", "text": "still here", "key": f"k{number}"})
                seq = bench.bench.seq
                await until(lambda seq=seq: room.store.benches()[0].last_seq >= seq)  # type: ignore[misc]
        assert set(room.troubles) == {"bench-8"}
        assert list(room.store.events("bench-7")) == bench.events()


async def test_events_that_no_listener_understands_stop_nobody(broker: PrivateBroker, tmp_path: Path) -> None:
    heard = []

    def listen(bench: str, journal: str, event: Stamped) -> None:
        heard.append((bench, journal, event.seq))
        raise LookupError("no such repeat")

    async with collecting(tmp_path, broker) as room, raw(address_of(broker, "bench-8")) as bench:
        room.listen(listen)
        await until(lambda: room.fault is None)
        await bench.send("benchwarm/1/bench-8/events", batch(3))
        await until(lambda: len(heard) == 3)
        assert heard == [("bench-8", JOURNAL, seq) for seq in (1, 2, 3)]
        assert "makes no sense" in room.troubles["bench-8"]


async def test_a_broker_that_does_not_answer_is_told(tmp_path: Path) -> None:
    store = RoomStore(tmp_path)
    collector = Collector(store, BrokerAddress("127.0.0.1", 9, "room", "x"))
    task = asyncio.create_task(collector.run())
    await until(lambda: "does not answer (" in (collector.fault or ""))
    number = await collector.order(["bench-1"], {"act": "pause"})  # kept until there is a broker
    assert [each.order for each in store.pending("bench-1")] == [number]
    task.cancel()
    await asyncio.wait({task}, timeout=PATIENCE_S)
    assert task.cancelled()


class Clock:
    now_s = 100.0

    def __call__(self) -> float:
        return self.now_s


def test_a_bench_that_is_quiet_again_has_no_trouble_any_more() -> None:
    clock = Clock()
    watchers = Watchers(clock)
    spoke = sum(watchers.may_speak("b") for _ in range(1000))
    assert spoke == BURST
    assert set(watchers.troubles()) == {"b"}
    assert watchers.may_speak("c")
    clock.now_s += STAYS_S
    assert watchers.troubles() == {}
    assert watchers.may_speak("b")


def test_a_bench_that_sends_too_much_is_named_and_may_speak_again_later() -> None:
    clock = Clock()
    watchers = Watchers(clock)
    spoke = sum(watchers.may_speak("b", 128_000) for _ in range(60))
    assert spoke == 39
    assert "kB a second" in watchers.troubles()["b"]
    clock.now_s += 1.0
    assert watchers.may_speak("b", 128_000)


def test_a_restarted_kit_is_not_two_and_two_that_speak_in_turn_are_named() -> None:
    clock = Clock()
    watchers = Watchers(clock)
    here = {
        kit: Here(journal=JOURNAL, kit=kit * 16, name=f"Bench {kit}", board=f"0000abcd{kit}", addresses=addresses)
        for kit, addresses in (("1", ("http://10.0.0.1:8080/",)), ("2", ()))
    }
    for kit in "12":  # one after the other: a restart
        for _ in range(3):
            watchers.heard("b", kit * 16, here[kit])
            clock.now_s += 1
    assert watchers.troubles() == {}
    watchers.heard("b", "1" * 16)
    text = watchers.troubles()["b"]
    assert "Bench 1 (board …0abcd1 at http://10.0.0.1:8080/)" in text
    assert "Bench 2 (board …0abcd2)" in text


def test_ever_new_kits_and_benches_take_no_more_room() -> None:
    watchers = Watchers(Clock())
    for number in range(10_000):
        watchers.heard("b", f"{number:016x}", Here(journal=JOURNAL, kit=f"{number:016x}", name="B"))
        watchers.may_speak(f"bench-{number}")
    assert len(watchers._benches) <= 5000
    assert len(watchers._benches["b"].kits) <= 8
    assert len(watchers._benches["b"].here) <= 8


def test_troubles_of_a_bench_are_said_together_in_each_language() -> None:
    watchers = Watchers()
    page = ("http://10.0.0.5:8080/",)
    first = Here(journal=JOURNAL, kit="a1" * 8, name="Bench 5", board="0000b5c6d7e8", addresses=page)
    second = Here(journal=JOURNAL, kit="c3" * 8, name="Bench 5")
    for here in (first, second, first):
        watchers.heard("bench-5", here.kit, here)
    watchers.tell("bench-5", "rubbish", say("bench-sends-unreadable", reason=say("wire-eight-parts")))
    trouble = watchers.troubles()["bench-5"]
    kits = "Bench 5 (board …c6d7e8 at http://10.0.0.5:8080/) and Bench 5 (kit c3c3c3)"
    assert trouble == (
        f"Two kits are bench-5: {kits}. Make one of their cards anew. "
        "It sends what cannot be read (events: an event has eight parts)."
    )
    both = "Bench 5 (Platine …c6d7e8, Adresse http://10.0.0.5:8080/) und Bench 5 (Gerät c3c3c3)"
    assert in_language(trouble, "de") == (
        f"Zwei Geräte sind bench-5: {both}. "
        "Eine der Karten neu machen. Er sendet, was sich nicht lesen lässt (events: Ein Ereignis hat acht Teile)."
    )


@pytest.mark.parametrize(
    "order",
    [
        {},
        {"act": "begin"},
        {"act": "show_results"},
        {"act": "quiet"},
        {"act": "set_aside", "repeat": 1},
        {"act": "set_aside", "repeat": 0, "reason": "spilt"},
        {"act": "restore"},
        {"act": "rename", "name": "a\nb"},
        {"act": "rename", "name": "x", "colour": 1},
        {"act": "choose_plan"},
        {"act": "choose_plan", "plan": {"acid": 1}},
        {"act": "choose_plan", "plan_toml": "x ="},
    ],
)
def test_an_order_that_no_bench_could_do_is_not_given(order: dict[str, object]) -> None:
    with pytest.raises(OrderError):
        checked_order(order)


def test_a_plan_above_one_mole_is_ordered_only_by_somebody_who_stands_for_it() -> None:
    text = PLAN_TEXT.replace("concentration_mol_dm3 = 0.400", "concentration_mol_dm3 = 1.5")
    with pytest.raises(OrderError, match=r"potassium hydroxide \(1.5 mol/dm³\) is above 1.0 mol/dm³: confirm it"):
        checked_order({"act": "choose_plan", "plan_toml": text})
    order = checked_order({"act": "choose_plan", "plan_toml": text, "confirmed": True})
    asked = act_of(order, "key")
    assert isinstance(asked, StaffAct)
    assert asked.confirmed


def test_a_plan_that_leads_into_danger_is_not_ordered() -> None:
    text = PLAN_TEXT.replace("0.400", "11")
    with pytest.raises(OrderError, match=r"not for potassium hydroxide of 11 mol/dm³"):
        checked_order({"act": "choose_plan", "plan_toml": text, "confirmed": True})


@pytest.mark.fault("benches-clocks")
def test_a_clock_a_year_off_orders_nothing(tmp_path: Path) -> None:
    store = RoomStore(tmp_path)
    walls = ("2027-01-01", "2025-01-01", "", "2026-01-01")
    events = [e.Stamped(seq, "b", 0.0, 1.0, wall, "none", e.ProbeFound()) for seq, wall in enumerate(walls, 1)]
    store.keep("b", JOURNAL, events)
    assert [each.wall for each in store.events("b")] == list(walls)
