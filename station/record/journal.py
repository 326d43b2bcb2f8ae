"""The journal: one append-only SQLite file, one thread that writes it, and an answer only after the commit.

WAL with synchronous FULL: a commit that was answered survives a pulled plug. Triggers refuse changes and
deletions, and any number but the next, so that REPLACE is no way around them. Each row's digest covers the
digest of the one before, so that a page that went bad is noticed even where SQLite's own check is content.
"""

import contextlib
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

from station.practical.events import Event, Stamped, from_body
from station.record.opening import (
    FILE_NAME,
    LOCK_NAME,
    JournalError,
    cannot_open,
    locked,
    open_to_read,
    open_to_write,
    tail,
)

__all__ = [
    "COLUMNS",
    "FILE_NAME",
    "Journal",
    "JournalError",
    "Moment",
    "chain",
    "first_broken",
    "read_events",
    "read_rows",
]

CLOSE_WITHIN_S = 10.0


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
            self._connection = open_to_write(self.path)
            self._seq, self._digest = tail(self._connection)
            self._file = _file_at(self.path)
        except BaseException as error:
            os.close(self._lock)
            if isinstance(error, sqlite3.Error):
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
                answer.set_exception(JournalError(f"{self.path}: the record is closed"))
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
        while (write := self._queue.get()) is not None:
            happened, answer = write
            if not answer.set_running_or_notify_cancel():
                continue  # nobody waits any more: it was never answered, so it did not happen
            try:
                answer.set_result(self._commit(happened))
            except Exception as error:  # whatever an event holds, the thread must live for the next
                answer.set_exception(JournalError(f"{self.path}: cannot write the record: {error}"))
        with contextlib.suppress(sqlite3.Error):  # a WAL that cannot be folded in is folded in at the next start
            self._connection.execute("PRAGMA wal_checkpoint(TRUNCATE)")
        self._connection.close()
        os.close(self._lock)

    def _commit(self, happened: Sequence[tuple[Moment, Event]]) -> list[Stamped]:
        if _file_at(self.path) != self._file:  # SQLite would go on writing into what nobody can open any more
            raise JournalError("its file was moved or deleted; restart the station")
        seq, digest = self._seq, self._digest
        stamped, rows = [], []
        for at, event in happened:
            seq += 1
            body = json.dumps(event.to_body(), ensure_ascii=False, separators=(",", ":"), allow_nan=False)
            row = (seq, at.boot, float(at.monotonic_s), float(at.time_s), at.wall, at.clock, event.kind, body)
            digest = chain(digest, row)
            rows.append((*row, digest))
            stamped.append(Stamped(seq, at.boot, at.monotonic_s, at.time_s, at.wall, at.clock, event))
        with self._connection:
            self._connection.execute("BEGIN IMMEDIATE")
            self._connection.executemany("INSERT INTO events VALUES (?,?,?,?,?,?,?,?,?)", rows)
        self._seq, self._digest = seq, digest
        return stamped


def _file_at(path: Path) -> tuple[int, int] | None:
    """Return which file lies at this path now; None when there is none."""
    try:
        found = path.stat()
    except OSError:
        return None
    return found.st_dev, found.st_ino


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
            raise JournalError(f"{folder / FILE_NAME}: event {row[0]} cannot be read: {error}") from error


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
        raise JournalError(f"{folder / name}: cannot read the record: {error}") from error
    finally:
        connection.close()


def _stamped(row: tuple[Any, ...]) -> Stamped:
    seq, boot, monotonic_s, time_s, wall, clock, kind, body = row
    return Stamped(seq, boot, monotonic_s, time_s, wall, clock, from_body(kind, json.loads(body)))
