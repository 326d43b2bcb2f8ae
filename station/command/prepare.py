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
from station.command.prepare_parts import laid_out, left_line, solid_line, solution_head, solution_lines, unknown_lines
from station.practical.plan import PlanError
from station.practical.prepare import preparation

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
            options.out.write_text(preparation_page(answer), encoding="utf-8")
        except OSError as error:
            raise CommandError(f"{options.out}: cannot be written: {error.strerror}") from None
    if options.json:
        print(json.dumps(answer, ensure_ascii=False, allow_nan=False))
    elif options.out is not None:
        print(f"{options.out}: preparation for {options.benches} benches, to print.")
    else:
        print(preparation_in_words(answer))
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
    return reagent.name, Stock(mol_dm3, "the school's own bottle")


def preparation_in_words(answer: Json) -> str:
    """Return the preparation as lines of text."""
    blocks = [[f"{answer['practical']}: {answer['benches']} benches", *_folded([answer["first"]])]]
    blocks += [[*_folded([solution_head(each)]), *_folded(solution_lines(each), "- ")] for each in answer["solutions"]]
    for each in answer["unknown"]:
        blocks.append([each["name"].capitalize(), *_folded(unknown_lines(each, answer["range_mol_dm3"]), "- ")])
    blocks += [[each["name"].capitalize(), *_folded([solid_line(each)], "- ")] for each in answer["solids"]]
    for head, lines in (
        ("Lay out:", laid_out(answer)),
        ("Mind:", answer["cautions"]),
        ("Spills:", answer["spills"]),
        ("Away with it:", answer["disposal"]),
    ):
        blocks.append([head, *_folded(lines, "- ")])
    for lesson, table in answer["timetable"].items():
        parts = [f"{each['minutes']:6.0f} min  {each['part']}" for each in table["parts"]]
        blocks.append([f"Lesson of {lesson} minutes:", *parts, *_folded([left_line(table)])])
    return "\n\n".join("\n".join(block) for block in blocks)


def _folded(lines: list[str], mark: str = "") -> list[str]:
    deeper = " " * len(mark)
    return [part for line in lines for part in wrap(line, COLUMNS, initial_indent=mark, subsequent_indent=deeper)]
