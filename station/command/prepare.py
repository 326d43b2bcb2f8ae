"""`station prepare`: what to make up, label and lay out for a class, from a plan."""

import argparse
import json
from pathlib import Path
from textwrap import wrap
from typing import Any

from station.chemistry.preparation import Stock
from station.chemistry.reagents import UnknownReagentError, find_reagent
from station.command.errors import CommandError
from station.command.named_plan import PLAN_HELP, named_plan
from station.command.prepare_page import preparation_page
from station.practical.plan import PlanError
from station.practical.prepare import SCHOOLS_OWN, preparation
from station.practical.prepare_words import hazards, sheet

Json = dict[str, Any]
COLUMNS = 80


def add_to(commands: Any) -> None:
    """Add the command to the parser."""
    parser = commands.add_parser("prepare", help="solutions, labels, glassware and timetable for a class, from a plan")
    parser.add_argument("plan", type=Path, metavar="plan.toml", help=PLAN_HELP)
    parser.add_argument("--benches", type=int, required=True, metavar="N", help="how many benches")
    parser.add_argument(
        "--stock",
        action="append",
        default=[],
        metavar="NAME=MOL_DM3",
        help='what the bottle says, for example --stock "hydrochloric acid=2.0"; may be given several times',
    )
    parser.add_argument("--json", action="store_true", help="everything as one JSON object")
    parser.add_argument("--out", type=Path, metavar="FILE.html", help="a page to print, with labels")
    parser.set_defaults(work=_prepare)


def _prepare(options: argparse.Namespace) -> int:
    plan = named_plan(options.plan)
    try:
        answer = preparation(plan, options.benches, dict(_stock(each) for each in options.stock))
    except PlanError as error:
        raise CommandError(f"{options.plan}: {error}") from None
    if options.out is not None:
        try:
            options.out.write_text(preparation_page(sheet(answer)), encoding="utf-8")
        except OSError as error:
            raise CommandError(f"{options.out}: cannot be written: {error.strerror}") from None
    if options.json:
        print(json.dumps(answer, ensure_ascii=False, allow_nan=False))
    elif options.out is not None:
        print(f"{options.out}: preparation for {options.benches} benches, to print.")
    else:
        print(preparation_in_words(sheet(answer)))
    return 0


def _stock(text: str) -> tuple[str, Stock]:
    name, _, value = text.partition("=")
    try:
        mol_dm3 = float(value)
        reagent = find_reagent(name)
    except UnknownReagentError as error:
        raise CommandError(f"--stock {text}: {error}") from None
    except ValueError:
        raise CommandError(f"--stock {text}: write it as NAME=MOL_DM3, for example nitric acid=2.0") from None
    if not 0 < mol_dm3 <= 20:
        raise CommandError(f"--stock {text}: mol/dm³ must be above 0 and at most 20")
    return reagent.name, Stock(mol_dm3, SCHOOLS_OWN)


def preparation_in_words(sheet: Json) -> str:
    """Return the preparation as lines of text."""
    blocks = [[f"{sheet['practical']}: {sheet['benches']} benches", *_folded([sheet["first"]])]]
    for each in sheet["sections"]:
        labels = [f"{label['of']}: {hazards(label)}" for label in each["labels"]]
        head = each["head"][:1].upper() + each["head"][1:]
        blocks.append([*_folded([head]), *_folded([*each["steps"], *each["lines"], *labels], "- ")])
    for each in sheet["lessons"]:
        parts = [f"{part['minutes']:6.0f} min  {part['part']}" for part in each["parts"]]
        blocks.append([f"{each['head']}:", *parts, *_folded([each["left"]])])
    return "\n\n".join("\n".join(block) for block in blocks)


def _folded(lines: list[str], mark: str = "") -> list[str]:
    deeper = " " * len(mark)
    return [part for line in lines for part in wrap(line, COLUMNS, initial_indent=mark, subsequent_indent=deeper)]
