"""`station analyse` and `station replay`: results and decisions from a file."""

import argparse
import json
from pathlib import Path
from typing import Any

from station.command.helping import add_command
from station.command.settings import load_plan, read_text
from station.command.terminal import CommandError
from station.practical.dataset import RepeatData
from station.practical.plan import Plan
from station.practical.replay import with_readings
from station.record.exchange_in import ExchangeError, read_exchange

LARGEST_FILE = 20_000_000


def add_to(commands: Any) -> None:
    """Add the command to the parser."""
    parser = add_command(
        commands,
        "analyse",
        does="end-point and enthalpy from a record or readings CSV",
        example="analyse --plan plan.toml readings.csv",
    )
    parser.add_argument("file", type=Path, metavar="FILE.csv", help="a record or readings CSV")
    parser.add_argument(
        "--plan",
        type=Path,
        metavar="plan.toml",
        help="what was in the cup and what was added (default: not told, so no amounts of substance)",
    )
    parser.add_argument("--json", action="store_true", help="the results as JSON")
    parser.set_defaults(work=_analyse)


def load_repeats(path: Path, plan: Plan | None) -> list[RepeatData]:
    """Return the repeats of the file. Raises CommandError naming line and column."""
    try:
        return read_exchange(read_text(path, LARGEST_FILE), str(path), once=plan is not None and plan.pours_once)
    except ExchangeError as error:
        raise CommandError(str(error)) from None


def analysed(path: Path, plan: Plan | None) -> dict[str, Any]:
    """Return the results for a file; readings of a record are those the live procedure would have put down."""
    from station.practical.results import results  # noqa: PLC0415 - loads numpy, which other commands need not

    return results(plan, with_readings(plan, load_repeats(path, plan)))


def _analyse(options: argparse.Namespace) -> int:
    plan = None if options.plan is None else load_plan(options.plan)
    answer = analysed(options.file, plan)
    if options.json:
        print(json.dumps(answer, ensure_ascii=False, allow_nan=False))
        return 0
    from station.command.words import results_in_words  # noqa: PLC0415

    print(results_in_words(answer))
    return 0
