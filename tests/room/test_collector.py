"""One bench that sends anything at all changes nothing for the others, and is named."""

import asyncio
import json
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from pathlib import Path

import pytest

from station.practical import events as e
from station.practical.events import Stamped
from station.practical.plan import READY_PLAN
from station.practical.staff import StaffAct
from station.room import topics
from station.room.address import BrokerAddress
from station.room.collector import Collector
from station.room.mqtt import BrokerLost, Connection, connected
from station.room.orders import OrderError, act_of, checked_order
from station.room.private_broker import PrivateBroker
from station.room.store import RoomStore, row_of
from station.room.watchers import BURST, STAYS_S, Watchers
from station.room.wire import Here, packed_batch
from tests.room.class_room import address_of, bench_at_work, collecting, linked, until

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
    async with connected(address, "raw", client.hear) as client.connection:
        yield client


def batch(count: int = 1) -> bytes:
    events = [e.Stamped(seq, "b", 0.0, 0.0, "", "none", e.ProbeFound()) for seq in range(1, count + 1)]
    return packed_batch(JOURNAL, KIT, [row_of(each) for each in events])


async def test_a_bench_writes_its_own_branch_only_and_reads_no_other(broker: PrivateBroker, tmp_path: Path) -> None:
    """What the ACL denies is acknowledged all the same, so only what arrives tells."""
    async with collecting(tmp_path, broker) as room, raw(address_of(broker, "bench-5")) as bench:
        connection = bench.connection
        assert connection is not None
        await until(lambda: room.fault is None)
        for what in (*topics.FROM_BENCH, *topics.TO_BENCH):
            await bench.send(f"benchwarm/1/bench-6/{what}", batch(), retain=True)
        for what in topics.TO_BENCH:
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


@pytest.mark.parametrize("payload", HOSTILE.values(), ids=HOSTILE.keys())
async def test_rubbish_is_named_and_others_are_kept(broker: PrivateBroker, tmp_path: Path, payload: bytes) -> None:
    async with (
        collecting(tmp_path / "room", broker) as room,
        bench_at_work(tmp_path / "bench") as bench,
        linked(bench, broker, "bench-7") as link,
        raw(address_of(broker, "bench-8")) as other,
    ):
        for what in topics.FROM_BENCH:
            await other.send(f"benchwarm/1/bench-8/{what}", payload)
        await bench.sample(20.0)
        await until(lambda: link.state.up and link.state.waiting == 0)
        await until(lambda: "bench-8" in room.troubles)
        assert set(room.troubles) == {"bench-8"}
        assert "cannot be read" in room.troubles["bench-8"]
        assert "<" not in room.troubles["bench-8"]


async def test_a_flood_is_named_and_others_go_on_at_once(broker: PrivateBroker, tmp_path: Path) -> None:
    """1,000 messages a second for a second; another bench's events meanwhile."""
    loop = asyncio.get_running_loop()
    async with (
        collecting(tmp_path / "room", broker) as room,
        bench_at_work(tmp_path / "bench") as bench,
        linked(bench, broker, "bench-7") as link,
        raw(address_of(broker, "bench-8")) as other,
    ):
        await until(lambda: link.state.up)

        async def flood() -> None:
            assert other.connection is not None
            for _ in range(10):
                await asyncio.gather(*(other.send("benchwarm/1/bench-8/events", batch()) for _ in range(100)))
                await asyncio.sleep(0.05)

        flooding = asyncio.create_task(flood())
        waits_s = []
        for number in range(8):
            asked_s = loop.time()
            await bench.bench.do({"act": "note", "text": "still here", "key": f"k{number}"})
            seq = bench.bench.seq
            await until(lambda seq=seq: room.store.benches()[0].last_seq >= seq)  # type: ignore[misc]
            waits_s.append(loop.time() - asked_s)
        await flooding
        assert max(waits_s) < 5.0, "a second at most on a quiet machine"
        assert "messages a second" in room.troubles["bench-8"]
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
    await asyncio.wait({task}, timeout=3)
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


@pytest.mark.parametrize(
    "order",
    [
        {},
        {"act": "begin"},
        {"act": "show_results"},
        {"act": "quiet"},
        {"act": "set_aside", "repeat": 1},
        {"act": "set_aside", "repeat": 0, "reason": "spilt"},
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
    text = READY_PLAN.replace("concentration_mol_dm3 = 0.400", "concentration_mol_dm3 = 1.5")
    with pytest.raises(OrderError, match=r"potassium hydroxide \(1.5 mol/dm³\) is above 1.0 mol/dm³: confirm it"):
        checked_order({"act": "choose_plan", "plan_toml": text})
    order = checked_order({"act": "choose_plan", "plan_toml": text, "confirmed": True})
    asked = act_of(order, "key")
    assert isinstance(asked, StaffAct)
    assert asked.confirmed


def test_a_clock_a_year_off_orders_nothing(tmp_path: Path) -> None:
    store = RoomStore(tmp_path)
    walls = ("2027-01-01", "2025-01-01", "", "2026-01-01")
    events = [e.Stamped(seq, "b", 0.0, 1.0, wall, "none", e.ProbeFound()) for seq, wall in enumerate(walls, 1)]
    store.keep("b", JOURNAL, events)
    assert [each.wall for each in store.events("b")] == list(walls)
