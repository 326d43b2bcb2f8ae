"""Backup, restore and wipe of a record, by the safe way: SQLite copies, a finished file takes its name at once."""

import os
import shutil
import sqlite3
from pathlib import Path

from station.practical.events import CupTested, ProbeChecked
from station.record.journal import first_broken
from station.record.opening import (
    BEFORE_RESTORE,
    DAMAGED,
    FILE_NAME,
    LOCK_NAME,
    SIDE_FILES,
    JournalError,
    locked,
    open_to_read,
    set_aside,
)
from station.record.register import keep_register, register_of
from station.record.schema import SCHEMA_VERSION

SESSIONS_NAME, LINK_NAME = "sessions.json", "link.json"


def backup(folder: Path, target: Path) -> int:
    """Copy the record of this folder into one file, also while a station writes it; return its number of events.

    Raises JournalError when there is no record, the copy cannot be written, or it is not sound.
    """
    part = target.with_name(f"{target.name}.part")
    try:
        source = open_to_read(folder)
        try:
            part.unlink(missing_ok=True)
            copy = sqlite3.connect(part)
            try:
                source.backup(copy)
                # One file that stands alone: a backup has no log beside it.
                copy.execute("PRAGMA journal_mode = DELETE")
            finally:
                copy.close()
        finally:
            source.close()
        count = checked(part)
        _put_in_place(part, target)
    except (sqlite3.Error, OSError) as error:
        part.unlink(missing_ok=True)
        raise JournalError(f"{target}: the backup could not be written: {error}; choose another place") from error
    except JournalError:
        part.unlink(missing_ok=True)
        raise
    return count


def restore(source: Path, folder: Path) -> tuple[int, Path | None]:
    """Put a backup in the record's place; return its number of events, and where the record before it lies now.

    The record that was there is set aside, with its log, never overwritten. Raises JournalError when the backup
    is not sound or a station is running.
    """
    count = checked(source)
    try:
        folder.mkdir(parents=True, exist_ok=True)
        lock = locked(folder / LOCK_NAME)
        try:
            part = folder / f"{FILE_NAME}.part"
            part.write_bytes(source.read_bytes())
            aside = set_aside(folder, BEFORE_RESTORE)
            _put_in_place(part, folder / FILE_NAME)
        finally:
            os.close(lock)
    except OSError as error:
        raise JournalError(f"{folder}: the record could not be restored: {error.strerror}") from error
    return count, aside


def wipe(folder: Path, *, register_too: bool = False) -> int:
    """Delete the record and the sessions of this folder for good, and the records that were set aside in it.

    The probe register, which is about no class, begins the next record unless `register_too`; return how many checks
    it holds. Raises JournalError while a station is running.
    """
    if not (folder / FILE_NAME).is_file():
        raise JournalError(f"{folder / FILE_NAME}: no record here; name the record's folder with --record")
    try:
        lock = locked(folder / LOCK_NAME)
        try:
            kept = [] if register_too else register_of(folder)
            for name in (*(f"{FILE_NAME}{suffix}" for suffix in ("", *SIDE_FILES)), SESSIONS_NAME, LINK_NAME):
                (folder / name).unlink(missing_ok=True)
            for why in (DAMAGED, BEFORE_RESTORE):
                for aside in folder.glob(f"{why}-*"):
                    shutil.rmtree(aside)
            _sync_folder(folder)
        finally:
            os.close(lock)
    except OSError as error:
        raise JournalError(f"{folder}: the record could not be deleted: {error.strerror}") from error
    if kept:
        keep_register(folder, kept)
    return sum(isinstance(event, ProbeChecked | CupTested) for _, event in kept)


def checked(file: Path) -> int:
    """Return the number of events of a backup. Raises JournalError unless every event is as it was written."""
    if not file.is_file():
        raise JournalError(f"{file}: no such file; check the name")
    try:
        connection = sqlite3.connect(f"{file.resolve().as_uri()}?mode=ro", uri=True)
        try:
            (said,) = connection.execute("PRAGMA quick_check(1)").fetchone()
            (version,) = connection.execute("PRAGMA user_version").fetchone()
            if said != "ok" or version == 0:
                raise JournalError(f"{file}: not a sound backup of a record ({said}); use another one")
            if version > SCHEMA_VERSION:
                raise JournalError(f"{file}: written by a newer station (format {version}); update this one")
            (count,) = connection.execute("SELECT count(*) FROM events").fetchone()
        finally:
            connection.close()
    except sqlite3.Error as error:
        raise JournalError(f"{file}: not a backup of a record: {error}") from error
    broken = first_broken(file.parent, file.name)
    if broken is not None:
        raise JournalError(f"{file}: event {broken} is not as it was written; use another backup")
    return int(count)


def _put_in_place(part: Path, target: Path) -> None:
    with part.open("rb+") as file:
        os.fsync(file.fileno())
    part.replace(target)
    _sync_folder(target.parent)


def _sync_folder(folder: Path) -> None:
    handle = os.open(folder, os.O_RDONLY | os.O_DIRECTORY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)
