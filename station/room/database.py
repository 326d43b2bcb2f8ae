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

from station.record.opening import JournalError, locked
from station.room.schema import SCHEMA, SCHEMA_VERSION

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
            self._connection = _opened(self.path)
            self._connection.execute("INSERT OR IGNORE INTO about VALUES ('room', ?)", (token_hex(8),))
            row = self._connection.execute("SELECT value FROM about WHERE key = 'room'").fetchone()
        except sqlite3.DatabaseError as error:
            raise StoreError(_cannot_open(self.path, error)) from None
        except OSError as error:
            raise StoreError(f"{folder}: cannot be made: {error.strerror}; choose another room.folder") from None
        self.room = str(row[0])

    def hold(self) -> None:
        """Keep other rooms out of this folder as long as this process lives. Raises StoreError when one is in it."""
        try:
            self._held = locked(self.path.parent / LOCK_NAME)
        except JournalError:
            raise StoreError(f"{self.path.parent}: another room is at work here; stop it first") from None
        except OSError as error:
            raise StoreError(f"{self.path.parent}: cannot be written: {error.strerror}") from None

    def close(self) -> None:
        """Let the file go. A second call does nothing."""
        with self._lock:
            self._connection.close()
            if self._held is not None:
                os.close(self._held)
                self._held = None

    def _rows(self, sql: str, values: Sequence[Any] = ()) -> list[tuple[Any, ...]]:
        try:
            with closing(sqlite3.connect(f"{self.path.resolve().as_uri()}?mode=ro", uri=True, timeout=5)) as reader:
                return reader.execute(sql, values).fetchall()
        except sqlite3.Error as error:
            raise StoreError(f"{self.path}: cannot be read: {error}") from error

    @contextmanager
    def _writing(self) -> Iterator[sqlite3.Connection]:
        """One transaction: all of it or nothing."""
        with self._lock:
            try:
                self._connection.execute("BEGIN IMMEDIATE")
                try:
                    yield self._connection
                    self._connection.execute("COMMIT")
                except BaseException:
                    self._connection.rollback()
                    raise
            except sqlite3.Error as error:
                raise StoreError(f"{self.path}: cannot be written: {error}; is the disk full?") from error


def _cannot_open(path: Path, error: sqlite3.Error) -> str:
    if any(words in str(error) for words in ("malformed", "not a database", "disk image")):
        return f"{path}: damaged ({error}); move it elsewhere and start again: the benches send what they have"
    return f"{path}: cannot open: {error}; make its folder writable or choose another room.folder"


def now() -> str:
    """Return the wall time, as a label."""
    return datetime.now(UTC).isoformat(timespec="milliseconds")


def _opened(path: Path) -> sqlite3.Connection:
    connection = sqlite3.connect(path, timeout=5, check_same_thread=False, isolation_level=None)
    try:
        (version,) = connection.execute("PRAGMA user_version").fetchone()
        if version not in (0, SCHEMA_VERSION):
            raise StoreError(f"{path}: written by a newer room (format {version}); update this one")
        for pragma in ("journal_mode = WAL", "synchronous = FULL", "journal_size_limit = 16777216"):
            connection.execute(f"PRAGMA {pragma}")
        connection.executescript(SCHEMA)
        connection.execute(f"PRAGMA user_version = {SCHEMA_VERSION}")
    except BaseException:
        connection.close()
        raise
    return connection
