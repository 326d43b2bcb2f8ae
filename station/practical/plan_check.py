"""What can be said of a plan at once, while somebody chooses: problems, dangers, hazards, minutes, what to confirm.

The curve and the ± need a fit: `practical/predict.py`, by the worker.
"""

from collections.abc import Mapping
from typing import Any, Final

import tomli_w
from pydantic import ValidationError
from typing_extensions import TypedDict

from station.practical.kinds import PlanValues, model_of, plan_from
from station.practical.plan import Plan, PlanError
from station.practical.predict_plan import minutes
from station.practical.prepare.amounts import LESSONS_MIN, timetable
from station.practical.problems import own_words
from station.practical.safety import (
    Hazardous,
    Problem,
    Warned,
    dangers,
    hazards_of,
    safety_warnings,
    strong_solutions,
    strong_words,
)
from station.words import Message, plain, say

# What is wrong with a plan, beside the key concerned: for a form in which a person is still choosing.


class PlanChecked(TypedDict):
    """What can be said of a plan at once; all but `problems` and `warnings` is null where there are problems.

    `toml` is the text of its plan.toml, `left_min` what is left of a lesson of so many minutes (negative: too short).
    """

    problems: list[Problem]
    plan: PlanValues | None
    toml: str | None
    name: Message | None
    hazards: list[Hazardous] | None
    minutes: dict[str, float] | None
    left_min: dict[str, float] | None
    strong: list[Message] | None
    warnings: list[Warned]


_LIMITS: Final = {
    "greater_than": ("gt", "field-above"),
    "greater_than_equal": ("ge", "field-at-least"),
    "less_than": ("lt", "field-below"),
    "less_than_equal": ("le", "field-at-most"),
    "string_too_long": ("max_length", "field-letters"),
}
_NO_NUMBER: Final = ("float_parsing", "float_type", "finite_number")
_NO_WHOLE_NUMBER: Final = ("int_parsing", "int_type", "int_from_float")
_PLAINLY: Final = {
    **dict.fromkeys(_NO_NUMBER, "field-number"),
    **dict.fromkeys(_NO_WHOLE_NUMBER, "field-whole-number"),
    **dict.fromkeys(("model_type", "dict_type"), "field-table"),
    "string_type": "field-text",
    "extra_forbidden": "field-unknown",
}
SAYS: Final = (*(each for _, each in _LIMITS.values()), *_PLAINLY.values())


def problems_of(values: Mapping[str, Any]) -> list[Problem]:
    """Return each problem as `where` (table and key) and `text`; none when the plan can be used.

    `unknown` says that the key is none of a plan's: a form may leave it out.
    """
    try:
        model_of(values).model_validate(dict(values))
    except ValidationError as error:
        return [
            {
                "where": [str(part) for part in each["loc"]],
                "text": _words(each["type"], each.get("ctx", {}), each),
                "unknown": each["type"] == "extra_forbidden",
            }
            for each in error.errors(include_url=False)
        ]
    return []


def _words(kind: str, context: Mapping[str, Any], problem: Mapping[str, Any]) -> Message:
    limit = _LIMITS.get(kind)
    if limit is not None:
        key, field = limit
        return say(field, limit=f"{context[key]:g}")
    if kind == "missing" or problem["input"] is None or problem["input"] == "":
        return say("field-missing")
    if kind in _PLAINLY:
        return say(_PLAINLY[kind])
    if kind == "literal_error":
        return say("field-one-of", choices_text=context["expected"])
    return own_words(problem) or plain(str(problem["msg"]))


# A plan as the text of a plan.toml.


ALWAYS = ("title", "repeats", "pace", "results", "prompts")


def plan_toml(plan: Plan) -> str:
    """Return TOML that `read_plan` reads as the same plan: what every practical chooses, and what is not usual."""
    values = plan.model_dump(mode="json", exclude_none=True)
    usual = plan.model_dump(mode="json", exclude_none=True, exclude_defaults=True)
    kept = {key: value for key, value in values.items() if key in ALWAYS or key in usual}
    kept |= {key: usual[key] for key in kept if isinstance(kept[key], dict)}
    return tomli_w.dumps(kept)


def check_plan(values: Mapping[str, Any]) -> PlanChecked:
    """Return the problems of a plan and, when there are none, all that is known at once."""
    problems = problems_of(values)
    if problems:
        return _refused(problems)
    plan = plan_from(values)
    if refused := dangers(plan):
        return _refused(refused)
    try:
        return _looked_at(plan)
    except PlanError as error:
        return _refused([{"where": list(error.where), "text": plain(str(error))}])


def _refused(problems: list[Problem]) -> PlanChecked:
    return {
        "problems": problems,
        "plan": None,
        "toml": None,
        "name": None,
        "hazards": None,
        "minutes": None,
        "left_min": None,
        "strong": None,
        "warnings": [],
    }


def _looked_at(plan: Plan) -> PlanChecked:
    plan.check()
    return {
        "problems": [],
        "plan": plan.model_dump(mode="json"),
        "toml": plan_toml(plan),
        "name": plan.name,
        "hazards": hazards_of(plan),
        "minutes": minutes(plan),
        "left_min": {str(lesson): timetable(plan, lesson)["left_min"] for lesson in LESSONS_MIN},
        "strong": strong_words(strong_solutions(plan)),
        "warnings": safety_warnings(plan),
    }
