"""A lesson to take away: results and readings of all benches as rows for CSV and spreadsheet, and events as lines.

CSV is written as a bench's files are (`record/exchange.py`).
"""

import json
from collections.abc import Iterable, Iterator, Mapping, Sequence
from typing import Any

from station.practical.events import Stamped
from station.practical.events.bench import SampleTaken
from station.practical.kinds.kind import METHOD_NAMES
from station.practical.state import State
from station.record.exchange import Figure, csv_text, journal_line
from station.record.spreadsheet.file import Cell, Sheet
from station.room.contract import ClassPoint, ClassResult
from station.room.lesson_book import Practical, practical_events
from station.room.places import natural
from station.room.store.store import RoomStore
from station.words import join, say

Json = dict[str, Any]
Rows = Iterator[Sequence[Cell]]

RESULTS_HEADER = ("bench", "name", "quantity", "method", "unit", "value", "u", "low_95", "high_95", "benches")
READINGS_HEADER = ("bench", "name", "repeat", "status", "portion", "volume_cm3", "temperature_c", "in_doubt")
CLASS = "class"
_WIDTHS = (12, 20, 20, 15, 10, 12, 12, 12, 12, 10)


def result_rows(answer: ClassResult) -> Rows:
    """Yield a row for each bench and quantity, then one for the class; the unit is the quantity's."""
    names = {each["bench"]: each["name"] for each in answer["benches"]}
    for quantity in answer["quantities"]:
        about = (quantity["name"], METHOD_NAMES[quantity["method"]], quantity["unit"])
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
                    say("word-yes" if repeat.unsure(each.portion) else "word-no"),
                )


def lesson_csv(header: Sequence[str], rows: Iterable[Sequence[Cell]], *, decimal_comma: bool = False) -> str:
    """Return a CSV text, or with semicolons and a decimal comma."""
    return csv_text(header, (list(map(_csv_cell, row)) for row in rows), decimal_comma=decimal_comma)


def class_sheets(answer: ClassResult | None, states: Mapping[str, State], names: Mapping[str, str]) -> Iterator[Sheet]:
    """Yield the sheets of a lesson's workbook; without an answer (results are not shown yet) the readings alone."""
    if answer is not None:
        yield Sheet(say("class-sheet-result"), tuple(zip(RESULTS_HEADER, _WIDTHS, strict=True)), result_rows(answer))
        yield Sheet(
            say("class-sheet-words"), ((say("class-head-sentence"), 140),), ([each] for each in answer["words"])
        )
        yield Sheet(
            say("class-sheet-standing-off"),
            ((say("class-head-bench"), 12), (say("class-head-what"), 80), (say("class-head-behind"), 120)),
            ([each["bench"], each["text"], join(each["reasons"])] for each in answer["anomalies"]),
        )
        curve = (("portion", 10), ("volume_cm3", 12), ("change_c", 12), ("sd_c", 12), ("benches", 10))
        yield Sheet(say("class-sheet-curve"), curve, map(_point, answer["curve"]))
    widths = (12, 20, 8, 12, 8, 12, 14, 10)
    yield Sheet(say("sheet-readings"), tuple(zip(READINGS_HEADER, widths, strict=True)), reading_rows(states, names))


def _point(each: ClassPoint) -> Sequence[Cell]:
    return each["portion"], each["volume_cm3"], each["change_c"], each["sd_c"], each["count"]


def lesson_lines(store: RoomStore, practicals: Iterable[Practical], *, samples: bool) -> Iterator[str]:
    """Yield every event of these practicals as JSON lines, with bench and journal. Raises StoreError."""
    for which in practicals:
        for stamped in practical_events(store, which):
            if samples or not isinstance(stamped.event, SampleTaken):
                yield _line(which, stamped)


def _line(which: Practical, stamped: Stamped) -> str:
    line = {"bench": which.bench, "journal": which.journal, **json.loads(journal_line(stamped))}
    return json.dumps(line, ensure_ascii=False, allow_nan=False) + "\n"


def _csv_cell(cell: Cell) -> str:
    if isinstance(cell, str):
        return cell
    return Figure() if cell is None else Figure(f"{cell:.6g}" if isinstance(cell, float) else cell)
