"""The preparation as a sheet of words: the same for terminal, paper and page, each of which lays it out."""

from collections.abc import Iterator
from typing import Final

from typing_extensions import TypedDict

from station.chemistry.preparation import amount_text
from station.practical.prepare.amounts import (
    RESERVE,
    RINSE_CM3,
    LessonPart,
    LessonTable,
    Prepared,
    Solution,
    Standardised,
    Unknown,
)
from station.practical.safety import STRICTER, LabelShown
from station.words import Message, join, say


class LabelOf(LabelShown):
    """A label, and whose."""

    of: Message


class Section(TypedDict):
    """`steps` to do in order, `lines` to know, and labels."""

    head: str
    steps: list[Message]
    lines: list[Message]
    labels: list[LabelOf]


class LessonShown(TypedDict):
    """A lesson of so many minutes, in words."""

    minutes: int
    head: Message
    parts: list[LessonPart]
    left: Message


class Bottle(TypedDict):
    """What stands on each bottle, and how many there are; a concentration that the class is to find does not.

    `store`: the bottle in which all of it is kept, which tells the concentration to whoever takes it from the shelf.
    """

    name: str
    formula: str
    concentration_mol_dm3: float | None
    label: LabelShown
    count: int
    store: bool


class Sheet(TypedDict):
    """A preparation in words: sections in order, lessons, bottles to label, and the names of what is made from one."""

    practical: Message
    benches: int
    first: Message
    sections: list[Section]
    lessons: list[LessonShown]
    bottles: list[Bottle]
    from_stock: list[str]


def sheet(answer: Prepared) -> Sheet:
    """Return what `preparation` found, in words."""
    return {
        "practical": answer["practical"],
        "benches": answer["benches"],
        "first": answer["first"],
        "sections": list(_sections(answer)),
        "lessons": [_lesson(lesson, table) for lesson, table in answer["timetable"].items()],
        "from_stock": [each["name"] for each in answer["solutions"] if each["stock_cm3"] is not None],
        "bottles": [
            *(_bottle(each, None) for each in answer["unknown"]),
            *(_bottle(each, None if each["secret"] else each["concentration_mol_dm3"]) for each in answer["solutions"]),
            *(_stored(each) for each in answer["solutions"]),
        ],
    }


def hazards(label: LabelShown) -> Message:
    """Return signal word and hazard statements with their codes, or that there are none."""
    if not label["classified"]:
        return say("label-not-classified")
    told = (say("label-statement", hazard=each["text"], code=each["code"]) for each in label["hazards"])
    statements = join(told, "list-semicolon")
    if label["signal"]:
        return say("label-hazards", signal=label["signal"], statements=statements)
    return say("label-hazards-no-signal", statements=statements)


STOCK: Final = say("label-of-stock")
BOTTLE: Final = say("label-of-bottle")
STORE: Final = say("label-of-store")
STAFF_ONLY: Final = say("label-staff-only")
CORROSIVE: Final = "H314"
"""Causes severe skin burns and eye damage: concentrated acids, and pellets of alkalis."""
TO_FIND: Final = say("label-to-find")
MADE: Final = say("label-made-on")


def _sections(answer: Prepared) -> Iterator[Section]:
    for solution in answer["solutions"]:
        yield _solution_words(solution, answer["benches"])
    # Alkalis first: acids are titrated by them.
    better = [(each, each["standardise"]) for each in answer["solutions"] if each["standardise"] is not None]
    for solution, how in sorted(better, key=lambda each: each[1]["mass_g"] is None):
        yield _standardise(solution, how)
    for unknown in answer["unknown"]:
        lines = _unknown(unknown, answer["range_mol_dm3"])
        yield _section(unknown["name"], lines=lines, labels=[{**unknown["label"], "of": BOTTLE}])
    for solid in answer["solids"]:
        each_g, total_g = f"{solid['each_g']:g}", f"{solid['total_g']:g}"
        line = say("sheet-weighed", count=solid["count"], each_g=each_g, total_g=total_g)
        yield _section(solid["name"], lines=[line], labels=[{**solid["label"], "of": STOCK}])
    laid = [say("sheet-items", count=each["all"], item=each["item"]) for each in answer["glassware"]]
    yield _section(say("sheet-lay-out"), lines=laid)
    yield _section(say("sheet-mind"), lines=answer["cautions"])
    yield _section(say("sheet-spills"), lines=answer["spills"])
    yield _section(say("sheet-disposal"), lines=answer["disposal"])


def _section(
    head: str,
    *,
    steps: list[Message] | None = None,
    lines: list[Message] | None = None,
    labels: list[LabelOf] | None = None,
) -> Section:
    return {"head": head, "steps": steps or [], "lines": lines or [], "labels": labels or []}


def _solution_words(each: Solution, benches: int) -> Section:
    """What to make and from what: the steps, what to mind, and the labels of stock and bottle."""
    mol_dm3, make_cm3 = f"{each['concentration_mol_dm3']:g}", f"{each['make_cm3']:g}"
    made = {"reagent": each["name"], "mol_dm3": mol_dm3, "volume_cm3": make_cm3, "stock": each["from"]}
    if each["mass_g"] is not None:
        head = say("sheet-make-from-mass", mass_g=amount_text(each["mass_g"]), **made)
    else:
        head = say("sheet-make-from-volume", stock_cm3=amount_text(each["stock_cm3"] or 0.0), **made)
    lines = [
        say(
            "sheet-why-so-much",
            poured_cm3=f"{each['bench_cm3'] * benches:g}",
            rinse_cm3=f"{RINSE_CM3:g}",
            percent=f"{100 * RESERVE:.0f}",
        )
    ]
    if any(hazard["code"] == CORROSIVE for hazard in each["stock_label"]["hazards"]):
        lines.append(say("sheet-gloves"))
    lines.append(say("sheet-vessel", count=each["vessels"], dm3=f"{each['vessel_cm3'] / 1000:g}"))
    lines.extend(_near(each))
    if each["u_mol_dm3"] is None:
        lines.append(say("sheet-as-sure-as-bottle"))
    else:
        lines.append(say("sheet-strength-as-made", **_known_to(each["u_mol_dm3"], each["concentration_mol_dm3"])))
    if each["secret"]:
        lines.append(say("sheet-class-to-find"))
    labels: list[LabelOf] = [
        {**each["stock_label"], "of": STOCK},
        {**each["label"], "of": BOTTLE},
        {**each["store_label"], "of": STORE},
    ]
    return _section(head, steps=each["steps"], lines=lines, labels=labels)


def _near(each: Solution) -> Iterator[Message]:
    """What to mind where a limit of the regulation is near."""
    if each["near_edge"]:
        yield STRICTER
    near = each["near_limit"]
    if near is not None:
        told = (say("label-statement", hazard=hazard["text"], code=hazard["code"]) for hazard in near["hazards"])
        yield say("sheet-near-limit", mol_dm3=f"{near['mol_dm3']:.3g}", statements=join(told, "list-semicolon"))


class _KnownTo(TypedDict):
    percent: str
    u_mol_dm3: str


def _known_to(u_mol_dm3: float, mol_dm3: float) -> _KnownTo:
    """How well a strength is known, as a share of it and in its own unit: one figure each."""
    return {"percent": f"{100 * u_mol_dm3 / mol_dm3:.1g}", "u_mol_dm3": f"{float(f'{u_mol_dm3:.1g}'):g}"}


def _standardise(each: Solution, better: Standardised) -> Section:
    """The titration that tells the strength better than making up does."""
    names = {"reagent": each["name"], "alkali": better["alkali"]}
    if better["mass_g"] is None:
        steps = [say("standardise-pipette", **names), say("standardise-alkali-burette", **names)]
        counted = say("standardise-by-ratio", **names)
    else:
        mass_g, factor = f"{better['mass_g']:.2f}", f"{better['factor_g_cm3'] or 0.0:.4g}"
        steps = [say("standardise-weigh", mass_g=mass_g), say("standardise-burette", **names)]
        counted = say("standardise-by-mass", factor=factor)
    lines = [
        say("standardise-known-to", **_known_to(better["u_mol_dm3"], each["concentration_mol_dm3"])),
        say("standardise-flames"),
    ]
    return _section(say("standardise-head", **names), steps=[*steps, say("standardise-thrice"), counted], lines=lines)


def _unknown(each: Unknown, range_mol_dm3: tuple[float, float] | None) -> list[Message]:
    lines = [say("sheet-needed", volume_cm3=f"{each['make_cm3']:g}")]
    if range_mol_dm3 is not None:
        low, high = range_mol_dm3
        lines.append(say("sheet-can-resolve", least_mol_dm3=f"{low:.3g}", most_mol_dm3=f"{high:.3g}"))
    return [*lines, say("sheet-label-holds", mol_dm3=f"{each['most_mol_dm3']:g}")]


def _lesson(lesson: str, table: LessonTable) -> LessonShown:
    left_min = table["left_min"]
    if left_min >= 0:
        left = say("lesson-left", minutes=round(left_min))
    else:
        left = say("lesson-too-long", minutes=f"{-left_min:.0f}", repeats=table["repeats_that_fit"])
    head = say("lesson-of", minutes=lesson)
    return {"minutes": int(lesson), "head": head, "parts": table["parts"], "left": left}


def _bottle(each: Solution | Unknown, mol_dm3: float | None) -> Bottle:
    return {
        "name": each["name"],
        "formula": each["formula"],
        "concentration_mol_dm3": mol_dm3,
        "label": each["label"],
        "count": each["labels"],
        "store": False,
    }


def _stored(each: Solution) -> Bottle:
    return {
        "name": each["name"],
        "formula": each["formula"],
        "concentration_mol_dm3": each["concentration_mol_dm3"],
        "label": each["store_label"],
        "count": each["vessels"],
        "store": True,
    }
