"""The preparation as a sheet of words: the same for terminal, paper and page, each of which lays it out."""

from collections.abc import Iterator
from typing import Any

from station.practical.plan_hazards import STRICTER

Json = dict[str, Any]


def sheet(answer: Json) -> Json:
    """Return what `preparation` found as `sections` in order, `lessons`, `bottles` to label, and `from_stock`:
    the names of what is made from a bottle.

    A section has a `head`, `steps` to do in order, `lines` to know, and `labels` (`of` says whose).
    """
    return {
        "practical": answer["practical"],
        "benches": answer["benches"],
        "first": answer["first"],
        "sections": list(_sections(answer)),
        "lessons": [_lesson(lesson, table) for lesson, table in answer["timetable"].items()],
        "from_stock": [each["name"] for each in answer["solutions"] if each["stock_cm3"] is not None],
        "bottles": [_bottle(each) for each in answer["solutions"]],
    }


def hazards(label: Json) -> str:
    """Return signal word and hazard statements with their codes, or that there are none."""
    if not label["classified"]:
        return NOT_CLASSIFIED
    signal = f"{label['signal']}: " if label["signal"] else ""
    return signal + "; ".join(f"{each['text']} ({each['code']})" for each in label["hazards"]) + "."


NOT_CLASSIFIED = "Not classified as hazardous at this concentration; the usual cautions hold."
STOCK, BOTTLE = "The stock", "The bottle's label"
TO_FIND = "concentration to be found"
MADE = "Made on: ________ by: ________"


def _sections(answer: Json) -> Iterator[Json]:
    for each in answer["solutions"]:
        yield _solution(each)
    for each in answer["unknown"]:
        yield _section(each["name"], lines=_unknown(each, answer["range_mol_dm3"]))
    for each in answer["solids"]:
        line = f"{each['count']} times {each['each_g']:g} g; have {each['total_g']:g} g ready."
        yield _section(each["name"], lines=[line], labels=[{"of": STOCK, **each["label"]}])
    yield _section("Lay out", lines=[f"{each['all']} × {each['item']}" for each in answer["glassware"]])
    yield _section("Mind", lines=answer["cautions"])
    yield _section("Spills", lines=answer["spills"])
    yield _section("Away with it", lines=answer["disposal"])


def _section(
    head: str, *, steps: list[str] | None = None, lines: list[str] | None = None, labels: list[Json] | None = None
) -> Json:
    return {"head": head, "steps": steps or [], "lines": lines or [], "labels": labels or []}


def _solution(each: Json) -> Json:
    """What to make and from what: the steps, what to mind, and the labels of stock and bottle."""
    name, mol_dm3, make_cm3 = each["name"], each["concentration_mol_dm3"], each["make_cm3"]
    if each["mass_g"] is not None:
        head = f"{name}, {mol_dm3:g} mol/dm³: make {make_cm3:g} cm³ from {each['mass_g']:g} g ({each['from']})"
    else:
        head = f"{name}, {mol_dm3:g} mol/dm³: make {make_cm3:g} cm³ from {each['stock_cm3']:g} cm³ ({each['from']})"
    lines = [STRICTER] if each["near_edge"] else []
    if each["secret"]:
        lines.append("The class is to find its concentration: do not write it on the students' bottles.")
    labels = [{"of": STOCK, **each["stock_label"]}, {"of": BOTTLE, **each["label"]}]
    return _section(head, steps=each["steps"], lines=lines, labels=labels)


def _unknown(each: Json, range_mol_dm3: list[float] | None) -> list[str]:
    lines = [f"{each['make_cm3']:g} cm³ are needed. The plan does not say its concentration."]
    if range_mol_dm3 is not None:
        low, high = range_mol_dm3
        lines.append(f"This plan can resolve {low:.3g} to {high:.3g} mol/dm³.")
    return lines


def _lesson(lesson: str, table: Json) -> Json:
    left_min = table["left_min"]
    if round(left_min) == 1:
        left = "1 minute is left."
    elif left_min >= 0:
        left = f"{left_min:.0f} minutes are left."
    else:
        fits = table["repeats_that_fit"]
        left = f"{-left_min:.0f} minutes too long. With {fits} of the repeats it may fit; else share them."
    return {"minutes": int(lesson), "head": f"Lesson of {lesson} minutes", "parts": table["parts"], "left": left}


def _bottle(each: Json) -> Json:
    """What stands on each bottle; a concentration that the class is to find does not."""
    return {
        "name": each["name"],
        "formula": each["formula"],
        "concentration_mol_dm3": None if each["secret"] else each["concentration_mol_dm3"],
        "label": each["label"],
        "count": each["labels"],
    }
