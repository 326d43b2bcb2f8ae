"""The room's server: the board live, lessons kept apart, orders kept, a bench's page read-only, files to take away."""

import asyncio
import csv
import io
import json
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager
from dataclasses import replace
from pathlib import Path
from typing import Any

import openpyxl
import pytest

from station.practical import events as e
from station.room.collector import Collector
from station.room.wire import Here
from station.server.messages import unnumbered
from station.server.room_app import room_stream
from station.server.room_desk import RoomDesk
from tests.room.lesson_in_jumps import events_of, until, with_results
from tests.server.doors import SECRETS
from tests.server.room_live import JOURNAL, NOWHERE, Room, room_in_process
from tests.server.test_access_matrix import sign_in

LESSON = {f"bench-{seed}": with_results(events_of(seed), "at once") for seed in (1, 2)}
UNDER_WAY = until(events_of(1), 200.0)


@asynccontextmanager
async def heard(room: Room) -> AsyncIterator[Any]:
    """Yield what reads the next message of the room's stream, by its name."""
    listener = room.desk.hub.join()
    assert listener is not None
    stream = room_stream(room.desk.hub, listener, unnumbered("room", room.desk.whole()))

    async def message(event: str) -> Any:
        async with asyncio.timeout(10):
            while True:
                name = (await anext(stream)).decode().rpartition("event: ")[2]
                if name.startswith(f"{event}\n"):
                    return json.loads(name.partition("data: ")[2])

    yield message
    room.desk.hub.leave(listener)


async def test_the_board_begins_with_what_the_store_holds(tmp_path: Path) -> None:
    async with room_in_process(tmp_path, {"bench-1": UNDER_WAY, "bench-2": LESSON["bench-2"]}) as room:
        body = await room.room()
    assert body["order"] == ["bench-1", "bench-2"]
    assert body["tiles"]["bench-1"]["state"] == "settle"
    assert body["tiles"]["bench-2"]["state"] == "done"
    assert body["lesson"]["label"] == "10B"
    assert body["addresses"] == ["http://192.0.2.7:8080/"]
    assert "broker" in body["fault"]


async def test_a_change_comes_over_the_stream_and_only_what_changed(tmp_path: Path) -> None:
    lesson = {"bench-1": UNDER_WAY, "bench-2": LESSON["bench-2"]}
    async with room_in_process(tmp_path, lesson, running=True) as room, heard(room) as message:
        assert set((await message("room"))["tiles"]) == {"bench-1", "bench-2"}
        await message("room")  # that no broker answers is told to all
        last = UNDER_WAY[-1]
        room.hear("bench-1", (replace(last, seq=last.seq + 1, event=e.ProbeLost("empty")),))
        while "bench-1" not in (told := await message("tiles"))["tiles"] or not told["tiles"]["bench-1"]["reasons"]:
            pass
        assert set(told["tiles"]) == {"bench-1"}
        assert told["tiles"]["bench-1"]["reasons"][0]["code"] == "probe_lost"
        assert told["order"][0] == "bench-1"


async def test_a_practical_that_begins_is_put_into_the_lesson(tmp_path: Path) -> None:
    async with room_in_process(tmp_path, LESSON, running=True) as room, heard(room) as message:
        room.hear("bench-9", UNDER_WAY)
        while "bench-9" not in (await message("room"))["tiles"]:
            pass
        assert {each.bench for each in room.desk.book.practicals(1)} == {"bench-1", "bench-2", "bench-9"}


async def test_a_practical_that_was_kept_right_before_the_room_stopped_is_put_into_it_at_the_start(
    tmp_path: Path,
) -> None:
    async with room_in_process(tmp_path, {"bench-1": UNDER_WAY}) as room:
        store = room.desk.store
        store.keep("bench-2", JOURNAL, LESSON["bench-2"])
        again = RoomDesk(store, Collector(store, NOWHERE))
        await again.begin()
        assert set(again.tiles()) == {"bench-1", "bench-2"}
        once_more = RoomDesk(store, Collector(store, NOWHERE))
        await once_more.begin()
        assert len(store.lessons()) == 1


async def test_who_was_here_once_and_takes_no_part_has_no_tile(tmp_path: Path) -> None:
    async with room_in_process(tmp_path, {"bench-1": UNDER_WAY}) as room:
        room.desk.collector.here["bench-8"] = Here(journal=JOURNAL, kit=JOURNAL, name="Bench 8")
        assert set((await room.room())["tiles"]) == {"bench-1"}


async def test_a_lesson_begins_with_a_new_practical_on_all_benches(tmp_path: Path) -> None:
    async with room_in_process(tmp_path, LESSON, SECRETS) as room:
        await sign_in(room.client, "teacher")
        answer = await room.client.post("/api/room/lessons", json={"label": "10A"})
        assert answer.json() == {"accepted": True, "lesson": 2}
        (order,) = {each.order: each for each in room.desk.store.orders()}.values()
        assert order.act["act"] == "choose_plan"
        assert order.act["plan"]["results"] == "at once", "each bench keeps the plan it has"
        known = (await room.get("/api/room/lessons")).json()["lessons"]
        assert [(each["label"], each["benches"], each["ended"] is None) for each in known] == [
            ("10A", 0, True),
            ("10B", 2, False),
        ]
        bad = await room.client.post("/api/room/lessons", json={"label": "10C", "plan_toml": "repeats = 0"})
        assert (bad.status_code, bad.json()["code"]) == (422, "bad_plan")
        assert len(room.desk.store.lessons()) == 2, "nothing begins with a plan that cannot be used"


async def test_an_order_is_kept_and_what_is_not_done_is_told(tmp_path: Path) -> None:
    async with room_in_process(tmp_path, LESSON, SECRETS) as room:
        await sign_in(room.client, "teacher")
        answer = await room.order(["bench-1"], act="set_aside", repeat=1, reason="spilled")
        assert answer.status_code == 200
        assert room.desk.store.pending("bench-1")[0].act["practical"] == [JOURNAL, 2]
        assert [(each["bench"], each["state"]) for each in (await room.room())["orders"]] == [("bench-1", "pending")]
        await room.client.post("/api/room/orders/withdrawn", json={"benches": ["bench-1"]})
        assert (await room.room())["orders"] == []
        for benches, act in ((["nobody"], {"act": "pause"}), (["bench-1"], {"act": "explode"}), (["bench-1"], {})):
            refused = await room.order(benches, **act)
            assert (refused.status_code, refused.json()["code"]) == (422, "bad_order")


async def test_a_benchs_page_is_the_benchs_own_with_nothing_to_press(tmp_path: Path) -> None:
    async with room_in_process(tmp_path, {"bench-1": UNDER_WAY}) as room:
        state = (await room.get("/api/room/bench/bench-1/state")).json()
        assert (state["state"], state["bench"]["read_only"], state["other_acts"]) == ("settle", True, [])
        assert state["instruction"]["act"] is None
        assert state["instruction"]["text"]
        assert state["trace"]["samples"]
        samples = (await room.get("/api/room/bench/bench-1/samples", repeat=1)).json()["samples"]
        assert len(samples) > 100
        assert (await room.get("/api/room/bench/bench-1/samples", repeat=9)).status_code == 404
        for unknown in ("bench-7", "..%2Fx", "x" * 41):
            assert (await room.get(f"/api/room/bench/{unknown}/state")).status_code in (404, 422)


async def test_a_lesson_is_taken_away_as_csv_spreadsheet_and_lines(tmp_path: Path) -> None:
    named = {**LESSON, "bench-1": _named(LESSON["bench-1"], "=HYPERLINK(1)")}
    async with room_in_process(tmp_path, named) as room:
        await room.class_result()
        rows = list(csv.DictReader(io.StringIO((await room.get("/api/room/class.csv")).text)))
        assert {row["bench"] for row in rows} == {"bench-1", "bench-2", "class"}
        assert {row["name"] for row in rows} == {"'=HYPERLINK(1)", "bench-2", ""}
        (mean,) = [row for row in rows if (row["bench"], row["method"]) == ("class", "heat balance")][:1]
        assert float(mean["low_95"]) < float(mean["value"]) < float(mean["high_95"])
        comma = (await room.get("/api/room/class.csv", decimal="comma")).text.splitlines()[1]
        assert ";" in comma
        assert "," in comma.split(";")[5]
        readings = list(csv.DictReader(io.StringIO((await room.get("/api/room/readings.csv")).text)))
        assert len(readings) == 22
        answer = await room.get("/api/room/class.xlsx")
        book = openpyxl.load_workbook(io.BytesIO(answer.content))
        assert book.sheetnames == ["Class result", "What it means", "Standing off", "Mean curve", "Readings"]
        assert isinstance(book["Class result"]["F2"].value, float)
        assert answer.headers["content-disposition"].endswith('-class.xlsx"')
        lines = [json.loads(line) for line in (await room.get("/api/room/lesson.jsonl")).text.splitlines()]
        assert {line["bench"] for line in lines} == {"bench-1", "bench-2"}
        assert sum(line["kind"] == "reading_settled" for line in lines) == 22
        few = (await room.get("/api/room/lesson.jsonl", samples=False)).text
        assert "sample_taken" not in few
        assert (await room.get("/api/room/readings.csv", lesson=7)).status_code == 404


def _named(events: tuple[e.Stamped, ...], name: str) -> tuple[e.Stamped, ...]:
    last = events[-1]
    return (*events, replace(last, seq=last.seq + 1, event=e.BenchRenamed(name, "teacher", "k")))


@pytest.mark.parametrize("path", ["/", "/room", "/room/class", "/room/lessons", "/room/bench/bench-1"])
async def test_the_pages_are_there(tmp_path: Path, path: str) -> None:
    async with room_in_process(tmp_path, {"bench-1": UNDER_WAY}) as room:
        answer = await room.client.get(path, follow_redirects=True)
    assert answer.status_code == 200
    assert "<div id=" in answer.text
