"""The plan of a practical: what is in the cup, what is added, how often. Read from TOML, checked, immutable."""

import tomllib
from collections.abc import Mapping
from typing import Annotated, Any, Literal, Self

from pydantic import (
    AfterValidator,
    BaseModel,
    ConfigDict,
    Field,
    ValidationError,
    field_validator,
    model_validator,
)

from station.chemistry.glassware import u_portion_cm3
from station.chemistry.reagents import UnknownReagentError, find_reagent
from station.practical.problems import problem_line


class PlanError(ValueError):
    """A plan that cannot be used; the message is one line that says what to change."""


def _printable(text: str) -> str:
    # Controls and direction marks would let one label rearrange another bench's page.
    if not text.isprintable():
        raise ValueError("must be plain text without control characters")
    return text.strip()


def _reagent_name(name: str) -> str:
    try:
        return find_reagent(name).name
    except UnknownReagentError as error:
        raise ValueError(str(error)) from None


Label = Annotated[str, Field(min_length=1, max_length=80), AfterValidator(_printable)]
Volume = Annotated[float, Field(gt=0, le=1000, allow_inf_nan=False)]
Concentration = Annotated[float, Field(gt=0, le=20, allow_inf_nan=False)]
Temperature = Annotated[float, Field(ge=-5, le=60, allow_inf_nan=False)]
Positive = Annotated[float, Field(gt=0, le=1000, allow_inf_nan=False)]


class _Part(BaseModel):
    model_config = ConfigDict(extra="forbid", frozen=True, strict=False)


class Acid(_Part):
    """The acid in the cup. `prepared_mol_dm3` is what staff made up: never shown before results are."""

    name: Label
    volume_cm3: Volume
    u_volume_cm3: Positive | None = None
    concentration_mol_dm3: Concentration | None = None
    prepared_mol_dm3: Concentration | None = None

    @field_validator("name")
    @classmethod
    def _known(cls, name: str) -> str:
        return _reagent_name(name)


class Alkali(_Part):
    """The alkali that is added, portion by portion."""

    name: Label
    concentration_mol_dm3: Concentration
    temperature_c: Temperature | None = None

    @field_validator("name")
    @classmethod
    def _known(cls, name: str) -> str:
        return _reagent_name(name)


class Portions(_Part):
    """Size and number of the additions; `u_volume_cm3` is one standard deviation, independent between portions."""

    volume_cm3: Volume
    count: Annotated[int, Field(ge=1, le=60)]
    u_volume_cm3: Positive | None = None
    glassware: Label | None = None

    @field_validator("glassware")
    @classmethod
    def _known(cls, glassware: str | None) -> str | None:
        u_portion_cm3(glassware)
        return glassware

    @property
    def u_cm3(self) -> float:
        """One standard deviation of one portion in cm³: as stated, else of the glassware, else 0.1."""
        return self.u_volume_cm3 if self.u_volume_cm3 is not None else u_portion_cm3(self.glassware)


class Cup(_Part):
    """The cup and the wetted tip of the probe; 5 ± 3 J/K is an estimate until a cup test replaces it."""

    heat_capacity_j_k: Annotated[float, Field(ge=0, le=1000, allow_inf_nan=False)] = 5.0
    u_heat_capacity_j_k: Annotated[float, Field(ge=0, le=1000, allow_inf_nan=False)] = 3.0


class Surroundings(_Part):
    """The room."""

    room_c: Temperature | None = None


class Plan(_Part):
    """A whole practical. Made by `read_plan`; `public()` is what may be shown before results are."""

    title: Label | None = None
    kind: Literal["portions"] = "portions"
    pace: Literal["graph", "quick"] = "graph"
    repeats: Annotated[int, Field(ge=1, le=10)] = 2
    acid: Acid
    alkali: Alkali
    portions: Portions
    cup: Cup = Cup()
    surroundings: Surroundings = Surroundings()

    @model_validator(mode="after")
    def _one_concentration(self) -> Self:
        if self.acid.concentration_mol_dm3 is not None and self.acid.prepared_mol_dm3 is not None:
            raise ValueError("[acid] give concentration_mol_dm3 (known to the class) or prepared_mol_dm3, not both")
        return self

    @property
    def name(self) -> str:
        """The plan in a few words."""
        return self.title or f"{self.acid.name} with {self.alkali.name}"

    def public(self) -> dict[str, Any]:
        """Return the plan as JSON values without what staff keep to themselves."""
        shown = self.model_dump(mode="json", exclude={"acid": {"prepared_mol_dm3"}})
        shown["title"] = self.name
        return shown

    def without_prepared(self) -> "Plan":
        """Return the plan as the journal may keep it."""
        return self.model_copy(update={"acid": self.acid.model_copy(update={"prepared_mol_dm3": None})})


def plan_from(values: Mapping[str, Any], where: str = "plan") -> Plan:
    """Make a Plan from parsed values; raise PlanError with one line per first problem."""
    try:
        return Plan.model_validate(dict(values))
    except ValidationError as error:
        raise PlanError(f"{where}: {problem_line(error)}") from None


def read_plan(text: str, where: str = "plan.toml") -> Plan:
    """Read a plan from TOML text; `where` names the file in errors. Raises PlanError."""
    try:
        values = tomllib.loads(text.removeprefix("\ufeff").replace("\r\n", "\n"))
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
