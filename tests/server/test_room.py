"""The room's server: the board live, lessons kept apart, orders kept, a bench's page read-only, files to take away."""

import asyncio
import csv
import io
import json
import sqlite3
import time
from collections.abc import AsyncIterator
from contextlib import asynccontextmanager, closing
from dataclasses import replace
from pathlib import Path
from typing import Any

import httpx
import openpyxl
import pytest

from station.bench.calculation.results import calculate
from station.practical import events as e
from station.practical.dataset import question_for
from station.practical.fold import fold_all
from station.practical.view import shown_result
from station.room.collector import Collector, Latest
from station.room.lesson_book import Practical
from station.room.wire import Here, packed
from station.server import streaming as hub
from station.server.door.limits import LOOKS_AT_ONCE, LOOKS_PER_S, WEIGHTS, Rate
from station.server.room.app import room_stream
from station.server.room.desk import RoomDesk
from station.server.room.orders import MOST_PENDING
from station.server.streaming import unnumbered
from station.words import beside
from tests.conftest import PATIENCE_S
from tests.room.lesson_in_jumps import events_of, until, with_results
from tests.server.doors import SECRETS, Hand
from tests.server.live import at_a_port
from tests.server.room_live import JOURNAL, NOWHERE, Room, room_in_process
from tests.server.test_access_matrix import sign_in

LESSON = {f"bench-{seed}": with_results(events_of(seed), "at once") for seed in (1, 2)}
UNDER_WAY = until(events_of(1), 200.0)
FILES = ("csv", "xlsx", "jsonl")


@asynccontextmanager
async def heard(room: Room) -> AsyncIterator[Any]:
    """Yield what reads the next message of the room's stream, by its name."""
    listener = room.desk.hub.join()
    assert listener is not None
    stream = room_stream(listener, unnumbered("room", room.desk.whole()))

    async def message(event: str) -> Any:
        async with asyncio.timeout(PATIENCE_S):
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
        assert answer.json() == beside({"accepted": True, "lesson": 2})
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


def after(events: tuple[e.Stamped, ...], *happened: e.Event) -> tuple[e.Stamped, ...]:
    """What happens next at a bench."""
    return tuple(
        replace(events[-1], seq=events[-1].seq + number, event=each) for number, each in enumerate(happened, 1)
    )


async def results_of(room: Room, bench: str) -> dict[str, Any]:
    """The results on a bench's page in the room, once they are of what the room knows now."""
    async with asyncio.timeout(PATIENCE_S):
        while True:
            body = (await room.get(f"/api/room/bench/{bench}/state")).json()
            if body["result"] is not None and body["result"]["seq"] == body["seq"]:
                found: dict[str, Any] = body["result"]
                return found
            await asyncio.sleep(0.05)


async def test_a_benchs_results_in_the_room_are_the_benchs_own_after_corrections(tmp_path: Path) -> None:
    events = LESSON["bench-1"]
    corrected = after(events, *(e.PortionVolumeCorrected(1, portion, 5.5) for portion in range(1, 11)))
    async with room_in_process(tmp_path, {"bench-1": events}) as room:
        before = await results_of(room, "bench-1")
        room.hear("bench-1", corrected)
        shown = await results_of(room, "bench-1")
    own = shown_result(await calculate(question_for(fold_all((*events, *corrected)))))
    assert shown["straight_lines"]["end_point_cm3"] == own["straight_lines"]["end_point_cm3"]
    assert shown["straight_lines"]["end_point_cm3"] == pytest.approx(
        before["straight_lines"]["end_point_cm3"] * 5.5 / 4.0, rel=0.02
    )


async def test_a_benchs_results_in_the_room_are_of_the_set_that_was_taken_over_last(tmp_path: Path) -> None:
    events = LESSON["bench-1"]
    rows = [(volume, 20.0 + 0.2 * min(volume, 22.0) - 0.1 * max(volume - 22.0, 0.0)) for volume in range(0, 44, 4)]
    one, other = (
        after(events, e.SetAdopted("Group 4", [(repeat, volume, celsius) for volume, celsius in rows]))
        for repeat in (1, 7)
    )
    async with room_in_process(tmp_path, {"bench-1": events}) as room:
        room.hear("bench-1", one)
        assert [each["repeat"] for each in (await results_of(room, "bench-1"))["repeats"]] == [1]
        room.hear("bench-1", after(one, *(each.event for each in other)))
        body = (await room.get("/api/room/bench/bench-1/state")).json()
        assert body["result"] is None, "those of the other set are gone at once"
        assert [each["repeat"] for each in (await results_of(room, "bench-1"))["repeats"]] == [7]


async def test_the_class_result_follows_a_reading_that_was_typed_anew(tmp_path: Path) -> None:
    async with room_in_process(tmp_path, LESSON, running=True) as room, asyncio.timeout(3 * PATIENCE_S):
        desk = room.desk
        await desk.refreshed()
        while (before := desk.class_answer) is None:  # noqa: ASYNC110 - computed by a child
            await asyncio.sleep(0.05)
        read = next(each.event for each in LESSON["bench-1"] if isinstance(each.event, e.ReadingSettled))
        room.hear("bench-1", after(LESSON["bench-1"], replace(read, temperature_c=15.0, reason="typed")))
        while desk.class_answer is before:  # noqa: ASYNC110
            await asyncio.sleep(0.05)
        assert desk.class_answer != before


async def test_what_changes_nothing_of_the_lesson_does_not_have_it_told_anew(tmp_path: Path) -> None:
    async with room_in_process(tmp_path, {"bench-1": UNDER_WAY}) as room:
        nothing = after(UNDER_WAY, e.SampleTaken(21.0), e.Quieted(True, "teacher", "k"), e.ProbeLost("empty"))
        room.hear("bench-1", nothing)
        assert room.desk._chosen.empty()
        room.hear("bench-1", after(nothing, e.GroupNamed("Group 3")))
        assert room.desk._chosen.qsize() == 1


async def test_a_bench_keeps_its_place_over_a_restart_and_gets_another_by_hand(tmp_path: Path) -> None:
    lesson = {"bench-2": UNDER_WAY, "bench-7": UNDER_WAY, "bench-10": UNDER_WAY}
    async with room_in_process(tmp_path, lesson, SECRETS) as room:
        await sign_in(room.client, "teacher")
        assert {bench: each["place"] for bench, each in (await room.room())["tiles"].items()} == {
            "bench-2": 2, "bench-7": 7, "bench-10": 10,
        }  # fmt: skip
        reply = await room.client.post("/api/room/places", json={"bench": "bench-2", "place": 10})
        assert reply.status_code == 200
        assert (await room.room())["order"] == ["bench-10", "bench-7", "bench-2"]
        nobody = await room.client.post("/api/room/places", json={"bench": "bench-9", "place": 1})
        assert nobody.status_code == 422
        desk = RoomDesk(room.desk.store, room.desk.collector)
        await desk.begin()
        assert list(desk.tiles()) == ["bench-10", "bench-7", "bench-2"]


async def test_what_the_bottle_was_made_up_to_is_for_staff_until_benches_show_it(tmp_path: Path) -> None:
    async with room_in_process(tmp_path, LESSON, SECRETS) as room:
        looker = httpx.AsyncClient(transport=httpx.ASGITransport(room.app), base_url="http://bench.local")
        await sign_in(room.client, "teacher")
        before = (await room.get("/api/room/class")).json()["made_up"]
        assert before == {"mol_dm3": None, "to_find": True, "seen": False}
        version = room.desk.class_version
        assert (await room.client.post("/api/room/made-up", json={"mol_dm3": 0.392})).status_code == 200
        assert room.desk.class_version > version, "pages ask again"
        made_up = (await room.get("/api/room/class")).json()["made_up"]
        assert made_up == {"mol_dm3": 0.392, "to_find": True, "seen": False}
        assert (await looker.get("/api/room/class")).json()["made_up"]["mol_dm3"] is None
        assert "0.392" not in (await looker.get("/api/room")).text
        for bench, events in LESSON.items():
            room.hear(bench, after(events, e.ResultsShown(True, "teacher", "k", 0.392)))
        assert (await looker.get("/api/room/class")).json()["made_up"] == {**made_up, "seen": True}
        await looker.aclose()


async def test_a_refusal_is_put_away_by_hand_or_by_the_next_practical(tmp_path: Path) -> None:
    async with room_in_process(tmp_path, {"bench-1": UNDER_WAY}, SECRETS) as room:
        await sign_in(room.client, "teacher")
        events = UNDER_WAY
        for count in (1, 2):
            number = (await room.order(["bench-1"], act="pause")).json()["order"]
            events = after(events, e.OrderTaken(room.desk.store.room, number, "pause", "There is nothing to pause."))
            room.hear("bench-1", events[-1:])
            await room.desk.refreshed()
            (left,) = (await room.room())["orders"]
            assert (left["state"], left["order"], left["why"]) == ("refused", number, "There is nothing to pause.")
            if count == 1:
                dismissed = {"bench": "bench-1", "order": number}
                await room.client.post("/api/room/orders/dismissed", json=dismissed)
            else:
                room.desk._assign([(Practical("bench-1", JOURNAL, events[-1].seq), events[-1])])
                await room.desk.refreshed()
            assert (await room.room())["orders"] == []


async def test_the_newest_orders_answers_stand_with_each_bench(tmp_path: Path) -> None:
    async with room_in_process(tmp_path, {"bench-1": UNDER_WAY, "bench-2": UNDER_WAY}, SECRETS) as room:
        await sign_in(room.client, "teacher")
        number = (await room.order(["bench-1", "bench-2"], act="quiet", silent=True)).json()["order"]
        room.hear("bench-1", after(UNDER_WAY, e.OrderTaken(room.desk.store.room, number, "quiet")))
        await room.desk.refreshed()
        states = {each["bench"]: each["state"] for each in (await room.room())["orders"]}
        assert states == {"bench-1": "taken", "bench-2": "pending"}


async def test_practice_cups_are_in_a_part_of_their_own(tmp_path: Path) -> None:
    async with room_in_process(tmp_path, {"bench-1": UNDER_WAY}) as room:
        assert (await room.room())["practice"] == []
        room.desk.practising = lambda: [fold_all(UNDER_WAY)]
        body = await room.room()
        (cup,) = body["practice"]
        assert (cup["cup"], cup["state"], cup["repeat"]) == (1, "settle", 1)
        assert list(body["tiles"]) == ["bench-1"]


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


async def test_an_order_that_cannot_be_is_refused_in_words_and_nothing_is_kept(tmp_path: Path) -> None:
    async with room_in_process(tmp_path, LESSON, SECRETS) as room:
        await sign_in(room.client, "teacher")
        room.desk.collector.latest["bench-8"] = Latest(20.5, time.monotonic())
        aside = {"act": "set_aside", "repeat": 1, "reason": "spilled"}
        for benches, act in (
            (["bench-8"], aside),
            (["bench-1"], {"act": "pause", "practical": 5}),
            (["bench-1"], {"act": "pause", "practical": [5, "x"]}),
            (["bench-1"], {"act": "pause", "practical": {}}),
        ):
            refused = await room.order(benches, **act)
            assert (refused.status_code, refused.json()["code"]) == (422, "bad_order"), refused.text
        for nobody in ("nobody", "no user", "x/y"):
            gone = await room.client.post("/api/room/orders/withdrawn", json={"benches": [nobody]})
            assert (gone.status_code, gone.json()["code"]) == (422, "bad_order")
        assert room.desk.store.orders() == []
        assert (await room.order(["bench-8"], act="pause")).status_code == 200, "heard, if without events: it may pause"


async def test_orders_to_a_bench_that_is_away_do_not_pile_up_beyond_one_message(tmp_path: Path) -> None:
    async with room_in_process(tmp_path, LESSON, SECRETS) as room:
        await sign_in(room.client, "teacher")
        room.access.rate = Rate(1e9, 1_000_000)
        for _ in range(MOST_PENDING):
            assert (await room.order(["bench-1"], act="set_aside", repeat=1, reason="x" * 200)).status_code == 200
        refused = await room.order(["bench-1"], act="set_aside", repeat=1, reason="spilled")
        assert (refused.status_code, "take them back" in refused.json()["detail"]) == (422, True)
        assert (await room.order(["bench-2"], act="pause")).status_code == 200
        pending = [{"order": each.order, "act": each.act} for each in room.desk.store.pending("bench-1")]
        assert packed({"room": room.desk.store.room, "orders": pending})


@pytest.mark.fault("room-disk")
async def test_a_lesson_begins_with_its_orders_or_not_at_all(tmp_path: Path) -> None:
    async with room_in_process(tmp_path, LESSON, SECRETS) as room:
        await sign_in(room.client, "teacher")
        with closing(sqlite3.connect(room.desk.store.path)) as other:
            other.execute("CREATE TRIGGER full BEFORE INSERT ON orders BEGIN SELECT RAISE(ABORT, 'disk full'); END")
        answer = await room.client.post("/api/room/lessons", json={"label": "10A"})
        assert (answer.status_code, answer.json()["code"]) == (503, "not_kept")
        (lesson,) = room.desk.store.lessons()
        assert (lesson.label, lesson.ended) == ("10B", None), "the lesson under way goes on"
        with closing(sqlite3.connect(room.desk.store.path)) as other:
            other.execute("DROP TRIGGER full")
        assert (await room.client.post("/api/room/lessons", json={"label": "10A"})).json()["lesson"] == 2
        assert {each.bench for each in room.desk.store.orders()} == {"bench-1", "bench-2"}


@pytest.mark.fault("greedy-address")
async def test_the_streams_of_one_address_keep_nobody_off_a_benchs_page(
    tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.setattr(hub, "MOST_LISTENERS", 4)
    async with room_in_process(tmp_path, {"bench-1": UNDER_WAY}) as room, at_a_port(room.app) as port:

        async def opened(address: str) -> tuple[bytes, asyncio.StreamWriter]:
            reader, writer = await asyncio.open_connection("127.0.0.1", port, local_addr=(address, 0))
            path = f"/api/room/bench/bench-1/stream?after={UNDER_WAY[-1].seq}"
            writer.write(f"GET {path} HTTP/1.1\r\nHost: localhost\r\n\r\n".encode())
            return await asyncio.wait_for(reader.read(12), 10), writer

        crowd = [await opened("127.0.0.2") for _ in range(5)]
        other = await opened("127.0.0.3")
        assert [status[-3:] for status, _ in (*crowd, other)] == [b"200"] * 4 + [b"503", b"200"]
        for _, writer in (*crowd, other):
            writer.close()
        room.app.state.views.close()


async def test_what_costs_the_room_more_counts_more(tmp_path: Path) -> None:
    async with room_in_process(tmp_path, {"bench-1": UNDER_WAY}) as room:
        room.access.monotonic = Hand()
        told = set((await room.get("/api/openapi.json")).json()["paths"])
        assert {path for path in WEIGHTS if path.startswith("/api/room")} <= told, "a path that is weighed is there"
        dear = {path for path in told if path.rpartition("/")[2] == "stream" or path.rpartition(".")[2] in FILES}
        assert dear <= set(WEIGHTS), "and what streams or makes a file is weighed"
        path, weight = "/api/room/bench/bench-1/journal.jsonl", WEIGHTS["/api/room/bench/{bench}/journal.jsonl"]
        room.access.looks = Rate(LOOKS_PER_S, LOOKS_AT_ONCE)
        statuses = [(await room.get(path)).status_code for _ in range(LOOKS_AT_ONCE // weight + 3)]
        assert statuses == [200] * (LOOKS_AT_ONCE // weight) + [429] * 3
