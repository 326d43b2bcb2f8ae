"""A lesson to take away: results and readings of all benches as rows for CSV and spreadsheet, and events as lines.

A text that a spreadsheet could take for a formula gets an apostrophe in CSV (OWASP, "CSV Injection"); numbers never.
"""

import csv
import io
import json
from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import Any

from station.practical.events import SampleTaken, Stamped
from station.practical.state import State
from station.record.exchange_journal import journal_line
from station.record.spreadsheet import DANGEROUS
from station.record.spreadsheet_cells import Cell, Sheet
from station.room.class_anomalies import METHODS, NAMES, UNITS
from station.room.places import natural
from station.room.practicals import Practical, practical_events
from station.room.store import RoomStore

Json = dict[str, Any]
Rows = Iterator[Sequence[Cell]]

RESULTS_HEADER = ("bench", "name", "quantity", "method", "unit", "value", "u", "low_95", "high_95", "benches")
READINGS_HEADER = ("bench", "name", "repeat", "status", "portion", "volume_cm3", "temperature_c", "in_doubt")
CLASS = "class"
_WIDTHS = (12, 20, 20, 15, 10, 12, 12, 12, 12, 10)


def result_rows(answer: Json) -> Rows:
    """Yield a row for each bench and quantity, then one for the class; the unit is the quantity's."""
    names = {each["bench"]: each["name"] for each in answer["benches"]}
    for quantity in answer["quantities"]:
        about = (NAMES[quantity["quantity"]], METHODS[quantity["method"]], UNITS[quantity["quantity"]])
        for each in quantity["values"]:
            numbers = (each["value"], each["u"], each["low"], each["high"])
            yield (each["bench"], names[each["bench"]], *about, *numbers, 1)
        made = quantity["pooled"]
        if made is not None:
            yield (CLASS, "", *about, made["mean"], made["u"], made["low"], made["high"], made["count"])


def reading_rows(states: Mapping[str, State], names: Mapping[str, str]) -> Rows:
    """Yield every reading of every bench's own repeats, those set aside too, with their status."""
    for bench in sorted(states, key=natural):
        for repeat in states[bench].repeats:
            for each in sorted(repeat.readings, key=lambda reading: reading.portion):
                yield (
                    bench,
                    names.get(bench, bench),
                    repeat.repeat,
                    repeat.status,
                    each.portion,
                    repeat.added_cm3(each.portion),
                    each.temperature_c,
                    "yes" if repeat.unsure(each.portion) else "no",
                )


def csv_text(header: Sequence[str], rows: Iterable[Sequence[Cell]], *, decimal_comma: bool = False) -> str:
    """Return a CSV text (RFC 4180), or with semicolons and a decimal comma."""
    out = io.StringIO()
    writer = csv.writer(out, delimiter=";" if decimal_comma else ",")
    writer.writerow(header)
    writer.writerows([_cell(each, decimal_comma) for each in row] for row in rows)
    return out.getvalue()


def class_sheets(answer: Json | None, states: Mapping[str, State], names: Mapping[str, str]) -> Iterator[Sheet]:
    """Yield the sheets of a lesson's workbook; without an answer (results are not shown yet) the readings alone."""
    if answer is not None:
        yield Sheet("Class result", tuple(zip(RESULTS_HEADER, _WIDTHS, strict=True)), result_rows(answer))
        yield Sheet("What it means", (("sentence", 140),), ([each] for each in answer["words"]))
        yield Sheet(
            "Standing off",
            (("bench", 12), ("what", 80), ("what may be behind it", 120)),
            ([each["bench"], each["text"], " ".join(each["reasons"])] for each in answer["anomalies"]),
        )
        curve = (("portion", 10), ("volume_cm3", 12), ("change_c", 12), ("sd_c", 12), ("benches", 10))
        yield Sheet("Mean curve", curve, (list(each.values()) for each in answer["curve"]))
    widths = (12, 20, 8, 12, 8, 12, 14, 10)
    yield Sheet("Readings", tuple(zip(READINGS_HEADER, widths, strict=True)), reading_rows(states, names))


def lesson_lines(store: RoomStore, practicals: Iterable[Practical], *, samples: bool) -> Iterator[str]:
    """Yield every event of these practicals as JSON lines, with bench and journal. Raises StoreError."""
    for which in practicals:
        for stamped in practical_events(store, which):
            if samples or not isinstance(stamped.event, SampleTaken):
                yield _line(which, stamped)


def _line(which: Practical, stamped: Stamped) -> str:
    line = {"bench": which.bench, "journal": which.journal, **json.loads(journal_line(stamped))}
    return json.dumps(line, ensure_ascii=False, allow_nan=False) + "\n"


def _cell(cell: Cell, decimal_comma: bool) -> str:
    if isinstance(cell, str):
        return f"'{cell}" if cell.startswith(DANGEROUS) else cell
    if isinstance(cell, float):
        text = f"{cell:.6g}"
        return text.replace(".", ",") if decimal_comma else text
    return "" if cell is None else str(cell)
