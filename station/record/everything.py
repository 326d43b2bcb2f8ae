"""Every practical of a record as files: one folder each, with samples, readings, spreadsheet and journal."""

from collections.abc import Iterator
from dataclasses import dataclass
from datetime import datetime
from itertools import pairwise, takewhile
from pathlib import Path
from typing import Any

from station.practical.events import PlanChosen, Stamped
from station.practical.fold import fold_all
from station.practical.state import State
from station.record.exchange import readings_text, record_text
from station.record.exchange_journal import WITHOUT_SAMPLES, journal_piece
from station.record.journal import read_events
from station.record.spreadsheet import spreadsheet
from station.record.spreadsheet_sheets import record_sheets

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
    folder: Path, practical: Practical, state: State, result: dict[str, Any] | None
) -> Iterator[tuple[str, Iterator[bytes]]]:
    """Yield name and content of each file of a practical; `result` is what `shown_result` gives, None without one."""
    at = practical.folder
    yield f"{at}/record.csv", iter([record_text(state).encode()])
    yield f"{at}/readings.csv", iter([readings_text(state).encode()])
    happened = list(_events(folder, practical, WITHOUT_SAMPLES))
    yield f"{at}/record.xlsx", iter([spreadsheet(record_sheets(state.name or "", state, result, happened))])
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
