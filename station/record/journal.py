"""The journal: one append-only SQLite file, one thread that writes it, and an answer only after the commit.

WAL with synchronous FULL: a commit that was answered survives a pulled plug, and all but samples is in the file itself
before it is answered (`watched.py`). Triggers refuse changes and deletions, and any number but the next, so that
REPLACE is no way around them. Each row's digest covers the digest of the one before, so that a page that went bad is
noticed even where SQLite's own check is content.
"""

import contextlib
import fcntl
import hashlib
import json
import os
import queue
import sqlite3
import threading
from collections.abc import Iterator, Sequence
from concurrent.futures import Future
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from station.practical.events import Stamped, from_body
from station.practical.events.bench import Event, SampleTaken
from station.record.file import GoneError, WatchedFile
from station.words import say

# The journal's table and the triggers that keep it append-only.


SCHEMA_VERSION = 1

SCHEMA = """
CREATE TABLE IF NOT EXISTS events (
    seq INTEGER PRIMARY KEY,
    boot TEXT NOT NULL,
    monotonic_s REAL NOT NULL,
    time_s REAL NOT NULL,
    wall TEXT NOT NULL,
    clock TEXT NOT NULL,
    kind TEXT NOT NULL,
    body TEXT NOT NULL CHECK (json_valid(body)),
    digest BLOB NOT NULL
) STRICT;
CREATE INDEX IF NOT EXISTS events_of_kind ON events (kind, seq) WHERE kind <> 'sample_taken';
CREATE TRIGGER IF NOT EXISTS events_append BEFORE INSERT ON events
WHEN NEW.seq IS NOT (SELECT coalesce(max(seq), 0) + 1 FROM events)
BEGIN SELECT RAISE(ABORT, 'the journal is append-only: the next event has the next number'); END;
CREATE TRIGGER IF NOT EXISTS events_stay BEFORE UPDATE ON events
BEGIN SELECT RAISE(ABORT, 'the journal is append-only: write a correction instead'); END;
CREATE TRIGGER IF NOT EXISTS events_last BEFORE DELETE ON events
BEGIN SELECT RAISE(ABORT, 'the journal is append-only: nothing is deleted'); END;
"""


# Opens the journal's file: to write by one process only, to read by any.


FILE_NAME = "journal.sqlite3"
LOCK_NAME = "journal.lock"
DAMAGED, BEFORE_RESTORE = "damaged", "before-restore"
"""Why a record was set aside: the beginning of its folder's name."""
SIDE_FILES = ("-wal", "-shm")
"""What SQLite keeps beside its file; beside another file's content they would spoil it."""


class JournalError(Exception):
    """The record cannot be opened or written; the message says what to do."""


def cannot_open(path: Path, error: Exception) -> JournalError:
    """Return the error that says what to do about a record that cannot be opened."""
    return JournalError(say("record-cannot-open-folder", path=str(path), reason=str(error)))


def locked(path: Path) -> int:
    """Hold this folder's record: two writers would number their events alike. A killed process lets go."""
    lock = os.open(path, os.O_RDWR | os.O_CREAT | os.O_CLOEXEC, 0o644)
    try:
        fcntl.flock(lock, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except BlockingIOError:
        os.close(lock)
        raise JournalError(say("record-another-station", path=str(path.parent))) from None
    return lock


def open_to_write(path: Path) -> sqlite3.Connection:
    """Open the file, made where there is none. Raises JournalError, or what SQLite raises."""
    connection = sqlite3.connect(path, timeout=5, check_same_thread=False, isolation_level=None)
    try:
        version = int(connection.execute("PRAGMA user_version").fetchone()[0])
        if version not in (0, SCHEMA_VERSION):
            raise JournalError(say("record-newer", path=str(path), format_version=version))
        for pragma in ("journal_mode = WAL", "synchronous = FULL", "recursive_triggers = 1"):
            connection.execute(f"PRAGMA {pragma}")
        # A cut plug leaves a WAL behind; a size limit keeps one long reader from filling the card.
        connection.execute("PRAGMA journal_size_limit = 4194304")
        connection.executescript(SCHEMA)
        connection.execute(f"PRAGMA user_version = {SCHEMA_VERSION}")
    except BaseException:
        connection.close()
        raise
    return connection


def set_aside(folder: Path, why: str, name: str = FILE_NAME) -> Path | None:
    """Move the record with its log into a numbered folder of its own beside it; None when there is none."""
    parts = [part for suffix in ("", *SIDE_FILES) if (part := folder / f"{name}{suffix}").exists()]
    if not parts:
        return None
    number = 1
    while (aside := folder / f"{why}-{number}").exists():
        number += 1
    aside.mkdir()
    for part in parts:
        part.rename(aside / part.name)
    return aside


def open_to_read(folder: Path, name: str = FILE_NAME) -> sqlite3.Connection:
    """Open the file of this folder to read only. Raises JournalError when there is none."""
    path = folder / name
    if not path.is_file():
        raise JournalError(say("record-none-here", path=str(path)))
    try:
        return sqlite3.connect(f"{path.resolve().as_uri()}?mode=ro", uri=True, timeout=5)
    except sqlite3.Error as error:
        raise JournalError(say("record-cannot-open", path=str(path), reason=str(error))) from error


def tail(connection: sqlite3.Connection) -> tuple[int, bytes]:
    """Return sequence number and digest of the newest event; (0, b"") when there is none."""
    row = connection.execute("SELECT seq, digest FROM events ORDER BY seq DESC LIMIT 1").fetchone()
    return (int(row[0]), bytes(row[1])) if row else (0, b"")


CLOSE_WITHIN_S = 10.0
LOOK_EVERY_S = 1.0
"""So often, at least, the log is looked for, and put into the file where nothing is written."""


@dataclass(frozen=True)
class Moment:
    """When an event happened, as the clock gave it (see `Stamped`)."""

    boot: str
    monotonic_s: float
    time_s: float
    wall: str
    clock: str


Write = tuple[Sequence[tuple[Moment, Event]], "Future[list[Stamped]]"]


class Journal:
    """An open journal. `append` is answered after its commit; `close` writes what is still queued."""

    def __init__(self, folder: Path) -> None:
        self.path = folder / FILE_NAME
        try:
            folder.mkdir(parents=True, exist_ok=True)
            self._lock = locked(folder / LOCK_NAME)
        except OSError as error:
            raise cannot_open(self.path, error) from error
        try:
            self._file = WatchedFile(self.path, open_to_write)
            self._seq, self._digest = tail(self._file.connection)
        except BaseException as error:
            os.close(self._lock)
            if isinstance(error, sqlite3.Error | OSError):
                raise cannot_open(self.path, error) from error
            raise
        self._queue: queue.SimpleQueue[Write | None] = queue.SimpleQueue()
        self._closed = False
        self._closing = threading.Lock()
        self._thread = threading.Thread(target=self._work, name="journal", daemon=True)
        self._thread.start()

    @property
    def last_seq(self) -> int:
        """The sequence number of the newest committed event; 0 when there is none."""
        return self._seq

    def append(self, happened: Sequence[tuple[Moment, Event]]) -> "Future[list[Stamped]]":
        """Write these events in one transaction; the future holds them stamped once they are committed.

        It holds a JournalError when they could not be written: then none of them happened.
        """
        answer: Future[list[Stamped]] = Future()
        with self._closing:
            if self._closed:
                answer.set_exception(JournalError(say("record-closed", path=str(self.path))))
            else:
                self._queue.put((happened, answer))
        return answer

    def close(self) -> None:
        """Commit what is queued, fold the WAL into the file and close; a second call does nothing."""
        with self._closing:
            if self._closed:
                return
            self._closed = True
            self._queue.put(None)
        self._thread.join(timeout=CLOSE_WITHIN_S)

    def _work(self) -> None:
        while (write := self._next()) is not None:
            happened, answer = write
            if not answer.set_running_or_notify_cancel():
                continue  # nobody waits any more: it was never answered, so it did not happen
            try:
                answer.set_result(self._commit(happened))
            except Exception as error:  # whatever an event holds, the thread must live for the next
                text = say("record-cannot-write", path=str(self.path), reason=str(error))
                answer.set_exception(JournalError(text))
        self._file.close()
        os.close(self._lock)

    def _next(self) -> Write | None:
        while True:
            try:
                return self._queue.get(timeout=LOOK_EVERY_S)
            except queue.Empty:
                with contextlib.suppress(GoneError):  # the next who wants to write is told
                    self._file.look()
                    self._file.fold()

    def _commit(self, happened: Sequence[tuple[Moment, Event]]) -> list[Stamped]:
        seq, digest = self._seq, self._digest
        stamped, rows = [], []
        for at, event in happened:
            seq += 1
            body = json.dumps(event.to_body(), ensure_ascii=False, separators=(",", ":"), allow_nan=False)
            row = (seq, at.boot, float(at.monotonic_s), float(at.time_s), at.wall, at.clock, event.kind, body)
            digest = chain(digest, row)
            rows.append((*row, digest))
            stamped.append(Stamped(seq, at.boot, at.monotonic_s, at.time_s, at.wall, at.clock, event))
        only_samples = all(isinstance(event, SampleTaken) for _, event in happened)
        try:
            with self._file.writing(into_file=not only_samples) as connection:
                connection.executemany("INSERT INTO events VALUES (?,?,?,?,?,?,?,?,?)", rows)
        except GoneError as error:
            raise JournalError(say("record-restart-station", reason=str(error))) from error
        self._seq, self._digest = seq, digest
        return stamped


def chain(before: bytes, row: tuple[Any, ...]) -> bytes:
    """Return the digest of a row (all its columns but the digest) that follows one with digest `before`."""
    # A spoilt page can have bytes where a text was: then the digest is another, and no error.
    return hashlib.blake2b(before + json.dumps(row, default=repr).encode(), digest_size=16).digest()


def first_broken(folder: Path, name: str = FILE_NAME) -> int | None:
    """Return the sequence number of the first event that is not as it was written; None when all are.

    A gap in the numbers counts as broken. Raises JournalError when there is no record or it cannot be read.
    """
    expected, digest = 1, b""
    for seq, *rest, kept in _rows_of(folder, f"SELECT {COLUMNS},digest FROM events ORDER BY seq", (), name):  # noqa: S608
        digest = chain(digest, (seq, *rest))
        if seq != expected or digest != kept:
            return expected
        expected += 1
    return None


def read_events(folder: Path, after: int = 0, kinds: Sequence[str] = ()) -> Iterator[Stamped]:
    """Yield the committed events after this sequence number, in order, from a read-only connection.

    Raises JournalError when there is no record or it cannot be read.
    """
    where = f" AND kind IN ({','.join('?' * len(kinds))})" if kinds else ""
    sql = f"SELECT {COLUMNS} FROM events WHERE seq > ?{where} ORDER BY seq"  # noqa: S608
    for row in _rows_of(folder, sql, (after, *kinds)):
        try:
            yield _stamped(row)
        except ValueError as error:
            text = say("record-event-unreadable", path=str(folder / FILE_NAME), event=row[0], reason=str(error))
            raise JournalError(text) from error


def read_rows(folder: Path, after: int, most: int) -> list[tuple[Any, ...]]:
    """Return at most so many committed events after this number as they were written, with the columns of COLUMNS.

    Raises JournalError.
    """
    return list(_rows_of(folder, f"SELECT {COLUMNS} FROM events WHERE seq > ? ORDER BY seq LIMIT ?", (after, most)))  # noqa: S608


COLUMNS = "seq,boot,monotonic_s,time_s,wall,clock,kind,body"


def _rows_of(folder: Path, sql: str, values: Sequence[Any] = (), name: str = FILE_NAME) -> Iterator[tuple[Any, ...]]:
    connection = open_to_read(folder, name)
    try:
        yield from connection.execute(sql, values)
    except sqlite3.Error as error:
        raise JournalError(say("record-cannot-read", path=str(folder / name), reason=str(error))) from error
    finally:
        connection.close()


def _stamped(row: tuple[Any, ...]) -> Stamped:
    seq, boot, monotonic_s, time_s, wall, clock, kind, body = row
    return Stamped(seq, boot, monotonic_s, time_s, wall, clock, from_body(kind, json.loads(body)))
