"""The record as a spreadsheet (.xlsx): numbers are numbers, times are times, and text is only ever text.

XlsxWriter is loaded here and only when a spreadsheet is asked for. Rows go to a temporary file as they come, so
that a long practical costs disk, not memory.
"""

import io
import math
from collections.abc import Iterable
from datetime import datetime
from tempfile import TemporaryDirectory
from typing import Any

from station.record.spreadsheet_cells import Cell, Sheet

DANGEROUS = ("=", "+", "-", "@", "\t", "\r", "\n")
"""What a spreadsheet may take for the beginning of a formula (OWASP, "CSV Injection")."""

_OPTIONS = {"constant_memory": True, "strings_to_formulas": False, "strings_to_urls": False}
_DATE = "yyyy-mm-dd hh:mm:ss"


def spreadsheet(sheets: Iterable[Sheet]) -> bytes:
    """Return a workbook of these sheets. Raises OSError when there is no room for its temporary files."""
    from xlsxwriter import Workbook  # type: ignore[import-untyped]  # noqa: PLC0415 - 0.1 s and 12 MB, rarely needed
    from xlsxwriter.exceptions import FileCreateError  # type: ignore[import-untyped]  # noqa: PLC0415

    out = io.BytesIO()
    with TemporaryDirectory(prefix="benchwarm-") as scratch:
        workbook = Workbook(out, {**_OPTIONS, "tmpdir": scratch})
        looks = {
            "header": workbook.add_format({"bold": True, "text_wrap": True, "valign": "top"}),
            # As if typed with a leading apostrophe: it stays text even when somebody edits the cell.
            "text": workbook.add_format({"num_format": "@", "quote_prefix": True}),
            "date": workbook.add_format({"num_format": _DATE, "align": "left"}),
        }
        for sheet in sheets:
            _write(workbook.add_worksheet(sheet.name), looks, sheet)
        try:
            workbook.close()
        except FileCreateError as error:
            raise OSError(str(error)) from error
    return out.getvalue()


def _write(page: Any, looks: dict[str, Any], sheet: Sheet) -> None:
    for column, (title, width) in enumerate(sheet.columns):
        page.set_column(column, column, width)
        page.write_string(0, column, title, looks["header"])
    page.freeze_panes(1, 0)
    for number, row in enumerate(sheet.rows, 1):
        for column, cell in enumerate(row):
            _write_cell(page, looks, (number, column), cell)


def _write_cell(page: Any, looks: dict[str, Any], at: tuple[int, int], cell: Cell) -> None:
    if isinstance(cell, str):
        # One character that is not Unicode must not cost the whole file.
        text = cell.encode("utf-8", "replace").decode("utf-8")
        page.write_string(*at, text, looks["text"] if text.startswith(DANGEROUS) else None)
    elif isinstance(cell, datetime):
        page.write_datetime(*at, cell, looks["date"])
    elif cell is not None and math.isfinite(cell):
        page.write_number(*at, cell)
