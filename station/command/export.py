"""`station export`: the samples of the record as a CSV file."""

import argparse
import sys
from pathlib import Path
from typing import Any

from station.command.errors import EXIT_RECORD, CommandError
from station.command.settings import default_record_folder
from station.record.exchange import record_csv
from station.record.journal import JournalError


def add_to(commands: Any) -> None:
    """Add the command to the parser."""
    parser = commands.add_parser("export", help="write the newest practical as a record CSV")
    parser.add_argument("--record", type=Path, metavar="FOLDER", help="where the record is kept")
    parser.add_argument("--out", type=Path, metavar="FILE", help="the file to write (default: standard output)")
    parser.set_defaults(work=_export)


def _export(options: argparse.Namespace) -> int:
    try:
        text = record_csv(options.record or default_record_folder())
    except JournalError as error:
        raise CommandError(str(error), EXIT_RECORD) from None
    if options.out is None:
        sys.stdout.write(text)
        return 0
    try:
        options.out.write_text(text, encoding="utf-8", newline="")
    except OSError as error:
        raise CommandError(f"{options.out}: cannot be written: {error.strerror}") from None
    return 0
