"""`station replay`: what the live procedure would have decided on a record, and when."""

import argparse
import json
from pathlib import Path
from typing import Any

from station.command.analyse import load_repeats
from station.command.helping import add_command
from station.command.settings import load_plan
from station.command.terminal import CommandError
from station.practical import events as e
from station.practical.replay import Decided, replay
from station.words import join, say
from station.words.speaking import figure, spoken


def add_to(commands: Any) -> None:
    """Add the command to the parser."""
    parser = add_command(
        commands,
        "replay",
        does="run a record through the live procedure",
        example="replay --plan plan.toml record.csv",
    )
    parser.add_argument("file", type=Path, metavar="RECORD.csv", help="a record CSV")
    parser.add_argument(
        "--plan",
        type=Path,
        metavar="plan.toml",
        help="what was in the cup and what was added (default: not told)",
    )
    parser.add_argument("--json", action="store_true", help="one JSON object a line")
    parser.set_defaults(work=_replay)


def _replay(options: argparse.Namespace) -> int:
    plan = None if options.plan is None else load_plan(options.plan)
    repeats = load_repeats(options.file, plan)
    if not all(each.samples for each in repeats):
        raise CommandError(say("replay-no-samples", path=str(options.file)))
    for decided in replay(plan, repeats):
        line = decision(decided)
        print(json.dumps(line, ensure_ascii=False) if options.json else _words(line), flush=True)
    return 0


def decision(decided: Decided) -> dict[str, Any]:
    """Return a decision as one JSON line; a reading that could not be waited for is `taken`, not `settled`."""
    event, body = decided.event, decided.event.to_body()
    kind = event.kind
    if isinstance(event, e.ReadingSettled):
        kind = "settled" if event.settled else "taken"
    elif isinstance(event, e.PortionPrompted):
        kind = "prompt"
    body.pop("key", None)
    return {"kind": kind, **body, "repeat": decided.repeat, "time_s": round(decided.time_s, 3)}


def _words(line: dict[str, Any]) -> str:
    repeat, time_s = say("result-repeat", repeat=line["repeat"]), figure(f"{line['time_s']:.1f}")
    what = [say("replay-kind", kind=line["kind"])]
    if "portion" in line:
        what.append(say("portion-number", portion=line["portion"]))
    if line.get("temperature_c") is not None:
        what.append(say("replay-temperature", temperature_c=f"{line['temperature_c']:.2f}"))
    return f"{spoken(repeat)} {time_s:>8} s  {spoken(join(what))}"
