"""The journal: one append-only SQLite file, one thread that writes it, and an answer only after the commit.

WAL with synchronous FULL: a commit that was answered survives a pulled plug. Triggers refuse changes and
deletions, and `recursive_triggers` closes the way around them that REPLACE would be. Each row carries the
digest of the one before, so that a page that went bad is noticed even where SQLite's own check is content.
"""

import hashlib
import json
import queue
import sqlite3
import threading
from collections.abc import Iterator, Sequence
from concurrent.futures import Future
from dataclasses import dataclass
from pathlib import Path
from typing import Any

from station.practical.events import Event, Stamped, from_body
from station.record.schema import SCHEMA, SCHEMA_VERSION

FILE_NAME = "journal.sqlite3"


class JournalError(Exception):
    """The record cannot be opened or written; the message says what to do."""


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
            self._connection = _open(self.path)
        except (OSError, sqlite3.Error) as error:
            raise JournalError(f"{self.path}: cannot open the record: {error}") from error
        self._seq, self._digest = _tail(self._connection)
        self._queue: queue.SimpleQueue[Write | None] = queue.SimpleQueue()
        self._closed = False
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
        if self._closed:
            answer.set_exception(JournalError(f"{self.path}: the record is closed"))
        else:
            self._queue.put((happened, answer))
        return answer

    def close(self) -> None:
        """Commit what is queued, fold the WAL into the file and close; a second call does nothing."""
        if self._closed:
            return
        self._closed = True
        self._queue.put(None)
        self._thread.join(timeout=10)

    def _work(self) -> None:
        while (write := self._queue.get()) is not None:
            happened, answer = write
            if not answer.set_running_or_notify_cancel():
                continue  # nobody waits any more: it was never answered, so it did not happen
            try:
                answer.set_result(self._commit(happened))
            except (sqlite3.Error, ValueError, TypeError) as error:
                answer.set_exception(JournalError(f"{self.path}: cannot write the record: {error}"))
        self._connection.execute("PRAGMA wal_checkpoint(TRUNCATE)")
        self._connection.close()

    def _commit(self, happened: Sequence[tuple[Moment, Event]]) -> list[Stamped]:
        seq, digest = self._seq, self._digest
        stamped, rows = [], []
        for at, event in happened:
            seq += 1
            body = json.dumps(event.to_body(), ensure_ascii=False, separators=(",", ":"), allow_nan=False)
            digest = chain(digest, seq, event.kind, body)
            rows.append((seq, at.boot, at.monotonic_s, at.time_s, at.wall, at.clock, event.kind, body, digest))
            stamped.append(Stamped(seq, at.boot, at.monotonic_s, at.time_s, at.wall, at.clock, event))
        with self._connection:
            self._connection.execute("BEGIN IMMEDIATE")
            self._connection.executemany("INSERT INTO events VALUES (?,?,?,?,?,?,?,?,?)", rows)
        self._seq, self._digest = seq, digest
        return stamped


def chain(before: bytes, seq: int, kind: str, body: str) -> bytes:
    """Return the digest of an event that follows one with digest `before`."""
    return hashlib.blake2b(before + f"{seq}\n{kind}\n{body}".encode(), digest_size=16).digest()


def read_events(folder: Path, after: int = 0, kinds: Sequence[str] = ()) -> Iterator[Stamped]:
    """Yield the committed events after this sequence number, in order, from a read-only connection.

    Raises JournalError when there is no record or it cannot be read.
    """
    where = f" AND kind IN ({','.join('?' * len(kinds))})" if kinds else ""
    sql = f"SELECT seq,boot,monotonic_s,time_s,wall,clock,kind,body FROM events WHERE seq > ?{where} ORDER BY seq"  # noqa: S608
    connection = _open_to_read(folder)
    try:
        for row in connection.execute(sql, (after, *kinds)):
            yield _stamped(row)
    except sqlite3.Error as error:
        raise JournalError(f"{folder / FILE_NAME}: cannot read the record: {error}") from error
    finally:
        connection.close()


def last_of(folder: Path, kind: str) -> int:
    """Return the sequence number of the newest event of this kind; 0 when there is none."""
    connection = _open_to_read(folder)
    try:
        return int(connection.execute("SELECT coalesce(max(seq), 0) FROM events WHERE kind = ?", (kind,)).fetchone()[0])
    finally:
        connection.close()


def _stamped(row: tuple[Any, ...]) -> Stamped:
    seq, boot, monotonic_s, time_s, wall, clock, kind, body = row
    return Stamped(seq, boot, monotonic_s, time_s, wall, clock, from_body(kind, json.loads(body)))


def _open(path: Path) -> sqlite3.Connection:
    connection = sqlite3.connect(path, timeout=5, check_same_thread=False, isolation_level=None)
    for pragma in ("journal_mode = WAL", "synchronous = FULL", "recursive_triggers = 1", "foreign_keys = 1"):
        connection.execute(f"PRAGMA {pragma}")
    # A cut plug leaves a WAL behind; a size limit keeps one long reader from filling the card.
    connection.execute("PRAGMA journal_size_limit = 4194304")
    connection.executescript(SCHEMA)
    version = int(connection.execute("PRAGMA user_version").fetchone()[0])
    if version not in (0, SCHEMA_VERSION):
        connection.close()
        raise JournalError(f"{path}: written by a newer station (format {version}); update this one")
    connection.execute(f"PRAGMA user_version = {SCHEMA_VERSION}")
    return connection


def _open_to_read(folder: Path) -> sqlite3.Connection:
    path = folder / FILE_NAME
    if not path.is_file():
        raise JournalError(f"{path}: no record here; name the record's folder with --record")
    try:
        return sqlite3.connect(f"{path.resolve().as_uri()}?mode=ro", uri=True, timeout=5)
    except sqlite3.Error as error:
        raise JournalError(f"{path}: cannot open the record: {error}") from error


def _tail(connection: sqlite3.Connection) -> tuple[int, bytes]:
    row = connection.execute("SELECT seq, digest FROM events ORDER BY seq DESC LIMIT 1").fetchone()
    return (int(row[0]), bytes(row[1])) if row else (0, b"")
