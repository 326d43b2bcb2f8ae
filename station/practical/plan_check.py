"""What can be said of a plan at once, while somebody chooses: problems, hazards, minutes, what must be confirmed.

The curve and the ± need a fit: `practical/predict.py`, in a child process.
"""

from collections.abc import Mapping
from typing import Any

from station.practical.plan import Plan, PlanError, PortionsPlan, plan_from
from station.practical.plan_hazards import hazards_of
from station.practical.plan_problems import problems_of
from station.practical.plan_toml import plan_toml
from station.practical.predict_acid import acid_of, pair_of
from station.practical.predict_minutes import minutes
from station.practical.prepare import LESSONS_MIN, timetable
from station.practical.strong import strong_solutions, strong_words

Json = dict[str, Any]


def check_plan(values: Mapping[str, Any]) -> Json:
    """Return `problems` (each with `where` and `text`) and, when there are none, all that is known at once."""
    problems = problems_of(values)
    if problems:
        return _refused(problems)
    plan = plan_from(values)
    try:
        shown = _looked_at(plan)
    except PlanError as error:
        return _refused([{"where": list(error.where), "text": str(error)}])
    return {"problems": [], **shown}


def _refused(problems: list[Json]) -> Json:
    nothing = dict.fromkeys(("plan", "toml", "name", "hazards", "minutes", "left_min", "strong"))
    return {"problems": problems, **nothing}


def _looked_at(plan: Plan) -> Json:
    if isinstance(plan, PortionsPlan):
        acid_of(plan, pair_of(plan))
    return {
        "plan": plan.model_dump(mode="json"),
        "toml": plan_toml(plan),
        "name": plan.name,
        "hazards": hazards_of(plan),
        "minutes": minutes(plan),
        "left_min": {str(lesson): timetable(plan, lesson)["left_min"] for lesson in LESSONS_MIN},
        "strong": strong_words(strong_solutions(plan)),
    }
