"""The plan of portions of an alkali to an acid, until well past the end-point."""

from collections.abc import Iterator
from functools import lru_cache
from typing import Annotated, Any, Final, Literal, Self

from pydantic import ConfigDict, Field, field_validator, model_validator
from pydantic.config import JsonDict
from typing_extensions import TypedDict

from station.chemistry.pairs import Neutralisation, WrongPairError, neutralisation_steps
from station.chemistry.preparation import Glassware, glassware_of, u_portion_cm3
from station.chemistry.reagents import find_reagent
from station.practical.plan import (
    Amount,
    Concentration,
    Ingredient,
    Label,
    Part,
    Plan,
    PlanError,
    Temperature,
    Uncertainty,
    Volume,
    number,
    reagent_name,
    volume_of,
    volume_only,
)
from station.words import Message, say

Json = dict[str, Any]

WAIT_S: Final = {"graph": 30.0, "quick": 20.0}
"""From the press to the reading: in graph pace about the settle detector's median on simulated cups."""
POUR_S: Final = 15.0
"""To measure a portion, pour and stir it, and press."""
MIDDLE: Final = say("basis-middle")
KNOWN: Final = say("basis-known")
OWN: Final = say("predict-as-planned")
"""How the portions of the plan itself are measured."""
PREPARED: Final = say("basis-prepared")
LEAST_POINTS = 3


def _kept_back(schema: JsonDict) -> None:
    """What staff keep to themselves may be missing in an answer."""
    required = schema.get("required")
    if isinstance(required, list):
        schema["required"] = [each for each in required if each != "prepared_mol_dm3"]


class Acid(Part):
    """The acid in the cup. `prepared_mol_dm3` is what staff made up: never shown before results are."""

    model_config = ConfigDict(json_schema_extra=_kept_back)

    name: Label
    volume_cm3: Volume
    u_volume_cm3: Uncertainty | None = None
    concentration_mol_dm3: Concentration | None = None
    prepared_mol_dm3: Concentration | None = None

    @field_validator("name")
    @classmethod
    def _known(cls, name: str) -> str:
        return reagent_name(name)


class Alkali(Part):
    """The alkali that is added, portion by portion."""

    name: Label
    concentration_mol_dm3: Concentration
    temperature_c: Temperature | None = None

    @field_validator("name")
    @classmethod
    def _known(cls, name: str) -> str:
        return reagent_name(name)


class Portions(Part):
    """Size and number of the additions; `u_volume_cm3` is one standard deviation, independent between portions."""

    volume_cm3: Volume
    count: Annotated[int, Field(ge=1, le=60)]
    u_volume_cm3: Uncertainty | None = None
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


class PortionsPlan(Plan):
    """Portions of an alkali to an acid, until well past the end-point."""

    kind: Literal["portions"] = "portions"
    acid: Acid
    alkali: Alkali
    portions: Portions
    predict_first: bool = False

    @model_validator(mode="after")
    def _one_concentration(self) -> Self:
        if self.acid.concentration_mol_dm3 is not None and self.acid.prepared_mol_dm3 is not None:
            raise ValueError(say("problem-acid-one-concentration"))
        return self

    @property
    def sketches(self) -> bool:
        """Whether the group draws, before the first portion, how it thinks that the temperature will go."""
        return self.predict_first

    @property
    def ingredients(self) -> tuple[Ingredient, Ingredient]:
        """The acid, and all portions of the alkali together."""
        acid, alkali = self.acid, self.alkali
        return Ingredient(
            table="acid",
            name=acid.name,
            amount=volume_only(acid.volume_cm3),
            volume_cm3=acid.volume_cm3,
            temperature_c=self.start_c,
            mol_dm3=acid.concentration_mol_dm3,
            prepared_mol_dm3=acid.prepared_mol_dm3,
            most_mol_dm3=most_mol_dm3(self) if acid.concentration_mol_dm3 is None else None,
        ), Ingredient(
            table="alkali",
            name=alkali.name,
            amount=say("amount-portions", count=self.count, volume_cm3=number(self.portion_cm3)),
            volume_cm3=self.count * self.portion_cm3,
            temperature_c=self.start_c if alkali.temperature_c is None else alkali.temperature_c,
            mol_dm3=alkali.concentration_mol_dm3,
            portions=self.count,
        )

    @property
    def count(self) -> int:
        """How many portions a repeat has."""
        return self.portions.count

    @property
    def portion_cm3(self) -> float:
        """The nominal volume of a portion."""
        return self.portions.volume_cm3

    @property
    def added(self) -> Message:
        """One portion in words."""
        return volume_of(self.portion_cm3, self.alkali.name)

    @property
    def work(self) -> tuple[str, float]:
        """Every portion is poured and waited for."""
        return "portions", self.count * (WAIT_S[self.pace] + POUR_S)

    @property
    def measured_in(self) -> Glassware | None:
        """The glassware that the plan names."""
        return None if self.portions.glassware is None else glassware_of(self.portions.glassware)

    @property
    def measured_with(self) -> list[tuple[Message, int]]:
        """A pipette for the acid, and what the portions are measured with."""
        return [
            (say("item-pipette-for", volume_cm3=number(self.acid.volume_cm3)), 1),
            (self._for_portions(), 1),
        ]

    def _for_portions(self) -> Message:
        volume_cm3, glassware = number(self.portion_cm3), self.measured_in
        if glassware is None:
            return say("item-syringe-for", volume_cm3=volume_cm3)
        return say("item-glassware-for", glassware=glassware.name, volume_cm3=volume_cm3)

    def amounts(self) -> Iterator[Amount]:
        """Yield the acid, and the alkali with its portions."""
        yield say("sheet-in-the-cup"), self.acid.name
        yield say("sheet-volume"), self.acid.volume_cm3, "cm³"
        yield say("sheet-concentration-to-find"), self.acid.concentration_mol_dm3, "mol/dm³"
        yield say("sheet-added-in-portions"), self.alkali.name
        yield say("sheet-concentration"), self.alkali.concentration_mol_dm3, "mol/dm³"
        yield say("sheet-volume-of-portion"), self.portions.volume_cm3, "cm³"
        yield say("sheet-its-uncertainty"), self.portions.u_cm3, "cm³"
        yield say("sheet-portions-planned"), self.portions.count

    @property
    def shared_u(self) -> float:
        """The relative uncertainty of the heat capacity of cup and contents at about the end-point (4.1 J/(cm³ K))."""
        contents_j_k = 4.1 * (self.acid.volume_cm3 + 0.6 * self.count * self.portion_cm3)
        return self.cup.u_heat_capacity_j_k / (contents_j_k + self.cup.heat_capacity_j_k)

    def public(self) -> Json:
        """Return the plan as JSON values without what staff keep to themselves."""
        return {**self.model_dump(mode="json", exclude={"acid": {"prepared_mol_dm3"}}), "title": self.name}

    def without_prepared(self) -> Self:
        """Return the plan as the journal may keep it."""
        return self.model_copy(update={"acid": self.acid.model_copy(update={"prepared_mol_dm3": None})})

    def with_count(self, count: int) -> Self:
        """Return the plan with so many portions."""
        return self.model_copy(update={"portions": self.portions.model_copy(update={"count": count})})

    @property
    def pair(self) -> Neutralisation:
        """The neutralisation. Raises WrongPairError for two reagents that are none."""
        return _pair(self.acid.name, self.alkali.name)

    def check(self) -> None:
        """Raise PlanError for two reagents that do not neutralise, or for so few portions that nothing can be found."""
        acid_of(self, pair_of(self))

    def range_mol_dm3(self) -> tuple[float, float] | None:
        """Return the acids that the plan can tell apart; None where the plan says which it is, or cannot tell."""
        if self.acid.concentration_mol_dm3 or self.acid.prepared_mol_dm3:
            return None
        return acid_of(self, pair_of(self))["range_mol_dm3"]


@lru_cache(maxsize=64)
def _pair(acid: str, alkali: str) -> Neutralisation:
    """Asked for at every sample that settles."""
    return neutralisation_steps(find_reagent(acid), find_reagent(alkali))


# What a plan says of its acid: the pair, the concentration and where it is from, what can be resolved.


def pair_of(plan: PortionsPlan) -> Neutralisation:
    """Return the plan's neutralisation. Raises PlanError for two reagents that are none."""
    try:
        return plan.pair
    except WrongPairError as error:
        raise PlanError(say("predict-change-pair", reason=str(error)), ("alkali", "name")) from None


class AcidPromised(TypedDict):
    """The acid's concentration, where it comes from, and the range that the plan can resolve."""

    concentration_mol_dm3: float
    basis: Message
    range_mol_dm3: tuple[float, float] | None
    end_point_cm3: float


def acid_of(plan: PortionsPlan, pair: Neutralisation) -> AcidPromised:
    """Return the acid's concentration, where it comes from, and the range that the plan can resolve.

    An end-point can be resolved when at least three readings lie on each arm.
    """
    per_cm3 = plan.alkali.concentration_mol_dm3 * pair.acid_per_alkali / plan.acid.volume_cm3
    low, high = (LEAST_POINTS - 1) * plan.portion_cm3, (plan.count - LEAST_POINTS + 1) * plan.portion_cm3
    known = plan.acid.concentration_mol_dm3 or plan.acid.prepared_mol_dm3
    if known is None and high < low:
        least = 2 * (LEAST_POINTS - 1)
        text = say("predict-count-too-small", count=plan.count, readings=LEAST_POINTS, least=least)
        raise PlanError(text, ("portions", "count"))
    concentration = known if known is not None else (low + high) / 2 * per_cm3
    basis = MIDDLE if known is None else KNOWN if plan.acid.concentration_mol_dm3 is not None else PREPARED
    return {
        "concentration_mol_dm3": concentration,
        "basis": basis,
        "range_mol_dm3": (_told(low * per_cm3), _told(high * per_cm3)) if high >= low else None,
        "end_point_cm3": concentration / per_cm3,
    }


def most_mol_dm3(plan: PortionsPlan) -> float:
    """The strongest acid that the plan can find, in mol/dm³: the upper end of its range, wherever it is told.

    With too few portions for a range, the acid that all of them together neutralise.
    """
    try:
        found = acid_of(plan, plan.pair)["range_mol_dm3"]
        per_alkali = plan.pair.acid_per_alkali
    except (PlanError, WrongPairError):
        found, per_alkali = None, 1.0
    if found is not None:
        return found[1]
    alkali_mmol = plan.count * plan.portion_cm3 * plan.alkali.concentration_mol_dm3
    return _told(alkali_mmol * per_alkali / plan.acid.volume_cm3)


def _told(mol_dm3: float) -> float:
    """Round to three figures, as the sheets, the page and the labels tell it."""
    return float(f"{mol_dm3:.3g}")
