"""Files downloaded in the browser and opened again: CSV parsed, spreadsheet by another library, record re-analysed."""

import csv
import io
import json
import time
from collections.abc import Iterator
from pathlib import Path
from typing import Any

import pytest
from openpyxl import load_workbook
from playwright.sync_api import Page

from station.practical.dataset import Known
from station.practical.kinds import plan_from
from station.practical.readings_text import readings_from_text
from station.practical.replay import with_readings
from station.practical.results import results
from station.record.exchange_in import read_exchange
from tests.conftest import PATIENCE_S
from tests.page.conftest import OpenPage, Station
from tests.page.finished import ALKALI_C, ALKALI_U_C, NOTE, finished


@pytest.fixture(scope="module")
def over(tmp_path_factory: pytest.TempPathFactory) -> Iterator[Station]:
    with finished(tmp_path_factory.mktemp("downloads")) as station:
        yield station


def record(open_page: OpenPage, station: Station, language: str = "en") -> Page:
    page = open_page(station)
    page.goto(f"{station.url}?language={language}#record")
    page.wait_for_selector(".downloads")
    return page


def downloaded(page: Page, words: str) -> tuple[str, bytes]:
    """Press the link with these words; return the file's name and content."""
    more = page.locator(".downloads details:not([open]) summary")
    if more.count():
        more.click()
    with page.expect_download() as waiting:
        page.locator(".downloads").get_by_role("link", name=words, exact=True).click()
    return waiting.value.suggested_filename, Path(waiting.value.path()).read_bytes()


def computed_after(station: Station, seq: int) -> dict[str, Any]:
    """What the station says once its results are of what happened up to this event."""
    until = time.monotonic() + 5 * PATIENCE_S
    while time.monotonic() < until:
        state = station.state()
        if state["result"] is not None and state["result"]["seq"] >= seq:
            return state
        time.sleep(0.2)
    pytest.fail("the results never came")


def test_no_file_has_a_result_before_the_own_reading(over: Station, open_page: OpenPage) -> None:
    _, content = downloaded(record(open_page, over), "Everything as a spreadsheet .xlsx")
    assert "Results" not in load_workbook(io.BytesIO(content)).sheetnames


def test_the_readings_are_those_on_the_page(over: Station, open_page: OpenPage) -> None:
    name, content = downloaded(record(open_page, over), "Readings .csv")
    assert name.startswith("bench-5-20")
    assert name.endswith("-readings.csv")
    repeats = readings_from_text(content.decode())
    shown = over.state()["repeats"]
    for one, repeat in zip(repeats, shown, strict=True):
        there = [
            (reading["volume_cm3"], reading["temperature_c"]) for reading in repeat["readings"] if not reading["unsure"]
        ]
        assert [(row.volume_cm3, row.temperature_c) for row in one.readings] == [
            pytest.approx(each, abs=5e-5) for each in there
        ]


def test_for_a_german_spreadsheet_there_are_commas(over: Station, open_page: OpenPage) -> None:
    page = record(open_page, over, "de")
    _, dot = downloaded(page, "Messwerte .csv")
    _, comma = downloaded(page, "Messwerte für Tabellenprogramme mit Dezimalkomma .csv")
    rows = list(csv.reader(io.StringIO(comma.decode()), delimiter=";"))
    assert rows[0] == ["repeat", "volume_cm3", "temperature_c"]
    assert [[cell.replace(",", ".") for cell in row] for row in rows] == list(csv.reader(io.StringIO(dot.decode())))
    _, samples = downloaded(page, "Alle Temperaturen für Tabellenprogramme mit Dezimalkomma .csv")
    assert samples.decode().startswith("repeat;time_s;temperature_c;portion_cm3")


def test_first_stand_a_spreadsheet_one_table_and_one_of_everything(over: Station, open_page: OpenPage) -> None:
    page = record(open_page, over)
    seen = page.locator(".downloads li:visible").all_inner_texts()
    assert [" ".join(each.split()) for each in seen] == [
        "Everything as a spreadsheet .xlsx",
        "Table of readings .csv",
        "All samples .csv",
    ]
    name, content = downloaded(page, "Table of readings .csv")
    assert name.endswith("-table.csv")
    head, *rows = csv.reader(io.StringIO(content.decode()))
    assert head == ["volume_cm3", "repeat_1_c", "repeat_2_c", "repeat_3_c", "mean_c"]
    state = over.state()
    assert [[float(cell) for cell in row] for row in rows] == [
        pytest.approx(
            [
                mean["volume_cm3"],
                *(repeat["readings"][index]["temperature_c"] for repeat in state["repeats"]),
                mean["temperature_c"],
            ],
            abs=5e-3,
        )
        for index, mean in enumerate(state["mean"])
    ]


def test_the_journal_is_lines_of_json_from_the_plan_on(over: Station, open_page: OpenPage) -> None:
    name, content = downloaded(record(open_page, over), "Everything that happened, for programs .jsonl")
    assert name.endswith("-journal.jsonl")
    events: list[dict[str, Any]] = [json.loads(line) for line in content.decode().splitlines()]
    assert events[0]["kind"] == "plan_chosen"
    assert [event["seq"] for event in events] == list(range(events[0]["seq"], events[-1]["seq"] + 1))
    assert NOTE in [event["body"].get("text") for event in events if event["kind"] == "note_written"]
    assert len([event for event in events if event["kind"] == "sample_taken"]) > 300


def test_the_files_analysed_again_give_the_results_of_the_station(over: Station, open_page: OpenPage) -> None:
    """The record gives the heat balance, the readings the straight lines. A record has no column for a doubt, which
    is therefore taken back; and readings that are put down anew from it differ a little, since at fifty times
    true speed samples come whole seconds after they were taken."""
    sure = over.act(act="portion_sure", repeat=2, portion=3).raise_for_status().json()["seq"]
    over.act(act="own_reading", end_point_cm3=24.0)
    live = computed_after(over, sure)
    page = record(open_page, over)
    samples, readings = (downloaded(page, words)[1].decode() for words in ("All samples .csv", "Readings .csv"))
    plan = plan_from({**live["plan"], "title": None})
    recorded = with_readings(plan, read_exchange(samples, "record.csv"))
    by_record = results(plan, recorded, Known(ALKALI_C, ALKALI_U_C, alkali_typed=True))["mean"]
    by_readings = results(plan, readings_from_text(readings))["mean"]
    lines, heat = live["result"]["straight_lines"], live["result"]["heat_balance"]
    assert by_record["heat_balance"]["end_point_cm3"] == pytest.approx(heat["end_point_cm3"], abs=1e-3)
    assert by_record["heat_balance"]["u_end_point_cm3"] == pytest.approx(heat["u_end_point_cm3"], rel=1e-2)
    assert by_readings["straight_lines"]["end_point_cm3"] == pytest.approx(lines["end_point_cm3"], abs=2e-3)
    apart_cm3 = abs(by_record["straight_lines"]["end_point_cm3"] - lines["end_point_cm3"])
    assert apart_cm3 < lines["u_end_point_cm3"]


def test_the_spreadsheet_has_everything_as_numbers_and_text(over: Station, open_page: OpenPage) -> None:
    over.act(act="own_reading", end_point_cm3=24.0)
    live = over.final_state()
    name, content = downloaded(record(open_page, over), "Everything as a spreadsheet .xlsx")
    assert name.endswith("-record.xlsx")
    book = load_workbook(io.BytesIO(content))
    assert book.sheetnames == [
        "Table",
        "Plan",
        "Readings",
        "Probe",
        "Mean",
        "Samples",
        "Portions",
        "Results",
        "Steps",
        "Notes",
    ]
    readings = list(book["Readings"].iter_rows(min_row=2, values_only=True))
    assert [row[3] for row in readings] == [
        pytest.approx(reading["temperature_c"]) for repeat in live["repeats"] for reading in repeat["readings"]
    ]
    assert book["Samples"].max_row > 300
    found = {(row[0], row[1], row[2]): row for row in book["Results"].iter_rows(min_row=2, values_only=True)}
    for method, key in (("straight lines", "straight_lines"), ("heat balance", "heat_balance")):
        row, computed = found["mean", method, "end-point"], live["result"][key]
        numbers = [computed["end_point_cm3"], computed["u_end_point_cm3"], *computed["interval_95_cm3"]]
        assert row[3:7] == pytest.approx(numbers)
    notes = [cell for row in book["Notes"].iter_rows() for cell in row if cell.value == NOTE]
    assert [cell.data_type for cell in notes] == ["s"], "text that begins with = stays text"
