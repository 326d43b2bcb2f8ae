"""The parts of a plan: what each table of a plan.toml may say, checked."""

from typing import Annotated, Self

from pydantic import AfterValidator, BaseModel, ConfigDict, Field, field_validator, model_validator

from station.chemistry.glassware import u_portion_cm3
from station.chemistry.reagents import UnknownReagentError, find_reagent


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


class Part(BaseModel):
    """A table of a plan: no unknown keys, no changes."""

    model_config = ConfigDict(extra="forbid", frozen=True, strict=False)


class Acid(Part):
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


class Alkali(Part):
    """The alkali that is added, portion by portion."""

    name: Label
    concentration_mol_dm3: Concentration
    temperature_c: Temperature | None = None

    @field_validator("name")
    @classmethod
    def _known(cls, name: str) -> str:
        return _reagent_name(name)


class Portions(Part):
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


class Liquid(Part):
    """What is in the cup when something is mixed in once: water, or the solution of a reagent."""

    name: Label
    volume_cm3: Volume
    u_volume_cm3: Positive | None = None
    concentration_mol_dm3: Concentration | None = None

    @field_validator("name")
    @classmethod
    def _known(cls, name: str) -> str:
        return "water" if name.strip().lower() == "water" else _reagent_name(name)

    @model_validator(mode="after")
    def _has_concentration(self) -> Self:
        if (self.name == "water") == (self.concentration_mol_dm3 is not None):
            wanted = "water has no" if self.name == "water" else f"{self.name} needs a"
            raise ValueError(f"[liquid] {wanted} concentration_mol_dm3")
        return self


class Addition(Part):
    """What is mixed in: a solution (volume and concentration) or a weighed solid (mass)."""

    name: Label
    volume_cm3: Volume | None = None
    u_volume_cm3: Positive | None = None
    concentration_mol_dm3: Concentration | None = None
    mass_g: Positive | None = None
    u_mass_g: Positive | None = None
    temperature_c: Temperature | None = None

    @field_validator("name")
    @classmethod
    def _known(cls, name: str) -> str:
        return _reagent_name(name)

    @model_validator(mode="after")
    def _solution_or_solid(self) -> Self:
        if (self.mass_g is None) == (self.volume_cm3 is None):
            raise ValueError("[addition] give mass_g (a solid) or volume_cm3 with concentration_mol_dm3 (a solution)")
        if (self.volume_cm3 is None) != (self.concentration_mol_dm3 is None):
            raise ValueError("[addition] a solution needs volume_cm3 and concentration_mol_dm3, a solid neither")
        return self


class Timing(Part):
    """How long the temperature is recorded before and after the moment of mixing."""

    before_s: Annotated[float, Field(ge=90, le=1800, allow_inf_nan=False)] = 120.0
    after_s: Annotated[float, Field(ge=60, le=3600, allow_inf_nan=False)] = 300.0


class Cup(Part):
    """The cup and the wetted tip of the probe; 5 ± 3 J/K is an estimate until a cup test replaces it."""

    heat_capacity_j_k: Annotated[float, Field(ge=0, le=1000, allow_inf_nan=False)] = 5.0
    u_heat_capacity_j_k: Annotated[float, Field(ge=0, le=1000, allow_inf_nan=False)] = 3.0


class Surroundings(Part):
    """The room."""

    room_c: Temperature | None = None
