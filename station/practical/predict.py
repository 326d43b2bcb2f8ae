"""What a plan promises before the lesson: curve, how well each method will know the result, minutes, warnings.

For the staff who choose the practical: it uses the concentration that staff made up, which a class must not see.
"""

from collections.abc import Mapping
from typing import Any

from station.practical.kinds import plan_from
from station.practical.kinds.kind import part_of
from station.practical.plan import Plan, PlanError

Json = dict[str, Any]


def answer(question: Mapping[str, Any]) -> Json:
    """Return the prediction for a `plan` in JSON values; where it cannot be a practical, `refused_plan` says why."""
    try:
        return predict(plan_from(question["plan"]), compare=question["compare"])
    except PlanError as error:
        return {"refused_plan": {"where": list(error.where), "text": str(error)}}


def predict(plan: Plan, *, compare: bool = True) -> Json:
    """Return the prediction as JSON values, units in the keys. Raises PlanError when the plan cannot be a practical.

    Without `compare` what takes most of the work is left out (None), where there is such.
    """
    promised: Json = part_of(plan.kind, "prediction").predict(plan, compare=compare)
    return promised
