"""What the room may order, and the check of an order before it is given. The bench checks again when it does it."""

from collections.abc import Mapping
from typing import Any, Final

from pydantic import ValidationError

from station.practical.acts import Act
from station.practical.plan import PlanError, plan_from, read_plan
from station.practical.problems import problem_line
from station.practical.staff import StaffAct
from station.practical.strong import STRONG_MOL_DM3, strong_solutions

OF_STAFF: Final = ("choose_plan", "show_results", "quiet", "rename", "set_aside")
OF_BENCH: Final = ("pause", "resume")
ORDERS: Final = (*OF_STAFF, *OF_BENCH)

SUPERSEDES: Final[Mapping[str, tuple[str, ...]]] = {
    "choose_plan": ("choose_plan", "show_results", "set_aside", "pause", "resume"),
    "show_results": ("show_results",),
    "quiet": ("quiet",),
    "rename": ("rename",),
    "pause": ("pause", "resume"),
    "resume": ("pause", "resume"),
}
"""What a bench that was away needs not do any more, once it is to do this."""


class OrderError(ValueError):
    """No bench could do this; the message says what to change."""


def checked_order(order: Mapping[str, Any]) -> dict[str, Any]:
    """Return the order as it travels: `{"act": …}` with what the act needs. Raises OrderError.

    A plan goes without what staff keep to themselves; one above 1.0 mol/dm³ needs `confirmed`. `practical` (journal
    and number of the event with which it began) has the order refused where that practical is over.
    """
    values = dict(order)
    name = values.get("act")
    if name not in ORDERS:
        raise OrderError(f"act: one of {', '.join(ORDERS)}")
    practical = values.pop("practical", None)
    _needs(values)
    if name == "choose_plan":
        values = {"act": name, "plan": _plan(values), **({"confirmed": True} if values.get("confirmed") else {})}
    act_of(values, "check")
    return values if practical is None else {**values, "practical": list(practical)}


def act_of(values: Mapping[str, Any], key: str) -> Act | StaffAct:
    """Return the act that a bench does for an order. Raises OrderError."""
    given = {name: value for name, value in values.items() if name != "practical"}
    try:
        if given.get("act") in OF_STAFF:
            return StaffAct.model_validate({**given, "key": key, "by": "teacher"})
        if given.get("act") in OF_BENCH:
            return Act.model_validate({**given, "key": key, "by": "page"})
    except ValidationError as error:
        raise OrderError(problem_line(error)) from None
    raise OrderError(f"act: one of {', '.join(ORDERS)}")


def _needs(values: Mapping[str, Any]) -> None:
    needed = {"show_results": ("shown",), "quiet": ("silent",), "set_aside": ("repeat", "reason")}
    for each in needed.get(str(values["act"]), ()):
        if values.get(each) is None:
            raise OrderError(f"{each}: missing")


def _plan(values: Mapping[str, Any]) -> dict[str, Any]:
    given, text = values.get("plan"), values.get("plan_toml")
    try:
        if isinstance(given, Mapping):
            plan = plan_from(given)
        elif isinstance(text, str):
            plan = read_plan(text, "plan")
        else:
            raise OrderError("plan: missing; give its values in plan, or its text in plan_toml")
    except PlanError as error:
        raise OrderError(str(error)) from None
    strong = strong_solutions(plan)
    if strong and values.get("confirmed") is not True:
        named, mol_dm3 = max(strong, key=lambda each: each[1])
        raise OrderError(
            f"{named} ({mol_dm3:g} mol/dm³) is above {STRONG_MOL_DM3} mol/dm³: confirm it against the school's risk "
            "assessment, or weaken it"
        )
    return plan.without_prepared().model_dump(mode="json")
