"""The preparation as one page to print: it stands alone, without a script and without anything from elsewhere."""

import functools
import json
from html import escape
from importlib.resources import files
from typing import Any

from station.practical.prepare_words import MADE, TO_FIND, hazards

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


def preparation_page(sheet: Json) -> str:
    """Return the page as HTML."""
    title = f"{sheet['practical']}: {sheet['benches']} benches"
    boxes = "".join(_label(each) * each["count"] for each in sheet["bottles"])
    parts = [
        f"<h1>{escape(title)}</h1>",
        f'<p class="first">{escape(sheet["first"])}</p>',
        *(_section(each) for each in sheet["sections"]),
        *(_lesson(each) for each in sheet["lessons"]),
        f'<div class="labels">{boxes}</div>' if boxes else "",
    ]
    return (
        f'<!doctype html>\n<html lang="en"><head><meta charset="utf-8"><title>{escape(title)}</title>'
        f'<meta name="viewport" content="width=device-width, initial-scale=1"><style>{_STYLE}</style></head>\n'
        f"<body>\n{chr(10).join(parts)}\n</body></html>\n"
    )


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


def _section(section: Json) -> str:
    steps = "".join(f"<li>{escape(line)}</li>" for line in section["steps"])
    lines = "".join(f"<li>{escape(line)}</li>" for line in section["lines"])
    labels = "".join(
        f"<p>{escape(each['of'])}: {escape(hazards(each))}</p>{_marks(each)}" for each in section["labels"]
    )
    return (
        f"<section><h2>{escape(section['head'][:1].upper() + section['head'][1:])}</h2>"
        + (f"<ol>{steps}</ol>" if steps else "")
        + (f"<ul>{lines}</ul>" if lines else "")
        + f"{labels}</section>"
    )


def _lesson(lesson: Json) -> str:
    rows = "".join(
        f"<tr><td>{each['minutes']:.0f} min</td><td>{escape(each['part'])}</td></tr>" for each in lesson["parts"]
    )
    return f"<section><h2>{escape(lesson['head'])}</h2><table>{rows}</table><p>{escape(lesson['left'])}</p></section>"


def _label(bottle: Json) -> str:
    label, mol_dm3 = bottle["label"], bottle["concentration_mol_dm3"]
    strength = TO_FIND if mol_dm3 is None else f"{mol_dm3:g} mol/dm³"
    return (
        f'<div class="label"><b>{escape(bottle["name"].capitalize())}</b>, {escape(bottle["formula"])}<br>'
        f"{escape(strength)}<br>{escape(hazards(label))}{_marks(label)}<div>{escape(MADE)}</div></div>"
    )


def _marks(label: Json) -> str:
    drawn = "".join(pictogram(code) for code in label["pictograms"])
    return f'<div class="marks">{drawn}</div>' if drawn else ""
