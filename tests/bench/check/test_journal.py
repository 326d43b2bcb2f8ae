"""The record, sound and damaged, with real SQLite files."""

import json
import os
import sqlite3
import subprocess
from pathlib import Path

import pytest

from station.bench.check.storage import journal
from station.bench.clock import Clock
from station.practical import events as e
from station.record.journal import FILE_NAME, LOCK_NAME, Journal
from tests.bench.check.machine import Machine


@pytest.fixture
def record(machine: Machine) -> Path:
    folder = machine.root / "record"
    written(folder)
    return folder


def written(folder: Path, count: int = 400) -> None:
    kept, clock = Journal(folder), Clock.started()
    kept.append([(clock.moment(float(at_s)), e.SampleTaken(21.0 + at_s % 5 / 16)) for at_s in range(count)]).result()
    kept.close()


def test_no_record_yet_is_green(machine: Machine) -> None:
    assert journal(machine.kit()).colour == "green"


def test_a_sound_record_is_green_and_left_as_it_was(machine: Machine, record: Path) -> None:
    """SQLite puts two files of its own beside it, also for a reader; what is to be written from them is empty."""
    before = (record / FILE_NAME).read_bytes()
    found = journal(machine.kit())
    assert (found.colour, found.values["events"], found.values["first_broken"]) == ("green", 400, None)
    assert (record / FILE_NAME).read_bytes() == before
    assert (record / f"{FILE_NAME}-wal").read_bytes() == b""
    written(record, 1)  # and a station goes on
    assert journal(machine.kit()).values["events"] == 401


def test_a_record_at_work_is_looked_through_beside_the_station(machine: Machine, record: Path) -> None:
    at_work, clock = Journal(record), Clock.started()
    at_work.append([(clock.moment(500.0), e.SampleTaken(21.0))]).result()
    found = journal(machine.kit())
    assert (found.colour, found.values["events"]) == ("green", 401)
    at_work.append([(clock.moment(501.0), e.SampleTaken(21.0))]).result()
    at_work.close()


def test_a_changed_event_is_named(machine: Machine, record: Path) -> None:
    """SQLite's own check is content with it; the chain of digests is not."""
    connection = sqlite3.connect(record / FILE_NAME)
    connection.execute("DROP TRIGGER events_stay")
    connection.execute("UPDATE events SET time_s = time_s + 1 WHERE seq = 123")
    connection.commit()
    connection.close()
    found = journal(machine.kit())
    assert (found.colour, found.values["first_broken"]) == ("red", 123)
    assert "event 123 is not as it was written" in found.text
    assert "keep the old folder" in found.remedy


@pytest.mark.parametrize("spoilt", [slice(0, 4096), slice(4096, 8192), slice(8192, 16384)])
def test_a_page_of_zeros_is_red(machine: Machine, record: Path, spoilt: slice) -> None:
    """What a worn card gives: the head, or pages of the tables."""
    content = bytearray((record / FILE_NAME).read_bytes())
    content[spoilt] = bytes(spoilt.stop - spoilt.start)
    (record / FILE_NAME).write_bytes(content)
    found = journal(machine.kit())
    assert found.colour == "red"
    assert "the record is damaged" in found.text


def test_a_file_that_was_cut_off_is_red(machine: Machine, record: Path) -> None:
    os.truncate(record / FILE_NAME, (record / FILE_NAME).stat().st_size // 2)
    assert journal(machine.kit()).colour == "red"


def test_a_file_of_something_else_is_red(machine: Machine) -> None:
    machine.write(f"record/{FILE_NAME}", "spilt tea, and no database at all\n" * 200)
    assert journal(machine.kit()).colour == "red"


def test_a_large_record_is_not_waited_for(machine: Machine, record: Path) -> None:
    found = journal(machine.kit(), within_s=0.001)
    assert found.colour == "unknown"
    assert "could not be looked through" in found.text


def test_a_chain_that_was_not_followed_to_its_end_says_so(
    machine: Machine, record: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    first_line = b'{"quick_check": ["ok"], "events": 400}\n'

    def late(*_: object, **__: object) -> None:
        raise subprocess.TimeoutExpired("child", 20.0, output=first_line)

    monkeypatch.setattr("station.bench.check.storage.subprocess.run", late)
    found = journal(machine.kit())
    assert (found.colour, found.values["events"]) == ("unknown", 400)
    assert "was not followed in" in found.text


def test_a_record_that_this_user_may_not_open_is_unknown(
    machine: Machine, record: Path, monkeypatch: pytest.MonkeyPatch
) -> None:
    """SQLITE_CANTOPEN: the files beside a record in write-ahead mode may not be made by everybody."""
    told = json.dumps({"error": "unable to open database file", "sqlite_code": sqlite3.SQLITE_CANTOPEN})
    answer = subprocess.CompletedProcess([], 0, stdout=told, stderr="")
    monkeypatch.setattr("station.bench.check.storage.subprocess.run", lambda *_, **__: answer)
    found = journal(machine.kit())
    assert (found.colour, found.remedy) == ("unknown", "check again with sudo")


def test_a_child_that_cannot_start_is_unknown(machine: Machine, record: Path, monkeypatch: pytest.MonkeyPatch) -> None:
    monkeypatch.setattr("station.bench.check.storage.sys.executable", "/bin/false")
    assert journal(machine.kit()).colour == "unknown"


@pytest.mark.skipif(os.geteuid() != 0, reason="only root may give a file away")
def test_what_root_leaves_behind_is_still_the_stations(machine: Machine, record: Path) -> None:
    """A record whose station was killed has files beside it; root must not take them over (SQLite gives them away)."""
    left = Journal(record)
    left.append([(Clock.started().moment(), e.SampleTaken(21.0))]).result()
    killed = {name: (record / name).read_bytes() for name in (FILE_NAME, f"{FILE_NAME}-wal")}
    left.close()
    for name, content in killed.items():
        (record / name).write_bytes(content)
        os.chown(record / name, 65534, 65534)
    os.chown(record, 65534, 65534)
    assert journal(machine.kit()).values["events"] == 401
    owners = {each.name: each.stat().st_uid for each in record.iterdir() if each.name != LOCK_NAME}
    assert set(owners.values()) == {65534}, owners
