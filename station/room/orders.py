"""What the room may order, and the check of an order before it is given. The bench checks again when it does it."""

from collections.abc import Mapping
from typing import Any, Final

from pydantic import ValidationError

from station.chemistry.safety import STRONG_MOL_DM3
from station.practical.kinds import plan_from, read_plan
from station.practical.plan import PlanError
from station.practical.problems import problem_line
from station.practical.safety import safe, strong_solutions
from station.practical.staff import StaffAct
from station.words import say

OF_A_REPEAT: Final = ("set_aside", "restore")
"""These name a repeat of the practical that is on: they are not for the next one."""
ORDERS: Final = ("choose_plan", "show_results", "quiet", "rename", *OF_A_REPEAT, "pause", "resume", "call_over")

SUPERSEDES: Final[Mapping[str, tuple[str, ...]]] = {
    "choose_plan": ("choose_plan", "show_results", *OF_A_REPEAT, "pause", "resume", "call_over"),
    "show_results": ("show_results",),
    "quiet": ("quiet",),
    "rename": ("rename",),
    "pause": ("pause", "resume"),
    "resume": ("pause", "resume"),
    "call_over": ("call_over",),
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
        raise OrderError(say("order-act-one-of", acts_text=", ".join(ORDERS)))
    practical = values.pop("practical", None)
    match practical:
        case None | [str(), int()]:
            pass
        case _:
            raise OrderError(say("order-practical"))
    _needs(values)
    if name == "choose_plan":
        values = {"act": name, "plan": _plan(values), **({"confirmed": True} if values.get("confirmed") else {})}
    act_of(values, "check")
    return values if practical is None else {**values, "practical": list(practical)}


def act_of(values: Mapping[str, Any], key: str) -> StaffAct:
    """Return the act that a bench does for an order. Raises OrderError."""
    given = {name: value for name, value in values.items() if name != "practical"}
    if given.get("act") not in ORDERS:
        raise OrderError(say("order-act-one-of", acts_text=", ".join(ORDERS)))
    try:
        return StaffAct.model_validate({**given, "key": key, "by": "teacher"})
    except ValidationError as error:
        raise OrderError(problem_line(error)) from None


def _needs(values: Mapping[str, Any]) -> None:
    needed = {
        "show_results": ("shown",),
        "quiet": ("silent",),
        "set_aside": ("repeat", "reason"),
        "restore": ("repeat",),
    }
    for each in needed.get(str(values["act"]), ()):
        if values.get(each) is None:
            raise OrderError(say("order-missing", key_name=each))


def _plan(values: Mapping[str, Any]) -> dict[str, Any]:
    given, text = values.get("plan"), values.get("plan_toml")
    try:
        if isinstance(given, Mapping):
            plan = safe(plan_from(given))
        elif isinstance(text, str):
            plan = safe(read_plan(text, "plan"))
        else:
            raise OrderError(say("order-plan-missing"))
    except PlanError as error:
        raise OrderError(str(error)) from None
    strong = strong_solutions(plan)
    if strong and values.get("confirmed") is not True:
        named, mol_dm3 = max(strong, key=lambda each: each[1])
        above, limit = f"{mol_dm3:g}", str(STRONG_MOL_DM3)
        raise OrderError(say("order-confirm-strong", reagent=named, mol_dm3=above, limit_mol_dm3=limit))
    return plan.without_prepared().model_dump(mode="json")
