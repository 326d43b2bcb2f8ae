"""Broker killed, collector and benches stopped in the middle, old batches sent again in any order: nothing is lost.

Here within one process, for some seconds; with processes that are killed, for 20 minutes: `python -m tests.room.chaos`.
"""

import asyncio
import random
from contextlib import AsyncExitStack
from pathlib import Path

import pytest

from station.practical import events as e
from station.record.journal import read_events
from station.room import wire
from station.room.broker import PrivateBroker
from station.room.mqtt import BrokerLost, connected
from station.room.store.store import RoomStore
from tests.room.class_room import bench_at_work, broker_in, collecting, killed, linked, running, until

BENCHES = ("bench-1", "bench-2", "bench-3")
ROUNDS, OFF_AND_ON = 5, 15


async def bench_off_and_on(folder: Path, broker: PrivateBroker, user: str, draw: random.Random) -> None:
    """A bench that is switched off and on again, and the last time stays on until all of it is in the room."""
    for round_number in range(ROUNDS):
        async with bench_at_work(folder / user) as bench, linked(bench, broker, user) as link:
            for number in range(draw.randint(5, 25)):
                await bench.sample(draw.randint(300, 400) / 16)
                if draw.random() < 0.2:
                    await bench.bench.do({"act": "note", "text": "so", "key": f"{round_number}-{number}"})
                await asyncio.sleep(0.01)
            if round_number == ROUNDS - 1:
                await until(lambda: link.state.up and link.state.waiting == 0)


async def room_off_and_on(folder: Path, broker: PrivateBroker, draw: random.Random) -> None:
    """A room that is switched off and on again, and then stays: on a busy machine a moment is too short to hear all."""
    for _ in range(OFF_AND_ON):
        async with collecting(folder / "room", broker):
            await asyncio.sleep(draw.uniform(0.2, 0.6))
    async with collecting(folder / "room", broker):
        await asyncio.Event().wait()


async def broker_killed(broker: PrivateBroker, draw: random.Random) -> None:
    kills = 0
    while kills < 3:
        await asyncio.sleep(draw.uniform(0.2, 0.7))
        kills += killed(broker)


async def sent_again(broker: PrivateBroker, draw: random.Random) -> None:
    old: list[tuple[str, bytes]] = []
    while True:
        try:
            async with connected(broker.address, lambda *heard: old.append(heard[:2])) as client:
                await client.subscribe({f"{wire.PREFIX}/+/{wire.EVENTS_TOPIC}": 1})
                while True:
                    await asyncio.sleep(0.02)
                    if old:
                        await client.publish(*draw.choice(old[-30:]), qos=1)
                    await client.publish("benchwarm/1/room/here", b"", qos=1)
        except BrokerLost:
            await asyncio.sleep(0.05)


@pytest.mark.fault("lesson-of-troubles")
async def test_every_event_of_every_bench_is_kept_once_and_in_order(tmp_path: Path) -> None:
    draw = random.Random(7)
    with broker_in(tmp_path / "broker") as broker:
        async with AsyncExitStack() as stack:
            for work in (
                broker.run(),
                room_off_and_on(tmp_path, broker, draw),
                broker_killed(broker, draw),
                sent_again(broker, draw),
            ):
                await stack.enter_async_context(running(work))
            await asyncio.gather(*(bench_off_and_on(tmp_path, broker, user, draw) for user in BENCHES))
        store = RoomStore(tmp_path / "room")
        there: dict[str, list[e.Stamped]] = {user: list(read_events(tmp_path / user)) for user in BENCHES}
        assert {user: list(store.events(user)) for user in BENCHES} == there
        assert [len(store.histories(user)) for user in BENCHES] == [1, 1, 1]
        assert store._rows("SELECT count(*) FROM events") == [(sum(map(len, there.values())),)]
