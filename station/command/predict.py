"""`station predict`: what a plan promises, before anybody has poured."""

import argparse
import json
from pathlib import Path
from typing import Any

from station.command.helping import add_command
from station.command.plans import PLAN_HELP, named_plan
from station.command.terminal import CommandError
from station.practical.plan import PlanError
from station.words import say


def add_to(commands: Any) -> None:
    """Add the command to the parser."""
    parser = add_command(
        commands,
        "predict",
        does="curve, end-point, ± of both methods and minutes, from a plan alone",
        example="predict neutralisation",
    )
    parser.add_argument("plan", type=Path, metavar="plan.toml", help=PLAN_HELP)
    parser.add_argument("--json", action="store_true", help="the prediction as one JSON object")
    parser.set_defaults(work=_predict)


def _predict(options: argparse.Namespace) -> int:
    from station.practical.predict import predict  # noqa: PLC0415 - loads numpy, which other commands need not

    plan = named_plan(options.plan)
    try:
        answer = predict(plan)
    except PlanError as error:
        raise CommandError(say("file-problem", path=str(options.plan), reason=str(error))) from None
    if options.json:
        print(json.dumps(answer, ensure_ascii=False, allow_nan=False))
        return 0
    from station.command.predict_words import prediction_in_words  # noqa: PLC0415

    print(prediction_in_words(answer, plan))
    return 0
