"""The journal keeps what was answered, in order, for ever, and says clearly when it cannot."""

import contextlib
import os
import shutil
import sqlite3
import subprocess
import sys
import threading
from collections.abc import Callable, Iterator
from concurrent.futures import Future
from dataclasses import dataclass
from pathlib import Path
from typing import Any, ClassVar

import pytest
from hypothesis import HealthCheck, given, settings
from hypothesis import strategies as st

from station.practical import events as e
from station.record.file import FOLD_AFTER
from station.record.journal import FILE_NAME, SCHEMA_VERSION, Journal, JournalError, Moment, first_broken, read_events
from tests.conftest import PATIENCE_S
from tests.record.cards import small_card

AT = Moment("boot", 1.0, 2.0, "2026-09-01T09:00:00.000+00:00", "none")


def sample(celsius: float | None = 21.0625) -> e.SampleTaken:
    return e.SampleTaken(celsius, None if celsius is not None else "crc")


def kept(journal: Journal, *events: e.Event) -> list[e.Stamped]:
    return journal.append([(AT, event) for event in events]).result(timeout=PATIENCE_S)


@pytest.fixture
def journal(tmp_path: Path) -> Iterator[Journal]:
    opened = Journal(tmp_path)
    yield opened
    opened.close()


def raw(folder: Path) -> sqlite3.Connection:
    return sqlite3.connect(folder / FILE_NAME, isolation_level=None)


def test_events_come_back_as_they_were_written_and_numbered_without_a_gap(journal: Journal, tmp_path: Path) -> None:
    first = kept(journal, e.PlanChosen({"acid": {"name": "nitric acid"}}), sample())
    second = kept(journal, e.PortionAdded(1, 1, 4.0, False, "page", "k1"))
    assert [each.seq for each in (*first, *second)] == [1, 2, 3]
    assert list(read_events(tmp_path)) == [*first, *second]
    assert [each.seq for each in read_events(tmp_path, after=1)] == [2, 3]
    assert [each.seq for each in read_events(tmp_path, kinds=("portion_added", "plan_chosen"))] == [1, 3]
    assert journal.last_seq == 3


def test_numbers_go_on_after_closing_and_opening_again(tmp_path: Path) -> None:
    for expected in (1, 2, 3):
        journal = Journal(tmp_path)
        assert [each.seq for each in kept(journal, sample())] == [expected]
        journal.close()
    assert first_broken(tmp_path) is None


def test_a_newer_stations_event_is_kept_and_not_understood(journal: Journal, tmp_path: Path) -> None:
    @dataclass(frozen=True)
    class Stirred(e.Event):
        kind: ClassVar[str] = "stirred_by_machine"
        speed_rpm: int

    kept(journal, Stirred(300))
    (back,) = read_events(tmp_path)
    assert back.event == e.Unknown("stirred_by_machine", {"speed_rpm": 300})


@pytest.mark.parametrize(
    "statement",
    [
        "UPDATE events SET body = '{}' WHERE seq = 1",
        "DELETE FROM events WHERE seq = 1",
        "DELETE FROM events",
        "INSERT OR REPLACE INTO events SELECT * FROM events WHERE seq = 1",
        "REPLACE INTO events SELECT seq, boot, monotonic_s, time_s, wall, clock, kind, '{}', digest FROM events",
        "INSERT INTO events SELECT seq + 5, boot, monotonic_s, time_s, wall, clock, kind, body, digest FROM events",
        "INSERT OR IGNORE INTO events VALUES (0, 'b', 0, 0, 'w', 'c', 'k', '{}', x'00')",
        "INSERT INTO events VALUES (3, 'b', 0, 0, 'w', 'c', 'k', 'not json', x'00')",
        "INSERT INTO events VALUES (3, 'b', 'noon', 0, 'w', 'c', 'k', '{}', x'00')",
        "INSERT INTO events SELECT * FROM events WHERE seq = 1 ON CONFLICT (seq) DO UPDATE SET body = '{}'",
    ],
)
def test_no_statement_changes_the_past_over_any_connection(journal: Journal, tmp_path: Path, statement: str) -> None:
    before = kept(journal, sample(), sample(22.0))
    connection = raw(tmp_path)  # without the pragmas of the journal's own connection
    with pytest.raises(sqlite3.IntegrityError):
        connection.execute(statement)
    connection.close()
    assert list(read_events(tmp_path)) == before
    assert first_broken(tmp_path) is None


@pytest.mark.fault("answered-but-not-kept")
def test_the_connection_that_writes_is_as_durable_as_promised(journal: Journal, tmp_path: Path) -> None:
    def ask(pragma: str) -> Any:
        return journal._file.connection.execute(f"PRAGMA {pragma}").fetchone()[0]

    assert ask("journal_mode") == "wal"
    assert ask("synchronous") == 2  # FULL: https://www.sqlite.org/pragma.html#pragma_synchronous
    assert ask("recursive_triggers") == 1
    assert ask("user_version") == SCHEMA_VERSION
    kept(journal, sample())
    strict = raw(tmp_path)
    assert strict.execute("SELECT strict FROM pragma_table_list WHERE name = 'events'").fetchone()[0] == 1
    strict.close()


def test_an_event_is_committed_when_it_is_answered(journal: Journal, tmp_path: Path) -> None:
    kept(journal, sample())
    connection = raw(tmp_path)
    assert connection.execute("SELECT count(*) FROM events").fetchone()[0] == 1
    connection.close()


class Held:
    """Holds the journal's writer up: another connection has the write lock."""

    def __init__(self, folder: Path) -> None:
        self._connection = raw(folder)

    def __enter__(self) -> None:
        self._connection.execute("BEGIN IMMEDIATE")

    def __exit__(self, *_: object) -> None:
        self._connection.execute("ROLLBACK")
        self._connection.close()


def test_an_append_that_was_cancelled_in_time_did_not_happen(journal: Journal, tmp_path: Path) -> None:
    with Held(tmp_path):
        first = journal.append([(AT, sample(21.0))])
        while not first.running():
            pass  # the writer has taken it and waits for the lock
        second = journal.append([(AT, sample(22.0))])
        third = journal.append([(AT, sample(23.0))])
        assert second.cancel()
        assert not first.cancel()
    assert [each.seq for each in third.result(timeout=PATIENCE_S)] == [2]
    assert [each.event for each in read_events(tmp_path)] == [sample(21.0), sample(23.0)]


@dataclass(frozen=True)
class Odd(e.Event):
    """An event of a faulty station: its body cannot be written."""

    kind: ClassVar[str] = "odd"
    value: Any


class Surprise:
    def __deepcopy__(self, _: object) -> "Surprise":
        raise RuntimeError("not even this may stop the journal")


@pytest.mark.parametrize("value", [object(), float("nan"), float("inf"), {1j: 1}, "\ud800", Surprise(), {3, 4}])
def test_an_event_that_cannot_be_written_is_refused_and_the_next_is_kept(
    journal: Journal, tmp_path: Path, value: Any
) -> None:
    refused = journal.append([(AT, sample()), (AT, Odd(value))])
    with pytest.raises(JournalError, match="cannot write the record"):
        refused.result(timeout=PATIENCE_S)
    assert [each.seq for each in kept(journal, sample(30.0))] == [1]
    assert [each.event for each in read_events(tmp_path)] == [sample(30.0)]


def test_closing_commits_what_is_queued_and_closing_twice_is_harmless(tmp_path: Path) -> None:
    journal = Journal(tmp_path)
    answers: list[Future[list[e.Stamped]]] = [journal.append([(AT, sample())]) for _ in range(50)]
    journal.close()
    journal.close()
    assert [each.result(timeout=0)[0].seq for each in answers] == list(range(1, 51))
    with pytest.raises(JournalError, match="closed"):
        journal.append([(AT, sample())]).result(timeout=0)
    assert not (tmp_path / f"{FILE_NAME}-wal").exists()
    assert len(list(read_events(tmp_path))) == 50


def test_many_threads_append_at_once_and_no_event_is_lost_or_doubled(journal: Journal, tmp_path: Path) -> None:
    def write(bench: int) -> None:
        for number in range(40):
            kept(journal, e.PortionUnsure(bench, number, f"{bench}-{number}"))

    threads = [threading.Thread(target=write, args=(bench,)) for bench in range(5)]
    for thread in threads:
        thread.start()
    for thread in threads:
        thread.join()
    events = [each.event for each in read_events(tmp_path)]
    assert sorted(each.key or "" for each in events if isinstance(each, e.PortionUnsure)) == sorted(
        f"{bench}-{number}" for bench in range(5) for number in range(40)
    )
    assert first_broken(tmp_path) is None


def changed(folder: Path, statement: str) -> None:
    connection = raw(folder)
    for trigger in ("events_stay", "events_last", "events_append"):
        connection.execute(f"DROP TRIGGER {trigger}")
    connection.execute(statement)
    connection.close()


@pytest.mark.parametrize(
    ("statement", "broken"),
    [
        ("UPDATE events SET body = replace(body, '21.0', '22.0') WHERE seq = 3", 3),
        ("UPDATE events SET time_s = time_s + 0.001 WHERE seq = 2", 2),
        ("UPDATE events SET boot = 'another' WHERE seq = 5", 5),
        ("UPDATE events SET wall = '2027' WHERE seq = 1", 1),
        ("UPDATE events SET kind = 'probe_found' WHERE seq = 4", 4),
        ("UPDATE events SET digest = x'00' WHERE seq = 4", 4),
        ("DELETE FROM events WHERE seq = 2", 2),
        ("UPDATE events SET seq = 9 WHERE seq = 5", 5),
    ],
)
def test_whatever_was_changed_is_found_by_the_digests(tmp_path: Path, statement: str, broken: int) -> None:
    journal = Journal(tmp_path)
    for _ in range(5):
        kept(journal, sample())
    journal.close()
    assert first_broken(tmp_path) is None
    changed(tmp_path, statement)
    assert first_broken(tmp_path) == broken


SOME_EVENTS = st.one_of(
    st.builds(e.SampleTaken, st.one_of(st.none(), st.floats(-55, 125)), st.one_of(st.none(), st.text(max_size=9))),
    st.builds(e.PortionAdded, st.integers(1, 9), st.integers(1, 60), st.floats(0.1, 50), st.booleans()),
    st.builds(e.RepeatSetAside, st.integers(1, 9), st.text(st.characters(exclude_categories=["Cs"]), max_size=30)),
)


@given(st.lists(st.lists(st.tuples(st.floats(0, 1e9), SOME_EVENTS), max_size=4), max_size=6))
@settings(max_examples=25, deadline=None, suppress_health_check=[HealthCheck.function_scoped_fixture])
def test_any_events_in_any_batches_come_back(
    tmp_path_factory: pytest.TempPathFactory, batches: list[list[tuple[float, e.Event]]]
) -> None:
    folder = tmp_path_factory.mktemp("any")
    journal = Journal(folder)
    written: list[e.Stamped] = []
    for batch in batches:
        moments = [(Moment("b", time_s, time_s, "w", "none"), event) for time_s, event in batch]
        written += journal.append(moments).result(timeout=PATIENCE_S)
    journal.close()
    assert list(read_events(folder)) == written
    assert first_broken(folder) is None


def test_a_second_station_on_the_same_record_is_refused_until_the_first_has_gone(tmp_path: Path) -> None:
    first = Journal(tmp_path)
    with pytest.raises(JournalError, match="another station keeps its record here; stop it first"):
        Journal(tmp_path)
    program = (
        "import sys; from pathlib import Path; from station.record.journal import Journal\nJournal(Path(sys.argv[1]))"
    )
    other = subprocess.run([sys.executable, "-c", program, tmp_path], capture_output=True, text=True, check=False)
    assert "another station keeps its record here" in other.stderr
    first.close()
    Journal(tmp_path).close()


def test_a_record_of_a_newer_format_is_left_as_it_is(tmp_path: Path) -> None:
    Journal(tmp_path).close()
    connection = raw(tmp_path)
    connection.execute(f"PRAGMA user_version = {SCHEMA_VERSION + 1}")
    connection.execute("DROP TABLE events")
    connection.close()
    with pytest.raises(JournalError, match="newer station"):
        Journal(tmp_path)
    connection = raw(tmp_path)
    assert connection.execute("SELECT count(*) FROM sqlite_master").fetchone()[0] == 0
    connection.close()


def as_a_folder(path: Path) -> Path:
    (path / "journal.sqlite3").mkdir()
    return path


def as_a_file(path: Path) -> Path:
    (path / "record").write_text("a file where a folder should be")
    return path / "record"


def as_other_bytes(path: Path) -> Path:
    (path / "journal.sqlite3").write_bytes(b"this is no database" * 100)
    return path


@pytest.mark.parametrize("spoil", [as_a_folder, as_a_file, as_other_bytes])
def test_a_record_that_cannot_be_opened_says_which_and_what_to_do(
    tmp_path: Path, spoil: Callable[[Path], Path]
) -> None:
    folder = spoil(tmp_path)
    with pytest.raises(JournalError, match=r"journal.sqlite3: cannot open the record: .*choose another"):
        Journal(folder)


def test_reading_where_there_is_no_record_says_so(tmp_path: Path) -> None:
    with pytest.raises(JournalError, match="no record here; name the record's folder"):
        list(read_events(tmp_path))
    (tmp_path / FILE_NAME).write_bytes(b"this is no database" * 100)
    with pytest.raises(JournalError, match="cannot read the record"):
        list(read_events(tmp_path))
    assert [each.name for each in tmp_path.iterdir()] == [FILE_NAME]


@pytest.fixture
def card() -> Iterator[Path]:
    with small_card() as folder:
        yield folder


@pytest.mark.fault("card-full")
def test_a_full_card_refuses_what_it_cannot_keep_and_goes_on_once_there_is_room(card: Path) -> None:
    ballast = card / "ballast"
    ballast.write_bytes(b"x" * 100_000)
    journal = Journal(card)
    answered: list[e.Stamped] = []
    refused = 0
    while refused < 5:
        try:
            answered += kept(journal, e.Unknown("x", {"text": "x" * 2000}))
        except JournalError as error:
            assert "cannot write the record" in str(error)
            refused += 1
    assert len(answered) > 3
    ballast.unlink()
    answered += kept(journal, sample())
    assert [each.seq for each in read_events(card)] == [each.seq for each in answered]
    assert [each.seq for each in answered] == list(range(1, len(answered) + 1))
    journal.close()
    assert first_broken(card) is None


@pytest.mark.fault("read-only-card")
def test_a_folder_that_may_not_be_written_says_so(card: Path) -> None:
    Journal(card).close()
    subprocess.run(["mount", "-o", "remount,ro", card], check=True)
    with pytest.raises(JournalError, match=r"[Rr]ead-only.*make its folder writable or choose another"):
        Journal(card)


@pytest.mark.fault("record-moved")
@pytest.mark.parametrize("gone", ["deleted", "moved", "replaced"])
def test_what_would_go_into_a_file_that_is_gone_is_refused(tmp_path: Path, gone: str) -> None:
    """SQLite writes on into a deleted file, and everything that was acknowledged goes with it."""
    folder = tmp_path / "record"
    journal = Journal(folder)
    journal.append([(AT, sample())]).result()
    if gone == "deleted":
        shutil.rmtree(folder)
    else:
        folder.rename(tmp_path / "elsewhere")
        if gone == "replaced":
            Journal(folder).close()
    with pytest.raises(JournalError, match="moved or deleted; restart the station"):
        journal.append([(AT, sample())]).result()
    journal.close()


def whole(folder: Path, count: int) -> None:
    """So many events are there for whoever opens the record now, as after a kill."""
    killed = folder.with_name("killed")
    shutil.copytree(folder, killed)
    assert [each.seq for each in read_events(killed)] == list(range(1, count + 1))
    assert first_broken(killed) is None
    shutil.rmtree(killed)


LOG, SHARED = f"{FILE_NAME}-wal", f"{FILE_NAME}-shm"


@pytest.mark.fault("log-deleted")
@pytest.mark.parametrize("gone", [(LOG,), (SHARED,), (LOG, SHARED)], ids="+".join)
def test_what_is_acknowledged_after_the_log_was_deleted_outlives_a_kill(tmp_path: Path, gone: tuple[str, ...]) -> None:
    folder = tmp_path / "record"
    journal = Journal(folder)
    for number in range(1, 81):
        if number % 20 == 10:
            for name in gone:
                (folder / name).unlink(missing_ok=name == SHARED)  # nobody makes that one anew before the next start
        kept(journal, sample() if number % 3 else e.PortionUnsure(1, number))
        whole(folder, number)
    journal.close()
    assert first_broken(folder) is None


def test_an_act_is_in_the_file_itself_once_it_is_answered_and_a_sample_soon_is(
    journal: Journal, tmp_path: Path, request: pytest.FixtureRequest
) -> None:
    def in_file() -> int:
        connection = sqlite3.connect(f"{(tmp_path / FILE_NAME).as_uri()}?immutable=1", uri=True)  # without the log
        request.addfinalizer(connection.close)
        return int(connection.execute("SELECT count(*) FROM events").fetchone()[0])

    kept(journal, sample())
    kept(journal, e.PortionUnsure(1, 1))
    assert in_file() == 2
    for _ in range(FOLD_AFTER):
        kept(journal, sample())
    assert in_file() >= 3
    kept(journal, sample())
    while in_file() != 3 + FOLD_AFTER:
        pass  # nothing is written: the journal's thread puts it there


@pytest.mark.parametrize("instead", [b"", b"x" * 9000])
def test_a_log_that_lost_its_name_to_another_file_gets_it_back(tmp_path: Path, instead: bytes) -> None:
    folder = tmp_path / "record"
    journal = Journal(folder)
    kept(journal, *[sample()] * 6)
    (folder / LOG).unlink()
    (folder / LOG).write_bytes(instead)
    kept(journal, sample())
    whole(folder, 7)
    journal.close()


def test_where_no_log_can_be_made_acts_are_refused_and_what_was_kept_is_in_the_file(tmp_path: Path) -> None:
    folder = tmp_path / "record"
    journal = Journal(folder)
    kept(journal, *[sample()] * 6)
    (folder / LOG).unlink()
    (folder / LOG).mkdir()
    with pytest.raises(JournalError, match=r"its log journal\.sqlite3-wal was deleted and cannot be written anew"):
        kept(journal, sample())
    (folder / LOG).rmdir()
    whole(folder, 6)
    assert [each.seq for each in kept(journal, sample())] == [7]
    whole(folder, 7)
    journal.close()


def test_a_log_deleted_while_somebody_reads_is_made_anew_for_every_commit_until_they_have_done(tmp_path: Path) -> None:
    folder = tmp_path / "record"
    journal = Journal(folder)
    kept(journal, *[sample()] * 5)
    reader = raw(folder)
    reader.execute("PRAGMA busy_timeout = 0")
    reader.execute("BEGIN")
    assert reader.execute("SELECT count(*) FROM events").fetchone()[0] == 5
    journal._file.connection.execute("PRAGMA busy_timeout = 10")
    (folder / LOG).unlink()
    for number in range(6, 9):
        kept(journal, e.PortionUnsure(1, number))
        whole(folder, number)
    reader.execute("ROLLBACK")
    reader.close()
    kept(journal, e.PortionUnsure(1, 9))
    assert (folder / LOG).stat().st_ino == os.fstat(journal._file._log or 0).st_ino
    whole(folder, 9)
    journal.close()


def test_a_log_deleted_where_nothing_is_written_is_made_anew_and_readers_see_all(tmp_path: Path) -> None:
    journal = Journal(tmp_path)
    kept(journal, sample())
    (tmp_path / LOG).unlink()
    while not (tmp_path / LOG).exists():
        pass  # the journal's thread looks for it
    assert len(list(read_events(tmp_path))) == 1
    journal.close()


def test_a_log_deleted_on_a_full_card_loses_nothing(card: Path) -> None:
    journal = Journal(card)
    kept(journal, sample())
    log_bytes = 0
    while log_bytes < 4 * 4096:
        log_bytes = (card / LOG).stat().st_size
        kept(journal, sample())
    count = journal.last_seq
    (card / LOG).unlink()
    filled = 0
    with (card / "ballast").open("wb", buffering=0) as ballast, contextlib.suppress(OSError):
        while True:
            filled += ballast.write(b"x" * 4096)
    assert filled
    while True:
        try:
            kept(journal, sample())
        except JournalError as error:
            assert "cannot write the record" in str(error)
            break
        count += 1
    (card / "ballast").unlink()
    assert [each.seq for each in kept(journal, sample())] == [count + 1]
    journal.close()
    assert len(list(read_events(card))) == count + 1
