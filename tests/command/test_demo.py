"""The contract of `station demo`: JSON lines that end with the result, within its bounds; words for people."""

import csv
import io
import json
import math
import os
import signal
import subprocess
from pathlib import Path
from typing import Any

import httpx
import pytest

from station.command.tell import WordsTeller
from tests.command.child import RUN
from tests.conftest import PATIENCE_S


@pytest.fixture
def home(tmp_path: Path) -> dict[str, str]:
    """The environment of somebody with an empty home, and temporary files of our own."""
    return {"PATH": os.environ["PATH"], "HOME": str(tmp_path), "TMPDIR": str(tmp_path), "LANG": "C.UTF-8"}


def demo(home: dict[str, str], *arguments: str) -> "subprocess.Popen[str]":
    command = [*RUN, "demo", "--port", "0", *arguments]
    return subprocess.Popen(
        command, stdout=subprocess.PIPE, stderr=subprocess.PIPE, text=True, env=home, cwd=home["HOME"]
    )


@pytest.fixture(scope="module")
def told(tmp_path_factory: pytest.TempPathFactory) -> list[dict[str, Any]]:
    """What a whole demo told."""
    folder = tmp_path_factory.mktemp("demo")
    home = {"PATH": os.environ["PATH"], "HOME": str(folder), "TMPDIR": str(folder)}
    with demo(home, "--once", "--json", "--speed", "60") as process:
        out, err = process.communicate(timeout=5 * PATIENCE_S)
    assert (process.returncode, err) == (0, "")
    assert left_in(folder) == []
    return [json.loads(line) for line in out.splitlines()]


def left_in(folder: Path) -> list[str]:
    """Return what a demo left behind in home and temporary folder, but for the lock that all stations share."""
    return [each.name for each in folder.iterdir() if not each.match("benchwarm-calculation-*.lock")]


def of_kind(told: list[dict[str, Any]], kind: str) -> list[dict[str, Any]]:
    return [line for line in told if line["kind"] == kind]


def test_the_first_line_has_the_address_and_the_last_ones_the_results(told: list[dict[str, Any]]) -> None:
    assert told[0]["kind"] == "serving"
    assert told[0]["url"].startswith("http://127.0.0.1:")
    results = of_kind(told, "result")
    # The probe goes on while the results are computed; so fast, and beside a busy machine, a sample may come too late.
    others = [line for line in told if not line["kind"].startswith("probe_")]
    assert others[-len(results) :] == results
    assert results[0]["method"] == "straight_lines"


def test_the_straight_lines_result_is_as_the_contract_says(told: list[dict[str, Any]]) -> None:
    (line,) = [each for each in of_kind(told, "result") if each["method"] == "straight_lines"]
    assert {"kind", "method", "end_point_cm3", "u_end_point_cm3", "interval_95_cm3", "repeats"} <= set(line)
    low, high = line["interval_95_cm3"]
    assert low < line["end_point_cm3"] < high
    assert 0 < line["u_end_point_cm3"] < 5
    assert [each["repeat"] for each in line["repeats"]] == [1, 2]
    assert all(math.isfinite(each["end_point_cm3"]) for each in line["repeats"])
    # 25 cm³ of 0.36 mol/dm³ acid with 0.40 mol/dm³ alkali: 22.5 cm³; straight lines cross early.
    assert 16 < line["end_point_cm3"] < 28


def test_the_practical_is_the_one_of_the_scenario(told: list[dict[str, Any]]) -> None:
    assert [each["repeat"] for each in of_kind(told, "repeat_begun")] == [1, 2]
    assert [each["repeat"] for each in of_kind(told, "repeat_ended")] == [1, 2]
    assert len(of_kind(told, "practical_ended")) == 1
    added = [(each["repeat"], each["portion"]) for each in of_kind(told, "portion_added")]
    assert sorted(set(added)) == [(repeat, portion) for repeat in (1, 2) for portion in range(1, 14)]
    assert {each["volume_cm3"] for each in of_kind(told, "portion_added")} == {3.0}
    assert of_kind(told, "practical_ended")[0]["time_s"] < 1560  # one minute for each of 26 portions


def test_every_event_but_the_samples_is_told_in_order(told: list[dict[str, Any]]) -> None:
    events = [each for each in told if "seq" in each and each["kind"] != "result"]
    assert [each["seq"] for each in events] == sorted({each["seq"] for each in events})
    assert not of_kind(told, "sample_taken")


def test_the_page_and_the_record_are_there_while_it_runs_and_a_signal_ends_it(
    home: dict[str, str], tmp_path: Path
) -> None:
    process = demo(home, "--json", "--speed", "30")
    try:
        assert process.stdout is not None
        serving = json.loads(process.stdout.readline())
        for line in process.stdout:
            if json.loads(line)["kind"] == "reading_settled":
                break
        state = httpx.get(serving["url"] + "api/state", timeout=PATIENCE_S).json()
        assert state["bench"]["virtual"] is True
        assert state["speed"] == 30
        assert httpx.get(serving["url"], timeout=PATIENCE_S).text.startswith("<!doctype html>")
        record = subprocess.run(
            [*RUN, "export", "--record", serving["record"]], capture_output=True, text=True, check=True, env=home
        )
        rows = list(csv.reader(io.StringIO(record.stdout)))
        assert rows[0] == ["repeat", "time_s", "temperature_c", "portion_cm3"]
        assert len(rows) > 10
        process.send_signal(signal.SIGTERM)
        _, err = process.communicate(timeout=PATIENCE_S)
        assert (process.returncode, err) == (0, "")
    finally:
        process.kill()
        process.communicate()
    assert left_in(tmp_path) == []


def test_without_json_a_person_reads_what_happens(home: dict[str, str]) -> None:
    process = demo(home, "--speed", "100")
    assert process.stdout is not None
    out = ""
    for line in process.stdout:
        out += line
        if "portion 2 is in" in line:
            process.send_signal(signal.SIGTERM)
    assert (process.communicate(timeout=PATIENCE_S)[1], process.returncode) == ("", 0)
    for words in ("Open http://127.0.0.1:", "repeat 1: acid in the cup", "Add portion 1: 3 cm³ of", " °C  ·"):
        assert words in out
    assert "{" not in out


def test_a_person_reads_the_end_point_with_its_uncertainty_or_why_there_is_none(
    tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    lines = {"end_point_cm3": 24.123, "u_end_point_cm3": 0.456, "interval_95_cm3": [23.1, 25.3]}
    teller = WordsTeller.__new__(WordsTeller)  # without a bench: the result needs none
    teller.result({"straight_lines": lines, "refused": {}, "repeats": []})
    assert "straight lines: 24.12 ± 0.46 cm³ (95 %: 23.10 to 25.30 cm³)" in capsys.readouterr().out
    teller.result({"straight_lines": None, "refused": {"straight_lines": "Too few points."}, "repeats": []})
    assert "straight lines: no end-point. Too few points." in capsys.readouterr().out


@pytest.mark.parametrize("lines", [1, 3])
def test_whoever_stops_reading_ends_it_without_a_fault(home: dict[str, str], lines: int) -> None:
    process = demo(home, "--json", "--speed", "200")
    assert process.stdout is not None
    assert process.stderr is not None
    for _ in range(lines):
        process.stdout.readline()
    process.stdout.close()
    with process.stderr:
        assert process.stderr.read() == ""
    assert process.wait(timeout=PATIENCE_S) == 0
