"""Backup and restore of what a room keeps, by the safe way: an SQLite copy, checked before it takes its name."""

import os
import sqlite3
from contextlib import closing
from pathlib import Path

from station.record.journal import BEFORE_RESTORE, JournalError, locked, open_to_read, set_aside
from station.record.upkeep import copied, put_in_place
from station.room.store.database import FILE_NAME, LOCK_NAME, SCHEMA_VERSION
from station.words import say


def backup_room(folder: Path, target: Path) -> int:
    """Copy what the room of this folder keeps into one file, also at work; return its events. Raises JournalError."""
    return copied(lambda: open_to_read(folder, FILE_NAME), target, checked)


def restore_room(source: Path, folder: Path) -> tuple[int, Path | None]:
    """Put a backup in the place of what the room keeps; return its events, and where the file before it lies now.

    Raises JournalError where the backup is not sound or the room is at work; then nothing is changed.
    """
    count = checked(source)
    target = folder / FILE_NAME
    try:
        folder.mkdir(parents=True, exist_ok=True)
        lock = locked(folder / LOCK_NAME)
        try:
            part = target.with_name(f"{target.name}.part")
            part.write_bytes(source.read_bytes())
            aside = set_aside(folder, BEFORE_RESTORE, FILE_NAME)
            put_in_place(part, target)
        finally:
            os.close(lock)
    except OSError as error:
        told = say("record-not-restored", path=str(folder), reason=str(error.strerror))
        raise JournalError(told) from error
    return count, aside


def checked(file: Path) -> int:
    """Return the number of events in a room's backup. Raises JournalError unless it is sound and of this format."""
    try:
        with closing(open_to_read(file.parent, file.name)) as connection:
            (said,) = connection.execute("PRAGMA quick_check(1)").fetchone()
            (version,) = connection.execute("PRAGMA user_version").fetchone()
            if said != "ok":
                raise JournalError(say("record-backup-not-sound", path=str(file), reason=str(said)))
            if version > SCHEMA_VERSION:
                raise JournalError(say("record-newer", path=str(file), format_version=version))
            connection.execute("SELECT 1 FROM about WHERE key = 'room'").fetchone()
            (count,) = connection.execute("SELECT count(*) FROM events").fetchone()
    except sqlite3.Error as error:
        raise JournalError(say("record-not-a-backup", path=str(file), reason=str(error))) from error
    return int(count)
