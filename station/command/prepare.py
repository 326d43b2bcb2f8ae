"""`station prepare`: what to make up, label and lay out for a class, from a plan."""

import argparse
import functools
import json
from html import escape
from importlib.resources import files
from pathlib import Path
from textwrap import wrap
from typing import Any

from station.chemistry.preparation import Stock
from station.chemistry.reagents import UnknownReagentError, find_reagent
from station.command.helping import add_command
from station.command.plans import PLAN_HELP, named_plan
from station.command.terminal import CommandError
from station.practical.plan import PlanError
from station.practical.prepare.amounts import SCHOOLS_OWN, LessonPart, preparation
from station.practical.prepare.sheet import (
    MADE,
    STAFF_ONLY,
    TO_FIND,
    Bottle,
    LabelOf,
    LessonShown,
    Section,
    Sheet,
    hazards,
    sheet,
)
from station.practical.safety import LabelShown
from station.words import Message, say
from station.words.speaking import current_language, spoken

# The preparation as one page to print: it stands alone, without a script and without anything from elsewhere.


Json = dict[str, Any]

_STYLE = """
@page { size: A4; margin: 14mm; }
body { font: 11pt/1.4 system-ui, sans-serif; color: #111; background: #fff; max-width: 180mm; margin: 10mm auto; }
h1 { font-size: 16pt; } h2 { font-size: 13pt; margin-top: 6mm; } table { border-collapse: collapse; }
td, th { border: 1px solid #777; padding: 1mm 2mm; text-align: left; }
.first { border: 2px solid #111; padding: 2mm 3mm; font-weight: 600; }
.labels { display: grid; grid-template-columns: 1fr 1fr; gap: 3mm; break-before: page; }
.label { border: 1px solid #111; padding: 2mm 3mm; break-inside: avoid; }
.label b { font-size: 13pt; } section { break-inside: avoid; }
@media print { body { margin: 0; max-width: none; } }
.marks svg { width: 15mm; height: 15mm; margin: 1mm 1mm 0 0; }
"""


def preparation_page(sheet: Sheet) -> str:
    """Return the page as HTML, in the language of the settings."""
    title = _html(_title(sheet))
    boxes = "".join(_label(each) * each["count"] for each in sheet["bottles"])
    parts = [
        f"<h1>{title}</h1>",
        f'<p class="first">{_html(sheet["first"])}</p>',
        *(_section(each) for each in sheet["sections"]),
        *(_lesson(each) for each in sheet["lessons"]),
        f'<div class="labels">{boxes}</div>' if boxes else "",
    ]
    return (
        f'<!doctype html>\n<html lang="{current_language()}"><head><meta charset="utf-8"><title>{title}</title>'
        f'<meta name="viewport" content="width=device-width, initial-scale=1"><style>{_STYLE}</style></head>\n'
        f"<body>\n{chr(10).join(parts)}\n</body></html>\n"
    )


def _title(sheet: Sheet) -> Message:
    return say("sheet-title", practical_name=sheet["practical"], count=sheet["benches"])


def _html(message: str) -> str:
    return escape(spoken(message))


def _capital(message: str) -> str:
    """Return what a message says as a heading."""
    text = spoken(message)
    return text[:1].upper() + text[1:]


def pictogram(code: str) -> str:
    """Return a hazard pictogram as SVG, the drawing that the page shows too."""
    drawn = _drawings()
    return (
        f'<svg viewBox="0 0 100 100" role="img" aria-label="{escape(code)}">{drawn["frame"]}'
        f'<g transform="{drawn["place"]}">{drawn["symbols"][code]}</g></svg>'
    )


@functools.cache
def _drawings() -> Json:
    text = files("station.chemistry").joinpath("pictograms.json").read_text(encoding="utf-8")
    drawings: Json = json.loads(text)
    return drawings


def _section(section: Section) -> str:
    steps = "".join(f"<li>{_html(line)}</li>" for line in section["steps"])
    lines = "".join(f"<li>{_html(line)}</li>" for line in section["lines"])
    labels = "".join(f"<p>{_html(_label_of(each))}</p>{_marks(each)}" for each in section["labels"])
    return (
        f"<section><h2>{escape(_capital(section['head']))}</h2>"
        + (f"<ol>{steps}</ol>" if steps else "")
        + (f"<ul>{lines}</ul>" if lines else "")
        + f"{labels}</section>"
    )


def _label_of(label: LabelOf) -> Message:
    return say("sheet-label-of", of=label["of"], hazards=hazards(label))


def _lesson(lesson: LessonShown) -> str:
    rows = "".join(
        f"<tr><td>{_html(_minutes(each))}</td><td>{_html(each['part'])}</td></tr>" for each in lesson["parts"]
    )
    return f"<section><h2>{_html(lesson['head'])}</h2><table>{rows}</table><p>{_html(lesson['left'])}</p></section>"


def _minutes(part: LessonPart) -> Message:
    return say("sheet-minutes", minutes=f"{part['minutes']:.0f}")


def _label(bottle: Bottle) -> str:
    label, mol_dm3 = bottle["label"], bottle["concentration_mol_dm3"]
    strength = TO_FIND if mol_dm3 is None else say("sheet-strength", mol_dm3=f"{mol_dm3:g}")
    kept = f"<br>{_html(STAFF_ONLY)}" if bottle["store"] else ""
    return (
        f'<div class="label"><b>{escape(_capital(bottle["name"]))}</b>, {escape(bottle["formula"])}<br>'
        f"{_html(strength)}{kept}<br>{_html(hazards(label))}{_marks(label)}<div>{_html(MADE)}</div></div>"
    )


def _marks(label: LabelShown) -> str:
    drawn = "".join(pictogram(code) for code in label["pictograms"])
    return f'<div class="marks">{drawn}</div>' if drawn else ""


COLUMNS = 80


def add_to(commands: Any) -> None:
    """Add the command to the parser."""
    parser = add_command(
        commands,
        "prepare",
        does="solutions, labels, glassware and timetable for a class, from a plan",
        example="prepare --benches 15 --out sheet.html neutralisation",
    )
    parser.add_argument("plan", type=Path, metavar="plan.toml", help=PLAN_HELP)
    parser.add_argument("--benches", type=int, required=True, metavar="N", help="how many benches")
    parser.add_argument(
        "--stock",
        action="append",
        default=[],
        metavar="NAME=MOL_DM3",
        help='what the bottle says, as "hydrochloric acid=2.0"; may be given several times'
        " (default: what a school usually has)",
    )
    parser.add_argument("--json", action="store_true", help="everything as one JSON object")
    parser.add_argument(
        "--out", type=Path, metavar="FILE.html", help="a page to print, with labels (default: words on the terminal)"
    )
    parser.set_defaults(work=_prepare)


def _prepare(options: argparse.Namespace) -> int:
    plan = named_plan(options.plan)
    try:
        answer = preparation(plan, options.benches, dict(_stock(each) for each in options.stock))
    except PlanError as error:
        raise CommandError(say("file-problem", path=str(options.plan), reason=str(error))) from None
    if options.out is not None:
        try:
            options.out.write_text(preparation_page(sheet(answer)), encoding="utf-8")
        except OSError as error:
            told = say("file-cannot-be-written", path=str(options.out), reason=str(error.strerror))
            raise CommandError(told) from None
    if options.json:
        print(json.dumps(answer, ensure_ascii=False, allow_nan=False))
    elif options.out is not None:
        print(spoken(say("told-prepared", path=str(options.out), count=options.benches)))
    else:
        print(preparation_in_words(sheet(answer)))
    return 0


def _stock(text: str) -> tuple[str, Stock]:
    name, _, value = text.partition("=")
    try:
        mol_dm3 = float(value)
        reagent = find_reagent(name)
    except UnknownReagentError as error:
        raise CommandError(say("stock-wrong", typed=text, reason=str(error))) from None
    except ValueError:
        raise CommandError(say("stock-write-it", typed=text)) from None
    if not 0 < mol_dm3 <= 20:
        raise CommandError(say("stock-out-of-range", typed=text))
    return reagent.name, Stock(mol_dm3, SCHOOLS_OWN)


def preparation_in_words(sheet: Sheet) -> str:
    """Return the preparation as lines of text."""
    blocks = [[spoken(_title(sheet)), *_folded([sheet["first"]])]]
    for each in sheet["sections"]:
        labels = [_label_of(label) for label in each["labels"]]
        head = wrap(_capital(each["head"]), COLUMNS)
        blocks.append([*head, *_folded([*each["steps"], *each["lines"], *labels], "- ")])
    for lesson in sheet["lessons"]:
        parts = [f"{spoken(_minutes(part)):>10}  {spoken(part['part'])}" for part in lesson["parts"]]
        blocks.append([spoken(say("sheet-lesson", lesson=lesson["head"])), *parts, *_folded([lesson["left"]])])
    return "\n\n".join("\n".join(block) for block in blocks)


def _folded(lines: list[str], mark: str = "") -> list[str]:
    deeper = " " * len(mark)
    return [
        part for line in lines for part in wrap(spoken(line), COLUMNS, initial_indent=mark, subsequent_indent=deeper)
    ]
