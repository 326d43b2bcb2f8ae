"""The preparation as one page to print: it stands alone, without a script and without anything from elsewhere."""

from html import escape
from typing import Any

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
        *(_solution(each) for each in answer["solutions"]),
        *(_unknown(each, answer) for each in answer["unknown"]),
        *(_solid(each) for each in answer["solids"]),
        _section("Lay out", [f"{each['all']} × {each['item']}" for each in answer["glassware"]]),
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
    return f"<section><h2>{escape(head)}</h2><ul>{items}</ul></section>"


def _solution(each: Json) -> str:
    amount = f"{each['mass_g']:g} g" if each["mass_g"] is not None else f"{each['stock_cm3']:g} cm³"
    lines = [f"Start from {amount} ({each['from']}). {_hazards(each['stock_label'])}.", *each["steps"]]
    if each["near_edge"]:
        lines.append("Within 5 % of a limit of the regulation: the stricter class is on the label.")
    if each["secret"]:
        lines.append("The class is to find its concentration: it is not on the students' labels.")
    head = f"{each['name'].capitalize()}, {each['concentration_mol_dm3']:g} mol/dm³: make {each['make_cm3']:g} cm³"
    return _section(head, lines)


def _unknown(each: Json, answer: Json) -> str:
    lines = [f"{each['make_cm3']:g} cm³ are needed. The plan does not say its concentration."]
    if answer["range_mol_dm3"] is not None:
        low, high = answer["range_mol_dm3"]
        lines.append(f"This plan can resolve {low:.3g} to {high:.3g} mol/dm³.")
    return _section(each["name"].capitalize(), lines)


def _solid(each: Json) -> str:
    return _section(
        each["name"].capitalize(), [f"{each['count']} times {each['each_g']:g} g; have {each['total_g']:g} g ready."]
    )


def _timetable(lesson: str, table: Json) -> str:
    rows = "".join(
        f"<tr><td>{each['minutes']:.0f} min</td><td>{escape(each['part'])}</td></tr>" for each in table["parts"]
    )
    left = table["left_min"]
    end = f"{left:.0f} minutes are left." if left >= 0 else f"{-left:.0f} minutes too long: share the repeats out."
    return f"<section><h2>Lesson of {escape(lesson)} minutes</h2><table>{rows}</table><p>{end}</p></section>"


def _labels(answer: Json) -> str:
    boxes = "".join(_label(each) * each["labels"] for each in answer["solutions"])
    return f'<div class="labels">{boxes}</div>'


def _label(each: Json) -> str:
    strength = "concentration to be found" if each["secret"] else f"{each['concentration_mol_dm3']:g} mol/dm³"
    label = each["label"]
    marks = f"<br>Pictograms: {' '.join(label['pictograms'])}" if label["pictograms"] else ""
    return (
        f'<div class="label"><b>{escape(each["name"].capitalize())}</b><br>{strength}<br>'
        f"{escape(_hazards(label))}.{marks}<br>Made on: ________ by: ________</div>"
    )


def _hazards(label: Json) -> str:
    if not label["classified"]:
        return "Not classified as hazardous at this concentration; the usual cautions hold"
    signal = f"{label['signal']}. " if label["signal"] else ""
    return signal + "; ".join(each["text"] for each in label["hazards"])
