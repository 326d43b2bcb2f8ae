"""Files that leave the record: CSV as RFC 4180 with a dot, or with semicolons and a decimal comma for spreadsheets.

Units stand in the headers. Nothing but numbers, and a check's kind and day, stands in the cells, so no cell can begin a
formula. Where the probe's temperatures were corrected, further columns say by how much, and by which check.
"""

import csv
import io
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path

from station.practical.dataset import repeat_data
from station.practical.events import PlanChosen, Stamped
from station.practical.fold import fold_all
from station.practical.probe_used import used_in
from station.practical.readings_text import READINGS_HEADER
from station.practical.state import Repeat, State
from station.record.journal import read_events

CORRECTED_HEADER = ("correction_c", "u_correction_c", "u_slope", "check", "checked_on")
"""Columns of a file in which temperatures are corrected: what was added, its u, the relative u of a difference."""

__all__ = [
    "CORRECTED_HEADER",
    "READINGS_HEADER",
    "RECORD_HEADER",
    "newest_practical",
    "readings_text",
    "record_csv",
    "record_text",
]

RECORD_HEADER = ("repeat", "time_s", "temperature_c", "portion_cm3")


def newest_practical(folder: Path) -> Iterator[Stamped]:
    """Yield the events of the newest practical, from the choice of its plan on. Raises JournalError."""
    chosen = [each.seq for each in read_events(folder, kinds=(PlanChosen.kind,))]
    return read_events(folder, after=chosen[-1] - 1 if chosen else 0)


def record_csv(folder: Path) -> str:
    """Return the record CSV of the newest practical in a record's folder. Raises JournalError when there is none."""
    return record_text(fold_all(newest_practical(folder)))


def record_text(state: State, *, decimal_comma: bool = False) -> str:
    """Return the samples of a practical: a sample row has a temperature, a portion row a volume.

    Times start afresh in each repeat; a conversion that was under way when it began stands before 0. Bad samples
    have neither and are left out; so is a repeat that was set aside and a portion that was taken back. Readings
    taken over from another group have no samples: these are always the bench's own.
    """
    repeats = [repeat for repeat in state.repeats if repeat.counts]
    more = _is_corrected(repeats)
    rows = (row for repeat in repeats for row in _record_rows(repeat, more))
    return _csv((*RECORD_HEADER, *(CORRECTED_HEADER if more else ())), rows, decimal_comma)


def readings_text(state: State, *, decimal_comma: bool = False) -> str:
    """Return the readings that the practical works with: total added and temperature, those in doubt left out."""
    more = _is_corrected(state.counted)
    rows = (
        (
            str(repeat.repeat),
            f"{row.volume_cm3:.6g}",
            f"{row.temperature_c:.4f}",
            *(_correction(repeat) if more else ()),
        )
        for repeat in state.counted
        for row in repeat_data(repeat).readings
    )
    return _csv((*READINGS_HEADER, *(CORRECTED_HEADER if more else ())), rows, decimal_comma)


def _is_corrected(repeats: Iterable[Repeat]) -> bool:
    return any(used is not None and used.check is not None for used in map(used_in, repeats))


def _correction(repeat: Repeat) -> tuple[str, ...]:
    used = used_in(repeat)
    if used is None or used.check is None:
        return ("", "", "", "", "")
    return (f"{used.correction_c:.4f}", f"{used.u_c:.4f}", f"{used.u_slope:.6f}", used.check, used.day)


def _record_rows(repeat: Repeat, more: bool) -> list[tuple[str, ...]]:
    rows: list[tuple[float, tuple[str, ...]]] = []
    same = _correction(repeat)[1:] if more else ()
    for sample in repeat.samples:
        if sample.temperature_c is not None:
            added = (f"{sample.correction_c:.4f}", *same) if more else ()
            rows.append((sample.time_s, (f"{sample.temperature_c:.4f}", "", *added)))
    nothing = ("",) * (len(CORRECTED_HEADER) if more else 0)
    rows += [(each.time_s, ("", f"{each.volume_cm3:g}", *nothing)) for each in repeat.portions]
    rows.sort(key=lambda row: row[0])
    return [(str(repeat.repeat), f"{time_s - repeat.begun_s:.3f}", *cells) for time_s, cells in rows]


def _csv(header: Sequence[str], rows: Iterable[Sequence[str]], decimal_comma: bool) -> str:
    out = io.StringIO()
    writer = csv.writer(out, delimiter=";" if decimal_comma else ",")
    writer.writerow(header)
    writer.writerows([cell.replace(".", ",") for cell in row] if decimal_comma else row for row in rows)
    return out.getvalue()
