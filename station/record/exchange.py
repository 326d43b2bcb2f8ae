"""Files that leave the record: CSV as RFC 4180 with a dot, or with semicolons and a decimal comma for spreadsheets.

Units stand in the headers. Nothing but numbers stands in the cells, so no cell can begin a formula.
"""

import csv
import io
from collections.abc import Iterable, Iterator, Sequence
from pathlib import Path

from station.practical.dataset import repeat_data
from station.practical.events import PlanChosen, Stamped
from station.practical.fold import fold_all
from station.practical.readings_text import READINGS_HEADER
from station.practical.state import Repeat, State
from station.record.journal import read_events

__all__ = ["READINGS_HEADER", "RECORD_HEADER", "newest_practical", "readings_text", "record_csv", "record_text"]

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
    rows = (row for repeat in state.repeats if repeat.counts for row in _record_rows(repeat))
    return _csv(RECORD_HEADER, rows, decimal_comma)


def readings_text(state: State, *, decimal_comma: bool = False) -> str:
    """Return the readings that the practical works with: total added and temperature, those in doubt left out."""
    rows = (
        (str(repeat.repeat), f"{row.volume_cm3:.6g}", f"{row.temperature_c:.4f}")
        for repeat in state.counted
        for row in repeat_data(repeat).readings
    )
    return _csv(READINGS_HEADER, rows, decimal_comma)


def _record_rows(repeat: Repeat) -> list[tuple[str, str, str, str]]:
    rows = [
        (sample.time_s - repeat.begun_s, f"{sample.temperature_c:.4f}", "")
        for sample in repeat.samples
        if sample.temperature_c is not None
    ]
    rows += [(each.time_s - repeat.begun_s, "", f"{each.volume_cm3:g}") for each in repeat.portions]
    rows.sort(key=lambda row: row[0])
    return [(str(repeat.repeat), f"{time_s:.3f}", celsius, volume) for time_s, celsius, volume in rows]


def _csv(header: Sequence[str], rows: Iterable[Sequence[str]], decimal_comma: bool) -> str:
    out = io.StringIO()
    writer = csv.writer(out, delimiter=";" if decimal_comma else ",")
    writer.writerow(header)
    writer.writerows([cell.replace(".", ",") for cell in row] if decimal_comma else row for row in rows)
    return out.getvalue()
