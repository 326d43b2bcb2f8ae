"""The preparation as one page to print: it stands alone, without a script and without anything from elsewhere."""

from html import escape
from typing import Any

from station.command.prepare_parts import (
    hazards,
    laid_out,
    left_line,
    solid_line,
    solution_head,
    solution_lines,
    unknown_lines,
)

Json = dict[str, Any]

_STYLE = """
body { font: 11pt/1.4 system-ui, sans-serif; color: #111; background: #fff; max-width: 180mm; margin: 10mm auto; }
h1 { font-size: 16pt; } h2 { font-size: 13pt; margin-top: 6mm; } table { border-collapse: collapse; }
td, th { border: 1px solid #777; padding: 1mm 2mm; text-align: left; }
.first { border: 2px solid #111; padding: 2mm 3mm; font-weight: 600; }
.labels { display: grid; grid-template-columns: 1fr 1fr; gap: 3mm; break-before: page; }
.label { border: 1px solid #111; padding: 2mm 3mm; break-inside: avoid; }
.label b { font-size: 13pt; } section { break-inside: avoid; }
"""


def preparation_page(answer: Json) -> str:
    """Return the page as HTML."""
    title = f"{answer['practical']}: {answer['benches']} benches"
    parts = [
        f"<h1>{escape(title)}</h1>",
        f'<p class="first">{escape(answer["first"])}</p>',
        *(_section(solution_head(each), solution_lines(each)) for each in answer["solutions"]),
        *(_section(each["name"], unknown_lines(each, answer["range_mol_dm3"])) for each in answer["unknown"]),
        *(_section(each["name"], [solid_line(each)]) for each in answer["solids"]),
        _section("Lay out", laid_out(answer)),
        _section("Mind", answer["cautions"]),
        _section("Spills", answer["spills"]),
        _section("Away with it", answer["disposal"]),
        *(_timetable(lesson, table) for lesson, table in answer["timetable"].items()),
        _labels(answer),
    ]
    return (
        f'<!doctype html>\n<html lang="en"><head><meta charset="utf-8"><title>{escape(title)}</title>'
        f'<meta name="viewport" content="width=device-width, initial-scale=1"><style>{_STYLE}</style></head>\n'
        f"<body>\n{chr(10).join(parts)}\n</body></html>\n"
    )


def _section(head: str, lines: list[str]) -> str:
    items = "".join(f"<li>{escape(line)}</li>" for line in lines)
    return f"<section><h2>{escape(head[:1].upper() + head[1:])}</h2><ul>{items}</ul></section>"


def _timetable(lesson: str, table: Json) -> str:
    rows = "".join(
        f"<tr><td>{each['minutes']:.0f} min</td><td>{escape(each['part'])}</td></tr>" for each in table["parts"]
    )
    left = f"<p>{escape(left_line(table))}</p>"
    return f"<section><h2>Lesson of {escape(lesson)} minutes</h2><table>{rows}</table>{left}</section>"


def _labels(answer: Json) -> str:
    boxes = "".join(_label(each) * each["labels"] for each in answer["solutions"])
    return f'<div class="labels">{boxes}</div>'


def _label(each: Json) -> str:
    strength = "concentration to be found" if each["secret"] else f"{each['concentration_mol_dm3']:g} mol/dm³"
    label = each["label"]
    marks = f"<br>Pictograms: {' '.join(label['pictograms'])}" if label["pictograms"] else ""
    return (
        f'<div class="label"><b>{escape(each["name"].capitalize())}</b><br>{strength}<br>'
        f"{escape(hazards(label))}{marks}<br>Made on: ________ by: ________</div>"
    )
