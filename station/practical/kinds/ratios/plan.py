"""The plan of mixing ratios: mixtures of acid and alkali that all have the same total volume, one cup each."""

from collections.abc import Iterator, Sequence
from functools import lru_cache
from typing import Annotated, ClassVar, Final, Literal, Self

from pydantic import Field, field_validator, model_validator

from station.chemistry.liquids import water_volumetric_heat_capacity_j_cm3_k
from station.chemistry.pairs import Neutralisation, WrongPairError, neutralisation_steps
from station.chemistry.preparation import CYLINDER, Glassware
from station.chemistry.reagents import find_reagent
from station.chemistry.solutions import solution
from station.practical.course import MeanPoint, Pass, Point, mean_of, turns
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
from station.practical.problems import TableProblem
from station.words import Message, plain, say

LEAST_MIXTURES: Final = 6
"""Three on each of the two lines."""
MOST_MIXTURES: Final = 12
LEAST_SIDE: Final = 3
AT_C: Final = 22.0


class Dissolved(Part):
    """The acid or the alkali; the class knows how strong both are."""

    name: Label
    concentration_mol_dm3: Concentration

    @field_validator("name")
    @classmethod
    def _known(cls, name: str) -> str:
        return reagent_name(name)


class AddedAlkali(Dissolved):
    """The alkali, which is added at once; `temperature_c` where it is not measured."""

    temperature_c: Temperature | None = None


class Mixtures(Part):
    """How much alkali there is in the first mixture, how much more in each that follows, and how many there are."""

    total_cm3: Volume
    first_cm3: Volume
    step_cm3: Volume
    count: Annotated[int, Field(ge=LEAST_MIXTURES, le=MOST_MIXTURES)]
    u_volume_cm3: Uncertainty | None = None

    @model_validator(mode="after")
    def _has_room(self) -> Self:
        if self.alkali_cm3[-1] >= self.total_cm3:
            most, total = number(self.alkali_cm3[-1]), number(self.total_cm3)
            raise TableProblem(say("problem-mixtures-total", alkali_cm3=most, total_cm3=total))
        return self

    @property
    def alkali_cm3(self) -> tuple[float, ...]:
        """The volume of alkali in each."""
        return tuple(round(self.first_cm3 + place * self.step_cm3, 6) for place in range(self.count))


class CupTiming(Part):
    """How long the temperature is recorded before and after the moment of mixing, in each cup."""

    before_s: Annotated[float, Field(ge=90, le=1800, allow_inf_nan=False)] = 90.0
    after_s: Annotated[float, Field(ge=120, le=3600, allow_inf_nan=False)] = 150.0


class RatiosPlan(Plan):
    """Mixtures of acid and alkali of one total volume: the rise of the temperature over the alkali's share.

    Each mixture is a cup. The plan of one cup is the same with that mixture alone.
    """

    settles: ClassVar[bool] = False
    pours_once: ClassVar[bool] = True
    adopts: ClassVar[bool] = False
    one_curve: ClassVar[bool] = True
    clock_s: ClassVar[float | None] = 30.0

    kind: Literal["ratios"]
    repeats: Annotated[int, Field(ge=1, le=10)] = 1
    acid: Dissolved
    alkali: AddedAlkali
    mixtures: Mixtures
    timing: CupTiming = CupTiming()

    @property
    def name(self) -> Message:
        """The two solutions."""
        if self.title is not None:
            return plain(self.title)
        return say("practical-ratios", acid=self.acid.name, alkali=self.alkali.name)

    @property
    def ingredients(self) -> tuple[Ingredient, Ingredient]:
        """The acid and the alkali of all mixtures together."""
        acid, alkali, added_cm3 = self.acid, self.alkali, self.mixtures.alkali_cm3
        acid_cm3 = tuple(self.mixtures.total_cm3 - each for each in added_cm3)
        return Ingredient(
            table="acid",
            name=acid.name,
            amount=_amount(acid_cm3),
            volume_cm3=sum(acid_cm3),
            temperature_c=self.start_c,
            mol_dm3=acid.concentration_mol_dm3,
        ), Ingredient(
            table="alkali",
            name=alkali.name,
            amount=_amount(added_cm3),
            volume_cm3=sum(added_cm3),
            temperature_c=self.start_c if alkali.temperature_c is None else alkali.temperature_c,
            mol_dm3=alkali.concentration_mol_dm3,
        )

    @property
    def start_hold_s(self) -> float:
        """The temperature before mixing is half of what is looked for."""
        return self.timing.before_s

    @property
    def cups(self) -> int:
        """One for each mixture of each repeat."""
        return self.repeats * self.mixtures.count

    def of_cup(self, cup: int) -> Self:
        """Return the plan of this mixture alone; the last one for a cup that is none."""
        if self.mixtures.count == 1:
            return self
        first_cm3 = self.mixtures.alkali_cm3[min(max(cup, 1), self.mixtures.count) - 1]
        return self.model_copy(update={"mixtures": _alone(self.mixtures, first_cm3)})

    @property
    def every_cup(self) -> Sequence[Self]:
        """The mixtures, the one in which most reacts first."""
        cups = [self.of_cup(cup) for cup in range(1, self.mixtures.count + 1)]
        return sorted(cups, key=_reacting_mmol, reverse=True)

    def next_cup(self, done: Sequence[int]) -> int:
        """Return the first of those that were done least often."""
        return min(range(1, self.mixtures.count + 1), key=lambda cup: (done.count(cup), cup))

    def is_complete(self, done: Sequence[int]) -> bool:
        """Whether each mixture was done as often as planned."""
        return all(done.count(cup) >= self.repeats for cup in range(1, self.mixtures.count + 1))

    def mean_curve(self, passes: Sequence[Pass], added_c: float | None) -> list[MeanPoint]:
        """Return the mean rise of the temperature of each mixture over its volume of alkali."""
        return mean_of(point for each in passes for point in self._rise(each, added_c))

    def turned(self, passes: Sequence[Pass], added_c: float | None) -> bool:
        """Whether the rises go up and then down again."""
        return turns([(each["volume_cm3"], each["temperature_c"]) for each in self.mean_curve(passes, added_c)])

    def _rise(self, done: Pass, added_c: float | None) -> Iterator[Point]:
        at = {each.portion: each for each in done.points}
        if 0 in at and 1 in at:
            start_c = self.start_of(done.cup, at[0].temperature_c, added_c)
            yield Point(done.cup, at[1].volume_cm3, at[1].temperature_c - start_c)

    def start_of(self, cup: int, acid_c: float, alkali_c: float | None) -> float:
        """Return the temperature that both liquids have together, before anything reacts, in °C.

        Each counts by its heat capacity. The cup has the acid's temperature.
        """
        if alkali_c is None:
            alkali_c = self.alkali.temperature_c
        if alkali_c is None:
            return acid_c
        acid_j_k, alkali_j_k = self.of_cup(cup).capacities_j_k
        held_j_k = acid_j_k + self.cup.heat_capacity_j_k
        return (held_j_k * acid_c + alkali_j_k * alkali_c) / (held_j_k + alkali_j_k)

    @property
    def capacities_j_k(self) -> tuple[float, float]:
        """Heat capacities of the acid and of the alkali before they are mixed."""
        acid, alkali = self.ingredients
        return _capacity_j_k(acid), _capacity_j_k(alkali)

    @property
    def count(self) -> int:
        """There is one addition in each cup."""
        return 1

    @property
    def portion_cm3(self) -> float:
        """The volume of alkali that is added at once; the largest where there are several mixtures."""
        return self.mixtures.alkali_cm3[-1]

    @property
    def most_cm3(self) -> float:
        """A mixture of alkali alone would be all of it."""
        return self.mixtures.total_cm3

    @property
    def added(self) -> Message:
        """The addition in words."""
        return volume_of(self.portion_cm3, self.alkali.name)

    @property
    def work(self) -> tuple[str, float]:
        """The temperature is recorded before and after mixing."""
        return "recording", self.timing.before_s + self.timing.after_s

    @property
    def measured_in(self) -> Glassware | None:
        """A measuring cylinder."""
        return CYLINDER

    @property
    def measured_with(self) -> list[tuple[Message, int]]:
        """A measuring cylinder for each solution."""
        return [(say("item-cylinder-for", volume_cm3=number(self.mixtures.total_cm3)), 2)]

    def amounts(self) -> Iterator[Amount]:
        """Yield both solutions, and how they are mixed."""
        yield say("sheet-in-the-cup"), self.acid.name
        yield say("sheet-concentration"), self.acid.concentration_mol_dm3, "mol/dm³"
        yield say("sheet-added-at-once"), self.alkali.name
        yield say("sheet-concentration"), self.alkali.concentration_mol_dm3, "mol/dm³"
        yield say("sheet-mixtures"), self.mixtures.count
        yield say("sheet-total-volume"), self.mixtures.total_cm3, "cm³"
        yield say("sheet-least-alkali"), self.mixtures.alkali_cm3[0], "cm³"
        yield say("sheet-most-alkali"), self.mixtures.alkali_cm3[-1], "cm³"

    @property
    def shared_u(self) -> float:
        """The relative uncertainty of the heat capacity of cup and contents (4.1 J/(cm³ K))."""
        contents_j_k = 4.1 * self.mixtures.total_cm3
        return self.cup.u_heat_capacity_j_k / (contents_j_k + self.cup.heat_capacity_j_k)

    @property
    def pair(self) -> Neutralisation:
        """The neutralisation. Raises WrongPairError for two reagents that are none."""
        return neutralisation_steps(find_reagent(self.acid.name), find_reagent(self.alkali.name))

    def expected_cm3(self) -> float:
        """Return the volume of alkali at which the equation says that nothing is left over. Raises WrongPairError."""
        per_alkali = self.alkali.concentration_mol_dm3 * self.pair.acid_per_alkali
        return (
            self.mixtures.total_cm3 * self.acid.concentration_mol_dm3 / (self.acid.concentration_mol_dm3 + per_alkali)
        )

    def alkali_per_acid(self, alkali_cm3: float) -> float:
        """Return how many moles of alkali there are for one of acid in a mixture with so much alkali."""
        alkali_mmol = self.alkali.concentration_mol_dm3 * alkali_cm3
        return alkali_mmol / (self.acid.concentration_mol_dm3 * (self.mixtures.total_cm3 - alkali_cm3))

    def check(self) -> None:
        """Raise PlanError for two reagents that do not neutralise, or for too few mixtures on a side of the ratio."""
        try:
            expected_cm3 = self.expected_cm3()
        except WrongPairError as error:
            raise PlanError(say("predict-change-pair", reason=str(error)), ("alkali", "name")) from None
        before = sum(each <= expected_cm3 for each in self.mixtures.alkali_cm3)
        after = sum(each >= expected_cm3 for each in self.mixtures.alkali_cm3)
        if min(before, after) < LEAST_SIDE:
            cm3 = f"{expected_cm3:.1f}"
            raise PlanError(say("problem-mixtures-side", least=LEAST_SIDE, crossing_cm3=cm3), ("mixtures", "first_cm3"))


@lru_cache(maxsize=256)
def _alone(mixtures: Mixtures, alkali_cm3: float) -> Mixtures:
    """One of these mixtures; asked for at every sample."""
    return mixtures.model_copy(update={"first_cm3": alkali_cm3, "count": 1})


def _reacting_mmol(plan: RatiosPlan) -> float:
    acid, alkali = plan.ingredients
    try:
        per_alkali = plan.pair.acid_per_alkali
    except WrongPairError:
        per_alkali = 1.0
    return min((acid.mol_dm3 or 0.0) * acid.volume_cm3, (alkali.mol_dm3 or 0.0) * alkali.volume_cm3 * per_alkali)


def _capacity_j_k(each: Ingredient) -> float:
    """What no solution can be counts as water: a record must open whatever its plan says."""
    try:
        j_cm3_k = solution({find_reagent(each.name).solute: each.mol_dm3 or 0.0}, AT_C).volumetric_j_cm3_k
    except ValueError:
        j_cm3_k = water_volumetric_heat_capacity_j_cm3_k(AT_C)
    return j_cm3_k * each.volume_cm3


def _amount(volumes_cm3: Sequence[float]) -> Message:
    if len(volumes_cm3) == 1:
        return volume_only(volumes_cm3[0])
    least, most = number(min(volumes_cm3)), number(max(volumes_cm3))
    return say("amount-mixtures", from_cm3=least, to_cm3=most, total_cm3=number(sum(volumes_cm3)))
