"""The file behind the room's store: one connection that writes, under a lock; each reader opens its own."""

import os
import sqlite3
import threading
from collections.abc import Iterator, Sequence
from contextlib import closing, contextmanager
from datetime import UTC, datetime
from pathlib import Path
from secrets import token_hex
from typing import Any

from station.record.file import GoneError, WatchedFile
from station.record.journal import JournalError, locked
from station.words import Message, say

# The room's tables. Events are only ever added.


SCHEMA_VERSION = 1

SCHEMA = """
CREATE TABLE IF NOT EXISTS about (key TEXT PRIMARY KEY, value TEXT NOT NULL) STRICT;
CREATE TABLE IF NOT EXISTS histories (
    history INTEGER PRIMARY KEY,
    bench TEXT NOT NULL,
    journal TEXT NOT NULL,
    contiguous INTEGER NOT NULL DEFAULT 0,
    digest TEXT NOT NULL DEFAULT '',
    first_heard TEXT NOT NULL,
    last_heard TEXT NOT NULL,
    turn INTEGER NOT NULL,
    UNIQUE (bench, journal)
) STRICT;
CREATE TABLE IF NOT EXISTS events (
    history INTEGER NOT NULL REFERENCES histories,
    seq INTEGER NOT NULL,
    boot TEXT NOT NULL,
    monotonic_s REAL NOT NULL,
    time_s REAL NOT NULL,
    wall TEXT NOT NULL,
    clock TEXT NOT NULL,
    kind TEXT NOT NULL,
    body TEXT NOT NULL CHECK (json_valid(body)),
    PRIMARY KEY (history, seq)
) STRICT, WITHOUT ROWID;
CREATE INDEX IF NOT EXISTS events_of_kind ON events (history, kind, seq) WHERE kind <> 'sample_taken';
CREATE TRIGGER IF NOT EXISTS events_stay BEFORE UPDATE ON events
BEGIN SELECT RAISE(ABORT, 'events are only added'); END;
CREATE TABLE IF NOT EXISTS names (bench TEXT PRIMARY KEY, name TEXT NOT NULL) STRICT;
CREATE TABLE IF NOT EXISTS places (bench TEXT PRIMARY KEY, place INTEGER NOT NULL) STRICT;
CREATE TABLE IF NOT EXISTS orders (
    number INTEGER NOT NULL,
    bench TEXT NOT NULL,
    act TEXT NOT NULL CHECK (json_valid(act)),
    given TEXT NOT NULL,
    state TEXT NOT NULL DEFAULT 'pending' CHECK (state IN ('pending', 'taken', 'refused', 'superseded', 'withdrawn')),
    why TEXT,
    PRIMARY KEY (number, bench)
) STRICT, WITHOUT ROWID;
CREATE INDEX IF NOT EXISTS orders_pending ON orders (bench, number) WHERE state = 'pending';
CREATE TABLE IF NOT EXISTS lessons (
    lesson INTEGER PRIMARY KEY,
    label TEXT NOT NULL,
    began TEXT NOT NULL,
    ended TEXT
) STRICT;
CREATE TABLE IF NOT EXISTS made_up (lesson INTEGER PRIMARY KEY REFERENCES lessons, mol_dm3 REAL NOT NULL) STRICT;
CREATE TABLE IF NOT EXISTS practicals (
    lesson INTEGER NOT NULL REFERENCES lessons,
    bench TEXT NOT NULL,
    journal TEXT NOT NULL,
    seq INTEGER NOT NULL,
    PRIMARY KEY (bench, journal, seq)
) STRICT, WITHOUT ROWID;
"""


FILE_NAME, LOCK_NAME = "room.sqlite3", "room.lock"


class StoreError(Exception):
    """The room's record cannot be opened, read or written; the message says what to do."""


class Database:
    """The room's file in this folder, made where there is none; `room` is its own id. Raises StoreError."""

    def __init__(self, folder: Path) -> None:
        self.path = folder / FILE_NAME
        self._lock = threading.Lock()
        self._held: int | None = None
        try:
            folder.mkdir(parents=True, exist_ok=True)
            self._file = WatchedFile(self.path, _opened)
            connection = self._file.connection
            connection.execute("INSERT OR IGNORE INTO about VALUES ('room', ?)", (token_hex(8),))
            row = connection.execute("SELECT value FROM about WHERE key = 'room'").fetchone()
        except sqlite3.DatabaseError as error:
            raise StoreError(_cannot_open(self.path, error)) from None
        except OSError as error:
            told = say("room-folder-cannot-be-made", path=str(folder), reason=str(error.strerror))
            raise StoreError(told) from None
        self.room = str(row[0])

    def hold(self) -> None:
        """Keep other rooms out of this folder as long as this process lives. Raises StoreError when one is in it."""
        try:
            self._held = locked(self.path.parent / LOCK_NAME)
        except JournalError:
            raise StoreError(say("room-another-at-work", path=str(self.path.parent))) from None
        except OSError as error:
            told = say("file-cannot-be-written", path=str(self.path.parent), reason=str(error.strerror))
            raise StoreError(told) from None

    def close(self) -> None:
        """Let the file go. A second call does nothing."""
        with self._lock:
            self._file.close()
            if self._held is not None:
                os.close(self._held)
                self._held = None

    def _rows(self, sql: str, values: Sequence[Any] = ()) -> list[tuple[Any, ...]]:
        try:
            with closing(sqlite3.connect(f"{self.path.resolve().as_uri()}?mode=ro", uri=True, timeout=5)) as reader:
                return reader.execute(sql, values).fetchall()
        except sqlite3.Error as error:
            raise StoreError(say("file-cannot-be-read", path=str(self.path), reason=str(error))) from error

    @contextmanager
    def _writing(self, *, into_file: bool = True) -> Iterator[sqlite3.Connection]:
        """One transaction, all of it or nothing; what benches can send again need not be in the file at once."""
        with self._lock:
            try:
                with self._file.writing(into_file=into_file) as connection:
                    yield connection
            except GoneError as error:
                told = say("room-cannot-be-written-restart", path=str(self.path), reason=str(error))
                raise StoreError(told) from error
            except sqlite3.Error as error:
                told = say("room-cannot-be-written-full", path=str(self.path), reason=str(error))
                raise StoreError(told) from error


def _cannot_open(path: Path, error: sqlite3.Error) -> Message:
    code = getattr(error, "sqlite_errorcode", sqlite3.SQLITE_ERROR) & 0xFF  # the rest tells more of the same fault
    damaged = code in (sqlite3.SQLITE_CORRUPT, sqlite3.SQLITE_NOTADB)
    return say("room-damaged" if damaged else "room-cannot-open", path=str(path), reason=str(error))


def now() -> str:
    """Return the wall time, as a label."""
    return datetime.now(UTC).isoformat(timespec="milliseconds")


def _opened(path: Path) -> sqlite3.Connection:
    connection = sqlite3.connect(path, timeout=5, check_same_thread=False, isolation_level=None)
    try:
        (version,) = connection.execute("PRAGMA user_version").fetchone()
        if version not in (0, SCHEMA_VERSION):
            raise StoreError(say("room-newer", path=str(path), format_version=str(version)))
        for pragma in ("journal_mode = WAL", "synchronous = FULL", "journal_size_limit = 16777216"):
            connection.execute(f"PRAGMA {pragma}")
        connection.executescript(SCHEMA)
        connection.execute(f"PRAGMA user_version = {SCHEMA_VERSION}")
    except BaseException:
        connection.close()
        raise
    return connection
