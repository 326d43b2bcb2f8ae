"""Every practical of a record as files: one folder each, with samples, readings, spreadsheet and journal."""

import time
import zipfile
from collections.abc import Iterable, Iterator
from dataclasses import dataclass
from datetime import datetime
from itertools import pairwise, takewhile
from pathlib import Path
from typing import Any

from station.practical.events import Stamped
from station.practical.events.bench import PlanChosen
from station.practical.fold import fold_all
from station.practical.state import State
from station.record.exchange import WITHOUT_SAMPLES, journal_piece, readings_text, record_text
from station.record.journal import read_events
from station.record.spreadsheet.file import spreadsheet
from station.record.spreadsheet.sheets import record_sheets
from station.words import ENGLISH

# A zip file that is made while it is sent: what was taken from it is never held again.


PACKED = (".whl", ".xlsx")
"""Endings of what is packed already."""


class Zipped:
    """Takes files and gives the bytes of the zip piece by piece (ZIP application note, with data descriptors)."""

    def __init__(self) -> None:
        self._sink = _Sink()
        self._zip = _Unfinished(self._sink, "w")  # type: ignore[call-overload]

    def file(self, name: str, pieces: Iterable[bytes]) -> Iterator[bytes]:
        """Yield what the zip grows by with this file."""
        entry = zipfile.ZipInfo(name, max(time.localtime()[:6], (1980, 1, 1, 0, 0, 0)))
        entry.compress_type = zipfile.ZIP_STORED if name.endswith(PACKED) else zipfile.ZIP_DEFLATED
        entry.external_attr = 0o600 << 16
        with self._zip.open(entry, "w") as file:
            for piece in pieces:
                file.write(piece)
                yield self._sink.taken()
        yield self._sink.taken()

    def end(self) -> bytes:
        """Return the rest, after which the zip is whole."""
        self._zip.close()
        return self._sink.taken()


class _Unfinished(zipfile.ZipFile):
    """Says nothing when its client went before the end: what nobody takes need not be closed."""

    def __del__(self) -> None:
        """Close nothing."""


class _Sink:
    """What is written and not yet taken; it cannot seek, and zipfile then writes what a stream needs."""

    def __init__(self) -> None:
        self._held = bytearray()

    def write(self, content: bytes) -> int:
        self._held += content
        return len(content)

    def flush(self) -> None:
        """Nothing is held back."""

    def taken(self) -> bytes:
        content = bytes(self._held)
        self._held.clear()
        return content


EARLIEST_YEAR = 2025
NEWEST = 2**62


@dataclass(frozen=True)
class Practical:
    """Where a practical stands in the journal: from the choice of its plan to the one before the next choice."""

    number: int
    day: str | None
    first: int
    last: int

    @property
    def folder(self) -> str:
        """Return the name of its folder: its number, and its day where the clock knew it."""
        return "-".join([f"{self.number:04d}", *([self.day] if self.day else [])])


def practicals(folder: Path) -> list[Practical]:
    """Return the practicals of the record in this folder, oldest first. Raises JournalError when there is none."""
    chosen = list(read_events(folder, kinds=(PlanChosen.kind,)))
    ends = [(each, following.seq - 1) for each, following in pairwise(chosen)]
    ends += [(chosen[-1], NEWEST)] if chosen else []
    return [Practical(number, _day(each), each.seq, last) for number, (each, last) in enumerate(ends, 1)]


def state_of(folder: Path, practical: Practical) -> State:
    """Return how a practical stood at its end."""
    return fold_all(_events(folder, practical))


def files_of(
    folder: Path, practical: Practical, state: State, result: dict[str, Any] | None, language: str = ENGLISH
) -> Iterator[tuple[str, Iterator[bytes]]]:
    """Yield name and content of each file of a practical; `result` is what `shown_result` gives, None without one.

    The spreadsheet is in `language`; what programs read is the same in all.
    """
    at = practical.folder
    yield f"{at}/record.csv", iter([record_text(state).encode()])
    yield f"{at}/readings.csv", iter([readings_text(state).encode()])
    happened = list(_events(folder, practical, WITHOUT_SAMPLES))
    sheets = record_sheets(state.name or "", state, result, happened)
    yield f"{at}/record.xlsx", iter([spreadsheet(sheets, language)])
    yield f"{at}/journal.jsonl", _journal(folder, practical)


def _journal(folder: Path, practical: Practical) -> Iterator[bytes]:
    following = practical.first
    while True:
        piece, following = journal_piece(folder, following, practical.last)
        if not piece:
            return
        yield piece.encode()


def _events(folder: Path, practical: Practical, kinds: tuple[str, ...] = ()) -> Iterator[Stamped]:
    events = read_events(folder, after=practical.first - 1, kinds=kinds)
    return takewhile(lambda each: each.seq <= practical.last, events)


def _day(chosen: Stamped) -> str | None:
    try:
        day = datetime.fromisoformat(chosen.wall).astimezone()
    except (ValueError, OverflowError):
        return None
    return day.date().isoformat() if day.year >= EARLIEST_YEAR else None
