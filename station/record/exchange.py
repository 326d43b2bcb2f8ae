"""Files that leave the record: CSV as RFC 4180 with a dot, or with semicolons and a decimal comma for spreadsheets.

Units stand in the headers, which are the station's own words. Every other text is quoted, since a spreadsheet may
split at commas or at semicolons, and one that could begin a formula there gets an apostrophe (OWASP, "CSV Injection").
In the files of a bench stand only numbers, codes of questions, and a check's kind and day. Where a solid was weighed,
a further column says how much of it, with the digits that were typed; where the probe's temperatures were corrected,
others say by how much, and by which check.
"""

import csv
import io
import json
import re
from collections.abc import Iterable, Iterator, Sequence
from itertools import islice
from pathlib import Path

from station.practical.checks.correction import used_in
from station.practical.dataset import repeat_data
from station.practical.events import EVENTS, Stamped, Unknown
from station.practical.events.bench import PlanChosen, SampleTaken
from station.practical.fold import fold_all
from station.practical.plan import typed_amount
from station.practical.readings_text import READINGS_HEADER
from station.practical.state import Asked, Portion, Repeat, State
from station.record.journal import read_events
from station.record.spreadsheet.file import DANGEROUS
from station.record.spreadsheet.table import table_columns, table_rows, table_weighed

# The journal of a practical as JSON lines, in pieces: a long practical is never held whole.


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


CORRECTED_HEADER = ("correction_c", "u_correction_c", "u_slope", "check", "checked_on")
"""Columns of a file in which temperatures are corrected: what was added, its u, the relative u of a difference."""


RECORD_HEADER = ("repeat", "time_s", "temperature_c", "portion_cm3")
DOUBT_HEADER = ("doubt", "questions")
"""Columns of a file in which any portion was in doubt or asked about: 1, and codes with the answers there were."""
MASS = "mass_g"
"""The column of what was truly weighed, of files in which anything was."""

_BEGINS_A_FORMULA = re.compile(rf"(^|[,;\"\t]\s*)(?=[{re.escape(''.join(DANGEROUS))}])")


class Figure(str):
    """A number as it is written in a cell, with a dot, or an empty cell: what is not quoted."""

    __slots__ = ()

    def __float__(self) -> float:
        return float(str(self))


def csv_text(header: Sequence[str], rows: Iterable[Sequence[str]], *, decimal_comma: bool = False) -> str:
    """Return a CSV text (RFC 4180), or one with semicolons and a decimal comma."""
    out = io.StringIO()
    delimiter = ";" if decimal_comma else ","
    csv.writer(out, delimiter=delimiter).writerow(header)
    # The module asks each cell whether it is a number, as a Figure is, and quotes what is none.
    writer = csv.writer(out, delimiter=delimiter, quoting=csv.QUOTE_NONNUMERIC)
    writer.writerows([_cell(each, decimal_comma) for each in row] for row in rows)
    return out.getvalue()


def _cell(cell: str, decimal_comma: bool) -> str:
    if isinstance(cell, Figure):
        return Figure(cell.replace(".", ",")) if decimal_comma else cell
    return _BEGINS_A_FORMULA.sub(r"\1'", cell)


def newest_practical(folder: Path) -> Iterator[Stamped]:
    """Yield the events of the newest practical, from the choice of its plan on. Raises JournalError."""
    chosen = [each.seq for each in read_events(folder, kinds=(PlanChosen.kind,))]
    return read_events(folder, after=chosen[-1] - 1 if chosen else 0)


def table_text(state: State, *, decimal_comma: bool = False) -> str:
    """Return the table that the spreadsheet opens with, as CSV: volume, each repeat, their mean, what was weighed."""
    rows = [[Figure("" if each is None else f"{each:.6g}") for each in row] for row in table_rows(state)]
    of_repeats = table_weighed(state)
    weighed = ([_mass(each) for each in row] for row in zip(*of_repeats.values(), strict=True))
    columns = [*table_columns(state), *(f"mass_{repeat}_g" for repeat in of_repeats)]
    return csv_text(
        columns,
        [[*row, *more] for row, more in zip(rows, weighed, strict=True)] if of_repeats else rows,
        decimal_comma=decimal_comma,
    )


def _mass(portion: Portion | None) -> Figure:
    """What was weighed, with the digits that were typed; an empty cell where nothing was told."""
    if portion is None or portion.mass_g is None:
        return Figure()
    return Figure(typed_amount(portion.mass_g, portion.places))


def record_csv(folder: Path) -> str:
    """Return the record CSV of the newest practical in a record's folder. Raises JournalError when there is none."""
    return record_text(fold_all(newest_practical(folder)))


def record_text(state: State, *, decimal_comma: bool = False) -> str:
    """Return the samples of a practical: a sample row has a temperature, a portion row a volume.

    Times start afresh in each repeat; a conversion that was under way when it began stands before 0. Bad samples
    have neither and are left out; so is a repeat that was set aside and a portion that was taken back. Readings
    taken over from another group have no samples: these are always the bench's own. Where an ordinary thermometer was
    read by the clock these readings are the samples.
    """
    repeats = [repeat for repeat in state.repeats if repeat.counts]
    more, weighed = _is_corrected(repeats), any(each.mass_g is not None for one in repeats for each in one.portions)
    asked = [each for each in state.asked if any(each.repeat == repeat.repeat for repeat in repeats)]
    doubts = bool(asked) or any(each.unsure for repeat in repeats for each in repeat.portions)
    told = asked if doubts else None
    rows = (row for repeat in repeats for row in _record_rows(repeat, more, weighed, told))
    doubt = DOUBT_HEADER if doubts else ()
    header = (*RECORD_HEADER, *((MASS,) if weighed else ()), *doubt, *(CORRECTED_HEADER if more else ()))
    return csv_text(header, rows, decimal_comma=decimal_comma)


def readings_text(state: State, *, decimal_comma: bool = False) -> str:
    """Return the readings that the practical works with: total added and temperature, those in doubt left out."""
    more = _is_corrected(state.counted)
    rows = (
        (
            Figure(repeat.repeat),
            Figure(f"{row.volume_cm3:.6g}"),
            Figure(f"{row.temperature_c:.4f}"),
            *(_correction(repeat) if more else ()),
        )
        for repeat in state.counted
        for row in repeat_data(repeat).readings
    )
    return csv_text((*READINGS_HEADER, *(CORRECTED_HEADER if more else ())), rows, decimal_comma=decimal_comma)


def _is_corrected(repeats: Iterable[Repeat]) -> bool:
    return any(used is not None and used.check is not None for used in map(used_in, repeats))


def _correction(repeat: Repeat) -> tuple[str, ...]:
    used = used_in(repeat)
    if used is None or used.check is None:
        return (Figure(),) * len(CORRECTED_HEADER)
    numbers = (f"{used.correction_c:.4f}", f"{used.u_c:.4f}", f"{used.u_slope:.6f}")
    return (*map(Figure, numbers), used.check, used.day)


def _record_rows(repeat: Repeat, more: bool, weighed: bool, asked: Sequence[Asked] | None) -> list[tuple[str, ...]]:
    rows: list[tuple[float, tuple[str, ...]]] = []
    no_mass, no_doubt = (Figure(),) * weighed, (Figure(),) * (0 if asked is None else len(DOUBT_HEADER))
    same = _correction(repeat)[1:] if more else ()
    nobody = (Figure(),) * (len(CORRECTED_HEADER) if more else 0)
    for read in repeat.clocked:
        place = repeat.begun_s + read.at_s
        rows.append((place, (Figure(f"{read.temperature_c:.4f}"), Figure(), *no_mass, *no_doubt, *nobody)))
    for sample in () if repeat.clocked else repeat.samples:
        if sample.temperature_c is not None:
            added = (Figure(f"{sample.correction_c:.4f}"), *same) if more else ()
            cells = (Figure(f"{sample.temperature_c:.4f}"), Figure(), *no_mass, *no_doubt, *added)
            rows.append((sample.time_s, cells))
    for each in repeat.portions:
        mass = (_mass(each),) if weighed else ()
        doubt = () if asked is None else _doubt(repeat, each, asked)
        rows.append((each.time_s, (Figure(), Figure(f"{each.volume_cm3:g}"), *mass, *doubt, *nobody)))
    rows.sort(key=lambda row: row[0])
    return [(Figure(repeat.repeat), Figure(f"{time_s - repeat.begun_s:.3f}"), *cells) for time_s, cells in rows]


def _doubt(repeat: Repeat, portion: Portion, asked: Sequence[Asked]) -> tuple[str, str]:
    """Whether somebody doubts it, and what was asked: `double: once`; without an answer the code alone."""
    of_it = [each for each in asked if (each.repeat, each.portion) == (repeat.repeat, portion.portion)]
    questions = [each.code if each.answer is None else f"{each.code}: {each.answer}" for each in of_it]
    return Figure("1" if portion.unsure else ""), "; ".join(questions) or Figure()
