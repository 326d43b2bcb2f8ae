"""`station wipe`: deletes the record for good, before the next class or before a kit is given away."""

import argparse
from pathlib import Path
from typing import Any

from station.command.helping import add_command
from station.command.settings import default_record_folder
from station.command.terminal import EXIT_RECORD, CommandError
from station.record.journal import JournalError
from station.record.upkeep import wipe
from station.words import join, say
from station.words.speaking import spoken


def add_to(commands: Any) -> None:
    """Add the command to the parser."""
    parser = add_command(
        commands,
        "wipe",
        does="delete the record and all sessions for good; stop the station first",
        example="wipe --yes",
        ends=(EXIT_RECORD,),
    )
    parser.add_argument(
        "--record", type=Path, metavar="FOLDER", help="where the record is kept (default: the service's folder)"
    )
    parser.add_argument("--yes", action="store_true", help="really: nothing of it comes back")
    parser.add_argument("--register", action="store_true", help="the probe register too, which else stays")
    parser.set_defaults(work=_wipe)


def _wipe(options: argparse.Namespace) -> int:
    folder = options.record or default_record_folder()
    if not options.yes:
        raise CommandError(say("wipe-add-yes", path=str(folder)))
    try:
        checks = wipe(folder, register_too=options.register)
    except JournalError as error:
        raise CommandError(str(error), EXIT_RECORD) from None
    stays = [say("told-register-stays", count=checks)] if checks else []
    print(spoken(join([say("told-wiped", path=str(folder)), *stays])))
    return 0
