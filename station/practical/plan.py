"""The plan of a practical: what is in the cup, what is added, how often. Read from TOML, checked, immutable."""

import tomllib
from collections.abc import Mapping
from typing import Annotated, Any, Literal, Self, TypeAlias

from pydantic import Field, ValidationError, model_validator

from station.practical.plan_parts import (
    Acid,
    Addition,
    Alkali,
    Cup,
    Label,
    Liquid,
    Part,
    Portions,
    Surroundings,
    Timing,
)
from station.practical.problems import problem_line
from station.practical.toml_text import toml_values


class PlanError(ValueError):
    """A plan that cannot be used; the message is one line that says what to change, `where` names table and key."""

    def __init__(self, message: str, where: tuple[str, ...] = ()) -> None:
        super().__init__(message)
        self.where = where


class _AnyPlan(Part):
    """What every practical has, and what the procedure asks of it."""

    title: Label | None = None
    pace: Literal["graph", "quick"] = "graph"
    results: Literal["at once", "after own reading", "when shown"] = "after own reading"
    prompts: Literal["station", "own judgement"] = "station"
    repeats: Annotated[int, Field(ge=1, le=10)] = 2
    cup: Cup = Cup()
    surroundings: Surroundings = Surroundings()

    def public(self) -> dict[str, Any]:
        """Return the plan as JSON values without what staff keep to themselves."""
        shown = self.without_prepared().model_dump(mode="json")
        if "acid" in shown:
            del shown["acid"]["prepared_mol_dm3"]
        return {**shown, "title": self.name}

    def without_prepared(self) -> Self:
        """Return the plan as the journal may keep it."""
        return self

    @property
    def own_judgement(self) -> bool:
        """Whether the students decide when to read and when to add."""
        return self.prompts == "own judgement"

    @property
    def name(self) -> str:
        """The plan in a few words."""
        raise NotImplementedError


class PortionsPlan(_AnyPlan):
    """Portions of an alkali to an acid, until well past the end-point."""

    kind: Literal["portions"] = "portions"
    acid: Acid
    alkali: Alkali
    portions: Portions

    @model_validator(mode="after")
    def _one_concentration(self) -> Self:
        if self.acid.concentration_mol_dm3 is not None and self.acid.prepared_mol_dm3 is not None:
            raise ValueError("[acid] give concentration_mol_dm3 (known to the class) or prepared_mol_dm3, not both")
        return self

    @property
    def name(self) -> str:
        """The plan in a few words."""
        return self.title or f"{self.acid.name} with {self.alkali.name}"

    @property
    def count(self) -> int:
        """How many portions a repeat has."""
        return self.portions.count

    @property
    def portion_cm3(self) -> float:
        """The nominal volume of a portion."""
        return self.portions.volume_cm3

    @property
    def in_cup(self) -> str:
        """What is in the cup at the start, in words."""
        return f"{number(self.acid.volume_cm3)} cm³ of {self.acid.name}"

    @property
    def added(self) -> str:
        """One portion in words."""
        return f"{number(self.portions.volume_cm3)} cm³ of {self.alkali.name}"

    @property
    def added_name(self) -> str:
        """What is added."""
        return self.alkali.name

    def without_prepared(self) -> Self:
        """Return the plan as the journal may keep it."""
        return self.model_copy(update={"acid": self.acid.model_copy(update={"prepared_mol_dm3": None})})


class OncePlan(_AnyPlan):
    """A liquid in the cup, and another liquid or a weighed solid mixed in at one marked moment."""

    kind: Literal["once"]
    liquid: Liquid
    addition: Addition
    timing: Timing = Timing()

    @property
    def name(self) -> str:
        """The plan in a few words."""
        return self.title or f"{self.liquid.name} with {self.addition.name}"

    @property
    def count(self) -> int:
        """There is one addition."""
        return 1

    @property
    def portion_cm3(self) -> float:
        """The volume that is added; 0 for a solid."""
        return self.addition.volume_cm3 or 0.0

    @property
    def in_cup(self) -> str:
        """What is in the cup at the start, in words."""
        return f"{number(self.liquid.volume_cm3)} cm³ of {self.liquid.name}"

    @property
    def added(self) -> str:
        """The addition in words."""
        if self.addition.mass_g is not None:
            return f"{number(self.addition.mass_g)} g of {self.addition.name}"
        return f"{number(self.portion_cm3)} cm³ of {self.addition.name}"

    @property
    def added_name(self) -> str:
        """What is added."""
        return self.addition.name


Plan: TypeAlias = PortionsPlan | OncePlan


def number(value: float) -> str:
    """Return a quantity as a person writes it: 4 and 2.5, not 4.0."""
    return f"{value:.2f}".rstrip("0").rstrip(".")


def plan_from(values: Mapping[str, Any], where: str = "plan") -> Plan:
    """Make a Plan from parsed values; raise PlanError with one line per first problem."""
    kind = OncePlan if values.get("kind") == "once" else PortionsPlan
    try:
        return kind.model_validate(dict(values))
    except ValidationError as error:
        raise PlanError(f"{where}: {problem_line(error)}") from None


def read_plan(text: str, where: str = "plan.toml") -> Plan:
    """Read a plan from TOML text; `where` names the file in errors. Raises PlanError."""
    try:
        values = toml_values(text)
    except tomllib.TOMLDecodeError as error:
        raise PlanError(f"{where}: not valid TOML: {error}") from None
    return plan_from(values, where)


READY_PLAN = """\
title = "How strong is the nitric acid?"
repeats = 2

[acid]
name = "nitric acid"
volume_cm3 = 25.0

[alkali]
name = "potassium hydroxide"
concentration_mol_dm3 = 0.400

[portions]
volume_cm3 = 4.0
count = 10
"""
