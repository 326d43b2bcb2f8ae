"""What a class needs: solutions to make up, glassware, spills, disposal, the lesson's timetable.

Volumes beyond what is poured, glassware and timetable are common practice, no source. Nothing here replaces the
school's risk assessment.
"""

import math
from collections.abc import Iterator, Mapping
from typing import Final

from typing_extensions import TypedDict

from station.chemistry.hazards import substance_label
from station.chemistry.preparation import Preparation, Stock, amount_text, prepare, safe_label, vessels
from station.chemistry.reagents import find_reagent
from station.chemistry.standard import against_phthalate, by_the_alkali, can_be_standardised, u_as_made
from station.practical.guide import Hazard, guide, statements_told
from station.practical.plan import Ingredient, Plan, PlanError
from station.practical.predict_plan import minutes
from station.practical.safety import LabelShown, label_values, safe, safety_warnings
from station.words import Message, say


class LessonPart(TypedDict):
    """A part of a lesson."""

    part: Message
    minutes: float


class LessonTable(TypedDict):
    """A lesson's parts, how much is left (negative: too long), and how many repeats would fit."""

    parts: list[LessonPart]
    left_min: float
    repeats_that_fit: int


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


class NearShown(TypedDict):
    """A limit of the regulation within 10 % of a concentration, and what holds from there on."""

    mol_dm3: float
    hazards: list[Hazard]


class Standardised(TypedDict):
    """How a solution is titrated to know it better: against `mass_g` of a standard, or (null) by the alkali."""

    alkali: str
    mass_g: float | None
    factor_g_cm3: float | None
    u_mol_dm3: float


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
        "near_limit": NearShown | None,
        "stock_label": LabelShown,
        "store_label": LabelShown,
        "u_mol_dm3": float | None,
        "vessels": int,
        "vessel_cm3": float,
    },
)


class Solution(Needed, _Made):
    """A solution to make up, from a mass or from a stronger one; `secret`: the class is to find its concentration."""

    secret: bool
    standardise: Standardised | None


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


RESERVE: Final = 0.2
"""More than is poured, for spills, rinsing and a repeat that goes wrong."""
RINSE_CM3: Final = 25.0
"""For each bench and solution: glassware rinsed with it, and the probe dipped."""
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
        secret = each.prepared_mol_dm3 is not None
        better = _standardised(each, _solutions(plan))
        solutions.append({**amounts, **_solution(made), "secret": secret, "standardise": better})
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
    u_relative = u_as_made(made.reagent, made.stock)
    count, vessel_cm3 = vessels(made.volume_cm3)
    near = made.near
    return {
        "formula": made.reagent.formula,
        "concentration_mol_dm3": made.concentration_mol_dm3,
        "from": made.stock.words,
        "mass_g": None if made.mass_g is None else float(amount_text(made.mass_g)),
        "stock_cm3": None if made.stock_cm3 is None else float(amount_text(made.stock_cm3)),
        "steps": list(made.steps),
        "label": label_values(made.label),
        "near_edge": made.near_edge,
        "near_limit": None if near is None else {"mol_dm3": near.mol_dm3, "hazards": statements_told(near.statements)},
        "stock_label": label_values(made.stock_label),
        "store_label": label_values(made.store_label),
        "u_mol_dm3": None if u_relative is None else u_relative * made.concentration_mol_dm3,
        "vessels": count,
        "vessel_cm3": vessel_cm3,
    }


def _standardised(each: Ingredient, solutions: list[Ingredient]) -> Standardised | None:
    """How this one can be known better: a strong alkali by itself, an acid by such an alkali of the same plan."""
    reagent, mol_dm3 = find_reagent(each.name), each.told_mol_dm3
    if mol_dm3 is None:
        return None
    if can_be_standardised(reagent):
        found = against_phthalate(reagent, mol_dm3)
        return {
            "alkali": each.name,
            "mass_g": found.mass_g,
            "factor_g_cm3": found.factor_g_cm3,
            "u_mol_dm3": found.u_relative * mol_dm3,
        }
    for other in solutions:
        if other is each or other.told_mol_dm3 is None:
            continue
        u_relative = by_the_alkali(reagent, mol_dm3, find_reagent(other.name), other.told_mol_dm3)
        if u_relative is not None:
            u_mol_dm3 = u_relative * mol_dm3
            return {"alkali": other.name, "mass_g": None, "factor_g_cm3": None, "u_mol_dm3": u_mol_dm3}
    return None


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
