"""What weaker solutions cost in signal, and what better glassware buys: the table for a teacher.

Never with solutions stronger than the plan's own: a graph is no reason to handle anything more harmful.
"""

from typing import Any, Final

from station.analysis.heat_balance import FEWEST_PORTIONS
from station.analysis.predict import (
    PROBE,
    Course,
    Expected,
    HeatExpected,
    LinesExpected,
    Thermometer,
    expect,
    expected_curve,
    expected_heat_balance,
    expected_lines,
)
from station.chemistry.glassware import GLASSWARE
from station.chemistry.pairs import Neutralisation
from station.practical.plan import PortionsPlan
from station.practical.predict_course import course_of, scaled

Json = dict[str, Any]

FACTORS: Final = (0.5, 1.0)
OWN: Final = "as planned"


def comparison(plan: PortionsPlan, pair: Neutralisation, acid_mol_dm3: float) -> list[Json]:
    """Return one row for each strength and glassware: rise, and what each method gives with the probe."""
    own = plan.portions.u_volume_cm3 is not None
    wares = [*GLASSWARE, *([None] if own else [])]
    rows = []
    for factor in FACTORS:
        for ware in wares:
            weaker = scaled(plan, factor, ware)
            course = course_of(weaker, pair, acid_mol_dm3 * factor)
            rows.append(_row(weaker, pair, course, factor, ware or OWN, acid_mol_dm3 * factor))
    return rows


def _row(
    plan: PortionsPlan, pair: Neutralisation, course: Course, factor: float, name: str, acid_mol_dm3: float
) -> Json:
    expected = expect(course)
    return {
        "factor": factor,
        "acid_mol_dm3": acid_mol_dm3,
        "alkali_mol_dm3": plan.alkali.concentration_mol_dm3,
        "glassware": name,
        "u_portion_cm3": course.u_portion_cm3,
        "rise_c": expected_curve(expected).rise_c if course.passed else None,
        **method_values(expected, PROBE, pair, plan.repeats),
    }


def method_values(expected: Expected, thermometer: Thermometer, pair: Neutralisation, repeats: int) -> Json:
    """Return what both methods give with this thermometer; None for one that will refuse."""
    found: Json = {"straight_lines": None, "heat_balance": None, "refused": {}}
    lines = expected_lines(expected, thermometer)
    if lines.reason is None:
        found["straight_lines"] = _lines(lines, repeats)
    else:
        found["refused"]["straight_lines"] = lines.reason
    refusal = _heat_refusal(expected.course, pair)
    if refusal is None:
        found["heat_balance"] = _heat(expected_heat_balance(expected, thermometer), repeats)
    else:
        found["refused"]["heat_balance"] = refusal
    return found


def _heat_refusal(course: Course, pair: Neutralisation) -> str | None:
    """Why the heat balance will refuse, as `heat_balance.fit_trace` does; None when it will not."""
    if not pair.single_step:
        return f"The heat balance cannot be used: {pair.refusal}."
    if course.count < FEWEST_PORTIONS:
        return f"The heat balance needs at least {FEWEST_PORTIONS} portions."
    if course.end_point_cm3 > (course.count - 1) * course.portion_cm3:
        return "The end-point is not surely passed: plan more portions."
    if course.end_point_cm3 <= course.portion_cm3:
        return "The end-point lies within the first portion: plan smaller portions."
    return None


def _lines(lines: LinesExpected, repeats: int) -> Json:
    u_cm3 = lines.u_end_point_cm3 or 0.0
    return {
        "bias_cm3": lines.bias_cm3,
        "u_end_point_cm3": u_cm3,
        "u_mean_cm3": u_cm3 / repeats**0.5,
        "refused_share": lines.refused_share,
    }


def _heat(heat: HeatExpected, repeats: int) -> Json:
    return {
        "bias_cm3": 0.0,  # to first order, in a cup as the model knows it
        "u_end_point_cm3": heat.u_end_point_cm3,
        "u_mean_cm3": heat.u_end_point_cm3 / repeats**0.5,
        "u_acid_mol_dm3": heat.u_acid_mol_dm3,
        "u_enthalpy_kj_mol": heat.u_enthalpy_kj_mol,
    }
