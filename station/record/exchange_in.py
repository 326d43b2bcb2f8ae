"""Files that come in: a record CSV or a readings CSV, checked to the cell before anything is computed."""

from collections.abc import Iterable, Mapping, Sequence
from itertools import pairwise
from statistics import median
from typing import Any

from station.practical.checks.correction import NAMES, ProbeUsed
from station.practical.dataset import RepeatData
from station.practical.questions import QUESTIONS
from station.practical.readings_text import (
    HIGHEST_C,
    LARGEST_CM3,
    LOWEST_C,
    READINGS_HEADER,
    CellError,
    Row,
    by_repeat,
    csv_rows,
    expect,
    numbered,
    readings_of,
)
from station.practical.rules import MOST_REPEATS
from station.record.exchange import CORRECTED_HEADER, DOUBT_HEADER, MASS, RECORD_HEADER
from station.words import in_language, languages, say

LARGEST_S = 1e7


class ExchangeError(ValueError):
    """A file that cannot be used; the message names file, line and column, and says what to change."""


def read_exchange(text: str, where: str, *, once: bool = False) -> list[RepeatData]:
    """Return the repeats of a record CSV (traces and pours) or a readings CSV (readings only).

    `where` names the file in errors. With `once` each repeat has one portion row, the moment of mixing, and
    its volume may be 0 (a solid). Raises ExchangeError.
    """
    try:
        header, rows = csv_rows(text, RECORD_HEADER)
        wide = table_repeats(header)
        if wide:
            return readings_of_table(wide, header[0], rows)
        if "time_s" in header or "portion_cm3" in header:
            expect(header, RECORD_HEADER)
            return [_record(repeat, each, once) for repeat, each in by_repeat(rows).items()]
        expect(header, READINGS_HEADER)
        return readings_of(by_repeat(rows))
    except CellError as error:
        raise ExchangeError(say("file-problem", path=where, reason=str(error))) from None


def _record(repeat: int, rows: Sequence[Row], once: bool) -> RepeatData:
    samples: list[tuple[float, float]] = []
    pours: list[tuple[float, float, bool]] = []
    mass: dict[str, Any] = {}
    questions: list[tuple[int, str]] = []
    times: list[float] = []
    for row in rows:
        time_s = row.number("time_s", -LARGEST_S, LARGEST_S)
        times.append(time_s)
        if bool(row.cells["temperature_c"]) == bool(row.cells["portion_cm3"]):
            raise row.wrong("temperature_c", say("csv-row-both" if row.cells["portion_cm3"] else "csv-row-neither"))
        if row.cells["temperature_c"]:
            samples.append((time_s, row.number("temperature_c", LOWEST_C, HIGHEST_C)))
        else:
            if once and pours:
                raise row.wrong("portion_cm3", say("csv-row-second-portion"))
            pours.append((time_s, row.number("portion_cm3", 0, LARGEST_CM3), bool(row.cells.get("doubt"))))
            questions += [(len(pours), code) for code in _unanswered(row)]
            mass = _weighed(row) if once else {}
    for (before_s, time_s), row in zip(pairwise(times), rows[1:], strict=True):
        if time_s < before_s:
            raise row.wrong("time_s", say("csv-row-not-in-order", time_s=f"{time_s:g}", before_s=f"{before_s:g}"))
    division_c = BY_HAND_C if once and _by_hand(samples) else None
    return RepeatData(
        repeat,
        (),
        tuple(samples),
        tuple(pours),
        probe=_probe(rows, samples),
        division_c=division_c,
        questions=tuple(questions),
        was_asked=all(name in rows[0].cells for name in DOUBT_HEADER),
        **mass,
    )


def _unanswered(row: Row) -> list[str]:
    """The codes of questions that nobody answered. Raises CellError for one that the station does not ask."""
    found = []
    for each in (row.cells.get("questions") or "").split(";"):
        code, _, answer = (part.strip() for part in each.partition(":"))
        if code and code not in QUESTIONS:
            raise row.wrong("questions", say("csv-not-one-of", known_text=", ".join(QUESTIONS)))
        if code and not answer:
            found.append(code)
    return found


def table_repeats(header: Sequence[str]) -> dict[int, str]:
    """Return the columns of the repeats' temperatures in a table as the station writes it, in CSV or a spreadsheet.

    A spreadsheet's first sheet has the header in words, those of any language. Nothing where it is no such table.
    """
    volumes = {"volume_cm3", *(in_language(say("sheet-volume-added"), each) for each in languages())}
    if not header or header[0] not in volumes:
        return {}
    found = {}
    for repeat in range(1, MOST_REPEATS + 1):
        in_words = (in_language(say("sheet-run-temperature", repeat=repeat), each) for each in languages())
        column = next((each for each in (f"repeat_{repeat}_c", *in_words) if each in header), None)
        if column is not None:
            found[repeat] = column
    return found


def readings_of_table(columns: Mapping[int, str], volume: str, rows: Iterable[Row]) -> list[RepeatData]:
    """Return the readings of each repeat's column; an empty cell is none. Raises CellError."""
    points: dict[int, list[tuple[float, float]]] = {repeat: [] for repeat in columns}
    for row in rows:
        told = {repeat: column for repeat, column in columns.items() if row.cells[column]}
        for repeat, column in told.items():
            volume_cm3 = row.number(volume, 0, LARGEST_CM3)
            points[repeat].append((volume_cm3, row.number(column, LOWEST_C, HIGHEST_C)))
    if not any(points.values()):
        raise CellError(2, volume, say("csv-no-rows"))
    return numbered({repeat: each for repeat, each in points.items() if each})


MOST_PLACES, LARGEST_G = 4, 1000.0


def _weighed(row: Row) -> dict[str, Any]:
    """What was truly weighed, and with how many decimals it stands there; nothing where the file does not say."""
    text = row.cells.get(MASS)
    if not text:
        return {}
    mass_g = row.number(MASS, 0, LARGEST_G, above=True)
    decimals = len(text.partition(".")[2]) if text.replace(".", "").isdigit() else MOST_PLACES
    return {"mass_g": mass_g, "places": min(decimals, MOST_PLACES)}


BY_HAND_S, BY_HAND_C = 10.0, 0.1
"""So far apart are readings of an ordinary thermometer, and of such divisions: a file says neither."""


def _by_hand(samples: Sequence[tuple[float, float]]) -> bool:
    apart = [later - sooner for (sooner, _), (later, _) in pairwise(samples)]
    return bool(apart) and median(apart) >= BY_HAND_S


def _probe(rows: Sequence[Row], samples: Sequence[tuple[float, float]]) -> ProbeUsed | None:
    """Return what the file says of the probe's correction; its temperatures have it in them already."""
    said = [row for row in rows if row.cells["temperature_c"] and row.cells.get("check")]
    if not said or any(name not in said[0].cells for name in CORRECTED_HEADER):
        return None
    middle = said[len(said) // 2]
    if middle.cells["check"] not in NAMES:
        raise middle.wrong("check", say("csv-not-one-of", known_text=", ".join(NAMES)))
    return ProbeUsed(
        middle.cells["check"],
        middle.cells["checked_on"],
        sum(celsius for _, celsius in samples) / len(samples),
        middle.number("correction_c", -20, 20),
        middle.number("u_correction_c", 0, 20),
        middle.number("u_slope", 0, 1),
    )
