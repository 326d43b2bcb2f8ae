"""`station prepare`: what to make up, label and lay out for a class, from a plan."""

import argparse
import json
from pathlib import Path
from textwrap import wrap
from typing import Any

from station.chemistry.preparation import Stock
from station.chemistry.reagents import UnknownReagentError, find_reagent
from station.command.errors import CommandError
from station.command.prepare_page import preparation_page
from station.command.settings import load_plan
from station.practical.plan import PlanError
from station.practical.prepare import preparation

Json = dict[str, Any]
COLUMNS = 80


def add_to(commands: Any) -> None:
    """Add the command to the parser."""
    parser = commands.add_parser("prepare", help="solutions, labels, glassware and timetable for a class, from a plan")
    parser.add_argument("plan", type=Path, metavar="plan.toml")
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
    plan = load_plan(options.plan)
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
    blocks += [_solution(each) for each in answer["solutions"]]
    blocks += [
        [f"{each['name']}: {each['make_cm3']:g} cm³ needed. The plan does not say its concentration.", *_range(answer)]
        for each in answer["unknown"]
    ]
    blocks += [
        [f"{each['name']}: {each['count']} times {each['each_g']:g} g; have {each['total_g']:g} g."]
        for each in answer["solids"]
    ]
    ware = [f"{each['all']} × {each['item']}" for each in answer["glassware"]]
    for head, lines in (
        ("Lay out:", ware),
        ("Mind:", answer["cautions"]),
        ("Spills:", answer["spills"]),
        ("Away with it:", answer["disposal"]),
    ):
        blocks.append([head, *_folded(lines, "- ")])
    blocks += [_timetable(lesson, table) for lesson, table in answer["timetable"].items()]
    return "\n\n".join("\n".join(block) for block in blocks)


def _solution(each: Json) -> list[str]:
    amount = f"{each['mass_g']:g} g" if each["mass_g"] is not None else f"{each['stock_cm3']:g} cm³"
    lines = [
        f"{each['name']}, {each['concentration_mol_dm3']:g} mol/dm³: make {each['make_cm3']:g} cm³ "
        f"from {amount} ({each['from']})",
        *_folded([f"The stock: {_hazards(each['stock_label'])}."]),
        *_folded(each["steps"], "- "),
        *_folded([f"Label: {_hazards(each['label'])}."]),
    ]
    if each["near_edge"]:
        lines += _folded(["It is within 5 % of a limit of the regulation: the stricter class is shown."])
    if each["secret"]:
        lines += _folded(["The class is to find its concentration: do not write it on the students' bottles."])
    return lines


def _hazards(label: Json) -> str:
    if not label["classified"]:
        return "not classified as hazardous at this concentration; the usual cautions hold"
    signal = f"{label['signal']}: " if label["signal"] else ""
    return signal + "; ".join(f"{each['text']} ({each['code']})" for each in label["hazards"])


def _range(answer: Json) -> list[str]:
    if answer["range_mol_dm3"] is None:
        return []
    low, high = answer["range_mol_dm3"]
    return _folded([f"This plan can resolve {low:.3g} to {high:.3g} mol/dm³."])


def _timetable(lesson: str, table: Json) -> list[str]:
    lines = [f"Lesson of {lesson} minutes:"]
    lines += [f"{each['minutes']:6.0f} min  {each['part']}" for each in table["parts"]]
    if table["left_min"] >= 0:
        return [*lines, f"{table['left_min']:6.0f} min  left"]
    over, fits = -table["left_min"], table["repeats_that_fit"]
    return [*lines, *_folded([f"{over:.0f} minutes too long. With {fits} of the repeats it may fit; else share them."])]


def _folded(lines: list[str], mark: str = "") -> list[str]:
    return [
        part for line in lines for part in wrap(line, COLUMNS, initial_indent=mark, subsequent_indent=" " * len(mark))
    ]
