"""Backup, restore and wipe of a record, by the safe way: SQLite copies, a finished file takes its name at once."""

import os
import shutil
import sqlite3
from collections.abc import Callable, Iterable, Iterator
from functools import reduce
from pathlib import Path
from typing import Any

from station.practical import events as e
from station.practical.checks.register import LASTING, Probes, fold_probes, tally_events
from station.practical.events.bench import CupTested, ProbeChecked
from station.record.file import sync_folder
from station.record.journal import (
    BEFORE_RESTORE,
    DAMAGED,
    FILE_NAME,
    LOCK_NAME,
    SCHEMA,
    SCHEMA_VERSION,
    SIDE_FILES,
    Journal,
    JournalError,
    Moment,
    chain,
    first_broken,
    locked,
    open_to_read,
    read_events,
    set_aside,
)
from station.words import say

# What of a record is about probes and cups, not about a class: it outlasts a wipe.


KEPT = tuple(kind for kind in LASTING if kind != e.StationStarted.kind)


def register_of(folder: Path) -> list[tuple[Moment, e.Event]]:
    """Return the events of the probe register with their moments; none when nothing was checked or it is unreadable."""
    try:
        happened = list(read_events(folder, kinds=KEPT))
        if not any(isinstance(each.event, e.ProbeChecked | e.CupTested) for each in happened):
            return []
        tallied = _newest_tally(happened)
        before = (each for each in read_events(folder, kinds=LASTING) if each.seq <= tallied)
        at_work = reduce(fold_probes, before, Probes()).probe_id
        probes = reduce(fold_probes, read_events(folder, after=tallied), Probes(at_work))
    except JournalError:
        return []
    kept = [(Moment(each.boot, each.monotonic_s, each.time_s, each.wall, each.clock), each.event) for each in happened]
    return [*kept, *((kept[-1][0], tally) for tally in tally_events(probes))]


def keep_register(folder: Path, kept: list[tuple[Moment, e.Event]]) -> None:
    """Begin a record with these events alone. Raises JournalError."""
    journal = Journal(folder)
    try:
        journal.append(kept).result()
    finally:
        journal.close()


def _newest_tally(happened: list[e.Stamped]) -> int:
    """The samples after the newest tally have not been counted yet."""
    return max((each.seq for each in happened if isinstance(each.event, e.ProbeTallied)), default=0)


SESSIONS_NAME, LINK_NAME = "sessions.json", "link.json"


def backup(folder: Path, target: Path) -> int:
    """Copy the record of this folder into one file, also while a station writes it; return its number of events.

    Raises JournalError when there is no record, the copy cannot be written, or it is not sound.
    """
    return copied(lambda: open_to_read(folder), target, checked)


def copied(opened: Callable[[], sqlite3.Connection], target: Path, check: Callable[[Path], int]) -> int:
    """Copy what `opened` opens into one file, which takes its name once `check` counted its events; return the count.

    Raises JournalError.
    """
    part = target.with_name(f"{target.name}.part")
    try:
        source = opened()
        try:
            part.unlink(missing_ok=True)
            # For nobody else on this computer: it holds all that a class did.
            os.close(os.open(part, os.O_WRONLY | os.O_CREAT | os.O_EXCL | os.O_CLOEXEC, 0o600))
            copy = sqlite3.connect(part)
            try:
                source.backup(copy)
                # One file that stands alone: a backup has no log beside it.
                copy.execute("PRAGMA journal_mode = DELETE")
            finally:
                copy.close()
        finally:
            source.close()
        count = check(part)
        put_in_place(part, target)
    except (sqlite3.Error, OSError) as error:
        part.unlink(missing_ok=True)
        text = say("record-backup-not-written", path=str(target), reason=str(error))
        raise JournalError(text) from error
    except JournalError:
        part.unlink(missing_ok=True)
        raise
    return count


def kept_as_backup(rows: Iterable[tuple[Any, ...]], target: Path) -> int:
    """Write events that were kept elsewhere, rows without digests, into a file that `restore` takes; return how many.

    Raises JournalError for rows that are not an unbroken record from its beginning, or none.
    """
    try:
        os.close(os.open(target, os.O_WRONLY | os.O_CREAT | os.O_EXCL | os.O_CLOEXEC, 0o600))
        written = sqlite3.connect(target)
        try:
            written.executescript(f"{SCHEMA}PRAGMA user_version = {SCHEMA_VERSION};")
            written.executemany("INSERT INTO events VALUES (?,?,?,?,?,?,?,?,?)", _with_digests(rows))
            written.commit()
        finally:
            written.close()
        count = checked(target)
    except (sqlite3.Error, OSError) as error:
        text = say("record-backup-not-written", path=str(target), reason=str(error))
        raise JournalError(text) from error
    if count == 0:
        raise JournalError(say("record-backup-not-sound", path=str(target), reason="0"))
    return count


def _with_digests(rows: Iterable[tuple[Any, ...]]) -> Iterator[tuple[Any, ...]]:
    digest = b""
    for row in rows:
        digest = chain(digest, row)
        yield (*row, digest)


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
            put_in_place(part, folder / FILE_NAME)
        finally:
            os.close(lock)
    except OSError as error:
        text = say("record-not-restored", path=str(folder), reason=str(error.strerror))
        raise JournalError(text) from error
    return count, aside


def wipe(folder: Path, *, register_too: bool = False) -> int:
    """Delete the record and the sessions of this folder for good, and the records that were set aside in it.

    The probe register, which is about no class, begins the next record unless `register_too`; return how many checks
    it holds. Raises JournalError while a station is running.
    """
    if not (folder / FILE_NAME).is_file():
        raise JournalError(say("record-none-here", path=str(folder / FILE_NAME)))
    try:
        lock = locked(folder / LOCK_NAME)
        try:
            kept = [] if register_too else register_of(folder)
            for name in (*(f"{FILE_NAME}{suffix}" for suffix in ("", *SIDE_FILES)), SESSIONS_NAME, LINK_NAME):
                (folder / name).unlink(missing_ok=True)
            for why in (DAMAGED, BEFORE_RESTORE):
                for aside in folder.glob(f"{why}-*"):
                    shutil.rmtree(aside)
            sync_folder(folder)
        finally:
            os.close(lock)
    except OSError as error:
        text = say("record-not-deleted", path=str(folder), reason=str(error.strerror))
        raise JournalError(text) from error
    if kept:
        keep_register(folder, kept)
    return sum(isinstance(event, ProbeChecked | CupTested) for _, event in kept)


def checked(file: Path) -> int:
    """Return the number of events of a backup. Raises JournalError unless every event is as it was written."""
    if not file.is_file():
        raise JournalError(say("file-no-such", path=str(file)))
    try:
        connection = sqlite3.connect(f"{file.resolve().as_uri()}?mode=ro", uri=True)
        try:
            (said,) = connection.execute("PRAGMA quick_check(1)").fetchone()
            (version,) = connection.execute("PRAGMA user_version").fetchone()
            if said != "ok" or version == 0:
                raise JournalError(say("record-backup-not-sound", path=str(file), reason=str(said)))
            if version > SCHEMA_VERSION:
                raise JournalError(say("record-newer", path=str(file), format_version=version))
            (count,) = connection.execute("SELECT count(*) FROM events").fetchone()
        finally:
            connection.close()
    except sqlite3.Error as error:
        raise JournalError(say("record-not-a-backup", path=str(file), reason=str(error))) from error
    broken = first_broken(file.parent, file.name)
    if broken is not None:
        raise JournalError(say("record-backup-changed", path=str(file), event=broken))
    return int(count)


def put_in_place(part: Path, target: Path) -> None:
    """Let a whole file take its name: a cut power leaves the old one or the new one."""
    with part.open("rb+") as file:
        os.fsync(file.fileno())
    part.replace(target)
    sync_folder(target.parent)
