"""A CSV text as rows of named cells; every mistake is one line that names line and column. Knows no file."""

import csv
import io
import math
from collections.abc import Iterator, Sequence
from dataclasses import dataclass

MOST_ROWS = 200_000


class CellError(ValueError):
    """A text that cannot be used; the message names line and column, and says what to change."""

    def __init__(self, line: int, column: str, what: str) -> None:
        super().__init__(f"line {line}, column {column}: {what}")


@dataclass(frozen=True)
class Row:
    """The cells of one line by the names in the header; `line` counts from 1, the header's."""

    line: int
    cells: dict[str, str]

    def number(self, column: str, low: float, high: float, *, above: bool = False) -> float:
        """Return a cell's number from low (`above`: not low itself) to high. Raises CellError."""
        text = self.cells[column]
        try:
            value = float(text)
        except ValueError:
            wanted = "is empty" if not text else f"not a number: {text[:40]}"
            raise self.wrong(column, wanted + (" (a dot, not a comma)" if "," in text else "")) from None
        if not math.isfinite(value):
            raise self.wrong(column, f"not a number: {text[:40]}")
        if not low <= value <= high or (above and value <= low):
            raise self.wrong(column, f"{text[:40]} is not between {low:g} and {high:g}")
        return value

    def wrong(self, column: str, what: str) -> CellError:
        """Return the error about a cell of this row."""
        return CellError(self.line, column, what)


def csv_rows(text: str, expected: Sequence[str]) -> tuple[list[str], Iterator[Row]]:
    """Return header and rows of a CSV text (RFC 4180; a byte order mark and empty lines are no matter).

    `expected` is the header that an empty text is told. Raises CellError, the rows' while they are iterated.
    """
    text = text.removeprefix("\ufeff")
    if not text.strip():
        raise CellError(1, expected[0], f"the file is empty; it needs the header {','.join(expected)}")
    reader = csv.reader(io.StringIO(text, newline=""), strict=True)
    try:
        header = [cell.strip() for cell in next(reader)]
    except csv.Error as error:
        raise CellError(1, expected[0], f"not a CSV file: {error}") from None
    if len(set(header)) != len(header):
        raise CellError(1, max(header, key=header.count), "stands twice in the header")
    return header, _rows(reader, header)


def expect(header: Sequence[str], wanted: Sequence[str]) -> None:
    """Raise CellError unless the header has these columns."""
    missing = [name for name in wanted if name not in header]
    if missing:
        hint = " (commas, not semicolons)" if any(";" in cell for cell in header) else ""
        raise CellError(1, missing[0], f"missing; the header is {','.join(wanted)}{hint}")


def by_repeat(rows: Iterator[Row]) -> dict[int, list[Row]]:
    """Return the rows of each repeat, by the column of that name. Raises CellError."""
    found: dict[int, list[Row]] = {}
    for row in rows:
        repeat = row.number("repeat", 1, 100_000)
        if repeat != int(repeat):
            raise row.wrong("repeat", f"not a whole number: {row.cells['repeat']}")
        found.setdefault(int(repeat), []).append(row)
    if not found:
        raise CellError(2, "repeat", "no rows below the header; is it the right file?")
    return dict(sorted(found.items()))


def _rows(reader: "Iterator[list[str]]", header: Sequence[str]) -> Iterator[Row]:
    count, line = 0, 1
    while True:
        try:
            cells = next(reader)
        except StopIteration:
            return
        except csv.Error as error:
            raise CellError(line + 1, header[0], f"not a CSV row: {error}") from None
        line = getattr(reader, "line_num", line + 1)
        if not any(cell.strip() for cell in cells):
            continue
        count += 1
        if count > MOST_ROWS:
            raise CellError(line, header[0], f"more than {MOST_ROWS} rows; is it one practical?")
        if len(cells) != len(header):
            column = header[min(len(cells), len(header) - 1)]
            raise CellError(line, column, f"{len(cells)} cells under a header of {len(header)}")
        yield Row(line, dict(zip(header, (cell.strip() for cell in cells), strict=True)))
