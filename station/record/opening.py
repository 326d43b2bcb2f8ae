"""Opens the journal's file: to write by one process only, to read by any."""

import fcntl
import os
import sqlite3
from pathlib import Path

from station.record.schema import SCHEMA, SCHEMA_VERSION

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
    return JournalError(f"{path}: cannot open the record: {error}; make its folder writable or choose another")


def locked(path: Path) -> int:
    """Hold this folder's record: two writers would number their events alike. A killed process lets go."""
    lock = os.open(path, os.O_RDWR | os.O_CREAT | os.O_CLOEXEC, 0o644)
    try:
        fcntl.flock(lock, fcntl.LOCK_EX | fcntl.LOCK_NB)
    except BlockingIOError:
        os.close(lock)
        raise JournalError(f"{path.parent}: another station keeps its record here; stop it first") from None
    return lock


def open_to_write(path: Path) -> sqlite3.Connection:
    """Open the file, made where there is none. Raises JournalError, or what SQLite raises."""
    connection = sqlite3.connect(path, timeout=5, check_same_thread=False, isolation_level=None)
    try:
        version = int(connection.execute("PRAGMA user_version").fetchone()[0])
        if version not in (0, SCHEMA_VERSION):
            raise JournalError(f"{path}: written by a newer station (format {version}); update this one")
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


def set_aside(folder: Path, why: str) -> Path | None:
    """Move the record with its log into a numbered folder of its own beside it; None when there is none."""
    parts = [part for suffix in ("", *SIDE_FILES) if (part := folder / f"{FILE_NAME}{suffix}").exists()]
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
        raise JournalError(f"{path}: no record here; name the record's folder with --record")
    try:
        return sqlite3.connect(f"{path.resolve().as_uri()}?mode=ro", uri=True, timeout=5)
    except sqlite3.Error as error:
        raise JournalError(f"{path}: cannot open the record: {error}") from error


def tail(connection: sqlite3.Connection) -> tuple[int, bytes]:
    """Return sequence number and digest of the newest event; (0, b"") when there is none."""
    row = connection.execute("SELECT seq, digest FROM events ORDER BY seq DESC LIMIT 1").fetchone()
    return (int(row[0]), bytes(row[1])) if row else (0, b"")
