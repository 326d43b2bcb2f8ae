"""A sheet of a spreadsheet before it is written: plain values in rows. Knows no file format."""

from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime
from typing import TypeAlias

Cell: TypeAlias = str | float | int | datetime | None
Row: TypeAlias = Sequence[Cell]


@dataclass(frozen=True)
class Sheet:
    """A sheet: its name, the columns' headers and widths in characters, its rows from top to bottom."""

    name: str
    columns: Sequence[tuple[str, float]]
    rows: Iterable[Row]


def local_time(wall: str) -> datetime | None:
    """Return a wall time (ISO 8601) in the station's own time zone, which it then leaves out; None when it is none.

    A spreadsheet knows no time zones, and no time before 1900.
    """
    try:
        local = datetime.fromisoformat(wall).astimezone().replace(tzinfo=None)
    except (ValueError, OverflowError, OSError):
        return None
    return local if local.year >= 1900 else None


def yes(value: bool) -> str:
    """Return a truth as a word."""
    return "yes" if value else "no"
