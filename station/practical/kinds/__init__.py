"""The kinds of practical, one package each: here stands which there are, and how a plan of any of them is read.

A kind is the model of its plan (`plan.py`, named below) and what else it does (`kind.py`, found by the kind's code).
"""

import functools
import operator
import tomllib
from collections.abc import Mapping
from importlib.resources import files
from typing import Annotated, Any, Final, TypeAlias

from pydantic import GetJsonSchemaHandler, TypeAdapter, ValidationError
from pydantic.json_schema import JsonSchemaValue
from pydantic_core import CoreSchema

from station.practical.kinds.once.plan import OncePlan
from station.practical.kinds.portions.plan import PortionsPlan
from station.practical.kinds.ratios.plan import RatiosPlan
from station.practical.plan import Plan, PlanError
from station.practical.problems import problem_line, toml_values
from station.words import say

USUAL: Final = "portions"
"""The kind of a plan that says none."""
KINDS: Final[Mapping[str, type[Plan]]] = {
    "portions": PortionsPlan,
    "once": OncePlan,
    "ratios": RatiosPlan,
}


class _ModelsSchema:
    """Describes values as those of a plan of any kind, which they were made of."""

    def __get_pydantic_json_schema__(self, _schema: CoreSchema, handler: GetJsonSchemaHandler) -> JsonSchemaValue:
        return handler(TypeAdapter(functools.reduce(operator.or_, KINDS.values())).core_schema)


PlanValues: TypeAlias = Annotated[dict[str, Any], _ModelsSchema()]
"""A plan as JSON values, without `prepared_mol_dm3` where only staff may know it; `title` is always there."""


def model_of(values: Mapping[str, Any]) -> type[Plan]:
    """Return the model of the kind that these values name; the usual one for a kind that is none."""
    return next((model for kind, model in KINDS.items() if kind == values.get("kind", USUAL)), KINDS[USUAL])


def plan_from(values: Mapping[str, Any], where: str = "plan") -> Plan:
    """Make a Plan from parsed values; raise PlanError with one line per first problem."""
    try:
        return model_of(values).model_validate(dict(values))
    except ValidationError as error:
        raise PlanError(say("problem-in", where_text=where, problem=problem_line(error))) from None


def read_plan(text: str, where: str = "plan.toml") -> Plan:
    """Read a plan from TOML text; `where` names the file in errors. Raises PlanError."""
    try:
        values = toml_values(text)
    except tomllib.TOMLDecodeError as error:
        raise PlanError(say("problem-not-toml", where_text=where, reason=str(error))) from None
    return plan_from(values, where)


# The plans that ship with the station, by name: for the page and for commands; files in `station/plans`.


DEFAULT = "neutralisation"
"""The plan where nobody chose one."""
READY_NAMES = (DEFAULT, "mixed-once", "endothermic", "mixing-ratios")


@functools.cache
def ready_plan(name: str) -> Plan:
    """Return one of them. Raises KeyError for another name."""
    if name not in READY_NAMES:
        raise KeyError(name)
    return read_plan(files("station").joinpath("plans", f"{name}.toml").read_text(encoding="utf-8"), f"{name}.toml")
