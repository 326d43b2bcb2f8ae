"""A damaged record at the start: it is set aside whole, and what can still be read goes on in a new one.

A card that lost its power while it moved data can spoil pages that nobody was writing. Then the station must not
refuse to start, and must not go on writing into the damaged file.
"""

import json
import os
import shutil
import sqlite3
import tempfile
import time
from collections.abc import Iterator, Sequence
from pathlib import Path
from typing import Any

from station.practical.events import Stamped, from_body
from station.practical.events.bench import Event, RecordSalvaged
from station.practical.fold import fold
from station.practical.state import State
from station.record.journal import (
    COLUMNS,
    DAMAGED,
    FILE_NAME,
    LOCK_NAME,
    Journal,
    JournalError,
    Moment,
    chain,
    locked,
    open_to_read,
    open_to_write,
    set_aside,
)
from station.words import say

CHECK_WITHIN_S, CHAIN_WITHIN_S = 2.0, 1.0
"""How long the checks at the start may take, of the file and of the events; a longer journal is checked so far."""

LARGEST_BYTES = 1 << 30
"""No journal is longer: a first page that says more is spoilt itself."""
PAGE_BYTES = 4096
"""SQLite's own choice, which no record changes."""
_DAMAGED = ("malformed", "not a database", "corrupt", "disk image", "no such table")


def opened_journal(folder: Path) -> tuple[Journal, RecordSalvaged | None]:
    """Open the record of this folder; a damaged one is set aside first, and what became of it is returned.

    Raises JournalError when it cannot be opened, or another station holds it.
    """
    if not is_damaged(folder):
        try:
            return Journal(folder), None
        except JournalError as error:
            if not isinstance(error.__cause__, sqlite3.Error) or not _says_damaged(error.__cause__):
                raise
    lock = locked(folder / LOCK_NAME)
    try:
        aside = set_aside(folder, DAMAGED)
        rows = [] if aside is None else _rows_of_copy(aside)
    except OSError as error:
        text = say("record-not-set-aside", path=str(folder), reason=str(error.strerror))
        raise JournalError(text) from error
    finally:
        os.close(lock)
    journal = Journal(folder)
    kept = _kept(rows)
    if kept:
        journal.append(kept).result()
    return journal, RecordSalvaged(len(kept), "" if aside is None else aside.name)


def is_damaged(folder: Path, within_s: float = CHECK_WITHIN_S) -> bool:
    """Whether SQLite's quick check finds the file of this folder damaged, or an event is not as it was written.

    Each stops after its time with what it has found so far; events are looked at from the newest back. No file is
    no damage.
    """
    if not (folder / FILE_NAME).is_file():
        return False
    end_s = time.monotonic() + within_s
    try:
        connection = open_to_read(folder)
        try:
            connection.set_progress_handler(lambda: time.monotonic() > end_s, 10_000)
            (said,) = connection.execute("PRAGMA quick_check(1)").fetchone()
        finally:
            connection.close()
        return str(said) != "ok" or _is_changed(folder)
    except UnicodeDecodeError:  # what SQLite says holds what a spoilt page held
        return True
    except sqlite3.Error as error:
        return _says_damaged(error)


def _is_changed(folder: Path) -> bool:
    """Whether the digests tell of a changed or missing event: SQLite is content with a value that changed."""
    end_s = time.monotonic() + CHAIN_WITHIN_S
    connection = _opened(folder)
    try:
        rows = connection.execute(f"SELECT {COLUMNS},digest FROM events ORDER BY seq DESC")  # noqa: S608
        after: tuple[Any, ...] | None = None
        for row in rows:
            if after is not None and not _follows(row, after):
                return True
            if time.monotonic() > end_s:
                return False
            after = row
        return after is not None and not _follows((0, b""), after)
    finally:
        connection.close()


def _follows(before: tuple[Any, ...], row: tuple[Any, ...]) -> bool:
    """Whether this row, its digest last, comes right after the one before and is as it was written."""
    whole = isinstance(before[-1], bytes) and row[0] == before[0] + 1
    return whole and chain(before[-1], tuple(row[:-1])) == row[-1]


def _opened(folder: Path) -> sqlite3.Connection:
    """Open to read what may be spoilt: text that is none any more must not hide the rest."""
    connection = open_to_read(folder)
    connection.text_factory = lambda content: content.decode("utf-8", "replace")
    return connection


def _says_damaged(error: sqlite3.Error) -> bool:
    return isinstance(error, sqlite3.DatabaseError) and any(words in str(error) for words in _DAMAGED)


def _rows_of_copy(aside: Path) -> list[tuple[Any, ...]]:
    """Read what can be read, from a copy: what lies aside stays as the card left it."""
    with tempfile.TemporaryDirectory(dir=aside, prefix="copy-") as copy:
        for part in aside.iterdir():
            if part.is_file():
                shutil.copy(part, copy)
        _made_whole(Path(copy) / FILE_NAME)
        rows = list(_readable(Path(copy)))
        if not rows:
            _with_first_page(Path(copy) / FILE_NAME)
            rows = list(_readable(Path(copy)))
        return rows


def _made_whole(file: Path) -> None:
    """Append empty pages to a file that was cut short: SQLite refuses one shorter than its first page says."""
    with file.open("rb+") as opened:
        head = opened.read(100)
        if head[:15] != b"SQLite format 3":
            return
        page_bytes = int.from_bytes(head[16:18], "big") if head[16:18] != b"\0\1" else 65536
        pages = int.from_bytes(head[28:32], "big")
        if file.stat().st_size < page_bytes * pages <= LARGEST_BYTES:
            opened.truncate(page_bytes * pages)


def _with_first_page(file: Path) -> None:
    """Give a file the first page that a new record has: it holds where all else lies, which is the same in each."""
    with tempfile.TemporaryDirectory(dir=file.parent) as folder:
        new = Path(folder) / FILE_NAME
        open_to_write(new).close()
        first = bytearray(new.read_bytes()[:PAGE_BYTES])
    first[28:32] = (file.stat().st_size // PAGE_BYTES).to_bytes(4, "big")  # pages of the file (sqlite.org, fileformat2)
    with file.open("rb+") as opened:
        opened.write(first)


def _readable(folder: Path) -> Iterator[tuple[Any, ...]]:
    """Yield the rows that can be read and are as they were written, once each, in order of their numbers.

    From the front to the first bad page, then from the back: what is lost is what lies between.
    """
    front = list(_rows(folder, "ASC"))
    last = front[-1][0] if front else 0
    back = [row for row in _rows(folder, "DESC") if row[0] > last]
    rows = [*front, *reversed(back)]
    before: tuple[Any, ...] | None = (0, b"")
    for row in rows:
        # Right after a gap nothing tells whether a row is as it was; else the digest before it does.
        sound = before is None or row[0] != before[0] + 1 or _follows(before, row)
        before = row if isinstance(row[-1], bytes) else None
        if sound:
            yield tuple(row[:-1])


def _rows(folder: Path, order: str) -> Iterator[tuple[Any, ...]]:
    try:
        connection = _opened(folder)
    except JournalError:
        return
    try:
        yield from connection.execute(f"SELECT {COLUMNS},digest FROM events ORDER BY seq {order}")  # noqa: S608
    except (sqlite3.Error, UnicodeDecodeError):
        return
    finally:
        connection.close()


def _kept(rows: Sequence[tuple[Any, ...]]) -> list[tuple[Moment, Event]]:
    """Return the events that still fit one another: one that speaks of a lost repeat or portion is left out."""
    kept: list[tuple[Moment, Event]] = []
    state = State()
    for _, boot, monotonic_s, time_s, wall, clock, kind, body in rows:
        try:
            event = from_body(kind, json.loads(body))
            state = fold(state, Stamped(0, boot, monotonic_s, time_s, wall, clock, event))
        except (ValueError, LookupError, TypeError):
            continue
        kept.append((Moment(boot, monotonic_s, time_s, wall, clock), event))
    return kept
