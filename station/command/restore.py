"""`station restore`: a backup takes the record's place; what was there is set aside."""

import argparse
from pathlib import Path
from typing import Any

from station.command.helping import add_command
from station.command.settings import default_record_folder
from station.command.terminal import EXIT_RECORD, CommandError
from station.record.journal import JournalError
from station.record.upkeep import restore
from station.room.store.upkeep import restore_room
from station.words import say
from station.words.speaking import spoken


def add_to(commands: Any) -> None:
    """Add the command to the parser."""
    parser = add_command(
        commands,
        "restore",
        does="put a backup in the record's place; stop the station first",
        example="restore bench-1.backup",
        ends=(EXIT_RECORD,),
    )
    parser.add_argument("file", type=Path, metavar="FILE", help="a file that `station backup` wrote")
    parser.add_argument(
        "--record", type=Path, metavar="FOLDER", help="where the record is kept (default: the service's folder)"
    )
    parser.add_argument(
        "--room",
        type=Path,
        metavar="FOLDER",
        help="what a room keeps in this folder, instead (default: a bench's record)",
    )
    parser.set_defaults(work=_restore)


def _restore(options: argparse.Namespace) -> int:
    folder = options.room or options.record or default_record_folder()
    try:
        count, aside = (restore_room if options.room is not None else restore)(options.file, folder)
    except JournalError as error:
        raise CommandError(str(error), EXIT_RECORD) from None
    print(spoken(say("told-restored", path=str(folder), count=count)))
    if aside is not None:
        print(spoken(say("told-restored-aside", path=str(aside))))
    return 0
