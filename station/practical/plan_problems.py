"""What is wrong with a plan, beside the key concerned: for a form in which a person is still choosing."""

from collections.abc import Mapping
from typing import Any, Final

from pydantic import ValidationError

from station.practical.plan import OncePlan, PortionsPlan

Json = dict[str, Any]

_LIMITS: Final = {
    "greater_than": ("gt", "Must be above {limit}."),
    "greater_than_equal": ("ge", "Must be at least {limit}."),
    "less_than": ("lt", "Must be below {limit}."),
    "less_than_equal": ("le", "Must be at most {limit}."),
    "string_too_long": ("max_length", "At most {limit} letters."),
}
_NO_NUMBER: Final = ("float_parsing", "float_type", "finite_number")
_NO_WHOLE_NUMBER: Final = ("int_parsing", "int_type", "int_from_float")
_PLAINLY: Final = {
    **dict.fromkeys(_NO_NUMBER, "Must be a number."),
    **dict.fromkeys(_NO_WHOLE_NUMBER, "Must be a whole number."),
    **dict.fromkeys(("model_type", "dict_type"), "Must be a table of keys."),
    "string_type": "Must be a text.",
    "extra_forbidden": "This key is not known here.",
}


def problems_of(values: Mapping[str, Any]) -> list[Json]:
    """Return each problem as `where` (table and key) and `text`; none when the plan can be used.

    `unknown` says that the key is none of a plan's: a form may leave it out.
    """
    kind = OncePlan if values.get("kind") == "once" else PortionsPlan
    try:
        kind.model_validate(dict(values))
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


def _words(kind: str, context: Mapping[str, Any], problem: Mapping[str, Any]) -> str:
    limit = _LIMITS.get(kind)
    if limit is not None:
        key, words = limit
        return words.format(limit=f"{context[key]:g}")
    if kind == "missing" or problem["input"] is None or problem["input"] == "":
        return "Missing."
    if kind in _PLAINLY:
        return _PLAINLY[kind]
    if kind == "literal_error":
        return f"Must be {context['expected']}."
    return str(problem["msg"]).removeprefix("Value error, ")
