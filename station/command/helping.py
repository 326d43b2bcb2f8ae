"""`--help` of a command: what it does, the default of each option, an example, and what its exit statuses mean."""

import argparse
from typing import Any, Final

from station.command.terminal import EXIT_ADDRESS, EXIT_FAILED, EXIT_RECORD, EXIT_USAGE

STATUSES: Final = {
    0: "done",
    EXIT_FAILED: "the station's own fault",
    EXIT_USAGE: "something to change (the line says what)",
    EXIT_ADDRESS: "the address cannot be listened on",
    EXIT_RECORD: "the record cannot be opened or written",
}
ALWAYS: Final = (0, EXIT_FAILED, EXIT_USAGE)


def add_command(
    commands: Any,
    name: str,
    *,
    does: str,
    example: str,
    ends: tuple[int, ...] = (),
    statuses: dict[int, str] | None = None,
) -> argparse.ArgumentParser:
    """Add a command to the parser; `example` stands after the word "station", `ends` are further exit statuses.

    `statuses` replaces what they mean, where a command's own say something else.
    """
    told = statuses or {status: STATUSES[status] for status in (*ALWAYS, *ends)}
    parser: argparse.ArgumentParser = commands.add_parser(
        name,
        help=does,
        description=f"{does[:1].upper()}{does[1:]}{'' if does.endswith('?') else '.'}",
        epilog=f"example: station {example}\nexit status: {', '.join(f'{at} {means}' for at, means in told.items())}",
        formatter_class=_Formatter,
    )
    parser.set_defaults(example=example)
    return parser


class _Formatter(argparse.HelpFormatter):
    """Tells defaults, and keeps example and exit statuses on lines of their own."""

    def _fill_text(self, text: str, width: int, indent: str) -> str:
        return "\n".join(super(_Formatter, self)._fill_text(line, width, indent) for line in text.splitlines())

    def _get_help_string(self, action: argparse.Action) -> str | None:
        told = action.help or ""
        takes_none = action.nargs == 0 or action.required or action.default in (None, [], argparse.SUPPRESS)
        return told if takes_none or "default" in told else f"{told} (default: %(default)s)"
