"""`station backup`: the whole record into one file, also while the station is at work."""

import argparse
from pathlib import Path
from typing import Any

from station.command.helping import add_command
from station.command.settings import default_record_folder
from station.command.terminal import EXIT_RECORD, CommandError
from station.record.journal import JournalError
from station.record.upkeep import backup
from station.room.store.upkeep import backup_room
from station.words import say
from station.words.speaking import spoken


def add_to(commands: Any) -> None:
    """Add the command to the parser."""
    parser = add_command(
        commands,
        "backup",
        does="copy the whole record into one file, also while the station works",
        example="backup bench-1.backup",
        ends=(EXIT_RECORD,),
    )
    parser.add_argument("file", type=Path, metavar="FILE", help="the file to write")
    parser.add_argument(
        "--record", type=Path, metavar="FOLDER", help="where the record is kept (default: the service's folder)"
    )
    parser.add_argument(
        "--room",
        type=Path,
        metavar="FOLDER",
        help="what a room keeps in this folder, instead (default: a bench's record)",
    )
    parser.set_defaults(work=_backup)


def _backup(options: argparse.Namespace) -> int:
    try:
        if options.room is not None:
            count = backup_room(options.room, options.file)
        else:
            count = backup(options.record or default_record_folder(), options.file)
    except JournalError as error:
        raise CommandError(str(error), EXIT_RECORD) from None
    print(spoken(say("told-backed-up", path=str(options.file), count=count)))
    return 0
