"""Readings by hand, or those of another bench, from the text of a readings CSV. Knows no file."""

import csv
import io
import math
from collections.abc import Iterable, Iterator, Mapping, Sequence
from dataclasses import dataclass
from itertools import pairwise
from statistics import median

from station.practical.dataset import ReadingRow, RepeatData
from station.words import say

# A CSV text as rows of named cells; every mistake is one line that names line and column. Knows no file.


MOST_ROWS = 200_000
LONGEST_CELL = 40
"""More letters of a cell are not repeated."""


class CellError(ValueError):
    """A text that cannot be used; the message names line and column, and says what to change."""

    def __init__(self, line: int, column: str, what: str) -> None:
        super().__init__(say("csv-cell", line=line, column=column, what=what))


@dataclass(frozen=True)
class Row:
    """The cells of one line by the names in the header; `line` counts from 1, the header's.

    `decimal_comma`: a comma in a number is its decimal sign.
    """

    line: int
    cells: dict[str, str]
    decimal_comma: bool = False

    def number(self, column: str, low: float, high: float, *, above: bool = False) -> float:
        """Return a cell's number from low (`above`: not low itself) to high. Raises CellError."""
        text = self.cells[column]
        try:
            value = float(text.replace(",", ".") if self.decimal_comma else text)
        except ValueError:
            if not text:
                raise self.wrong(column, say("csv-empty")) from None
            comma = "," in text
            what = say("csv-not-a-number-dot" if comma else "csv-not-a-number", typed=text[:LONGEST_CELL])
            raise self.wrong(column, what) from None
        if not math.isfinite(value):
            raise self.wrong(column, say("csv-not-a-number", typed=text[:LONGEST_CELL]))
        if not low <= value <= high or (above and value <= low):
            limits = {"least": f"{low:g}", "most": f"{high:g}"}
            raise self.wrong(column, say("csv-not-between", typed=text[:LONGEST_CELL], **limits))
        return value

    def wrong(self, column: str, what: str) -> CellError:
        """Return the error about a cell of this row."""
        return CellError(self.line, column, what)


def csv_rows(text: str, expected: Sequence[str]) -> tuple[list[str], Iterator[Row]]:
    """Return header and rows of a CSV text (RFC 4180; a byte order mark and empty lines are no matter).

    Semicolons or tabs may stand for the commas, as a spreadsheet writes them; a number may then have a decimal comma.
    `expected` is the header that an empty text is told. Raises CellError, the rows' while they are iterated.
    """
    text = text.removeprefix("\ufeff")
    if not text.strip():
        raise CellError(1, expected[0], say("csv-file-empty", header_text=",".join(expected)))
    first = text.lstrip("\r\n").partition("\n")[0]
    delimiter = max(",;\t", key=first.count)
    reader = csv.reader(io.StringIO(text, newline=""), strict=True, delimiter=delimiter)
    try:
        header = _trimmed([cell.strip() for cell in next(reader)], 1)
    except csv.Error as error:
        raise CellError(1, expected[0], say("csv-not-csv", reason=str(error))) from None
    width = len(header)
    # What a spreadsheet has beside its table stands behind an empty column.
    header = header[: header.index("")] if "" in header[1:] else header
    if len(set(header)) != len(header):
        raise CellError(1, max(header, key=header.count), say("csv-twice-in-header"))
    return header, _rows(reader, header, width if len(header) < width else None, decimal_comma=delimiter != ",")


def _trimmed(cells: list[str], least: int) -> list[str]:
    """The cells without empty ones at the end, as a spreadsheet leaves them."""
    while len(cells) > least and not cells[-1].strip():
        cells = cells[:-1]
    return cells


def expect(header: Sequence[str], wanted: Sequence[str]) -> None:
    """Raise CellError unless the header has these columns."""
    missing = [name for name in wanted if name not in header]
    if missing:
        raise CellError(1, missing[0], say("csv-missing", header_text=",".join(wanted)))


def by_repeat(rows: Iterator[Row]) -> dict[int, list[Row]]:
    """Return the rows of each repeat, by the column of that name. Raises CellError."""
    found: dict[int, list[Row]] = {}
    for row in rows:
        repeat = row.number("repeat", 1, 100_000)
        if repeat != int(repeat):
            raise row.wrong("repeat", say("csv-not-whole", typed=row.cells["repeat"]))
        found.setdefault(int(repeat), []).append(row)
    if not found:
        raise CellError(2, "repeat", say("csv-no-rows"))
    return dict(sorted(found.items()))


def _rows(
    reader: "Iterator[list[str]]", header: Sequence[str], cut: int | None, *, decimal_comma: bool
) -> Iterator[Row]:
    """`cut`: so many columns there are in all, those of the header first."""
    count, line = 0, 1
    while True:
        try:
            cells = next(reader)
        except StopIteration:
            return
        except csv.Error as error:
            raise CellError(line + 1, header[0], say("csv-bad-row", reason=str(error))) from None
        line = getattr(reader, "line_num", line + 1)
        cells = cells[: len(header)] if cut is not None and len(cells) <= cut else cells
        if not any(cell.strip() for cell in cells):
            continue
        count += 1
        if count > MOST_ROWS:
            raise CellError(line, header[0], say("csv-too-many-rows", most=MOST_ROWS))
        cells = _trimmed(cells, len(header))
        if len(cells) != len(header):
            column = header[min(len(cells), len(header) - 1)]
            raise CellError(line, column, say("csv-cells-under-header", cells=len(cells), header=len(header)))
        yield Row(line, dict(zip(header, (cell.strip() for cell in cells), strict=True)), decimal_comma)


READINGS_HEADER = ("repeat", "volume_cm3", "temperature_c")
LOWEST_C, HIGHEST_C = -55.0, 125.0
LARGEST_CM3, LEAST_CM3 = 1000.0, 1e-6


def readings_from_text(text: str) -> list[RepeatData]:
    """Return the repeats of a readings CSV (header `repeat,volume_cm3,temperature_c`, volume: the total added).

    Raises CellError, a ValueError of one line that names line and column.
    """
    header, rows = csv_rows(text, READINGS_HEADER)
    if "time_s" in header:
        raise CellError(1, "time_s", say("csv-samples-not-readings"))
    expect(header, READINGS_HEADER)
    return readings_of(by_repeat(rows))


def readings_of(rows: Mapping[int, Sequence[Row]]) -> list[RepeatData]:
    """Return the readings of each repeat's rows. Raises CellError."""
    return numbered({repeat: _points(each) for repeat, each in rows.items()})


def numbered(points: Mapping[int, Sequence[tuple[float, float]]]) -> list[RepeatData]:
    """Return the readings of each repeat from its totals added in cm³, rising, and temperatures in °C.

    Nothing here says portion numbers. Readings of about the same total get the same number in all repeats, so that
    a mean never mixes different portions where one repeat lacks a reading.
    """
    steps = [after - before for each in points.values() for (before, _), (after, _) in pairwise(each) if after > before]
    step_cm3 = max(median(steps), LEAST_CM3) if steps else 1.0
    numbers = {repeat: _numbers((volume for volume, _ in each), step_cm3) for repeat, each in points.items()}
    used = sorted({number for each in numbers.values() for number in each})
    first = 0 if used[0] == 0 else 1
    portion = {number: first + rank for rank, number in enumerate(used)}
    return [
        RepeatData(
            repeat,
            tuple(ReadingRow(portion[number], *point) for number, point in zip(numbers[repeat], each, strict=True)),
        )
        for repeat, each in points.items()
    ]


def _points(rows: Sequence[Row]) -> list[tuple[float, float]]:
    points: list[tuple[float, float]] = []
    for row in rows:
        volume_cm3 = row.number("volume_cm3", 0, LARGEST_CM3)
        temperature_c = row.number("temperature_c", LOWEST_C, HIGHEST_C)
        if points and volume_cm3 < points[-1][0]:
            raise row.wrong("volume_cm3", say("csv-not-above-before", volume_cm3=f"{volume_cm3:g}"))
        points.append((volume_cm3, temperature_c))
    return points


def _numbers(volumes_cm3: Iterable[float], step_cm3: float) -> list[int]:
    """Count portions of the usual size, 0 where nothing is in the cup: gaps stay, small errors do not add up.

    A reading without more volume is one of a portion that was not poured.
    """
    numbers: list[int] = []
    before_cm3 = 0.0
    for volume_cm3 in volumes_cm3:
        portions = max(1, round((volume_cm3 - before_cm3) / step_cm3)) if volume_cm3 > 0.0 or numbers else 0
        numbers.append((numbers[-1] if numbers else 0) + portions)
        before_cm3 = volume_cm3
    return numbers
