"""A plan made ready for a class: solutions to make up, labels, glassware, spills, disposal, the lesson's timetable.

Volumes beyond what is poured, glassware and timetable are common practice, no source. Nothing here replaces the
school's risk assessment.
"""

import math
from collections.abc import Mapping
from typing import Any, Final

from station.chemistry.hazards import substance_label
from station.chemistry.preparation import Preparation, Stock, prepare
from station.chemistry.reagents import find_reagent
from station.practical.guide import guide
from station.practical.plan import OncePlan, Plan, PlanError, PortionsPlan, number
from station.practical.plan_hazards import label_values
from station.practical.predict_acid import acid_of, pair_of
from station.practical.predict_minutes import minutes
from station.practical.strong import solutions_of, strong_words

Json = dict[str, Any]

RESERVE: Final = 0.2
"""More than is poured, for spills, rinsing and a repeat that goes wrong."""
RINSE_CM3: Final = 25.0
"""For each bench and solution: glassware rinsed with it, and the probe dipped."""
SCHOOLS_OWN: Final = "the school's own bottle"
LESSONS_MIN: Final = (50, 60)
BRIEF_MIN, CLEAR_MIN, TALK_MIN = 8.0, 8.0, 5.0
FIRST: Final = (
    "Usual practice only: your employer's risk assessment, local rules and qualified staff come first. A label on a "
    "bottle counts more than a table."
)


def preparation(plan: Plan, benches: int, stocks: Mapping[str, Stock] | None = None) -> Json:
    """Return everything to get ready for so many benches, as JSON values. Raises PlanError.

    `stocks` replaces what a school usually has, by reagent name. An acid whose concentration the plan does not
    say is not made up here: its volume is told, and the range that the plan can resolve.
    """
    if not 1 <= benches <= 100:
        raise PlanError(f"benches must be from 1 to 100, not {benches}")
    solutions, unknown, solids = [], [], []
    for name, mol_dm3, bench_cm3 in _solutions(plan):
        make_cm3 = _made_cm3(bench_cm3, benches)
        amounts = {"name": name, "bench_cm3": bench_cm3, "make_cm3": make_cm3}
        if mol_dm3 is None:
            unknown.append(amounts)
            continue
        try:
            made = prepare(find_reagent(name), mol_dm3, make_cm3, (stocks or {}).get(name))
        except ValueError as error:
            raise PlanError(f"{name}: {error}") from None
        # What staff made up is for the class to find: no bottle may say it.
        secret = isinstance(plan, PortionsPlan) and plan.acid.prepared_mol_dm3 == mol_dm3 and name == plan.acid.name
        solutions.append({**amounts, **_solution(made), "secret": secret, "labels": benches})
    if isinstance(plan, OncePlan) and plan.addition.mass_g is not None:
        solids.append(_solid(plan, benches))
    shown = guide(plan)
    return {
        "practical": plan.name,
        "benches": benches,
        "solutions": solutions,
        "unknown": unknown,
        "range_mol_dm3": _range_mol_dm3(plan),
        "solids": solids,
        "glassware": _glassware(plan, benches),
        "cautions": [*strong_words(solutions_of(plan)), *shown["cautions"]],
        "spills": list(_SPILLS),
        "disposal": [shown["clearing_up"][1], "Never put solids or concentrated solutions down the sink."],
        "timetable": {str(lesson): timetable(plan, lesson) for lesson in LESSONS_MIN},
        "first": FIRST,
    }


def timetable(plan: Plan, lesson_min: int) -> Json:
    """Return the lesson's parts in minutes, how much is left (negative: too long), and how many repeats would fit."""
    work_min = float(minutes(plan)["total"])
    parts = [
        ("Explain, hand out, put on eye protection", BRIEF_MIN),
        (_repeats(plan.repeats), work_min),
        ("Clear up, wash hands", CLEAR_MIN),
        ("Own lines, results, talk", TALK_MIN),
    ]
    left = round(lesson_min - sum(each_min for _, each_min in parts), 1)
    fits = plan.repeats
    while fits > 1 and _with_repeats(plan, fits) + BRIEF_MIN + CLEAR_MIN + TALK_MIN > lesson_min:
        fits -= 1
    told = [{"part": part, "minutes": each_min} for part, each_min in parts]
    return {"parts": told, "left_min": left, "repeats_that_fit": fits if left < 0 else plan.repeats}


def _repeats(repeats: int) -> str:
    return "1 repeat at the bench" if repeats == 1 else f"{repeats} repeats at the bench"


def _with_repeats(plan: Plan, repeats: int) -> float:
    return float(minutes(plan.model_copy(update={"repeats": repeats}))["total"])


def _solutions(plan: Plan) -> list[tuple[str, float | None, float]]:
    """Each solution with its concentration (None: not in the plan) and what one bench pours of it in all repeats."""
    if isinstance(plan, PortionsPlan):
        acid, alkali = plan.acid, plan.alkali
        return [
            (acid.name, acid.concentration_mol_dm3 or acid.prepared_mol_dm3, acid.volume_cm3 * plan.repeats),
            (alkali.name, alkali.concentration_mol_dm3, plan.count * plan.portion_cm3 * plan.repeats),
        ]
    found: list[tuple[str, float | None, float]] = []
    if plan.liquid.concentration_mol_dm3 is not None:
        found.append((plan.liquid.name, plan.liquid.concentration_mol_dm3, plan.liquid.volume_cm3 * plan.repeats))
    if plan.addition.volume_cm3 is not None:
        volume_cm3 = plan.addition.volume_cm3 * plan.repeats
        found.append((plan.addition.name, plan.addition.concentration_mol_dm3, volume_cm3))
    return found


def _made_cm3(bench_cm3: float, benches: int) -> float:
    """What to make: all benches with rinsing and reserve, rounded up to a volume that people make up."""
    needed_cm3 = benches * (bench_cm3 * (1 + RESERVE) + RINSE_CM3)
    step_cm3 = 50.0 if needed_cm3 <= 500 else 250.0 if needed_cm3 <= 2000 else 500.0
    return math.ceil(needed_cm3 / step_cm3 - 1e-9) * step_cm3


def _solution(made: Preparation) -> Json:
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


def _solid(plan: OncePlan, benches: int) -> Json:
    each_g = plan.addition.mass_g or 0.0
    total_g = each_g * plan.repeats * benches * (1 + RESERVE)
    return {
        "name": plan.addition.name,
        "each_g": each_g,
        "count": plan.repeats * benches,
        "total_g": round(total_g, 1),
        "label": label_values(substance_label(find_reagent(plan.addition.name))),
    }


def _range_mol_dm3(plan: Plan) -> list[float] | None:
    """Acids that the plan can resolve; None where the plan says the concentration, or cannot tell."""
    if not isinstance(plan, PortionsPlan) or plan.acid.concentration_mol_dm3 or plan.acid.prepared_mol_dm3:
        return None
    found: list[float] | None = acid_of(plan, pair_of(plan))["range_mol_dm3"]
    return found


def _glassware(plan: Plan, benches: int) -> list[Json]:
    each = [
        ("insulated cup with a lid, in a beaker that keeps it upright", 1),
        ("stirrer", 1),
        ("bottle or beaker for each solution, labelled", len(_solutions(plan)) or 1),
        ("waste beaker", 1),
        ("wash bottle, paper towels", 1),
        ("eye protection, splash-proof (for a pair; teacher and technician too)", 2),
    ]
    if isinstance(plan, PortionsPlan):
        each.insert(1, (f"pipette or measuring cylinder for {number(plan.acid.volume_cm3)} cm³", 1))
        ware = plan.portions.glassware or "syringe or measuring cylinder"
        each.insert(2, (f"{ware} for {number(plan.portion_cm3)} cm³ portions", 1))
    else:
        poured_cm3 = [plan.liquid.volume_cm3, *([plan.portion_cm3] if plan.portion_cm3 else [])]
        for volume_cm3 in dict.fromkeys(reversed(poured_cm3)):
            each.insert(1, (f"measuring cylinder for {number(volume_cm3)} cm³", poured_cm3.count(volume_cm3)))
        if plan.addition.mass_g is not None:
            each.insert(2, (f"weighing boat with {number(plan.addition.mass_g)} g", plan.repeats))
    return [{"item": item, "each": count, "all": count * benches} for item, count in each]


_SPILLS: Final = (
    "Small spills: wipe up at once with plenty of water, eye protection on.",
    "Larger spills of acid: sodium hydrogencarbonate or carbonate until the fizzing stops, then mop up.",
    "Larger spills of alkali: dilute with water, citric acid solution, then mop up.",
    "Splash in the eye: rinse with gently running water for 20 minutes; call for medical help.",
)
"""Common practice in school laboratories, no source."""
