"""`/kit`: one look at a time beside the station at work, what it tells and to whom, the lamps' test."""

import asyncio
from collections.abc import AsyncIterator
from pathlib import Path

import pytest_asyncio

from station.bench.check.finding import FindingsShown
from station.bench.panel.panel import Panel, open_panel
from station.bench.panel.pins import PanelPins
from station.bench.panel.signals import ALL_LIT, TRIAL_EACH_S, Lamps, Signal
from station.server.bench.desk import FRESH_S, Looks
from tests.server.doors import GIVEN, SECRETS, Hand
from tests.server.live import ADDRESSES, Station, here, in_process


@pytest_asyncio.fixture
async def station(tmp_path: Path) -> AsyncIterator[Station]:
    async with in_process(tmp_path, access=here(SECRETS)) as opened:
        yield opened


async def test_whoever_may_look_sees_the_findings_of_the_real_check(station: Station) -> None:
    shown = (await station.client.get("/api/kit")).json()
    found = {each["name"]: each for each in shown["findings"]}
    assert found["journal"]["colour"] == "green"
    assert found["versions"]["values"]["station"]
    assert shown["status"] in ("green", "amber", "red")
    assert (shown["bench"], shown["panel"]) == ("Bench 7", "none")
    assert shown["addresses"] == list(ADDRESSES)
    picture = await station.client.get("/api/kit/address.svg")
    assert picture.headers["content-type"] == "image/svg+xml"
    assert picture.content.startswith(b"<?xml") and b"<script" not in picture.content


async def test_many_who_ask_get_one_look_and_none_too_soon_after_it() -> None:
    clock, looks, go = Hand(), 0, asyncio.Event()

    async def look() -> FindingsShown:
        nonlocal looks
        looks += 1
        clock.now_s += 4.0 if looks == 2 else 0.0
        await go.wait()
        return {"status": "green", "findings": [], "messages": {"look": looks}}

    seen = Looks(look, clock)
    waiting = [asyncio.create_task(seen.newest()) for _ in range(30)]
    await asyncio.sleep(0)
    waiting[0].cancel()  # who goes away does not end it for the others
    go.set()
    assert {each[0]["messages"]["look"] for each in await asyncio.gather(*waiting[1:])} == {1}
    clock.now_s += FRESH_S
    found, age_s = await seen.newest()
    assert (dict(found), age_s) == ({"status": "green", "findings": [], "messages": {"look": 1}}, FRESH_S)
    clock.now_s += 0.1
    found, age_s = await seen.newest()
    assert (found["messages"]["look"], age_s) == (2, 0.0)
    clock.now_s += 3 * 4.0  # a slow one is rested from for longer
    assert (await seen.newest())[0]["messages"]["look"] == 2
    clock.now_s += 0.1
    assert (await seen.newest())[0]["messages"]["look"] == 3


async def test_without_a_look_it_says_so(tmp_path: Path) -> None:
    async with in_process(tmp_path) as station:
        station.watch.desk = None
        for path in ("/api/kit", "/api/kit/address.svg"):
            answer = await station.client.get(path)
            assert (answer.status_code, answer.json()["code"]) == (503, "not_here")


async def test_lamps_are_tested_by_staff_and_only_where_there_are_some(station: Station) -> None:
    assert (await station.client.post("/api/kit/lamps", json={})).status_code == 403
    await station.client.post("/api/session", json=GIVEN["technician"])
    assert (await station.client.post("/api/kit/lamps", json={})).json()["code"] == "no_panel"
    with open_panel("mock", PanelPins(), lambda: None, silent=True) as panel:
        station.bench.panel, before = panel, station.bench.panel
        assert (await station.client.post("/api/kit/lamps", json={})).status_code == 204
        station.bench.panel = before
        lights_in_turn(panel)


def lights_in_turn(panel: Panel) -> None:
    """After the test the signal is shown again; no lamp comes on more often than it may."""
    panel.show(Signal.DONE)
    seen: list[Lamps] = []
    for tick in range(round(5 * TRIAL_EACH_S * 40)):
        panel.tick(100.0 + tick / 40)
        if not seen or seen[-1] != panel.lit:
            seen.append(panel.lit)
    lit = [each for each in seen if any(each)]
    turns = [Lamps(wait=True), Lamps(act=True), Lamps(attention=True), ALL_LIT, Lamps(act=True)]
    assert [each for each in lit if each in turns][: len(turns)] == turns
    assert panel.lit == Lamps(act=True)
