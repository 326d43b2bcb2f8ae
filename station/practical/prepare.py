"""A plan made ready for a class: solutions to make up, labels, glassware, spills, disposal, the lesson's timetable.

Volumes beyond what is poured, glassware and timetable are common practice, no source. Nothing here replaces the
school's risk assessment.
"""

import math
from collections.abc import Iterator, Mapping
from typing import Final

from typing_extensions import TypedDict

from station.chemistry.hazards import substance_label
from station.chemistry.preparation import Preparation, Stock, prepare, safe_label
from station.chemistry.reagents import find_reagent
from station.practical.guide import guide
from station.practical.plan import Ingredient, Plan, PlanError
from station.practical.predict_plan import minutes
from station.practical.safety import STRICTER, LabelShown, label_values, safe, safety_warnings
from station.words import Message, join, say

# The preparation as a sheet of words: the same for terminal, paper and page, each of which lays it out.


class LabelOf(LabelShown):
    """A label, and whose."""

    of: Message


class Section(TypedDict):
    """`steps` to do in order, `lines` to know, and labels."""

    head: str
    steps: list[Message]
    lines: list[Message]
    labels: list[LabelOf]


class LessonPart(TypedDict):
    """A part of a lesson."""

    part: Message
    minutes: float


class LessonTable(TypedDict):
    """A lesson's parts, how much is left (negative: too long), and how many repeats would fit."""

    parts: list[LessonPart]
    left_min: float
    repeats_that_fit: int


class LessonShown(TypedDict):
    """A lesson of so many minutes, in words."""

    minutes: int
    head: Message
    parts: list[LessonPart]
    left: Message


class Bottle(TypedDict):
    """What stands on each bottle, and how many there are; a concentration that the class is to find does not."""

    name: str
    formula: str
    concentration_mol_dm3: float | None
    label: LabelShown
    count: int


class Sheet(TypedDict):
    """A preparation in words: sections in order, lessons, bottles to label, and the names of what is made from one."""

    practical: Message
    benches: int
    first: Message
    sections: list[Section]
    lessons: list[LessonShown]
    bottles: list[Bottle]
    from_stock: list[str]


class Needed(TypedDict):
    """A solution: what one bench pours of it, what to make, and how many bottles to label."""

    name: str
    bench_cm3: float
    make_cm3: float
    labels: int


class Unknown(Needed):
    """An acid that the class is to find: its label is that of the strongest that the plan can find."""

    formula: str
    most_mol_dm3: float
    label: LabelShown


_Made = TypedDict(
    "_Made",
    {
        "formula": str,
        "concentration_mol_dm3": float,
        "from": str,
        "mass_g": float | None,
        "stock_cm3": float | None,
        "steps": list[Message],
        "label": LabelShown,
        "near_edge": bool,
        "stock_label": LabelShown,
    },
)


class Solution(Needed, _Made):
    """A solution to make up, from a mass or from a stronger one; `secret`: the class is to find its concentration."""

    secret: bool


class Solid(TypedDict):
    """A solid to weigh out."""

    name: str
    each_g: float
    count: int
    total_g: float
    label: LabelShown


class Item(TypedDict):
    """Something to lay out: on each bench, and in all."""

    item: str
    each: int
    all: int


class Prepared(TypedDict):
    """Everything to get ready; `timetable` by the minutes of a lesson."""

    practical: Message
    benches: int
    solutions: list[Solution]
    unknown: list[Unknown]
    range_mol_dm3: tuple[float, float] | None
    solids: list[Solid]
    glassware: list[Item]
    cautions: list[Message]
    spills: list[Message]
    disposal: list[Message]
    timetable: dict[str, LessonTable]
    first: Message


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
TO_FIND: Final = say("label-to-find")
MADE: Final = say("label-made-on")


def _sections(answer: Prepared) -> Iterator[Section]:
    for solution in answer["solutions"]:
        yield _solution_words(solution, answer["benches"])
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
        head = say("sheet-make-from-mass", mass_g=f"{each['mass_g']:.3g}", **made)
    else:
        head = say("sheet-make-from-volume", stock_cm3=f"{each['stock_cm3']:.3g}", **made)
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
    if each["near_edge"]:
        lines.append(STRICTER)
    if each["secret"]:
        lines.append(say("sheet-class-to-find"))
    labels: list[LabelOf] = [{**each["stock_label"], "of": STOCK}, {**each["label"], "of": BOTTLE}]
    return _section(head, steps=each["steps"], lines=lines, labels=labels)


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
    }


RESERVE: Final = 0.2
"""More than is poured, for spills, rinsing and a repeat that goes wrong."""
RINSE_CM3: Final = 25.0
"""For each bench and solution: glassware rinsed with it, and the probe dipped."""
CORROSIVE: Final = "H314"
"""Causes severe skin burns and eye damage: concentrated acids, and pellets of alkalis."""
SCHOOLS_OWN: Final = say("stock-own-bottle")
LESSONS_MIN: Final = (50, 60)
BRIEF_MIN, CLEAR_MIN, TALK_MIN = 8.0, 8.0, 5.0
FIRST: Final = say("prepare-usual-practice")


def preparation(plan: Plan, benches: int, stocks: Mapping[str, Stock] | None = None) -> Prepared:
    """Return everything to get ready for so many benches. Raises PlanError.

    `stocks` replaces what a school usually has, by reagent name. An acid whose concentration the plan does not
    say is not made up here: its volume is told, and the range that the plan can resolve.
    """
    safe(plan)
    if not 1 <= benches <= 100:
        raise PlanError(say("problem-benches", count=benches))
    solutions: list[Solution] = []
    unknown: list[Unknown] = []
    for each in _solutions(plan):
        name, bench_cm3 = each.name, each.volume_cm3 * plan.repeats
        make_cm3 = _made_cm3(bench_cm3, benches)
        amounts: Needed = {"name": name, "bench_cm3": bench_cm3, "make_cm3": make_cm3, "labels": benches}
        if each.told_mol_dm3 is None:
            unknown.append(_not_told(each, amounts))
            continue
        try:
            made = prepare(find_reagent(name), each.told_mol_dm3, make_cm3, (stocks or {}).get(name))
        except ValueError as error:
            raise PlanError(say("problem-of-reagent", reagent=name, problem=str(error))) from None
        # What staff made up is for the class to find: no bottle may say it.
        solutions.append({**amounts, **_solution(made), "secret": each.prepared_mol_dm3 is not None})
    shown = guide(plan)
    return {
        "practical": plan.name,
        "benches": benches,
        "solutions": solutions,
        "unknown": unknown,
        "range_mol_dm3": plan.range_mol_dm3(),
        "solids": [_solid(each, plan, benches) for each in plan.ingredients if each.mass_g is not None],
        "glassware": _glassware(plan, benches),
        "cautions": [*(each["text"] for each in safety_warnings(plan)), *shown["cautions"]],
        "spills": list(_spills(plan)),
        "disposal": [shown["clearing_up"][1], say("prepare-not-down-the-sink")],
        "timetable": {str(lesson): timetable(plan, lesson) for lesson in LESSONS_MIN},
        "first": FIRST,
    }


def timetable(plan: Plan, lesson_min: int) -> LessonTable:
    """Return the lesson's parts in minutes, how much is left (negative: too long), and how many repeats would fit."""
    work_min = minutes(plan)["total"]
    parts = [
        (say("lesson-explain"), BRIEF_MIN),
        (say("lesson-repeats", count=plan.repeats), work_min),
        (say("lesson-clear-up"), CLEAR_MIN),
        (say("lesson-talk"), TALK_MIN),
    ]
    left = round(lesson_min - sum(each_min for _, each_min in parts), 1)
    fits = plan.repeats
    while fits > 1 and _with_repeats(plan, fits) + BRIEF_MIN + CLEAR_MIN + TALK_MIN > lesson_min:
        fits -= 1
    told: list[LessonPart] = [{"part": part, "minutes": each_min} for part, each_min in parts]
    return {"parts": told, "left_min": left, "repeats_that_fit": fits if left < 0 else plan.repeats}


def _with_repeats(plan: Plan, repeats: int) -> float:
    return minutes(plan.model_copy(update={"repeats": repeats}))["total"]


def _solutions(plan: Plan) -> list[Ingredient]:
    return [each for each in plan.ingredients if each.reagent is not None and each.mass_g is None]


def _made_cm3(bench_cm3: float, benches: int) -> float:
    """What to make: all benches with rinsing and reserve, rounded up to a volume that people make up."""
    needed_cm3 = benches * (bench_cm3 * (1 + RESERVE) + RINSE_CM3)
    step_cm3 = 50.0 if needed_cm3 <= 500 else 250.0 if needed_cm3 <= 2000 else 500.0
    return math.ceil(needed_cm3 / step_cm3 - 1e-9) * step_cm3


def _solution(made: Preparation) -> _Made:
    return {
        "formula": made.reagent.formula,
        "concentration_mol_dm3": made.concentration_mol_dm3,
        "from": made.stock.words,
        "mass_g": None if made.mass_g is None else float(f"{made.mass_g:.4g}"),
        "stock_cm3": None if made.stock_cm3 is None else float(f"{made.stock_cm3:.4g}"),
        "steps": list(made.steps),
        "label": label_values(made.label),
        "near_edge": made.near_edge,
        "stock_label": label_values(made.stock_label),
    }


def _not_told(each: Ingredient, needed: Needed) -> Unknown:
    """What the bottle of an acid that is to be found says: hazards as of the strongest that the plan can find."""
    reagent, most_mol_dm3 = find_reagent(each.name), each.most_mol_dm3 or 0.0
    label, _ = safe_label(reagent, most_mol_dm3)
    return {**needed, "formula": reagent.formula, "most_mol_dm3": most_mol_dm3, "label": label_values(label)}


def _solid(solid: Ingredient, plan: Plan, benches: int) -> Solid:
    each_g = solid.mass_g or 0.0
    return {
        "name": solid.called,
        "each_g": each_g,
        "count": plan.repeats * benches,
        "total_g": round(each_g * plan.repeats * benches * (1 + RESERVE), 1),
        "label": label_values(substance_label(find_reagent(solid.name))),
    }


def _glassware(plan: Plan, benches: int) -> list[Item]:
    each = [
        (say("item-cup"), 1),
        *plan.measured_with,
        (say("item-stirrer"), 1),
        (say("item-bottle"), len(_solutions(plan)) or 1),
        (say("item-waste-beaker"), 1),
        (say("item-wash-bottle"), 1),
        (say("item-eye-protection"), 2),
    ]
    return [{"item": item, "each": count, "all": count * benches} for item, count in each]


def _spills(plan: Plan) -> Iterator[Message]:
    """What can spill here. Common practice in school laboratories, no source."""
    reagents = [(find_reagent(each.name), each.mass_g is not None) for each in _with_reagent(plan)]
    if any(weighed for _, weighed in reagents):
        yield say("spill-solid")
    yield say("spill-small")
    if any(reagent.is_acid for reagent, _ in reagents):
        yield say("spill-acid")
    if any(reagent.is_alkali for reagent, _ in reagents):
        yield say("spill-alkali")
    yield say("safety-splash-in-eye-long")


def _with_reagent(plan: Plan) -> list[Ingredient]:
    return [each for each in plan.ingredients if each.reagent is not None]
