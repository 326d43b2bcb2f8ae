"""What is said on a terminal, and in which language; exit statuses, and the error that becomes one line."""

import os
import sys
from pathlib import Path
from typing import TextIO

from station.practical.problems import toml_values
from station.words import ENGLISH, Message, languages
from station.words.speaking import spoken

LARGEST_SETTINGS = 1_000_000


def language_in(path: Path | None, *tables: str) -> str:
    """Return the language that a file of settings chooses, also where the rest of it is wrong; English otherwise."""
    if path is None:
        return ENGLISH
    try:
        if not path.is_file():  # a pipe can be read only once
            return ENGLISH
        with path.open("rb") as file:
            values = toml_values(file.read(LARGEST_SETTINGS).decode("utf-8-sig"))
        for table in tables:
            values = values[table]
        chosen = values["language"]
    except (OSError, ValueError, LookupError, TypeError):
        return ENGLISH
    return chosen if chosen in languages() else ENGLISH


def tell(message: str, to: TextIO | None = None) -> None:
    """Print a line at once, on standard output unless another stream is named.

    It is for whoever listens to a station at work: that nobody does, or cannot, ends no practical.
    """
    stream = sys.stdout if to is None else to
    try:
        print(spoken(message), file=stream, flush=True)
    except OSError:  # a full disk, a pipe that was closed: the rest goes nowhere, at the end of the process too
        os.dup2(os.open(os.devnull, os.O_WRONLY), stream.fileno())


EXIT_FAILED = 1  # the station's own fault
EXIT_USAGE = 2  # settings, plan, file or argument: the line says what to change
EXIT_ADDRESS = 3  # the address cannot be listened on
EXIT_RECORD = 4  # the record cannot be opened or written


class CommandError(Exception):
    """What the person did wrong, or what is in the way, in one line."""

    def __init__(self, message: str, status: int = EXIT_USAGE) -> None:
        super().__init__(_one_line(message))
        self.status = status


def _one_line(message: str) -> str:
    """Return it without line breaks, which a path or the fault of a library may bring."""
    text = " ".join(message.split())
    if not isinstance(message, Message):
        return text
    values = {name: _one_line(value) if isinstance(value, str) else value for name, value in message.values.items()}
    return Message(text, message.id, values)
