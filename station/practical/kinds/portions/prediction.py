"""What a plan of portions promises: curve, end-point, how well each method will know it, minutes, warnings."""

from typing import Any, Final

from station.analysis.heat.balance import FEWEST_PORTIONS
from station.analysis.heat.inputs import HeatRefused
from station.analysis.prediction.methods import (
    HeatExpected,
    LinesExpected,
    arm_points,
    expected_curve,
    expected_heat_balance,
    expected_lines,
)
from station.analysis.prediction.model import GLASS_TENTH, GLASS_WHOLE, PROBE, Course, Expected, Thermometer, expect
from station.chemistry.neutralisation import expected_enthalpy
from station.chemistry.pairs import Neutralisation
from station.chemistry.preparation import GLASSWARE
from station.practical.dataset import Known
from station.practical.kinds.portions.methods import U_ALKALI_C, heat_setup
from station.practical.kinds.portions.plan import LEAST_POINTS, OWN, POUR_S, WAIT_S, PortionsPlan, acid_of, pair_of
from station.practical.predict_plan import DIP_S, RINSE_S, START_S, minutes, too_long, warning, weak_change
from station.practical.safety import Warned, safe, safety_warnings
from station.words import Message, say

Json = dict[str, Any]

MOST_SHARE: Final = 0.05
ASSUMED: Final = (
    say("predict-usual-cup-spread"),
    say("predict-warm-as-room"),
    say(
        "predict-minutes",
        dip_min=f"{DIP_S / 60:g}",
        start_min=f"{START_S / 60:g}",
        pour_s=f"{POUR_S:g}",
        graph_s=f"{WAIT_S['graph']:g}",
        quick_s=f"{WAIT_S['quick']:g}",
        rinse_min=f"{RINSE_S / 60:g}",
    ),
    say("predict-exact"),
)


def predict(plan: PortionsPlan, *, compare: bool) -> Json:
    """Return the prediction as JSON values, units in the keys. Raises PlanError when the plan cannot be a practical.

    Without `compare` the table of weaker solutions and other glassware, most of the work, is left out (None).
    """
    pair = pair_of(plan)
    safe(plan)
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
    return {**found, "warnings": _warnings(plan, pair, found)}


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


def course_of(plan: PortionsPlan, pair: Neutralisation, acid_mol_dm3: float) -> Course:
    """Return the course. Raises HeatRefused with the reason when the heat of this pair cannot be told.

    The alkali is taken to be as warm as the acid unless the plan says otherwise, and to be measured before.
    """
    begin_c = plan.start_c
    alkali_c = plan.alkali.temperature_c
    known = Known(begin_c if alkali_c is None else alkali_c, U_ALKALI_C)
    enthalpy = enthalpy_kj_mol(plan, pair, acid_mol_dm3, begin_c)
    alkali_mol_dm3 = plan.alkali.concentration_mol_dm3
    return Course(
        setup=heat_setup(plan, pair, acid_mol_dm3, known, None),
        end_point_cm3=acid_mol_dm3 * plan.acid.volume_cm3 / (alkali_mol_dm3 * pair.acid_per_alkali),
        # kJ/mol times mol/dm³ is J/cm³.
        heat_j_cm3=-enthalpy * alkali_mol_dm3 * pair.alkali_hydroxides,
        start_c=begin_c,
        portion_cm3=plan.portion_cm3,
        count=plan.count,
        u_portion_cm3=plan.portions.u_cm3,
        base_s=START_S,
        wait_s=WAIT_S[plan.pace],
        pour_s=POUR_S,
    )


def enthalpy_kj_mol(plan: PortionsPlan, pair: Neutralisation, acid_mol_dm3: float, temperature_c: float) -> float:
    """Return the enthalpy per mole of water formed; of an acid with several steps the mean of them."""
    alkali_mol_dm3 = plan.alkali.concentration_mol_dm3
    try:
        return expected_enthalpy(pair.acid, acid_mol_dm3, pair.alkali, alkali_mol_dm3, temperature_c).enthalpy_kj_mol
    except ValueError as error:
        raise HeatRefused("no_enthalpy", say("predict-no-curve", reason=str(error))) from None


def scaled(plan: PortionsPlan, factor: float, glassware: str | None) -> PortionsPlan:
    """Return the plan with both solutions at ``factor`` of their strength, portions measured with other glassware."""
    acid, alkali, portions = plan.acid, plan.alkali, plan.portions
    measured = {} if glassware is None else {"glassware": glassware, "u_volume_cm3": None}
    return plan.model_copy(
        update={
            "acid": acid.model_copy(
                update={
                    "concentration_mol_dm3": _times(acid.concentration_mol_dm3, factor),
                    "prepared_mol_dm3": _times(acid.prepared_mol_dm3, factor),
                }
            ),
            "alkali": alkali.model_copy(update={"concentration_mol_dm3": alkali.concentration_mol_dm3 * factor}),
            "portions": portions.model_copy(update=measured),
        }
    )


def _times(value: float | None, factor: float) -> float | None:
    return None if value is None else value * factor


# What weaker solutions cost in signal, and what better glassware buys: the table for a teacher.
#
# Never with solutions stronger than the plan's own: a graph is no reason to handle anything more harmful.


FACTORS: Final = (0.5, 1.0)


def comparison(plan: PortionsPlan, pair: Neutralisation, acid_mol_dm3: float) -> list[Json]:
    """Return one row for each strength and glassware: rise, and what each method gives with the probe."""
    own = plan.portions.u_volume_cm3 is not None
    wares = [*GLASSWARE, *([None] if own else [])]
    rows = []
    for factor in FACTORS:
        for ware in wares:
            weaker = scaled(plan, factor, ware)
            course = course_of(weaker, pair, acid_mol_dm3 * factor)
            name = OWN if ware is None else GLASSWARE[ware].name
            rows.append(_row(weaker, pair, course, factor, name, acid_mol_dm3 * factor))
    return rows


def _row(
    plan: PortionsPlan, pair: Neutralisation, course: Course, factor: float, name: Message, acid_mol_dm3: float
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


def _heat_refusal(course: Course, pair: Neutralisation) -> Message | None:
    """Why the heat balance will refuse, as `heat_balance.fit_trace` does; None when it will not."""
    if not pair.single_step:
        return say("heat-cannot-be-used", reason=pair.refusal)
    if course.count < FEWEST_PORTIONS:
        return say("heat-needs-portions", least=FEWEST_PORTIONS)
    if course.end_point_cm3 > (course.count - 1) * course.portion_cm3:
        return say("predict-not-passed")
    if course.end_point_cm3 <= course.portion_cm3:
        return say("predict-first-portion")
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


# What a teacher should know before this plan meets a class.


def _warnings(plan: PortionsPlan, pair: Neutralisation, found: Json) -> list[Warned]:
    """Return the warnings, gravest first; never one that asks for stronger solutions."""
    acid_mol_dm3 = found["acid"]["concentration_mol_dm3"]
    warnings = [
        *safety_warnings(plan, acid_mol_dm3),
        *_points(plan, found),
        *_on_heat(pair, found),
    ]
    rise_c = found["rise_c"]
    return warnings + ([] if rise_c is None else weak_change(rise_c)) + too_long(found["minutes"]["total"])


def _points(plan: PortionsPlan, found: Json) -> list[Warned]:
    before, after = found["points"]["before"], found["points"]["after"]
    warnings = []
    if found["end_point_cm3"] >= plan.count * plan.portion_cm3:
        text = say(
            "warning-not-passed",
            end_point_cm3=f"{found['end_point_cm3']:.1f}",
            count=plan.count,
            total_cm3=f"{plan.count * plan.portion_cm3:g}",
        )
        warnings.append(warning("not-passed", text))
    elif after < LEAST_POINTS:
        warnings.append(warning("few-after", say("warning-few-after", count=after)))
    if before < LEAST_POINTS:
        warnings.append(warning("few-before", say("warning-few-before", count=before)))
    return warnings


def _on_heat(pair: Neutralisation, found: Json) -> list[Warned]:
    warnings = []
    if pair.refusal:
        text = say("warning-heat-balance-refuses", reason=pair.refusal)
        warnings.append(warning("no-heat-balance", text))
        if found["curve"] is not None:
            warnings.append(warning("rough-curve", say("warning-rough-curve")))
    if pair.remark:
        warnings.append(warning("pair", pair.remark))
    lines = found["methods"]["probe"]["straight_lines"] if found["methods"] else None
    if lines is not None and lines["refused_share"] > MOST_SHARE:
        share = f"{100 * lines['refused_share']:.0f}"
        warnings.append(warning("lines-refuse", say("warning-lines-refuse", share=share)))
    return warnings
