"""`station passphrase`: makes the line for station.toml from a passphrase, or from the code on a bench's label."""

import argparse
import getpass
import sys
from typing import Any

from station.command.helping import add_command
from station.command.terminal import CommandError
from station.server.door.secrets import HOLDERS, Holder, hashed
from station.words import Message, say
from station.words.speaking import spoken

KEYS: dict[Holder, str] = {
    "bench": "bench_code_hash",
    "teacher": "teacher_passphrase_hash",
    "technician": "technician_passphrase_hash",
}


def add_to(commands: Any) -> None:
    """Add the command to the parser."""
    parser = add_command(
        commands,
        "passphrase",
        does="make the line for [access] in station.toml",
        example="passphrase teacher",
    )
    parser.add_argument(
        "holder", nargs="?", choices=HOLDERS, default="teacher", help="whose it is; bench: the label's code"
    )
    parser.set_defaults(work=_passphrase)


def _passphrase(options: argparse.Namespace) -> int:
    """Read it from the prompt or a pipe, never from an argument, which others could see."""
    try:
        print(f'{KEYS[options.holder]} = "{hashed(options.holder, _words())}"')
    except ValueError as error:
        raise CommandError(str(error)) from None
    return 0


def _words() -> str:
    if not sys.stdin.isatty():
        return sys.stdin.readline().rstrip("\r\n")
    words = _asked(say("passphrase-ask"))
    if _asked(say("passphrase-again")) != words:
        raise CommandError(say("passphrase-differ"))
    return words


def _asked(for_what: Message) -> str:
    return getpass.getpass(f"{spoken(for_what)} ")
