"""The journal of a practical as JSON lines, in pieces: a long practical is never held whole."""

import json
from collections.abc import Iterator, Sequence
from itertools import islice
from pathlib import Path

from station.practical.events import EVENTS, PlanChosen, SampleTaken, Stamped, Unknown
from station.record.journal import read_events

PIECE = 500
WITHOUT_SAMPLES = tuple(kind for kind in EVENTS if kind != SampleTaken.kind)
"""All kinds of events but the many."""


def newest_began(folder: Path) -> int:
    """Return the number of the event that the newest practical began with; 1 where none was chosen.

    Raises JournalError.
    """
    chosen = [each.seq for each in read_events(folder, kinds=(PlanChosen.kind,))]
    return chosen[-1] if chosen else 1


def journal_piece(folder: Path, first: int, last: int, kinds: Sequence[str] = ()) -> tuple[str, int]:
    """Return the events from number `first` to `last` as JSON lines, at most PIECE, and the number to go on with.

    With `kinds` only events of these. An empty text ends it. The file is open only meanwhile, so each piece may be
    asked for by another thread.
    Raises JournalError.
    """
    events = list(islice(read_events(folder, after=first - 1, kinds=kinds), PIECE))
    lines = [journal_line(each) for each in events if each.seq <= last]
    return "".join(lines), events[-1].seq + 1 if events else first


def journal_lines(folder: Path) -> Iterator[str]:
    """Yield the newest practical as JSON lines. Raises JournalError."""
    return (journal_line(each) for each in read_events(folder, after=newest_began(folder) - 1))


def journal_line(stamped: Stamped) -> str:
    """Return one event as a line: its place, bench time, wall time with how it was set, kind and body."""
    event = stamped.event
    kind, body = (event.name, event.body) if isinstance(event, Unknown) else (event.kind, event.to_body())
    line = {
        "seq": stamped.seq,
        "boot": stamped.boot,
        "time_s": stamped.time_s,
        "wall": stamped.wall,
        "clock": stamped.clock,
        "kind": kind,
        "body": body,
    }
    return json.dumps(line, ensure_ascii=False, allow_nan=False) + "\n"
