"""What a teacher should know before this plan meets a class, in words."""

from typing import Any, Final

from station.chemistry.pairs import Neutralisation
from station.practical.plan import PortionsPlan
from station.practical.predict_minutes import ASIDE_MIN, LESSON_MIN
from station.practical.strong import strong_words

LEAST_POINTS: Final = 3
LEAST_RISE_C: Final = 1.0
MOST_SHARE: Final = 0.05


def warnings_of(plan: PortionsPlan, pair: Neutralisation, found: dict[str, Any]) -> list[str]:
    """Return the warnings, gravest first; never one that asks for stronger solutions."""
    acid_mol_dm3 = found["acid"]["concentration_mol_dm3"]
    warnings = [
        *strong_words([(plan.acid.name, acid_mol_dm3), (plan.alkali.name, plan.alkali.concentration_mol_dm3)]),
        *_points(plan, found),
        *_heat(pair, found),
    ]
    rise_c = found["rise_c"]
    return warnings + ([] if rise_c is None else weak_change(rise_c)) + too_long(found["minutes"]["total"])


def weak_change(change_c: float) -> list[str]:
    """Return a warning when the temperature changes so little that the ± will be wide."""
    if abs(change_c) >= LEAST_RISE_C:
        return []
    return [
        f"The temperature changes by only {abs(change_c):.1f} °C: expect a wide ±. Do not make the solutions stronger "
        "for it; read with the probe, use better glassware and more repeats."
    ]


def too_long(total_min: float) -> list[str]:
    """Return a warning when the practical does not fit into a lesson."""
    if total_min <= LESSON_MIN - ASIDE_MIN:
        return []
    return [
        f"About {total_min:.0f} minutes at the bench: with {ASIDE_MIN} minutes to set up and clear away that is more "
        f"than a lesson of {LESSON_MIN}. Plan fewer repeats or portions, or the quick pace."
    ]


def _points(plan: PortionsPlan, found: dict[str, Any]) -> list[str]:
    before, after = found["points"]["before"], found["points"]["after"]
    warnings = []
    if found["end_point_cm3"] >= plan.count * plan.portion_cm3:
        warnings.append(
            f"The end-point ({found['end_point_cm3']:.1f} cm³) is not passed by {plan.count} portions "
            f"({plan.count * plan.portion_cm3:g} cm³): plan more portions."
        )
    elif after < LEAST_POINTS:
        warnings.append(f"Only {_readings(after)} after the end-point, three are needed: plan more portions.")
    if before < LEAST_POINTS:
        warnings.append(f"Only {_readings(before)} before the end-point, three are needed: plan smaller portions.")
    return warnings


def _readings(count: int) -> str:
    return f"{count} reading lies" if count == 1 else f"{count} readings lie"


def _heat(pair: Neutralisation, found: dict[str, Any]) -> list[str]:
    warnings = []
    if pair.refusal:
        warnings.append(f"The heat balance will refuse: {pair.refusal}.")
        if found["curve"] is not None:
            warnings.append("The curve takes one mean heat up to the last proton: a rough guide only.")
    if pair.remark:
        warnings.append(f"{pair.remark[:1].upper()}{pair.remark[1:]}.")
    lines = found["methods"]["probe"]["straight_lines"] if found["methods"] else None
    if lines is not None and lines["refused_share"] > MOST_SHARE:
        warnings.append(
            f"Straight lines will refuse about {100 * lines['refused_share']:.0f} in 100 repeats with these portions."
        )
    return warnings
