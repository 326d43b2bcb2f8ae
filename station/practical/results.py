"""The numbers at the end: both ways to the end-point, per repeat and for the mean. Runs in a child process.

Only here do the plan, the readings and the analysis meet. A method that refuses gives None and its reason in
words; nothing is raised for data that a class can produce.
"""

from collections.abc import Sequence
from typing import Any

from station.analysis.heat_inputs import HeatRefused
from station.analysis.lines import Arm, CrossingResult, LinesRefused, fit_lines
from station.practical.dataset import Known, ReadingRow, RepeatData
from station.practical.heat import heat_fit, heat_json, mean_heat
from station.practical.plan import Plan, PortionsPlan

Json = dict[str, Any]
NOTHING_KNOWN = Known()


def results(plan: Plan | None, repeats: Sequence[RepeatData], known: Known = NOTHING_KNOWN) -> Json:
    """Return the results as JSON values: `repeats` one by one, then `mean` of the repeats.

    Without a plan there are straight lines alone.
    """
    found = [repeat_result(plan, repeat, known) for repeat in repeats]
    mean = straight_lines(mean_rows(repeats))
    if isinstance(plan, PortionsPlan):
        fits = [each["heat_balance"] for each in found if each["heat_balance"] is not None]
        mean["heat_balance"] = mean_heat(fits, plan)
        if not fits and found:
            mean["refused"]["heat_balance"] = found[-1]["refused"]["heat_balance"]
        mean["notes"] = []
    return {"repeats": found, "mean": mean}


def repeat_result(plan: Plan | None, repeat: RepeatData, known: Known) -> Json:
    """Return both methods for one repeat."""
    result = {"repeat": repeat.repeat, **straight_lines(repeat.readings), "heat_balance": None, "notes": []}
    if not isinstance(plan, PortionsPlan):
        result["refused"]["heat_balance"] = "Without a plan there is nothing to balance: add --plan plan.toml."
        return result
    try:
        fit = heat_fit(plan, repeat, known)
    except HeatRefused as refusal:
        result["refused"]["heat_balance"] = refusal.reason
        return result
    return {**result, "heat_balance": heat_json(fit), "notes": list(fit.notes)}


def mean_rows(repeats: Sequence[RepeatData]) -> tuple[ReadingRow, ...]:
    """Return the mean curve over the repeats: readings of the same portion number together."""
    rows: dict[int, list[ReadingRow]] = {}
    for repeat in repeats:
        for row in repeat.readings:
            rows.setdefault(row.portion, []).append(row)
    return tuple(
        ReadingRow(
            portion,
            sum(row.volume_cm3 for row in same) / len(same),
            sum(row.temperature_c for row in same) / len(same),
        )
        for portion, same in sorted(rows.items())
    )


def straight_lines(rows: Sequence[ReadingRow]) -> Json:
    """Return the graph-paper method on these readings, or None and why it refuses."""
    try:
        crossing = fit_lines([row.volume_cm3 for row in rows], [row.temperature_c for row in rows])
    except LinesRefused as refusal:
        return {"straight_lines": None, "refused": {"straight_lines": str(refusal)}}
    return {"straight_lines": _crossing(crossing), "refused": {}}


def _crossing(crossing: CrossingResult) -> Json:
    return {
        "end_point_cm3": crossing.end_point_cm3,
        "u_end_point_cm3": crossing.u_end_point_cm3,
        "interval_95_cm3": list(crossing.interval_95_cm3),
        "temperature_c": crossing.temperature_c,
        "label": crossing.label,
        "rule": crossing.rule,
        "before": _arm(crossing.before),
        "after": _arm(crossing.after),
        "left_out": list(crossing.left_out),
    }


def _arm(arm: Arm) -> Json:
    return {"slope_c_cm3": arm.slope_c_cm3, "intercept_c": arm.intercept_c, "points": list(arm.points)}
