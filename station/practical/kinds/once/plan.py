"""The plan of one mixing: a liquid in the cup, and another liquid or a weighed solid added at one marked moment."""

from collections.abc import Iterator
from typing import Annotated, ClassVar, Final, Literal, Self

from pydantic import Field, field_validator, model_validator

from station.chemistry.preparation import CYLINDER, Glassware
from station.chemistry.reagents import find_reagent
from station.practical.plan import (
    Amount,
    Concentration,
    Ingredient,
    Label,
    Mass,
    Part,
    Plan,
    Temperature,
    Uncertainty,
    Volume,
    number,
    reagent_name,
    volume_of,
    volume_only,
)
from station.practical.problems import TableProblem
from station.words import Message, say

WATER: Final = say("reagent-water")


class Liquid(Part):
    """What is in the cup when something is mixed in once: water, or the solution of a reagent."""

    name: Label
    volume_cm3: Volume
    u_volume_cm3: Uncertainty | None = None
    concentration_mol_dm3: Concentration | None = None

    @field_validator("name")
    @classmethod
    def _known(cls, name: str) -> str:
        return WATER if name.strip().lower() == "water" else reagent_name(name)

    @property
    def is_water(self) -> bool:
        """Whether it is water alone."""
        return isinstance(self.name, Message) and self.name.id == WATER.id

    @model_validator(mode="after")
    def _has_concentration(self) -> Self:
        if self.is_water and self.concentration_mol_dm3 is not None:
            raise TableProblem(say("problem-liquid-water"))
        if not self.is_water and self.concentration_mol_dm3 is None:
            raise TableProblem(say("problem-liquid-needs", reagent=self.name))
        return self


class Addition(Part):
    """What is mixed in: a solution (volume and concentration) or a weighed solid (mass)."""

    name: Label
    volume_cm3: Volume | None = None
    u_volume_cm3: Uncertainty | None = None
    concentration_mol_dm3: Concentration | None = None
    mass_g: Mass | None = None
    u_mass_g: Uncertainty | None = None
    temperature_c: Temperature | None = None

    @field_validator("name")
    @classmethod
    def _known(cls, name: str) -> str:
        return reagent_name(name)

    @model_validator(mode="after")
    def _solution_or_solid(self) -> Self:
        if (self.mass_g is None) == (self.volume_cm3 is None):
            raise TableProblem(say("problem-addition-one"))
        if (self.volume_cm3 is None) != (self.concentration_mol_dm3 is None):
            raise TableProblem(say("problem-addition-concentration"))
        return self

    @property
    def called(self) -> str:
        """The name of the solution, or of the solid."""
        return self.name if self.mass_g is None else find_reagent(self.name).weighed_name


class Timing(Part):
    """How long the temperature is recorded before and after the moment of mixing."""

    before_s: Annotated[float, Field(ge=90, le=1800, allow_inf_nan=False)] = 120.0
    after_s: Annotated[float, Field(ge=60, le=3600, allow_inf_nan=False)] = 300.0


class OncePlan(Plan):
    """A liquid in the cup, and another liquid or a weighed solid mixed in at one marked moment."""

    settles: ClassVar[bool] = False
    has_turn: ClassVar[bool] = False
    pours_once: ClassVar[bool] = True
    adopts: ClassVar[bool] = False
    clock_s: ClassVar[float | None] = 30.0

    kind: Literal["once"]
    liquid: Liquid
    addition: Addition
    timing: Timing = Timing()

    @property
    def ingredients(self) -> tuple[Ingredient, Ingredient]:
        """The liquid, and what is mixed in."""
        liquid, addition, mass_g = self.liquid, self.addition, self.addition.mass_g
        solid = None if mass_g is None else say("amount-mass-only", mass_g=number(mass_g))
        return Ingredient(
            table="liquid",
            name=liquid.name,
            amount=volume_only(liquid.volume_cm3),
            volume_cm3=liquid.volume_cm3,
            temperature_c=self.start_c,
            mol_dm3=liquid.concentration_mol_dm3,
        ), Ingredient(
            table="addition",
            name=addition.name,
            amount=solid or volume_only(self.portion_cm3),
            volume_cm3=self.portion_cm3,
            temperature_c=self.start_c if addition.temperature_c is None else addition.temperature_c,
            mol_dm3=addition.concentration_mol_dm3,
            mass_g=mass_g,
        )

    @property
    def start_hold_s(self) -> float:
        """The temperature before mixing is half of what is looked for."""
        return self.timing.before_s

    @property
    def count(self) -> int:
        """There is one addition."""
        return 1

    @property
    def portion_cm3(self) -> float:
        """The volume that is added; 0 for a solid."""
        return self.addition.volume_cm3 or 0.0

    @property
    def added(self) -> Message:
        """The addition in words."""
        if self.addition.mass_g is not None:
            return say("amount-mass", mass_g=number(self.addition.mass_g), reagent=self.addition.called)
        return volume_of(self.portion_cm3, self.addition.name)

    @property
    def work(self) -> tuple[str, float]:
        """The temperature is recorded before and after mixing."""
        return "recording", self.timing.before_s + self.timing.after_s

    @property
    def measured_in(self) -> Glassware | None:
        """A measuring cylinder; a balance for a solid."""
        return CYLINDER if self.addition.mass_g is None else None

    @property
    def measured_with(self) -> list[tuple[Message, int]]:
        """A measuring cylinder for each volume; a balance, and a weighing boat for each repeat's solid."""
        poured_cm3 = [self.liquid.volume_cm3, *([self.portion_cm3] if self.portion_cm3 else [])]
        items = [
            (say("item-cylinder-for", volume_cm3=number(each_cm3)), poured_cm3.count(each_cm3))
            for each_cm3 in dict.fromkeys(poured_cm3)
        ]
        if self.addition.mass_g is not None:
            items.append((say("item-balance"), 1))
            items.append((say("item-weighing-boat", mass_g=number(self.addition.mass_g)), self.repeats))
        return items

    def amounts(self) -> Iterator[Amount]:
        """Yield the liquid, and what is added at once."""
        yield say("sheet-in-the-cup"), self.liquid.name
        yield say("sheet-volume"), self.liquid.volume_cm3, "cm³"
        yield say("sheet-concentration"), self.liquid.concentration_mol_dm3, "mol/dm³"
        yield say("sheet-added-at-once"), self.addition.name
        yield say("sheet-volume"), self.addition.volume_cm3, "cm³"
        yield say("sheet-concentration"), self.addition.concentration_mol_dm3, "mol/dm³"
        yield say("sheet-mass"), self.addition.mass_g, "g"
