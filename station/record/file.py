"""An SQLite file in WAL mode with one connection that writes it, and with what somebody may delete under it.

SQLite writes on into files that have no name any more, and what it acknowledged goes with them. So before and after
each transaction the file and its log must be the ones that have the names. A log that lost its name is written there
anew, whole, before it is folded into the file: whenever the plug is pulled, one of the two has everything.

The shared memory (`-shm`) is made anew from the log at every start, so nothing that was acknowledged depends on it.
"""

import os
import shutil
import sqlite3
from collections.abc import Callable, Iterator
from contextlib import contextmanager, suppress
from pathlib import Path

from station.words import say

FOLD_AFTER = 60
"""So many transactions at most wait in the log; with a sample each second, a minute's."""


class GoneError(Exception):
    """File or log were moved or deleted, and what is written now could not be found again."""


class WatchedFile:
    """The file at this path; `opened` opens it to write. Raises what that raises, and OSError."""

    def __init__(self, path: Path, opened: Callable[[Path], sqlite3.Connection]) -> None:
        self.path, self._opened = path, opened
        self._lost: GoneError | None = None
        self._open()

    def _open(self) -> None:
        connection = self._opened(self.path)
        try:
            (mode,) = connection.execute("PRAGMA journal_mode").fetchone()  # some file systems can have no log
            self._log_path = self.path.with_name(f"{self.path.name}-wal") if mode == "wal" else None
            self._log = None if self._log_path is None else os.open(self._log_path, os.O_RDONLY | os.O_CLOEXEC)
            self._file = _file_at(self.path)
        except BaseException:
            connection.close()
            raise
        self.connection, self._waiting = connection, 0

    @contextmanager
    def writing(self, *, into_file: bool) -> Iterator[sqlite3.Connection]:
        """One transaction, all of it or nothing; afterwards it is where the next start finds it.

        With `into_file` it is in the file itself, not in the log alone, unless somebody is reading just then. Raises
        sqlite3.Error and GoneError: then it did not happen, or nothing can be written until the file is opened anew.
        """
        self.look()
        with self.connection:
            self.connection.execute("BEGIN IMMEDIATE")
            yield self.connection
        self._waiting += 1
        try:
            self.look()
        except GoneError as error:
            self._lost = error
            raise
        if into_file or self._waiting >= FOLD_AFTER:
            self.fold()

    def look(self) -> None:
        """Write the log anew if it was deleted. Raises GoneError where that cannot be done, or the file is gone."""
        if self._lost is not None:
            raise self._lost
        if _file_at(self.path) != self._file:
            raise GoneError(say("record-moved"))
        if self._log_path is None or self._log is None:
            return
        about = os.fstat(self._log)
        if _file_at(self._log_path) != (about.st_dev, about.st_ino):
            self._mend(self._log_path, self._log)

    def fold(self) -> None:
        """Put what waits in the log into the file, so far as nobody reads what was before it."""
        if self._waiting:
            with suppress(sqlite3.Error):  # it is in the log, and goes into the file another time
                _, in_log, folded = self.connection.execute("PRAGMA wal_checkpoint(PASSIVE)").fetchone()
                self._waiting = 0 if in_log == folded else self._waiting

    def close(self) -> None:
        """Put everything into the file and let it go."""
        with suppress(sqlite3.Error):  # a log that cannot be folded in is folded in at the next start
            self.connection.execute("PRAGMA wal_checkpoint(TRUNCATE)")
        self.connection.close()
        if self._log is not None:
            os.close(self._log)

    def _mend(self, log_path: Path, log: int) -> None:
        before = self.connection
        failed: Exception | None = None
        try:
            _written_anew(log_path, log)
        except OSError as error:
            failed = error
        try:
            (busy, _, _) = before.execute("PRAGMA wal_checkpoint(TRUNCATE)").fetchone()
            if busy and failed is None:
                return  # somebody reads: the new log has everything, and the next look tries again
            if not busy:
                self._open()
                before.close()
                os.close(log)
                return
        except (sqlite3.Error, OSError) as error:
            failed = failed or error
        raise GoneError(say("record-log-deleted", file=log_path.name, reason=str(failed)))


def _written_anew(path: Path, log: int) -> None:
    """Give the content of an open log its name again, in one step."""
    part = path.with_name(f"{path.name}.part")
    with (
        os.fdopen(os.dup(log), "rb") as source,
        os.fdopen(os.open(part, os.O_WRONLY | os.O_CREAT | os.O_TRUNC, os.fstat(log).st_mode & 0o777), "wb") as target,
    ):
        source.seek(0)
        shutil.copyfileobj(source, target)
        target.flush()
        os.fsync(target.fileno())
    part.replace(path)
    sync_folder(path.parent)


def sync_folder(folder: Path) -> None:
    """Make sure that what was named, renamed or deleted in this folder stays so when the plug is pulled."""
    handle = os.open(folder, os.O_RDONLY | os.O_DIRECTORY)
    try:
        os.fsync(handle)
    finally:
        os.close(handle)


def _file_at(path: Path) -> tuple[int, int] | None:
    """Return which file lies at this path now; None when there is none."""
    try:
        found = path.stat()
    except OSError:
        return None
    return found.st_dev, found.st_ino
