"""The hall of practice cups: whoever comes gets one, each at its own address, and none is anybody else's."""

import re
from collections.abc import AsyncIterator
from dataclasses import dataclass

import httpx
import pytest
import pytest_asyncio
from starlette.responses import PlainTextResponse

from station.command.practise import hall_of
from station.command.settings import Settings
from station.practical.kinds import read_plan
from station.record.exchange import newest_practical
from station.record.spreadsheet.sheets import record_sheets
from station.room.class_result.kept import has_ended
from station.server.practise.hall import GIVES_WAY_S, IDLE_S, Hall
from tests.records import PLAN_TEXT

PLAN = read_plan(PLAN_TEXT)


@dataclass
class Opened:
    hall: Hall
    now_s: float = 1000.0

    def phone(self, host: str = "127.0.0.1") -> httpx.AsyncClient:
        """Another device."""
        app = self.hall.beside(PlainTextResponse("the bench"))
        return httpx.AsyncClient(transport=httpx.ASGITransport(app), base_url=f"http://{host}")


@pytest_asyncio.fixture
async def opened() -> AsyncIterator[Opened]:
    hall = hall_of(lambda: PLAN, 2, Settings(), 20.0)
    opened = Opened(hall)
    hall.monotonic = lambda: opened.now_s
    yield opened
    await hall.end()


async def come(phone: httpx.AsyncClient) -> str:
    """Come to the hall; return the address of one's cup."""
    answer = await phone.get("/practise")
    assert answer.status_code == 303
    return str(answer.headers["location"])


async def test_each_phone_has_a_cup_of_its_own_and_keeps_it(opened: Opened) -> None:
    one, other = opened.phone(), opened.phone()
    mine, theirs = await come(one), await come(other)
    assert mine != theirs
    assert await come(one) == mine
    assert (await one.post(f"/api{mine}/hands", json={"hand": "fill"})).json()["hands"]["filled"] is True
    assert (await other.get(f"/api{theirs}/hands")).json()["hands"]["filled"] is False
    state = (await one.get(f"/api{mine}/state")).json()
    assert state["bench"]["practice"] is True
    assert state["state"] == "ready"
    assert (await one.get("/somewhere")).text == "the bench"


async def test_the_unknown_is_on_no_page_before_the_results_are(opened: Opened) -> None:
    phone = opened.phone()
    mine = await come(phone)
    for path in ("state", "hands", "journal.jsonl"):
        told = (await phone.get(f"/api{mine}/{path}")).text
        assert "prepared" not in re.sub(r'"prepared_mol_dm3": ?null', "", told)
    assert (await phone.get(f"/api{mine}/hands")).json()["judgement"] is None


async def test_a_full_hall_says_so_until_a_cup_is_left(opened: Opened) -> None:
    first, second, third = (opened.phone() for _ in range(3))
    mine = await come(first)
    opened.now_s += 1.0
    theirs = await come(second)
    refused = await third.get("/practise", headers={"Accept-Language": "de"})
    assert refused.status_code == 503
    assert "Alle Übungsbecher sind in Gebrauch" in refused.text
    opened.now_s += GIVES_WAY_S + 0.5
    await second.get(f"/api{theirs}/state")
    newest = await come(third)
    assert newest not in (mine, theirs)
    assert (await first.get(f"/api{mine}/state")).status_code == 404
    gone = await first.get(mine)
    assert (gone.status_code, gone.headers["location"]) == (303, "/practise")


async def test_a_bench_at_work_gives_no_new_cup_and_leaves_those_there_are(opened: Opened) -> None:
    first, second = opened.phone(), opened.phone()
    mine = await come(first)
    opened.hall.is_open = lambda: False
    refused = await second.get("/practise")
    assert refused.status_code == 503
    assert "A repeat is under way" in refused.text
    assert await come(first) == mine


async def test_cups_that_nobody_asks_for_are_washed_up(opened: Opened) -> None:
    phone = opened.phone()
    mine = await come(phone)
    opened.now_s += IDLE_S - 1.0
    await opened.hall.wash_up_left()
    assert len(opened.hall.cups) == 1
    record = next(iter(opened.hall.cups.values())).cup.watch.bench.journal.path
    assert record.exists()
    opened.now_s += 2.0
    await opened.hall.wash_up_left()
    assert opened.hall.cups == {}
    assert not record.exists(), "its memory is free again"
    assert (await phone.get(f"/api{mine}/state")).status_code == 404


async def test_another_site_gets_no_cup_and_moves_none(opened: Opened) -> None:
    stranger = opened.phone("elsewhere.example")
    assert (await stranger.get("/practise")).status_code == 421
    phone = opened.phone()
    mine = await come(phone)
    forged = await phone.post(
        f"/api{mine}/hands", json={"hand": "fill"}, headers={"Origin": "http://elsewhere.example"}
    )
    assert forged.status_code == 403
    assert (await phone.post("/practise")).status_code in (405, 415)


@pytest.mark.parametrize(
    "body", [{}, {"hand": "throw"}, {"hand": "ware", "drawn_cm3": -1}, {"hand": "lid", "on": "perhaps"}]
)
async def test_what_no_hand_can_do_is_refused(opened: Opened, body: dict[str, object]) -> None:
    phone = opened.phone()
    answer = await phone.post(f"/api{await come(phone)}/hands", json=body)
    assert answer.status_code == 422


async def test_a_practice_is_marked_in_its_record_and_counts_in_no_class_result(opened: Opened) -> None:
    phone = opened.phone()
    mine = await come(phone)
    bench = next(iter(opened.hall.cups.values())).cup.watch.bench
    chosen = next(each for each in newest_practical(bench.journal.path.parent) if each.event.kind == "plan_chosen")
    assert chosen.event.to_body()["practice"] is True
    sheets = record_sheets("Practice cup", bench.state, None, [chosen])
    assert any(row and str(row[0]) == "Practice" for sheet in sheets for row in sheet.rows)
    for act in ({"act": "begin"}, {"act": "finish"}):
        assert (await phone.post(f"/api{mine}/acts", json={"key": str(act), **act})).status_code == 200
    assert bench.state.repeats[0].status == "ended"
    assert not has_ended(bench.state)


async def test_again_is_another_practice_with_another_unknown(opened: Opened) -> None:
    phone = opened.phone()
    mine = await come(phone)
    cup = next(iter(opened.hall.cups.values())).cup
    before = cup.watch.plan_of_staff()
    await phone.post(f"/api{mine}/hands", json={"hand": "fill"})
    answer = await phone.post(f"/api{mine}/hands/again", json={})
    assert answer.json()["hands"]["filled"] is False
    assert cup.watch.bench.state.practice
    assert cup.watch.plan_of_staff() != before
