"""`station restore`: a backup takes the record's place; what was there is set aside."""

import argparse
from pathlib import Path
from typing import Any

from station.command.errors import EXIT_RECORD, CommandError
from station.command.settings import default_record_folder
from station.record.journal import JournalError
from station.record.upkeep import restore


def add_to(commands: Any) -> None:
    """Add the command to the parser."""
    parser = commands.add_parser("restore", help="put a backup in the record's place; stop the station first")
    parser.add_argument("file", type=Path, metavar="FILE", help="a file that `station backup` wrote")
    parser.add_argument("--record", type=Path, metavar="FOLDER", help="where the record is kept")
    parser.set_defaults(work=_restore)


def _restore(options: argparse.Namespace) -> int:
    folder = options.record or default_record_folder()
    try:
        count, aside = restore(options.file, folder)
    except JournalError as error:
        raise CommandError(str(error), EXIT_RECORD) from None
    print(f"{folder}: {count} events are back.")
    if aside is not None:
        print(f"The record that was there lies in {aside}.")
    return 0
