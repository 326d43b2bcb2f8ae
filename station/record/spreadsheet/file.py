"""The record as a spreadsheet (.xlsx): numbers are numbers, times are times, and text is only ever text.

XlsxWriter is loaded here and only when a spreadsheet is asked for. Rows go to a temporary file as they come, so
that a long practical costs disk, not memory.
"""

import io
import math
from collections.abc import Iterable, Sequence
from dataclasses import dataclass
from datetime import datetime
from tempfile import TemporaryDirectory
from typing import Any, TypeAlias

from station.words import ENGLISH, Message, in_language, say

# A sheet of a spreadsheet before it is written: plain values in rows. Knows no file format.


Cell: TypeAlias = str | float | int | datetime | None
Row: TypeAlias = Sequence[Cell]


class Signed(float):
    """A number that is shown with its sign, as books write a change: +17.2 where it rises."""

    __slots__ = ()


Cells: TypeAlias = tuple[int, int, int]
"""Cells below one another: first row, column, last row, counted from 0; the header is row 0."""


@dataclass(frozen=True)
class Series:
    """A series of a chart: its name, the cells of its values across and up; `marks`: points without a line."""

    name: str
    across: Cells
    up: Cells
    marks: bool = False


@dataclass(frozen=True)
class Chart:
    """A chart of points and lines beside the rows: the names of its axes, its series, the least value up."""

    across: str
    up: str
    series: Sequence[Series]
    least: float | None = None


@dataclass(frozen=True)
class Sheet:
    """A sheet: its name, the columns' headers and widths in characters, its rows from top to bottom.

    A spreadsheet allows names of at most 31 characters, without any of []:*?/\\, in every language.
    """

    name: str
    columns: Sequence[tuple[str, float]]
    rows: Iterable[Row]
    chart: Chart | None = None


def local_time(wall: str) -> datetime | None:
    """Return a wall time (ISO 8601) in the station's own time zone, which it then leaves out; None when it is none.

    A spreadsheet knows no time zones, and no time before 1900.
    """
    try:
        local = datetime.fromisoformat(wall).astimezone().replace(tzinfo=None)
    except (ValueError, OverflowError, OSError):
        return None
    return local if local.year >= 1900 else None


def yes(value: bool) -> Message:
    """Return a truth as a word."""
    return say("word-yes" if value else "word-no")


DANGEROUS = ("=", "+", "-", "@", "\t", "\r", "\n")
"""What a spreadsheet may take for the beginning of a formula (OWASP, "CSV Injection")."""

_OPTIONS = {"constant_memory": True, "strings_to_formulas": False, "strings_to_urls": False}
_DATE = "yyyy-mm-dd hh:mm:ss"


def spreadsheet(sheets: Iterable[Sheet], language: str = ENGLISH) -> bytes:
    """Return a workbook of these sheets, their messages said in this language.

    Raises OSError when there is no room for its temporary files.
    """
    from xlsxwriter import Workbook  # type: ignore[import-untyped]  # noqa: PLC0415 - 0.1 s and 12 MB, rarely needed
    from xlsxwriter.exceptions import FileCreateError  # type: ignore[import-untyped]  # noqa: PLC0415

    out = io.BytesIO()
    with TemporaryDirectory(prefix="benchwarm-") as scratch:
        workbook = Workbook(out, {**_OPTIONS, "tmpdir": scratch})
        looks = {
            "header": workbook.add_format({"bold": True, "text_wrap": True, "valign": "top"}),
            # As if typed with a leading apostrophe: it stays text even when somebody edits the cell.
            "text": workbook.add_format({"num_format": "@", "quote_prefix": True}),
            "signed": workbook.add_format({"num_format": "+General;-General;General"}),
            "date": workbook.add_format({"num_format": _DATE, "align": "left"}),
        }
        for sheet in sheets:
            page = workbook.add_worksheet(in_language(sheet.name, language))
            _write(page, looks, sheet, language)
            if sheet.chart is not None:
                drawn = _drawn(workbook, in_language(sheet.name, language), sheet.chart, language)
                page.insert_chart(1, len(sheet.columns) + 1, drawn)
        try:
            workbook.close()
        except FileCreateError as error:
            raise OSError(str(error)) from error
    return out.getvalue()


def _write(page: Any, looks: dict[str, Any], sheet: Sheet, language: str) -> None:
    for column, (title, width) in enumerate(sheet.columns):
        page.set_column(column, column, width)
        page.write_string(0, column, in_language(title, language), looks["header"])
    page.freeze_panes(1, 0)
    for number, row in enumerate(sheet.rows, 1):
        for column, cell in enumerate(row):
            said = in_language(cell, language) if isinstance(cell, str) else cell
            _write_cell(page, looks, (number, column), said)


def _drawn(workbook: Any, sheet: str, chart: Chart, language: str) -> Any:
    """Return the spreadsheet's own chart: whoever opens it can change it."""
    drawn = workbook.add_chart({"type": "scatter", "subtype": "straight"})
    for each in chart.series:
        (first, across, last), (_, up, _) = each.across, each.up
        look = (
            {"marker": {"type": "x", "size": 7}, "line": {"none": True}}
            if each.marks
            else {"marker": {"type": "none"}, "line": {"width": 1.5}}
        )
        drawn.add_series(
            {
                "name": in_language(each.name, language),
                "categories": [sheet, first, across, last, across],
                "values": [sheet, first, up, last, up],
                **look,
            }
        )
    grid = {"major_gridlines": {"visible": True}, "minor_gridlines": {"visible": True, "line": {"color": "#DDDDDD"}}}
    drawn.set_x_axis({"name": in_language(chart.across, language), "min": 0, **grid})
    # From the readings up: the axis would begin at 0 °C otherwise, and flatten the curve.
    drawn.set_y_axis({"name": in_language(chart.up, language), **_span(chart), **grid})
    drawn.set_size({"width": 720, "height": 480})
    drawn.set_legend({"position": "bottom"})
    return drawn


def _span(chart: Chart) -> dict[str, float]:
    return {} if chart.least is None else {"min": math.floor(chart.least)}


def _write_cell(page: Any, looks: dict[str, Any], at: tuple[int, int], cell: Cell) -> None:
    if isinstance(cell, str):
        # One character that is not Unicode must not cost the whole file.
        text = cell.encode("utf-8", "replace").decode("utf-8")
        page.write_string(*at, text, looks["text"] if text.startswith(DANGEROUS) else None)
    elif isinstance(cell, datetime):
        page.write_datetime(*at, cell, looks["date"])
    elif cell is not None and math.isfinite(cell):
        page.write_number(*at, cell, looks["signed"] if isinstance(cell, Signed) else None)
