"""No result leaves the station before it may be seen: every endpoint is asked, and every message of the stream."""

import fcntl
import io
import json
import zipfile
from collections.abc import AsyncIterator
from pathlib import Path
from typing import Any

import pytest
import pytest_asyncio

from station.bench.calculation.worker import turn_file
from station.practical import events as e
from station.practical.kinds import read_plan
from station.practical.staff import StaffAct
from tests.records import PLAN_TEXT
from tests.server.live import PLAN, Station, Stream, in_process, served

ALKALI_CM3 = range(0, 44, 4)
CSV = "repeat,volume_cm3,temperature_c\r\n" + "".join(
    f"{repeat},{volume},{20 + 57.0 * 0.4 * min(volume, 22.6) / 4.1 / (25 + volume):.2f}\r\n"
    for repeat in (1, 2)
    for volume in ALKALI_CM3
)
QUERIES = {"/api/samples": {"repeat": 1}}


@pytest_asyncio.fixture
async def station(tmp_path: Path) -> AsyncIterator[Station]:
    """A bench that has results, and whose plan shows them after the students' own reading."""
    async with served(tmp_path, PLAN) as opened:
        await opened.done("begin")
        await opened.sample(20.0)
        await opened.done("finish")
        await opened.done("adopt", label="Bench 4", csv=CSV)
        await opened.watch.calculator.finished()
        assert opened.watch.result is not None
        yield opened


def told(body: bytes) -> str:
    """Return all that a body says; a spreadsheet is a zip of XML, and may lie in another zip."""
    if not body.startswith(b"PK"):
        return body.decode()
    with zipfile.ZipFile(io.BytesIO(body)) as sheets:
        return "\n".join(told(sheets.read(name)) for name in sheets.namelist())


def numbers(result: Any) -> set[str]:
    """Every number of the results that says something, as it would stand in JSON, to six digits."""
    if isinstance(result, dict):
        return set().union(*(numbers(each) for key, each in result.items() if key != "corrected"), set())
    if isinstance(result, list):
        return set().union(*(numbers(each) for each in result), set())
    return {repr(result)[:7]} if isinstance(result, float) and len(repr(result)) > 9 else set()


async def endpoints(station: Station) -> dict[str, str]:
    """Return what every path that can be looked at says."""
    document = (await station.client.get("/api/openapi.json")).json()
    paths = [path for path, methods in document["paths"].items() if "get" in methods and path != "/api/stream"]
    assert len(paths) > 5
    found = {}
    for path in [*paths, "/"]:
        answer = await station.client.get(path, params=QUERIES.get(path))
        assert answer.status_code in (200, 403, 404), path  # 403: for staff, test_everything.py
        found[path] = told(answer.content)
    return found


async def test_nothing_says_a_result_before_it_may_be_seen(station: Station) -> None:
    secret = numbers(station.watch.result)
    assert len(secret) > 10, "the results hold numbers to look for"
    stream = await Stream.opened(station.port)
    said = await endpoints(station)
    for path, values in (
        ("/api/acts", {"act": "note", "text": "late", "key": "1"}),
        ("/api/acts", {"act": "rinsed", "key": "2"}),
        ("/api/staff", {"act": "rename", "name": "Bench"}),
    ):
        said[json.dumps(values)] = (await station.client.post(path, json=values)).text
    await stream.until("view")
    said["stream"] = json.dumps([message.data for message in stream.seen])
    await stream.close()
    for where, text in said.items():
        leaked = [each for each in secret if each in text]
        assert not leaked, f"{where} says {leaked}"
        for name in ("straight_lines", "heat_balance"):
            assert f'"{name}"' not in text.replace('{"$ref"', ""), where


async def test_after_the_own_reading_they_are_there(station: Station) -> None:
    answer = await station.done("own_reading", end_point_cm3=20.0)
    assert answer["state"]["result"]["straight_lines"]["end_point_cm3"] == pytest.approx(22.6, abs=4.0)
    assert (await station.state())["result"] is not None
    assert (await station.state())["results"]["shown"] is True


async def test_staff_show_them_and_withhold_them_again(tmp_path: Path) -> None:
    plan = PLAN.model_copy(update={"results": "when shown"})
    async with served(tmp_path, plan) as opened:
        await opened.done("adopt", label="Bench 4", csv=CSV)
        await opened.watch.calculator.finished()
        assert (await opened.state())["result"] is None
        for shown in (True, False):
            # Who may say so is test_access_matrix.py's.
            await opened.bench.do(StaffAct(act="show_results", shown=shown, key=f"show {shown}"))
            assert ((await opened.state())["result"] is not None) is shown


@pytest.mark.fault("early-results")
async def test_results_of_other_readings_are_gone_at_once(station: Station) -> None:
    """A table of one set must never stand beside the results of another, not even while a fit is under way."""
    await station.done("own_reading", end_point_cm3=20.0)
    weaker = CSV.replace("\r\n2,", "\r\n3,")
    with turn_file("calculation").open("a") as turn:
        fcntl.flock(turn, fcntl.LOCK_EX)  # the fit waits for its turn
        answer = await station.done("adopt", label="Bench 9", csv=weaker)
        assert answer["state"]["result"] is None
        await station.done("own_reading", end_point_cm3=19.0)
        assert (await station.state())["result"] is None, "what was computed before is of the other set"
    await station.watch.calculator.finished()
    assert [each["repeat"] for each in (await station.state())["result"]["repeats"]] == [1, 3]
    assert (await station.state())["result"]["seq"] >= answer["seq"]


@pytest.mark.fault("early-results")
async def test_an_own_reading_before_there_is_data_opens_nothing(tmp_path: Path) -> None:
    """`finish`, `own_reading`, `rinsed` on a fresh bench: results stay closed through the whole practical."""
    async with served(tmp_path, PLAN.model_copy(update={"repeats": 1})) as opened:
        await opened.done("finish")
        for reading in ({}, {"end_point_cm3": 20.0}, {"reason": "we could not"}):
            refused = await opened.act("own_reading", **reading)
            assert (refused.status_code, refused.json()["code"]) == (409, "no_readings")
        await opened.done("rinsed")
        await opened.bench._keep([e.SampleTaken(20.0)])
        for portion, temperature_c in enumerate((21.5, 22.9, 24.1, 23.8, 23.5, 23.2), 1):
            await opened.done("portion_added", portion=portion)
            await opened.bench._keep([e.SampleTaken(temperature_c)])
        await opened.done("finish")
        await opened.watch.calculator.finished()
        secret = numbers(opened.watch.result)
        assert len(secret) > 10
        for where, text in (await endpoints(opened)).items():
            assert not [each for each in secret if each in text], where
        await opened.done("own_reading", end_point_cm3=13.0)
        assert (await opened.state())["result"] is not None
        answer = await opened.done("rinsed")
        assert (answer["state"]["results"]["shown"], answer["state"]["result"]) == (False, None)


async def test_a_set_without_a_turn_is_no_way_to_the_results(tmp_path: Path) -> None:
    async with served(tmp_path, PLAN) as opened:
        await opened.done("adopt", label="Bench 4", csv="repeat,volume_cm3,temperature_c\r\n1,0,20\r\n1,4,21\r\n")
        refused = await opened.act("own_reading", end_point_cm3=4.0)
        assert (refused.status_code, refused.json()["code"]) == (409, "no_turn")
        assert (await opened.state())["results"]["shown"] is False


async def test_what_staff_prepared_is_in_no_reply_and_not_in_the_record(tmp_path: Path) -> None:
    plan = read_plan(PLAN_TEXT.replace("volume_cm3 = 25.0", "volume_cm3 = 25.0\nprepared_mol_dm3 = 0.38125"))
    async with in_process(tmp_path, plan) as station:
        await station.done("begin")
        for path in ("/api/state", "/api/samples?repeat=1"):
            text = (await station.client.get(path)).text
            assert "38125" not in text
            assert "prepared" not in text.replace('"prepared_mol_dm3":null', "")
    assert [each.name for each in tmp_path.iterdir() if b"38125" in each.read_bytes()] == []  # noqa: ASYNC240
