"""What a plan promises before the lesson: curve, end-point, how well each method will know it, minutes, warnings.

For the staff who choose the practical: it uses the concentration that staff made up, which a class must not see.
"""

from typing import Any

from station.analysis.heat_inputs import HeatRefused
from station.analysis.predict import GLASS_TENTH, GLASS_WHOLE, PROBE, Course, arm_points, expect, expected_curve
from station.chemistry.pairs import Neutralisation
from station.practical.plan import OncePlan, Plan, PortionsPlan
from station.practical.predict_acid import acid_of, pair_of
from station.practical.predict_compare import comparison, method_values
from station.practical.predict_course import course_of, enthalpy_kj_mol
from station.practical.predict_minutes import ASSUMED, minutes
from station.practical.predict_warnings import warnings_of

Json = dict[str, Any]


def predict(plan: Plan, *, compare: bool = True) -> Json:
    """Return the prediction as JSON values, units in the keys. Raises PlanError when the plan cannot be a practical.

    Without `compare` the table of weaker solutions and other glassware, most of the work, is left out (None).
    """
    if isinstance(plan, OncePlan):
        from station.practical.predict_once import predict_once  # noqa: PLC0415 - a practical of another kind

        return predict_once(plan)
    pair = pair_of(plan)
    acid = acid_of(plan, pair)
    end_point_cm3 = acid["end_point_cm3"]
    before, after = arm_points(plan.portion_cm3, plan.count, end_point_cm3)
    found: Json = {
        "kind": "portions",
        "practical": plan.name,
        "acid": acid,
        "end_point_cm3": end_point_cm3,
        "points": {"before": before, "after": after},
        "minutes": minutes(plan),
    }
    try:
        course = course_of(plan, pair, acid["concentration_mol_dm3"])
    except HeatRefused as refusal:
        nothing = dict.fromkeys(("start_c", "rise_c", "curve", "enthalpy_kj_mol", "methods", "comparison"))
        found |= {**nothing, "refused": {"curve": refusal.reason}, "assumed": list(ASSUMED)}
    else:
        found |= _with_heat(plan, pair, acid["concentration_mol_dm3"], course, compare=compare)
    return {**found, "warnings": warnings_of(plan, pair, found)}


def _with_heat(plan: PortionsPlan, pair: Neutralisation, acid_mol_dm3: float, course: Course, *, compare: bool) -> Json:
    expected = expect(course)
    curve = expected_curve(expected)
    rows = zip(curve.volume_cm3.tolist(), curve.temperature_c.tolist(), strict=True)
    thermometers = (PROBE, GLASS_TENTH, GLASS_WHOLE)
    return {
        "start_c": course.start_c,
        "rise_c": curve.rise_c if course.passed else None,
        "curve": [
            {"portion": portion, "volume_cm3": volume, "temperature_c": round(temperature, 3)}
            for portion, (volume, temperature) in enumerate(rows)
        ],
        "enthalpy_kj_mol": enthalpy_kj_mol(plan, pair, acid_mol_dm3, course.start_c),
        "methods": {
            each.name: {"step_c": each.step_c, **method_values(expected, each, pair, plan.repeats)}
            for each in thermometers
        },
        "comparison": comparison(plan, pair, acid_mol_dm3) if compare else None,
        "refused": {} if pair.single_step else {"heat_balance": pair.refusal},
        "assumed": list(ASSUMED),
    }
