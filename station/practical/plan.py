"""The plan of a practical: what every kind has, checked, immutable. Each kind's own tables are in its package."""

from abc import abstractmethod
from collections.abc import Iterator, Sequence
from dataclasses import dataclass
from typing import Annotated, Any, ClassVar, Final, Literal, Self

from pydantic import AfterValidator, BaseModel, ConfigDict, Field

from station.chemistry.preparation import Glassware
from station.chemistry.reagent import Reagent
from station.chemistry.reagents import UnknownReagentError, find_reagent
from station.practical.course import MeanPoint, Pass, by_volume, mean_of, turns
from station.words import Message, plain, say

# The parts of a plan: what each table of a plan.toml may say, checked.


def _printable(text: str) -> str:
    # Controls and direction marks would let one label rearrange another bench's page.
    if not text.isprintable():
        raise ValueError(say("problem-plain-text"))
    return text.strip()


def _zero_or_more(heat_capacity_j_k: float) -> float:
    if 0.0 < heat_capacity_j_k < 0.001:
        raise ValueError(say("problem-zero-or-more"))
    return heat_capacity_j_k


def reagent_name(name: str) -> Message:
    """Return the name by which this reagent is known. Raises ValueError for an unknown one."""
    try:
        return find_reagent(name).name
    except UnknownReagentError as error:
        raise ValueError(str(error)) from None


Label = Annotated[str, Field(min_length=1, max_length=80), AfterValidator(_printable)]
Volume = Annotated[float, Field(ge=0.1, le=1000, allow_inf_nan=False)]
"""From two drops to a litre: common practice, no source; so are the limits of all quantities here."""
Concentration = Annotated[float, Field(ge=0.001, le=20, allow_inf_nan=False)]
Temperature = Annotated[float, Field(ge=-5, le=60, allow_inf_nan=False)]
Mass = Annotated[float, Field(ge=0.001, le=1000, allow_inf_nan=False)]
Uncertainty = Annotated[float, Field(ge=0.0001, le=100, allow_inf_nan=False)]
HeatCapacity = Annotated[float, Field(ge=0, le=1000, allow_inf_nan=False), AfterValidator(_zero_or_more)]


class Part(BaseModel):
    """A table of a plan: no unknown keys, no changes."""

    model_config = ConfigDict(extra="forbid", frozen=True, strict=False)


class Cup(Part):
    """The cup and the wetted tip of the probe; 5 ± 3 J/K is an estimate until a cup test replaces it."""

    heat_capacity_j_k: HeatCapacity = 5.0
    u_heat_capacity_j_k: HeatCapacity = 3.0


class Surroundings(Part):
    """The room."""

    room_c: Temperature | None = None


USUAL_ROOM_C: Final = 20.0
START_HOLD_S: Final = 30.0


class PlanError(ValueError):
    """A plan that cannot be used; the message is one line that says what to change, `where` names table and key.

    `sentence`: the message ends in a full stop already.
    """

    def __init__(self, message: Message, where: tuple[str, ...] = (), *, sentence: bool = False) -> None:
        super().__init__(message)
        self.where = where
        self.sentence = sentence

    @property
    def refusal(self) -> Message:
        """The refusal of such a plan, a whole sentence."""
        return say("refusal-plan-sentence" if self.sentence else "refusal-plan", reason=str(self))


OWN_TITLES: Final = (
    say("practical-hydrochloric-acid"),
    say("practical-nitric-acid"),
    say("practical-neutralisation"),
    say("practical-urea"),
)
"""Titles of the plans that come with the station: in a file, a record or an order they are the English text."""


def _own_title(title: str) -> str:
    return next((own for own in OWN_TITLES if own == title), title)


Amount = tuple[Message, str | float | None] | tuple[Message, str | float | None, str]
"""A row of a sheet: what, how much, unit. One with a unit is of what stands above it."""


@dataclass(frozen=True)
class Ingredient:
    """What one repeat has in the cup, or what is added to it; `table` is its table in plan.toml, `amount` in words.

    `mol_dm3` is what the class may know, `prepared_mol_dm3` what only staff know; a class that is to find it can find
    `most_mol_dm3` at most. Water has none of these, nor has a weighed solid.
    """

    table: str
    name: str
    amount: Message
    volume_cm3: float
    temperature_c: float
    mol_dm3: float | None = None
    prepared_mol_dm3: float | None = None
    most_mol_dm3: float | None = None
    mass_g: float | None = None
    portions: int = 1

    @property
    def called(self) -> str:
        """The name of the solution, or of the solid."""
        return self.name if self.mass_g is None else find_reagent(self.name).weighed_name

    @property
    def told_mol_dm3(self) -> float | None:
        """The concentration as staff know it."""
        return self.mol_dm3 or self.prepared_mol_dm3

    @property
    def to_find(self) -> bool:
        """Whether its concentration is what the class is to find."""
        return self.mol_dm3 is None and self.most_mol_dm3 is not None

    @property
    def reagent(self) -> Reagent | None:
        """The reagent; None for water."""
        water = self.mass_g is None and self.told_mol_dm3 is None and self.most_mol_dm3 is None
        return None if water else find_reagent(self.name)


class Plan(Part):
    """What every practical has, and what is asked of it whatever its kind.

    `settles`: each portion is read once the temperature has settled, and teaches how probe and cup behave.
    `has_turn`: readings rise or fall to a turning point, which is what there is to find. `pours_once`: there is one
    portion, perhaps of no volume. `adopts`: another group's readings can be worked on. `clock_s`: temperatures from an
    ordinary thermometer are typed every so many seconds; None: one for each portion. `one_curve`: all repeats together
    are one curve, with a point each.
    """

    settles: ClassVar[bool] = True
    has_turn: ClassVar[bool] = True
    pours_once: ClassVar[bool] = False
    adopts: ClassVar[bool] = True
    clock_s: ClassVar[float | None] = None
    one_curve: ClassVar[bool] = False

    title: Annotated[Label, AfterValidator(_own_title)] | None = None
    pace: Literal["graph", "quick"] = "graph"
    results: Literal["at once", "after own reading", "when shown"] = "after own reading"
    prompts: Literal["station", "own judgement"] = "station"
    repeats: Annotated[int, Field(ge=1, le=10)] = 2
    cup: Cup = Cup()
    surroundings: Surroundings = Surroundings()
    kind: str

    def public(self) -> dict[str, Any]:
        """Return the plan as JSON values without what staff keep to themselves."""
        return {**self.model_dump(mode="json"), "title": self.name}

    def without_prepared(self) -> Self:
        """Return the plan as the journal may keep it."""
        return self

    @property
    def own_judgement(self) -> bool:
        """Whether the students decide when to read and when to add."""
        return self.prompts == "own judgement"

    @property
    def sketches(self) -> bool:
        """Whether the group draws the curve that it expects before there is one."""
        return False

    @property
    def start_c(self) -> float:
        """The temperature in the cup at the start: the room's, 20 °C when the plan does not say."""
        room_c = self.surroundings.room_c
        return USUAL_ROOM_C if room_c is None else room_c

    @property
    def start_hold_s(self) -> float:
        """For how long the temperature stands still before something is added."""
        return START_HOLD_S

    @property
    def name(self) -> Message:
        """The plan in a few words."""
        if self.title is not None:
            return plain(self.title)
        in_cup, added = self.ingredients
        return say("practical-pair", first=in_cup.called, second=added.called)

    @property
    def in_cup(self) -> Message:
        """What is in the cup at the start, in words."""
        in_cup, _ = self.ingredients
        return volume_of(in_cup.volume_cm3, in_cup.name)

    @property
    def added_name(self) -> str:
        """What is added."""
        return self.ingredients[1].called

    @property
    @abstractmethod
    def ingredients(self) -> tuple[Ingredient, Ingredient]:
        """What is in the cup, and all that is added to it in one repeat."""

    @property
    def cups(self) -> int:
        """How many cups are filled in all, one for each repeat."""
        return self.repeats

    def of_cup(self, cup: int) -> Self:  # noqa: ARG002 - of a plan whose cups differ
        """Return the plan of what is in this cup (from 1), where they differ."""
        return self

    @property
    def every_cup(self) -> Sequence[Self]:
        """The plan of each cup that differs; the one in which most reacts comes first."""
        return (self,)

    def next_cup(self, done: Sequence[int]) -> int:  # noqa: ARG002 - of a plan whose cups differ
        """Return which cup comes next, after these."""
        return 1

    def is_complete(self, done: Sequence[int]) -> bool:
        """Whether these cups are all that is planned."""
        return len(done) >= self.repeats

    def mean_curve(self, passes: Sequence[Pass], added_c: float | None) -> list[MeanPoint]:  # noqa: ARG002
        """Return the mean curve of these repeats; `added_c` is the temperature of what is added, if it is known."""
        return mean_of(point for each in passes for point in each.points)

    def turned(self, passes: Sequence[Pass], added_c: float | None) -> bool:  # noqa: ARG002
        """Whether these repeats go past what there is to find: one of them past its turning point."""
        return any(turns(by_volume(each.points)) for each in passes)

    @property
    @abstractmethod
    def count(self) -> int:
        """How many portions a repeat has."""

    @property
    @abstractmethod
    def portion_cm3(self) -> float:
        """The nominal volume of a portion; 0 for a solid."""

    @property
    def portion_g(self) -> float | None:
        """The nominal mass of a portion of a solid; None for what is poured."""
        return self.ingredients[1].mass_g

    @property
    def most_cm3(self) -> float:
        """How far the volume goes when all is in."""
        return self.count * self.portion_cm3

    @property
    def portion_amount(self) -> float:
        """What a portion is measured as: cm³, or g of a solid."""
        return self.portion_g or self.portion_cm3

    @property
    @abstractmethod
    def added(self) -> Message:
        """One portion in words."""

    @property
    @abstractmethod
    def work(self) -> tuple[str, float]:
        """The part of a repeat after its start, and how many seconds it takes."""

    @property
    def measured_in(self) -> Glassware | None:
        """What one portion is measured in; None where the plan does not say."""
        return None

    @property
    @abstractmethod
    def measured_with(self) -> list[tuple[Message, int]]:
        """What a bench needs to measure all this: items and how many."""

    @abstractmethod
    def amounts(self) -> Iterator[Amount]:
        """Yield what is in the cup and what is added, for the sheet of a record."""

    @property
    def shared_u(self) -> float:
        """The relative uncertainty of an enthalpy that all benches with such cups share."""
        return 0.0

    def with_count(self, count: int) -> Self:  # noqa: ARG002 - of a plan that has portions
        """Return the plan with so many portions, where it has such."""
        return self

    def check(self) -> None:
        """Raise PlanError where the plan could not find what is to be found."""

    def range_mol_dm3(self) -> tuple[float, float] | None:
        """Return the concentrations that the plan can tell apart; None where there is none to find."""
        return None


def volume_of(volume_cm3: float, reagent: str) -> Message:
    """Say a volume of a reagent."""
    return say("amount-volume", volume_cm3=number(volume_cm3), reagent=reagent)


def volume_only(volume_cm3: float) -> Message:
    """Say a volume."""
    return say("amount-volume-only", volume_cm3=number(volume_cm3))


def number(value: float) -> str:
    """Return a quantity as a person writes it: 4 and 2.5, not 4.0."""
    return f"{value:.2f}".rstrip("0").rstrip(".")


def typed_amount(amount: float, places: int | None) -> str:
    """Return an amount with the decimals with which it was typed."""
    return number(amount) if places is None else f"{amount:.{places}f}"
