"""A record that a card spoilt: the station starts all the same, goes on with what can be read, and says so."""

import sqlite3
from pathlib import Path

import pytest

from station.practical import events as e
from station.practical.fold import fold_all
from station.record.journal import FILE_NAME, Journal, JournalError, Moment, first_broken, read_events
from station.record.salvage import is_damaged, opened_journal

PAGE_BYTES = 4096


def at(time_s: float) -> Moment:
    return Moment("boot", time_s, time_s, "2031-02-03T10:00:00+00:00", "none")


def practical(folder: Path, repeats: int = 3, samples: int = 300) -> int:
    """Write a record of some practicals' length; return its number of events."""
    journal = Journal(folder)
    written: list[e.Event] = []
    for repeat in range(1, repeats + 1):
        written.append(e.RepeatBegun(repeat))
        for portion in range(4):
            if portion:
                written.append(e.PortionAdded(repeat, portion, 4.0))
            written += [e.SampleTaken(20.0 + number / 16) for number in range(samples)]
            written.append(e.ReadingSettled(repeat, portion, 20.0 + portion, 0.03, True))
    journal.append([(at(float(number)), event) for number, event in enumerate(written)]).result()
    journal.close()
    return len(written)


def spoil(file: Path, page: int, content: bytes) -> None:
    with file.open("rb+") as opened:
        opened.seek(page * PAGE_BYTES)
        opened.write(content)


def pages(file: Path) -> int:
    return file.stat().st_size // PAGE_BYTES


def test_a_sound_record_is_opened_as_it_is(tmp_path: Path) -> None:
    count = practical(tmp_path)
    assert not is_damaged(tmp_path)
    journal, salvaged = opened_journal(tmp_path)
    journal.close()
    assert salvaged is None
    assert journal.last_seq == count


@pytest.mark.fault("damaged-record")
@pytest.mark.parametrize("share", [0.0, 0.3, 0.6, 0.95])
@pytest.mark.parametrize("content", [b"\0" * PAGE_BYTES, b"\xff" * PAGE_BYTES], ids=["zeros", "ones"])
def test_a_spoilt_page_costs_what_lay_on_it_and_the_rest_goes_on(tmp_path: Path, share: float, content: bytes) -> None:
    count = practical(tmp_path)
    file = tmp_path / FILE_NAME
    spoil(file, int(share * pages(file)), content)
    damaged = file.read_bytes()
    journal, salvaged = opened_journal(tmp_path)
    if salvaged is None:  # the page held nothing that matters
        journal.close()
        assert journal.last_seq == count
        assert first_broken(tmp_path) is None
        return
    assert (tmp_path / salvaged.aside / FILE_NAME).read_bytes() == damaged, "the damaged one is kept whole"
    assert salvaged.kept <= count
    assert salvaged.kept > 0.5 * count
    journal.append([(at(1e4), e.Paused())]).result()
    journal.close()
    assert first_broken(tmp_path) is None
    assert not is_damaged(tmp_path)
    state = fold_all(read_events(tmp_path))
    for repeat in state.repeats:
        numbers = [each.portion for each in repeat.portions]
        assert numbers == list(range(1, len(numbers) + 1)), "no portion is invented"


@pytest.mark.fault("damaged-record")
@pytest.mark.parametrize("size", [0.5, 0.9])
def test_a_record_that_was_cut_short_goes_on(tmp_path: Path, size: float) -> None:
    count = practical(tmp_path)
    file = tmp_path / FILE_NAME
    with file.open("rb+") as opened:
        opened.truncate(int(size * pages(file)) * PAGE_BYTES)
    journal, salvaged = opened_journal(tmp_path)
    journal.close()
    assert salvaged is not None
    assert 0 < salvaged.kept < count


def test_a_file_that_is_no_record_at_all_is_set_aside(tmp_path: Path) -> None:
    (tmp_path / FILE_NAME).write_bytes(b"what a card left here" * 1000)
    journal, salvaged = opened_journal(tmp_path)
    journal.close()
    assert salvaged == e.RecordSalvaged(0, "damaged-1")
    assert journal.last_seq == 0


def test_an_event_that_speaks_of_a_lost_one_is_left_out(tmp_path: Path) -> None:
    practical(tmp_path, repeats=2, samples=3)
    connection = sqlite3.connect(tmp_path / FILE_NAME)
    connection.executescript("DROP TRIGGER events_last; DELETE FROM events WHERE kind = 'repeat_begun' AND seq > 1;")
    connection.close()
    spoil(tmp_path / FILE_NAME, pages(tmp_path / FILE_NAME) - 1, b"\xff" * PAGE_BYTES)
    journal, _ = opened_journal(tmp_path)
    journal.close()
    assert fold_all(read_events(tmp_path)).repeats[-1].repeat == 1


def test_the_students_are_told_in_the_notes() -> None:
    stamped = e.Stamped(1, "boot", 0.0, 0.0, "", "none", e.RecordSalvaged(12, "damaged-1"))
    (note,) = fold_all([stamped]).notes
    assert "compare the table with what you did" in note.text


def test_a_record_in_use_is_never_set_aside(tmp_path: Path) -> None:
    practical(tmp_path)
    journal = Journal(tmp_path)
    spoil(tmp_path / FILE_NAME, 3, b"\xff" * PAGE_BYTES)
    with pytest.raises(JournalError, match="another station"):
        opened_journal(tmp_path)
    journal.close()
    assert not (tmp_path / "damaged-1").exists()


@pytest.mark.fault("changed-value")
@pytest.mark.parametrize(
    "change",
    [
        "UPDATE events SET body = '{\"temperature_c\":99.5}' WHERE seq = 700",
        "UPDATE events SET digest = NULL WHERE seq = 700",
        "UPDATE events SET kind = x'00ff' WHERE seq = 700",
        "UPDATE events SET wall = CAST(x'ff31' AS TEXT) WHERE seq = 700",
        "UPDATE events SET body = '{}', wall = 'x' WHERE seq IN (700, 701)",
        "DELETE FROM events WHERE seq = 700",
    ],
)
def test_an_event_that_changed_without_a_broken_page_is_noticed_and_left_out(tmp_path: Path, change: str) -> None:
    """A bit that flips inside a value breaks no page; only the digests tell."""
    count = practical(tmp_path, repeats=1, samples=200)
    connection = sqlite3.connect(tmp_path / FILE_NAME)
    connection.executescript("DROP TRIGGER events_last; DROP TRIGGER events_stay; DROP TRIGGER events_append;")
    columns = "monotonic_s REAL,time_s REAL,wall TEXT,clock TEXT,kind TEXT,body TEXT,digest BLOB"
    sql = f"CREATE TABLE events(seq INTEGER PRIMARY KEY,boot TEXT,{columns})"
    connection.executescript(  # without STRICT and NOT NULL, as a spoilt cell is
        f"PRAGMA writable_schema = 1; UPDATE sqlite_schema SET sql = '{sql}' WHERE name = 'events';"
    )
    connection.close()
    connection = sqlite3.connect(tmp_path / FILE_NAME)
    connection.executescript(change)
    connection.close()
    assert is_damaged(tmp_path)
    journal, salvaged = opened_journal(tmp_path)
    journal.close()
    assert salvaged is not None
    assert count - 2 <= salvaged.kept < count
    kept = [each.event for each in read_events(tmp_path)]
    assert all(each.temperature_c != 99.5 for each in kept if isinstance(each, e.SampleTaken))


def test_a_schema_that_is_no_text_any_more_is_damage(tmp_path: Path) -> None:
    """SQLite repeats the spoilt bytes in its message, which Python cannot read."""
    count = practical(tmp_path, repeats=1, samples=20)
    connection = sqlite3.connect(tmp_path / FILE_NAME)
    spoilt = "UPDATE sqlite_schema SET name = CAST(x'ff43' AS TEXT), sql = 'CREATE nonsense' WHERE name = 'events_stay'"
    connection.executescript(f"PRAGMA writable_schema = 1; {spoilt};")
    connection.close()
    journal, salvaged = opened_journal(tmp_path)
    journal.close()
    assert salvaged is not None
    assert salvaged.kept == count
