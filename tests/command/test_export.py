"""`station export`: the newest practical as each kind of file, and what it says when that cannot be."""

import json
from pathlib import Path

import pytest
from openpyxl import load_workbook

from station.command.main import main
from station.command.terminal import EXIT_RECORD
from station.practical.readings_text import readings_from_text
from station.record.exchange import record_csv
from station.record.journal import Journal, Moment
from tests.conftest import PATIENCE_S
from tests.practical.walk import Walk


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    made = tmp_path_factory.mktemp("export") / "record"
    walk = Walk(repeats=1)
    walk.to_pour()
    walk.repeat()
    journal = Journal(made)
    moments = [
        (Moment("b", each.time_s, each.time_s, "2026-09-01T09:00:00+00:00", "none"), each.event)
        for each in walk.happened
    ]
    journal.append(moments).result(timeout=PATIENCE_S)
    journal.close()
    return made


def test_the_record_is_what_comes_without_asking(
    folder: Path, capsys: pytest.CaptureFixture[str], tmp_path: Path
) -> None:
    assert main(["export", "--record", str(folder)]) == 0
    assert capsys.readouterr().out == record_csv(folder)
    assert main(["export", "--record", str(folder), "--out", str(tmp_path / "record.csv")]) == 0
    assert (tmp_path / "record.csv").read_bytes() == record_csv(folder).encode()


def test_readings_can_be_read_again(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["export", "--record", str(folder), "--readings"]) == 0
    (repeat,) = readings_from_text(capsys.readouterr().out)
    assert [row.volume_cm3 for row in repeat.readings] == [0, 3, 6, 9, 12]


def test_the_journal_is_lines_of_json(folder: Path, capsys: pytest.CaptureFixture[str]) -> None:
    assert main(["export", "--record", str(folder), "--jsonl"]) == 0
    kinds = [json.loads(line)["kind"] for line in capsys.readouterr().out.splitlines()]
    assert (kinds[0], kinds[-1]) == ("plan_chosen", "practical_ended")


def test_the_spreadsheet_has_the_results(folder: Path, tmp_path: Path) -> None:
    assert main(["export", "--record", str(folder), "--xlsx", "--out", str(tmp_path / "record.xlsx")]) == 0
    book = load_workbook(tmp_path / "record.xlsx")
    sheets = ["Table", "Plan", "Readings", "Probe", "Mean", "Samples", "Portions", "Results"]
    assert book.sheetnames[: len(sheets)] == sheets
    assert "straight lines" in [row[1] for row in book["Results"].iter_rows(values_only=True)]


def test_the_spreadsheet_is_in_the_language_of_the_settings(
    folder: Path, tmp_path: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    monkeypatch.chdir(tmp_path)
    Path("station.toml").write_text('page.language = "de"\n', encoding="utf-8")
    assert main(["export", "--record", str(folder), "--xlsx", "--out", "one.xlsx"]) == 0
    assert main(["export", "--record", str(folder), "--all", "--out", "all"]) == 0
    for file in (Path("one.xlsx"), *Path("all").glob("*/record.xlsx")):
        assert "Ergebnisse" in load_workbook(file).sheetnames
    assert len(list(Path("all").glob("*/record.xlsx"))) == 1


def test_what_cannot_be_is_one_line(folder: Path, capsys: pytest.CaptureFixture[str], tmp_path: Path) -> None:
    assert main(["export", "--record", str(folder), "--xlsx"]) == 2
    assert "--out FILE.xlsx" in capsys.readouterr().err
    assert main(["export", "--record", str(tmp_path / "no"), "--jsonl"]) == EXIT_RECORD
    assert "no record here" in capsys.readouterr().err
    assert main(["export", "--record", str(folder), "--out", str(tmp_path / "no" / "x.csv")]) == 2
    assert "cannot be written" in capsys.readouterr().err
