"""`station wipe`: deletes the record for good, before the next class or before a kit is given away."""

import argparse
from pathlib import Path
from typing import Any

from station.command.errors import EXIT_RECORD, CommandError
from station.command.settings import default_record_folder
from station.record.journal import JournalError
from station.record.upkeep import wipe


def add_to(commands: Any) -> None:
    """Add the command to the parser."""
    parser = commands.add_parser("wipe", help="delete the record and all sessions for good; stop the station first")
    parser.add_argument("--record", type=Path, metavar="FOLDER", help="where the record is kept")
    parser.add_argument("--yes", action="store_true", help="really: nothing of it comes back")
    parser.add_argument("--register", action="store_true", help="the probe register too, which else stays")
    parser.set_defaults(work=_wipe)


def _wipe(options: argparse.Namespace) -> int:
    folder = options.record or default_record_folder()
    if not options.yes:
        raise CommandError(f"{folder}: add --yes to delete this record for good; `station backup` keeps a copy first")
    try:
        checks = wipe(folder, register_too=options.register)
    except JournalError as error:
        raise CommandError(str(error), EXIT_RECORD) from None
    stays = f" The probe register stays ({checks} checks); --register deletes it too." if checks else ""
    print(f"{folder}: the record is deleted. Backups that lie elsewhere stay.{stays}")
    return 0
