"""Downloads from a bench at work: what they hold, what they are called, and that sampling waits for none of them."""

import asyncio
import io
import json
import sys
import threading
from collections.abc import AsyncIterator
from pathlib import Path
from typing import Any

import pytest
import pytest_asyncio
from openpyxl import load_workbook
from openpyxl.workbook import Workbook

from station.practical import events as e
from station.practical.kinds.portions.plan import PortionsPlan
from station.practical.readings_text import readings_from_text
from station.record.exchange_in import read_exchange
from station.record.journal import Journal, Moment, read_events
from station.record.spreadsheet.file import spreadsheet
from station.server.bench.downloads import file_name
from tests.conftest import PATIENCE_S
from tests.server.doors import GIVEN, SECRETS
from tests.server.live import PLAN, Station, here, in_process, portions_plan

FILES = ("record.csv", "readings.csv", "record.xlsx", "journal.jsonl")


@pytest_asyncio.fixture
async def station(tmp_path: Path) -> AsyncIterator[Station]:
    async with in_process(tmp_path) as opened:
        yield opened


async def two_portions(station: Station) -> None:
    """A repeat that is finished with two portions, each pressed before its reading had settled."""
    await station.done("begin")
    for celsius in (20.0, 20.25, 20.5):
        await station.sample(celsius)
    for portion in (1, 2):
        await station.done("portion_added", portion=portion)
        await station.sample(20.0 + portion)
    await station.done("finish")


def opened(content: bytes) -> Workbook:
    return load_workbook(io.BytesIO(content))


@pytest.mark.parametrize(
    ("path", "media_type"),
    [
        ("record.csv", "text/csv; charset=utf-8"),
        ("readings.csv", "text/csv; charset=utf-8"),
        ("record.xlsx", "application/vnd.openxmlformats-officedocument.spreadsheetml.sheet"),
        ("journal.jsonl", "application/jsonl"),
    ],
)
async def test_a_download_is_a_file_with_an_ascii_name(station: Station, path: str, media_type: str) -> None:
    answer = await station.client.get(f"/api/{path}")
    assert answer.status_code == 200
    assert answer.headers["content-type"] == media_type
    assert answer.headers["cache-control"] == "no-store"
    head, _, name = answer.headers["content-disposition"].partition("=")
    assert head == "attachment; filename"
    assert name.isascii()
    assert name.startswith('"bench-7-20')
    assert name.endswith(f'-{path}"')


@pytest.mark.parametrize(
    ("bench", "begun", "name"),
    [
        ("Bench 7", "2026-09-01", "bench-7-2026-09-01-record.csv"),
        ("Prüfstand №5: Säure/Maß", None, "pruefstand-no5-saeure-mass-record.csv"),
        ('"; filename=evil.exe\r\nX: y', None, "filename-evil-exe-x-y-record.csv"),
        ("../../etc/passwd", None, "etc-passwd-record.csv"),
        ("実験台", None, "bench-record.csv"),
        ("=cmd()|'!A1" * 9, None, "cmd-a1-cmd-a1-cmd-a1-cmd-a1-cmd-a1-cmd-record.csv"),
    ],
)
def test_a_file_is_named_after_bench_and_day(bench: str, begun: str | None, name: str) -> None:
    assert file_name(bench, begun, "record.csv") == name


async def test_the_name_has_no_date_when_the_clock_was_never_set(tmp_path: Path) -> None:
    journal = Journal(tmp_path)
    chosen = e.PlanChosen(PLAN.model_dump(mode="json"))
    journal.append([(Moment("b", 0.0, 0.0, "1970-01-01T00:00:07+00:00", "none"), chosen)]).result(timeout=PATIENCE_S)
    journal.close()
    async with in_process(tmp_path) as station:
        answer = await station.client.get("/api/record.csv")
    assert answer.headers["content-disposition"] == 'attachment; filename="bench-7-record.csv"'


async def test_record_and_readings_are_what_was_measured(station: Station) -> None:
    await two_portions(station)
    (recorded,) = read_exchange((await station.client.get("/api/record.csv")).text, "record.csv")
    assert [temperature_c for _, temperature_c in recorded.samples] == [20.0, 20.25, 20.5, 21.0, 22.0]
    assert [volume_cm3 for _, volume_cm3, _ in recorded.pours] == [4.0, 4.0]
    (read,) = readings_from_text((await station.client.get("/api/readings.csv")).text)
    assert [(row.volume_cm3, row.temperature_c) for row in read.readings] == [(0, 20.5), (4, 21.0), (8, 22.0)]


@pytest.mark.parametrize("path", ["record.csv", "readings.csv"])
async def test_a_comma_for_spreadsheets_is_asked_for(station: Station, path: str) -> None:
    await two_portions(station)
    dot = await station.client.get(f"/api/{path}", params={"decimal": "dot"})
    comma = await station.client.get(f"/api/{path}", params={"decimal": "comma"})
    assert comma.text.replace(",", ".").replace(";", ",") == dot.text
    assert ",5000" in comma.text
    answer = await station.client.get(f"/api/{path}", params={"decimal": "point"})
    assert answer.status_code == 422
    assert answer.headers["content-type"] == "application/problem+json"


async def test_the_journal_is_every_event_of_the_newest_practical(tmp_path: Path) -> None:
    async with in_process(tmp_path, access=here(SECRETS)) as station:
        await station.client.post("/api/session", json=GIVEN["teacher"])
        await two_portions(station)
        plan = {**portions_plan(count=8).model_dump(mode="json"), "results": "at once"}
        answer = await station.client.post("/api/staff", json={"act": "choose_plan", "plan": plan})
        assert answer.status_code == 200, answer.text
        await station.done("begin")
        await station.sample(19.75)
        await station.done("note", text='=1+1, –3 "ü"')
        text = (await station.client.get("/api/journal.jsonl")).text
        short = (await station.client.get("/api/journal.jsonl", params={"samples": "false"})).text
    assert short.splitlines() == [line for line in text.splitlines() if json.loads(line)["kind"] != "sample_taken"]
    lines = [json.loads(line) for line in text.splitlines()]
    kept = list(read_events(tmp_path))[-4:]
    assert [line["kind"] for line in lines] == ["plan_chosen", "repeat_begun", "sample_taken", "note_written"]
    assert [line["seq"] for line in lines] == [each.seq for each in kept]
    assert [line["body"] for line in lines] == [json.loads(json.dumps(each.event.to_body())) for each in kept]
    assert {frozenset(line) for line in lines} == {
        frozenset({"seq", "boot", "time_s", "wall", "clock", "kind", "body"})
    }


async def test_no_download_tells_what_staff_made_up(tmp_path: Path) -> None:
    assert isinstance(PLAN, PortionsPlan)
    secret = PLAN.acid.model_copy(update={"prepared_mol_dm3": 0.43721})
    async with in_process(tmp_path, PLAN.model_copy(update={"acid": secret}), here(SECRETS)) as station:
        await station.client.post("/api/session", json=GIVEN["teacher"])
        await two_portions(station)
        plan = {**PLAN.model_dump(mode="json"), "acid": secret.model_dump(mode="json")}
        assert (await station.client.post("/api/staff", json={"act": "choose_plan", "plan": plan})).status_code == 200
        for path in FILES:
            content = (await station.client.get(f"/api/{path}")).content
            if path == "record.xlsx":
                cells = [cell for sheet in opened(content) for row in sheet.iter_rows(values_only=True) for cell in row]
                content = repr(cells).encode()
            assert b"43721" not in content, path


async def test_results_are_in_the_spreadsheet_once_they_are_shown(station: Station) -> None:
    await two_portions(station)
    await station.watch.calculator.finished()
    assert station.watch.result is not None
    before = opened((await station.client.get("/api/record.xlsx")).content)
    assert "Results" not in before.sheetnames
    assert "Steps" not in before.sheetnames
    await station.done("own_reading", end_point_cm3=26.5, reason="the bell rang", sure=True)
    after = opened((await station.client.get("/api/record.xlsx")).content)
    rows = list(after["Results"].iter_rows(values_only=True))
    assert rows[1][:5] == ("own lines", None, "end-point", 26.5, None)
    why = station.watch.result["refused"]["straight_lines"]
    assert ("mean", "straight lines", "no result", None, None, None, None, None, why) in rows


@pytest.mark.fault("heavy-work")
async def test_sampling_goes_on_while_a_long_record_is_made(tmp_path: Path) -> None:
    """Hours of a practical in one repeat: the loop must turn all the time."""
    long_record(tmp_path, samples=8000)
    async with in_process(tmp_path) as station:
        for path in ("record.xlsx", "journal.jsonl"):
            before = len(station.bench.state.repeats[0].samples)
            asked = asyncio.create_task(station.client.get(f"/api/{path}"))
            read = 0
            while not asked.done():
                await station.sample(20.0)
                read += 1
            assert (await asked).status_code == 200
            assert len(station.bench.state.repeats[0].samples) - before == read
            assert read >= 3, path


async def test_one_file_is_made_at_a_time(station: Station, monkeypatch: pytest.MonkeyPatch) -> None:
    """Thirty groups that press at once must not need thirty times the memory."""
    making, most, lock = [0], [0], threading.Lock()
    real = spreadsheet

    def counted(sheets: Any) -> bytes:
        with lock:
            making[0] += 1
            most[0] = max(most[0], making[0])
        content = real(sheets)
        with lock:
            making[0] -= 1
        return content

    monkeypatch.setattr("station.server.bench.downloads.spreadsheet", counted)
    answers = await asyncio.gather(*(station.client.get("/api/record.xlsx") for _ in range(5)))
    assert [answer.status_code for answer in answers] == [200] * 5
    assert most == [1]


async def test_a_file_that_cannot_be_made_is_a_problem_in_words(
    station: Station, monkeypatch: pytest.MonkeyPatch
) -> None:
    def full(_: Any) -> bytes:
        raise OSError(28, "No space left on device")

    monkeypatch.setattr("station.server.bench.downloads.spreadsheet", full)
    answer = await station.client.get("/api/record.xlsx")
    assert answer.status_code == 503
    assert answer.headers["content-type"] == "application/problem+json"
    assert "No space left on device" in answer.json()["detail"]


async def test_the_library_is_loaded_only_when_a_spreadsheet_is_asked_for() -> None:
    code = "import sys, station.server.bench.app; print('xlsxwriter' in sys.modules)"
    process = await asyncio.create_subprocess_exec(sys.executable, "-c", code, stdout=asyncio.subprocess.PIPE)
    out, _ = await process.communicate()
    assert out.strip() == b"False"


def long_record(folder: Path, samples: int) -> None:
    """A repeat under way with so many samples."""
    moments = [
        (Moment("b", at_s, at_s, "2026-09-01T09:00:00+00:00", "none"), event)
        for at_s, event in [
            (0.0, e.PlanChosen(PLAN.model_dump(mode="json"))),
            (0.5, e.RepeatBegun(1)),
            *((float(number), e.SampleTaken(20.0 + number % 16 / 16)) for number in range(1, samples)),
        ]
    ]
    journal = Journal(folder)
    journal.append(moments).result(timeout=PATIENCE_S)
    journal.close()
