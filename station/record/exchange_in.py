"""Files that come in: a record CSV or a readings CSV, checked to the cell before anything is computed."""

import csv
import io
import math
from collections.abc import Callable, Iterator, Sequence
from itertools import pairwise

from station.practical.dataset import ReadingRow, RepeatData
from station.record.exchange import READINGS_HEADER, RECORD_HEADER

MOST_ROWS = 200_000
LOWEST_C, HIGHEST_C = -55.0, 125.0
LARGEST_CM3 = 1000.0
LARGEST_S = 1e7


class ExchangeError(ValueError):
    """A file that cannot be used; the message names line and column, and says what to change."""


Row = tuple[int, dict[str, str]]


def read_exchange(text: str, where: str, *, once: bool = False) -> list[RepeatData]:
    """Return the repeats of a record CSV (traces and pours) or a readings CSV (readings only).

    `where` names the file in errors. With `once` each repeat has one portion row, the moment of mixing, and
    its volume may be 0 (a solid). Raises ExchangeError.
    """
    header, rows = _table(text.removeprefix("\ufeff"), where)
    kind = _kind(header, where)
    by_repeat: dict[int, list[Row]] = {}
    for line, cells in rows:
        number = _number(where, line, cells, "repeat", 1, 100_000)
        if number != int(number):
            raise _at(where, line, "repeat", f"not a whole number: {cells['repeat']}")
        by_repeat.setdefault(int(number), []).append((line, cells))
    if not by_repeat:
        raise _at(where, 2, "repeat", "no rows below the header; is it the right file?")
    return [kind(where, repeat, each, once) for repeat, each in sorted(by_repeat.items())]


def _table(text: str, where: str) -> tuple[list[str], Iterator[Row]]:
    if not text.strip():
        raise _at(where, 1, "repeat", f"the file is empty; it needs the header {','.join(RECORD_HEADER)}")
    try:
        reader = csv.reader(io.StringIO(text, newline=""), strict=True)
        header = [cell.strip() for cell in next(reader)]
    except csv.Error as error:
        raise _at(where, 1, "repeat", f"not a CSV file: {error}") from None
    return header, _rows(reader, header, where)


def _rows(reader: "Iterator[list[str]]", header: Sequence[str], where: str) -> Iterator[Row]:
    count, line = 0, 1
    while True:
        try:
            cells = next(reader)
        except StopIteration:
            return
        except csv.Error as error:
            raise _at(where, line + 1, header[0], f"not a CSV row: {error}") from None
        line = getattr(reader, "line_num", line + 1)
        if not any(cell.strip() for cell in cells):
            continue
        count += 1
        if count > MOST_ROWS:
            raise _at(where, line, header[0], f"more than {MOST_ROWS} rows; is it one practical?")
        if len(cells) != len(header):
            column = header[min(len(cells), len(header) - 1)]
            raise _at(where, line, column, f"{len(cells)} cells under a header of {len(header)}")
        yield line, dict(zip(header, (cell.strip() for cell in cells), strict=True))


def _kind(header: Sequence[str], where: str) -> Callable[[str, int, list[Row], bool], RepeatData]:
    if len(set(header)) != len(header):
        raise _at(where, 1, max(header, key=list(header).count), "stands twice in the header")
    if "time_s" in header or "portion_cm3" in header:
        kind, wanted = _record, list(RECORD_HEADER)
    else:
        kind, wanted = _readings, list(READINGS_HEADER)
    missing = [name for name in wanted if name not in header]
    if missing:
        hint = " (commas, not semicolons)" if any(";" in cell for cell in header) else ""
        raise _at(where, 1, missing[0], f"missing; the header is {','.join(wanted)}{hint}")
    return kind


def _record(where: str, repeat: int, rows: list[Row], once: bool) -> RepeatData:
    samples: list[tuple[float, float]] = []
    pours: list[tuple[float, float, bool]] = []
    times: list[tuple[int, float]] = []
    for line, cells in rows:
        time_s = _number(where, line, cells, "time_s", -LARGEST_S, LARGEST_S)
        times.append((line, time_s))
        if bool(cells["temperature_c"]) == bool(cells["portion_cm3"]):
            what = "both a temperature and a portion" if cells["portion_cm3"] else "neither temperature nor portion"
            raise _at(where, line, "temperature_c", f"{what}; a row has one of them")
        if cells["temperature_c"]:
            samples.append((time_s, _number(where, line, cells, "temperature_c", LOWEST_C, HIGHEST_C)))
        else:
            if once and pours:
                raise _at(where, line, "portion_cm3", "a second portion, where the plan mixes once")
            pours.append((time_s, _number(where, line, cells, "portion_cm3", 0, LARGEST_CM3, above=not once), False))
    for (_, before_s), (line, time_s) in pairwise(times):
        if time_s < before_s:
            raise _at(where, line, "time_s", f"{time_s:g} comes after {before_s:g}; rows go by time in a repeat")
    return RepeatData(repeat, (), tuple(samples), tuple(pours))


def _readings(where: str, repeat: int, rows: list[Row], once: bool) -> RepeatData:  # noqa: ARG001 - one shape
    readings: list[ReadingRow] = []
    for line, cells in rows:
        volume_cm3 = _number(where, line, cells, "volume_cm3", 0, LARGEST_CM3)
        temperature_c = _number(where, line, cells, "temperature_c", LOWEST_C, HIGHEST_C)
        if readings and volume_cm3 <= readings[-1].volume_cm3:
            raise _at(where, line, "volume_cm3", f"{volume_cm3:g} is not above the row before; it is the total added")
        start = readings[0].portion if readings else int(volume_cm3 > 0)
        readings.append(ReadingRow(start + len(readings), volume_cm3, temperature_c))
    return RepeatData(repeat, tuple(readings))


def _number(
    where: str, line: int, cells: dict[str, str], column: str, low: float, high: float, *, above: bool = False
) -> float:
    text = cells[column]
    try:
        value = float(text)
    except ValueError:
        wanted = "is empty" if not text else f"not a number: {text[:40]}"
        hint = " (a dot, not a comma)" if "," in text else ""
        raise _at(where, line, column, wanted + hint) from None
    if not math.isfinite(value):
        raise _at(where, line, column, f"not a number: {text[:40]}")
    if not low <= value <= high or (above and value <= low):
        raise _at(where, line, column, f"{text[:40]} is not between {low:g} and {high:g}")
    return value


def _at(where: str, line: int, column: str, what: str) -> ExchangeError:
    return ExchangeError(f"{where}: line {line}, column {column}: {what}")
