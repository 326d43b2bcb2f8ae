"""What a bench keeps, the room keeps: once, in order, whole; and what the room orders is done once."""

import asyncio
from pathlib import Path

from station.practical import events as e
from station.room.private_broker import PrivateBroker
from tests.room.class_room import bench_at_work, collecting, linked, until


async def test_a_bench_is_in_the_room_whole_and_in_order(broker: PrivateBroker, tmp_path: Path) -> None:
    heard: list[e.Stamped] = []
    async with (
        collecting(tmp_path / "room", broker) as room,
        bench_at_work(tmp_path / "bench") as bench,
        linked(bench, broker, "bench-1") as link,
    ):
        room.listen(lambda who, journal, event: heard.append(event) if who == "bench-1" else None)
        await until(lambda: link.state.up)
        await bench.sample(21.5)
        await bench.bench.do({"act": "note", "text": "good", "key": "k"})
        await until(lambda: len(heard) == 4)
        await until(lambda: "bench-1" in room.latest)
        assert room.latest["bench-1"].temperature_c == 21.5
        assert heard == bench.events() == list(room.store.events("bench-1"))
        assert room.here["bench-1"].name == "Bench-1"
        await until(lambda: link.state.waiting == 0)
        assert link.state.text == "The room keeps this bench's record."
        assert room.troubles == {}


async def test_orders_are_done_once_each_in_turn_and_are_in_the_record(broker: PrivateBroker, tmp_path: Path) -> None:
    async with collecting(tmp_path / "room", broker) as room, bench_at_work(tmp_path / "bench") as bench:
        shown = await room.order(["bench-2"], {"act": "show_results", "shown": True})
        paused = await room.order(["bench-2"], {"act": "pause"})
        async with linked(bench, broker, "bench-2"):
            await until(lambda: not room.store.pending("bench-2"))
            results, order, other = [each.event for each in bench.events()][2:]
            assert results == e.ResultsShown(True, "teacher", f"room-{room.store.room}-{shown}")
            assert order == e.OrderTaken(room.store.room, shown, "show_results")
            assert isinstance(other, e.OrderTaken)
            assert (other.order, other.refused) == (paused, "The practical has not begun.")
        before = len(bench.events())
        async with linked(bench, broker, "bench-2") as link:  # the broker has nothing left to say
            await until(lambda: link.state.up)
            await room._send_orders(["bench-2"])
            await asyncio.sleep(0.2)
        assert len(bench.events()) == before
        states = {each.order: (each.state, each.why) for each in room.store.orders()}
        assert states[shown] == ("taken", None)
        assert states[paused][0] == "refused"
