"""The command line. Each command is a module of its own, imported only when it is called."""

import argparse
import os
import sys
import traceback
from collections.abc import Callable, Sequence
from importlib import import_module

from station.command.terminal import EXIT_FAILED, CommandError
from station.words import say
from station.words.speaking import speaking, spoken

COMMANDS = (
    "demo",
    "practise",
    "serve",
    "room",
    "rehearse",
    "export",
    "analyse",
    "replay",
    "predict",
    "prepare",
    "kit",
    "check",
    "passphrase",
    "backup",
    "restore",
    "wipe",
    "update",
)
IN_PACKAGES = {"check": "check.check", "rehearse": "rehearse.rehearse", "room": "room.room"}
"""Commands that have more than one module."""


def run() -> None:
    """Run the command line and end the process with its exit status."""
    sys.exit(main(sys.argv[1:]))


def main(arguments: Sequence[str]) -> int:
    """Run one command; returns the exit status. What a person did wrong is one line on standard error."""
    options = parser_of(arguments).parse_args(arguments)
    with speaking(_language(options)):
        return _done(options)


def _language(options: argparse.Namespace) -> str:
    """Return the language of what is printed: as the command says, else as the settings of this machine choose."""
    if hasattr(options, "language"):
        chosen: Callable[[argparse.Namespace], str] = options.language
        return chosen(options)
    settings = import_module("station.command.settings")
    try:
        path = settings.settings_path(getattr(options, "config", None))
    except OSError:  # a card that may not be looked at: the command itself says so, if it needs it
        path = None
    return str(settings.page_language(path))


def _done(options: argparse.Namespace) -> int:
    work: Callable[[argparse.Namespace], int] = options.work
    try:
        return work(options)
    except CommandError as error:
        print(spoken(say("told-error", command_name=options.command, reason=str(error))), file=sys.stderr)
        return error.status
    except BrokenPipeError:
        return _unread()
    except ExceptionGroup as errors:  # from one of the tasks of a bench at work
        rest = errors.split(BrokenPipeError)[1]
        return _unread() if rest is None else _our_fault(options.command, rest)
    except KeyboardInterrupt:
        return 130
    except Exception as error:
        return _our_fault(options.command, error)


def _our_fault(command: str, error: Exception) -> int:
    """Nobody sees a traceback unless they ask for it."""
    if os.environ.get("STATION_TRACEBACK"):
        traceback.print_exception(error)
    told = say("told-mistake", command_name=command, fault_name=type(error).__name__, reason=str(error))
    print(spoken(told), file=sys.stderr)
    return EXIT_FAILED


def _unread() -> int:
    """Whoever read our output has gone, which is no fault; what Python would still flush goes nowhere."""
    os.dup2(os.open(os.devnull, os.O_WRONLY), sys.stdout.fileno())
    return 0


class _Version(argparse.Action):
    """Prints the versions, one line each; looked up only when they are asked for."""

    def __call__(self, parser: argparse.ArgumentParser, *_: object) -> None:
        """Print them and end the process."""
        print(import_module("station.bench.check.machine").told())
        parser.exit()


def parser_of(arguments: Sequence[str]) -> argparse.ArgumentParser:
    """Return the parser of the command that is named, or of all."""
    parser = argparse.ArgumentParser(
        prog="station", description="A bench station for temperature-change practicals in school chemistry."
    )
    parser.add_argument("--version", action=_Version, nargs=0, help="versions of station, Python, system, libraries")
    commands = parser.add_subparsers(dest="command", required=True, metavar="COMMAND")
    wanted = [name for name in COMMANDS if name in arguments[:1]] or COMMANDS
    for name in wanted:
        import_module(f"station.command.{IN_PACKAGES.get(name, name)}").add_to(commands)
    return parser


if __name__ == "__main__":
    run()
