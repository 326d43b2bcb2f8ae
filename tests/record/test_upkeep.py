"""Backup while a station writes, restore over a stale log, wipe: the safe way, and refused where it is not safe."""

import sqlite3
from collections.abc import Iterator
from pathlib import Path

import pytest

from station.command.main import main
from station.practical.events.bench import SampleTaken
from station.practical.events.cup import Paused
from station.record.journal import FILE_NAME, Journal, JournalError, Moment, first_broken, read_events
from station.record.upkeep import backup, checked, restore, wipe

AT = Moment("boot", 1.0, 2.0, "2031-02-03T10:00:00+00:00", "none")


def filled(folder: Path, count: int) -> Journal:
    journal = Journal(folder)
    journal.append([(AT, SampleTaken(20.0 + number / 16)) for number in range(count)]).result()
    return journal


@pytest.fixture
def folder(tmp_path: Path) -> Path:
    return tmp_path / "record"


@pytest.fixture
def running(folder: Path) -> Iterator[Journal]:
    """A record that a station is writing."""
    journal = filled(folder, 40)
    yield journal
    journal.close()


@pytest.mark.fault("copy-without-log")
def test_a_backup_of_a_record_in_use_holds_every_committed_event(
    running: Journal, folder: Path, tmp_path: Path
) -> None:
    target = tmp_path / "stick" / "record.backup"
    target.parent.mkdir()
    assert backup(folder, target) == 40
    running.append([(AT, Paused())]).result()
    assert checked(target) == 40
    assert sorted(path.name for path in target.parent.iterdir()) == ["record.backup"], "one file that stands alone"
    assert backup(folder, target) == 41, "a later backup takes the place of the earlier"


@pytest.mark.fault("other-users")
def test_a_backup_is_for_nobody_else_on_this_computer(running: Journal, folder: Path, tmp_path: Path) -> None:
    target = tmp_path / "record.backup"
    target.touch(0o644)
    assert main(["backup", str(target), "--record", str(folder)]) == 0
    assert target.stat().st_mode & 0o777 == 0o600


def test_a_backup_that_cannot_be_written_leaves_the_one_before(running: Journal, folder: Path, tmp_path: Path) -> None:
    with pytest.raises(JournalError, match="choose another place"):
        backup(folder, tmp_path / "no such folder" / "record.backup")


@pytest.mark.fault("copy-without-log")
def test_a_restore_brings_back_what_was_backed_up_and_sets_the_rest_aside(folder: Path, tmp_path: Path) -> None:
    journal = filled(folder, 10)
    target = tmp_path / "record.backup"
    backup(folder, target)
    journal.append([(AT, SampleTaken(1.0))] * 5).result()
    journal.close()
    stale = folder / f"{FILE_NAME}-wal"
    stale.write_bytes(b"a log of another file")
    count, aside = restore(target, folder)
    assert count == 10
    assert not stale.exists(), "a stale log beside another file spoils it"
    assert aside is not None
    assert (aside / stale.name).read_bytes() == b"a log of another file"
    assert len(list(read_events(folder))) == 10
    again = Journal(folder)
    again.append([(AT, Paused())]).result()
    again.close()
    assert first_broken(folder) is None
    assert len(list(read_events(folder))) == 11


@pytest.mark.fault("no-backup")
def test_nothing_is_restored_under_a_running_station(running: Journal, folder: Path, tmp_path: Path) -> None:
    target = tmp_path / "record.backup"
    backup(folder, target)
    with pytest.raises(JournalError, match="stop it first"):
        restore(target, folder)
    with pytest.raises(JournalError, match="stop it first"):
        wipe(folder)
    running.append([(AT, Paused())]).result()


@pytest.mark.fault("no-backup")
@pytest.mark.parametrize("spoil", ["text", "empty", "truncated", "changed", "missing", "other"])
def test_what_is_no_sound_backup_is_refused_and_changes_nothing(folder: Path, tmp_path: Path, spoil: str) -> None:
    filled(folder, 10).close()
    target = tmp_path / "record.backup"
    backup(folder, target)
    _spoil(target, spoil)
    before = (folder / FILE_NAME).read_bytes()
    with pytest.raises(JournalError, match=r"record\.backup"):
        restore(target, folder)
    assert (folder / FILE_NAME).read_bytes() == before


def _spoil(file: Path, how: str) -> None:
    content = file.read_bytes()
    if how == "missing":
        file.unlink()
    elif how == "changed":
        place = content.index(b'"temperature_c":20.3125')
        file.write_bytes(content[:place] + b'"temperature_c":29' + content[place + 18 :])
    elif how == "other":
        file.unlink()
        sqlite3.connect(file).executescript("CREATE TABLE notes (text TEXT)")
    else:
        file.write_bytes({"text": b"repeat,time_s\n", "empty": b"", "truncated": content[: len(content) // 2]}[how])


def test_a_wipe_leaves_nothing_to_read(folder: Path) -> None:
    filled(folder, 10).close()
    (folder / "sessions.json").write_text("{}")
    for aside in ("damaged-1", "before-restore-2"):
        (folder / aside).mkdir()
        (folder / aside / FILE_NAME).write_bytes(b"an older record")
    wipe(folder)
    assert sorted(path.name for path in folder.iterdir()) == ["journal.lock"]


def test_the_commands_say_what_they_did(folder: Path, tmp_path: Path, capsys: pytest.CaptureFixture[str]) -> None:
    filled(folder, 3).close()
    target = tmp_path / "record.backup"
    record = ["--record", str(folder)]
    assert main(["backup", str(target), *record]) == 0
    assert main(["restore", str(target), *record]) == 0
    assert main(["wipe", *record]) == 2
    assert (folder / FILE_NAME).exists()
    assert main(["wipe", "--yes", *record]) == 0
    assert main(["backup", str(target), *record]) == 4
    said = capsys.readouterr()
    assert "3 events, checked" in said.out
    assert "before-restore-1" in said.out
    assert "add --yes" in said.err
    assert "no record here" in said.err
