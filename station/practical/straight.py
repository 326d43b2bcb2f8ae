"""The graph-paper method with what must stand beside it: the bias it has by nature, and the school's ±."""

from collections.abc import Sequence
from typing import Any

from station.analysis.heat_inputs import HeatSetup
from station.analysis.lines import Arm, CrossingResult, LinesRefused, fit_lines
from station.analysis.lines_bias import IdealCup, end_point_behind_cm3, predicted_bias_cm3
from station.analysis.lines_school import half_a_division
from station.analysis.lines_suspects import suspects
from station.practical.dataset import ReadingRow

Json = dict[str, Any]

DIVISION_C = 0.0625
"""The smallest step of the probe, as a school counts a division."""


def straight_lines(rows: Sequence[ReadingRow], setup: HeatSetup | None, end_point_cm3: float | None) -> Json:
    """Return the method on these readings as `straight_lines` (None when it refuses), `refused` and `notes`.

    `setup` (what is known of the cup) makes the predicted bias possible; `end_point_cm3` is the heat balance's,
    where there is one.
    """
    volumes, temperatures = [row.volume_cm3 for row in rows], [row.temperature_c for row in rows]
    try:
        crossing = fit_lines(volumes, temperatures)
    except LinesRefused as refusal:
        return {"straight_lines": None, "refused": {"straight_lines": str(refusal)}, "notes": []}
    found = _crossing(crossing)
    if setup is not None:
        found["predicted_bias_cm3"] = _bias(crossing, volumes, setup, end_point_cm3)
    half = half_a_division(crossing.temperature_c, DIVISION_C) if crossing.temperature_c else None
    found["school"] = None if half is None else {"convention": half.convention, "plus_minus_c": half.plus_minus}
    return {"straight_lines": found, "refused": {}, "notes": _suspect_notes(rows, crossing)}


def _crossing(crossing: CrossingResult) -> Json:
    return {
        "end_point_cm3": crossing.end_point_cm3,
        "u_end_point_cm3": crossing.u_end_point_cm3,
        "interval_95_cm3": list(crossing.interval_95_cm3),
        "temperature_c": crossing.temperature_c,
        "u_temperature_c": crossing.u_temperature_c,
        "label": crossing.label,
        "rule": crossing.rule,
        "before": _arm(crossing.before),
        "after": _arm(crossing.after),
        "left_out": list(crossing.left_out),
    }


def _arm(arm: Arm) -> Json:
    return {"slope_c_cm3": arm.slope_c_cm3, "intercept_c": arm.intercept_c, "points": list(arm.points)}


def _bias(
    crossing: CrossingResult, volumes: Sequence[float], setup: HeatSetup, end_point_cm3: float | None
) -> float | None:
    """Crossing minus end-point in an ideal cup with this split; None where that cannot be told."""
    cup = IdealCup(setup.acid_volume_cm3.value, setup.acid_j_cm3_k, setup.alkali_j_cm3_k, setup.cup_j_k.value)
    arms = (crossing.before.points, crossing.after.points)
    behind = end_point_cm3 or end_point_behind_cm3(crossing.end_point_cm3, volumes, cup, arms)
    if behind is None:
        return None
    try:
        return predicted_bias_cm3(volumes, behind, cup, arms)
    except LinesRefused:
        return None


def _suspect_notes(rows: Sequence[ReadingRow], crossing: CrossingResult) -> list[str]:
    arms = (crossing.before.points, crossing.after.points)
    found = suspects([row.volume_cm3 for row in rows], [row.temperature_c for row in rows], arms, step_c=DIVISION_C)
    return [
        f"The reading after portion {rows[each.point].portion} stands {abs(each.off_line_c):.2f} °C off its line "
        f"({each.test}). It is kept: a person may leave it out."
        for each in found
    ]
