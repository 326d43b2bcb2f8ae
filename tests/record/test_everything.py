"""Every practical of a record leaves it whole, as a zip or as folders, and nothing half done is left behind."""

import io
import json
import time
import zipfile
from pathlib import Path

import pytest
from hypothesis import given, settings
from hypothesis import strategies as st
from openpyxl import load_workbook

from station.command.main import main
from station.command.terminal import EXIT_RECORD
from station.practical import events as e
from station.practical.readings_text import readings_from_text
from station.record.everything import Zipped, practicals
from station.record.journal import Journal, Moment, read_events
from tests.conftest import PATIENCE_S
from tests.practical.walk import Walk

FILES = {"record.csv", "readings.csv", "record.xlsx", "journal.jsonl"}


@pytest.fixture(scope="module")
def folder(tmp_path_factory: pytest.TempPathFactory) -> Path:
    """Two practicals; at the first the clock knew no day, and one of the station's own events stands before it."""
    made = tmp_path_factory.mktemp("everything") / "record"
    walk = Walk(repeats=1)
    walk.to_pour()
    walk.repeat()
    journal = Journal(made)
    happened = [e.StationStarted("0", "hand", None, "none"), *(each.event for each in walk.happened)]
    for wall in ("1970-01-01T00:10:00+00:00", "2026-09-01T09:00:00+00:00"):
        stamped = [(Moment("b", at, at, wall, "none"), event) for at, event in enumerate(happened)]
        journal.append(stamped).result(timeout=PATIENCE_S)
    journal.close()
    return made


def test_all_practicals_are_in_the_zip(folder: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    out = tmp_path / "all.zip"
    assert main(["export", "--all", "--record", str(folder), "--out", str(out)]) == 0
    assert capsys.readouterr().out == f"{out}: 2 practicals.\n"
    with zipfile.ZipFile(out) as zipped:
        assert zipped.testzip() is None
        assert set(zipped.namelist()) == {f"{at}/{name}" for at in ("0001", "0002-2026-09-01") for name in FILES}
        for at in ("0001", "0002-2026-09-01"):
            (repeat,) = readings_from_text(zipped.read(f"{at}/readings.csv").decode())
            assert len(repeat.readings) == 5
            book = load_workbook(io.BytesIO(zipped.read(f"{at}/record.xlsx")))
            assert "Results" in book.sheetnames
        lines = [json.loads(line) for at in ("0001", "0002-2026-09-01") for line in zipped.open(f"{at}/journal.jsonl")]
    kept = [each.seq for each in read_events(folder)]
    assert [each["seq"] for each in lines] == kept[1:], "all but what was before the first practical"
    assert [each.name for each in tmp_path.iterdir()] == ["all.zip"]


def test_the_same_as_new_folders(folder: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    command = ["export", "--all", "--record", str(folder), "--out", str(tmp_path / "all")]
    assert main(command) == 0
    assert {each.name for each in (tmp_path / "all" / "0001").iterdir()} == FILES
    assert main(command) == 2
    assert "is there already" in capsys.readouterr().err


def test_what_cannot_be_is_one_line_and_leaves_nothing(
    folder: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]
) -> None:
    assert main(["export", "--all", "--record", str(folder)]) == 2
    assert "--out FILE.zip" in capsys.readouterr().err
    assert main(["export", "--all", "--record", str(tmp_path), "--out", str(tmp_path / "x.zip")]) == EXIT_RECORD
    assert main(["export", "--all", "--record", str(folder), "--out", str(tmp_path / "no" / "x.zip")]) == 2
    assert "cannot be written" in capsys.readouterr().err
    assert list(tmp_path.iterdir()) == []


def test_a_record_without_a_practical_gives_an_empty_zip(tmp_path: Path) -> None:
    Journal(tmp_path / "record").close()
    assert practicals(tmp_path / "record") == []
    assert main(["export", "--all", "--record", str(tmp_path / "record"), "--out", str(tmp_path / "x.zip")]) == 0
    assert zipfile.ZipFile(tmp_path / "x.zip").namelist() == []


@settings(max_examples=40, deadline=None)
@given(st.dictionaries(st.text("abc/.whlxsx", min_size=1, max_size=12), st.lists(st.binary(max_size=300), max_size=4)))
def test_what_is_zipped_while_it_is_sent_can_be_unzipped(files: dict[str, list[bytes]]) -> None:
    zipped = Zipped()
    sent = b"".join(piece for name, pieces in files.items() for piece in zipped.file(name, pieces)) + zipped.end()
    with zipfile.ZipFile(io.BytesIO(sent)) as read:
        assert read.testzip() is None
        assert {each: read.read(each) for each in read.namelist()} == {
            name: b"".join(pieces) for name, pieces in files.items()
        }


def test_a_clock_that_was_never_set_makes_a_zip_all_the_same(monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr(time, "localtime", lambda: time.gmtime(0))
    zipped = Zipped()
    assert list(zipped.file("a", [b"x"])) and zipped.end()


def test_a_zip_that_nobody_takes_to_its_end_says_nothing() -> None:
    """Its client went: a line on standard error for each would be for anybody to provoke."""
    zipped = Zipped()
    pieces = zipped.file("a", [b"x", b"y"])
    next(pieces)
    zipped._zip.__del__()
    assert list(pieces)
