"""Every endpoint of the room for every role, and no result before it is shown: every endpoint is asked."""

from collections.abc import AsyncIterator
from pathlib import Path

import pytest
import pytest_asyncio

from station.practical import events as e
from station.room.store.store import RoomStore
from station.server.door.access import Access
from tests.room.lesson_in_jumps import events_of, with_results
from tests.server.doors import GIVEN, SECRETS
from tests.server.room_live import Room, room_in_process
from tests.server.test_access_matrix import FREE, ROLES, STAFF, sign_in
from tests.server.test_withheld import numbers, told

BENCH = {"bench": "bench-1"}
CSV = FREE | {"looker": 403, "bench": 403, "teacher": 403, "technician": 403}

BACKUPS = "/api/room/backups.zip"
"""Records as they are, for staff alone: no result stands in them."""

MATRIX: dict[tuple[str, str], tuple[dict[str, int], dict[str, object] | None]] = {
    ("GET", "/api/room"): (FREE, None),
    ("GET", "/api/room/address.svg"): (FREE, None),
    ("GET", "/api/room/lessons"): (FREE, None),
    ("GET", "/api/room/plans"): (FREE, None),
    ("GET", "/api/room/class"): (FREE, None),
    ("GET", "/api/room/class.csv"): (CSV, None),
    ("GET", "/api/room/class.xlsx"): (FREE, None),
    ("GET", "/api/room/readings.csv"): (FREE, None),
    ("GET", "/api/room/lesson.jsonl"): (FREE, None),
    ("GET", "/api/room/sheets"): (FREE, None),
    ("GET", "/api/room/sheets.zip"): (FREE, None),
    ("GET", "/api/room/bench/{bench}/state"): (FREE, None),
    ("GET", "/api/room/bench/{bench}/samples"): (FREE, None),
    ("GET", "/api/room/bench/{bench}/session"): (FREE, None),
    ("GET", "/api/room/bench/{bench}/journal.jsonl"): (FREE, None),
    ("POST", "/api/room/orders"): (STAFF, {"benches": ["bench-1"], "act": {"act": "quiet", "silent": True}}),
    ("POST", "/api/room/orders/withdrawn"): (STAFF, {"benches": ["bench-1"]}),
    ("POST", "/api/room/orders/dismissed"): (STAFF, {"bench": "bench-1", "order": 1}),
    ("POST", "/api/room/places"): (STAFF, {"bench": "bench-1", "place": 9}),
    ("POST", "/api/room/made-up"): (STAFF, {"mol_dm3": 0.4}),
    ("POST", "/api/room/lessons"): (STAFF, {"label": "10A"}),
    ("POST", "/api/room/lessons/end"): (STAFF, {}),
    ("GET", "/api/room/kits"): (STAFF | {"teacher": 200, "technician": 200}, None),
    ("POST", "/api/room/kits"): (STAFF | {"teacher": 503, "technician": 503}, {"benches": ["bench-1"], "do": "look"}),
    ("GET", BACKUPS): (STAFF | {"teacher": 200, "technician": 200}, None),
    ("GET", "/api/session"): (FREE, None),
    ("POST", "/api/session"): (dict.fromkeys(ROLES, 204), GIVEN["teacher"]),
    ("DELETE", "/api/session"): (dict.fromkeys(ROLES, 204), None),
    ("DELETE", "/api/sessions"): (STAFF | {"teacher": 204, "technician": 204}, None),
}
ELSEWHERE = {("GET", "/api/room/stream"), ("GET", "/api/room/bench/{bench}/stream")}
"""Streams never end: test_room_stream.py asks them as a looker."""


@pytest_asyncio.fixture
async def room(tmp_path: Path) -> AsyncIterator[Room]:
    lesson = {f"bench-{seed}": with_results(events_of(seed), "when shown") for seed in (1, 2)}
    async with room_in_process(tmp_path, lesson, SECRETS) as opened:
        yield opened


@pytest.mark.parametrize("role", ROLES)
@pytest.mark.parametrize("half", [0, 1])
async def test_who_may_do_what(room: Room, role: str, half: int) -> None:
    """In two halves: so many requests at once would be too many."""
    for (method, path), (expected, body) in list(MATRIX.items())[half::2]:
        await room.client.delete("/api/session")
        await sign_in(room.client, role)
        query = {"repeat": 1} if path.endswith("/samples") else None
        answer = await room.client.request(method, path.format(**BENCH), json=body, params=query)
        assert answer.status_code == expected[role], f"{method} {path}: {answer.text}"
        if answer.status_code == 403:
            assert answer.json()["code"] == ("withheld" if path.endswith(".csv") else "staff_only")


async def test_the_matrix_knows_every_endpoint(room: Room) -> None:
    document = (await room.get("/api/openapi.json")).json()
    there = {(method.upper(), path) for path, methods in document["paths"].items() for method in methods}
    assert there == set(MATRIX) | ELSEWHERE


async def test_a_looker_orders_nothing(room: Room) -> None:
    await room.order(["bench-1"], act="pause")
    assert isinstance(room.desk.store, RoomStore)
    assert room.desk.store.orders() == []


def test_without_a_passphrase_this_machine_alone_is_the_teachers() -> None:
    access = Access(everyone="teacher")
    assert (access.role(None, "127.0.0.1"), access.role(None, "192.0.2.9")) == ("teacher", "bench")


async def test_nothing_says_a_result_before_it_may_be_seen(room: Room) -> None:
    lesson = room.desk.lesson.lesson
    assert lesson is not None
    secret = numbers(await room.desk.class_of(lesson))
    assert len(secret) > 20, "the class result holds numbers to look for"
    await sign_in(room.client, "teacher")
    for method, path in MATRIX:
        if method != "GET" or path == BACKUPS:
            continue
        answer = await room.get(path.format(**BENCH), **({"repeat": 1} if path.endswith("/samples") else {}))
        leaked = [each for each in secret if each in told(answer.content)]
        assert not leaked, f"{path} says {leaked}"
        assert '"heat_balance"' not in told(answer.content), path
    assert (await room.class_result())["waits_for"] == ["bench-1", "bench-2"]


async def test_it_is_seen_by_everybody_once_every_bench_shows_its_own(room: Room) -> None:
    shown = e.ResultsShown(True, "teacher", "k")
    last = {bench: now.seq for bench, now in room.desk.board.benches.items()}
    template = events_of(1)[-1]
    for bench in ("bench-1", "bench-2"):
        assert not (await room.class_result())["shown"], "one bench would be told by the class"
        room.hear(bench, (e.Stamped(last[bench] + 1, template.boot, 0.0, template.time_s, "", "none", shown),))
    found = await room.class_result()
    assert found["shown"]
    assert {each["bench"] for each in found["result"]["benches"]} == {"bench-1", "bench-2"}
    assert (await room.get("/api/room/class.csv")).status_code == 200


async def test_a_bench_that_is_away_counts_as_told(room: Room) -> None:
    await sign_in(room.client, "teacher")
    await room.order(["bench-1", "bench-2"], act="show_results", shown=True)
    assert (await room.class_result())["shown"]
    await room.order(["bench-1"], act="show_results", shown=False)
    assert (await room.class_result())["waits_for"] == ["bench-1"]


async def test_of_a_lesson_that_is_over_staff_see_what_nobody_can_show_any_more(room: Room) -> None:
    await sign_in(room.client, "teacher")
    await room.client.post("/api/room/lessons", json={"label": "10A"})
    assert (await room.class_result(lesson=1))["result"]["quantities"]
    await room.client.delete("/api/session")
    assert (await room.class_result(lesson=1))["result"] is None
