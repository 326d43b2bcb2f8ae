"""What a kind of practical does beyond the facts that its plan tells by itself, and the one door to it."""

from collections.abc import Callable, Collection, Iterator, Mapping, Sequence
from dataclasses import dataclass, field, replace
from functools import cache
from importlib import import_module
from typing import Any, Final, Generic, Literal, TypeVar

from station.analysis.settle.detector import Verdict
from station.practical.course import MeanPoint
from station.practical.kinds import KINDS
from station.practical.kinds.contract import OwnStep
from station.practical.plan import Plan
from station.practical.state import Clocked, OwnReading, State, Step
from station.words import Message, say

Json = dict[str, Any]


@dataclass(frozen=True)
class Quantity:
    """A quantity that results are of: its key there, its name, its unit, the key of its 95 % interval where it has one.

    `signed`: it goes up or down, and is written with its sign. `places`: decimals at the most. `asked_only`: the class
    is told of it only where the plan asks for it.
    """

    key: str
    name: Message
    unit: str
    interval: str | None = None
    signed: bool = False
    places: int = 2
    asked_only: bool = False


END_POINT: Final = Quantity("end_point_cm3", say("quantity-end-point"), "cm³", "interval_95_cm3")
ENTHALPY: Final = Quantity("enthalpy_kj_mol", say("quantity-enthalpy"), "kJ/mol", signed=True)
Method = Literal["heat_balance", "straight_lines"]
METHOD_NAMES: Final[Mapping[Method, Message]] = {
    "straight_lines": say("method-straight-lines"),
    "heat_balance": say("method-heat-balance"),
}
AnyPlan = TypeVar("AnyPlan", bound=Plan)
Noticed = tuple[tuple[int, str], ...]
"""Portion numbers, each with the code of a question."""


@dataclass(frozen=True)
class Hindsight:
    """What all readings of a repeat say together: what to ask about, and which questions they have answered.

    `explained`: questions that nobody need ask where there is nobody to answer: all as planned is as likely.
    """

    noticed: Noticed = ()
    answered: frozenset[tuple[int, str]] = frozenset()
    explained: frozenset[tuple[int, str]] = frozenset()


Point = tuple[int, float, float]
"""A reading by hand: portion, total added in cm³, temperature in °C."""


@dataclass(frozen=True)
class Instruction:
    """What to do. `act` is what the button means now (None: nothing to press), `label` its words."""

    code: str
    text: Message
    detail: Message | None = None
    act: str | None = None
    portion: int | None = None
    label: Message | None = None


@dataclass(frozen=True)
class Mixture:
    """What one mixing puts together: heat capacities in J/K, of all and of what is added; the amount that reacts.

    `u_relative` is of all; `dissolves`: a solid; `why`: why nobody knows what a mole of it is.
    """

    all_j_k: float
    u_relative: float
    added_j_k: float
    amount_mol: float | None
    enthalpy_kj_mol: float | None = None
    dissolves: bool = False
    why: Message | None = None

    def with_enthalpy(self, enthalpy_kj_mol: float) -> "Mixture":
        """Return the same with the enthalpy per mole of what reacts."""
        return replace(self, enthalpy_kj_mol=enthalpy_kj_mol)


@dataclass(frozen=True)
class Table:
    """The table that a record's spreadsheet opens with: its columns, by their names in a CSV and in words, and rows.

    Its graph has the first column across and the column `up` (from 0) up.
    """

    columns: tuple[tuple[str, Message], ...]
    rows: tuple[tuple[float | None, ...], ...]
    up: int


Prompts = Mapping[Step, Callable[[State], Instruction]]


def _nothing(*_: object) -> Noticed:
    return ()


def _newest(course: Sequence[Clocked]) -> Clocked:
    return course[-1]


def _no_hindsight(*_: object) -> Hindsight:
    return Hindsight()


def _no_mixture(_: Plan) -> None:
    return None


@dataclass(frozen=True)
class Kind(Generic[AnyPlan]):
    """What a kind of practical does; its results and its prediction, which load numpy, are parts of its package.

    `prompts`: what to do at the start, when to pour and while the temperature settles; `own_prompts`: when to pour,
    where the students decide that. `verdict` judges the trace since the newest portion; the codes of questions are
    `noticed_...` in it. `promise`: the blocks of lines in which a terminal shows a prediction, first what is mixed,
    then curve and methods where these can be told. `class_quantities`: what the class result is of, the most important
    first, each with its methods; `class_curve`: whether the class has a mean curve over the volume; `asks`: which of
    them answers the question that a plan puts. `own_working`: the lines of the calculation from the students' own
    reading, the mean readings and the thermometer's division in °C. `start_verdict` judges the start where the usual
    one (a steady temperature) does not do; `typed_prompts` are asked with an ordinary thermometer;
    `clocked_reading` is the one that counts of what was typed by the clock since all is in. `table` is
    what a record's spreadsheet opens with where that is not temperature by volume and repeat. `mixture`: what is
    put together where all is added at once and its heat is known, for a virtual cup.
    one (a steady temperature) does not do; `typed_prompts` are asked with an ordinary thermometer. `mixture`: what is
    put together where all is added at once and its heat is known, for a virtual cup. `hindsight` is what
    readings say together, from these, the u of one, the temperature of what is added where it was measured, and the
    portions that are in doubt already, and whether they were typed.
    """

    prompts: Prompts
    own_prompts: Prompts
    verdict: Callable[[AnyPlan, State, float], Verdict]
    promise: Callable[[AnyPlan, Json], Iterator[list[str]]]
    class_quantities: tuple[tuple[Quantity, tuple[Method, ...]], ...]
    class_curve: bool
    asks: Callable[[AnyPlan], Quantity]
    own_working: Callable[[AnyPlan, OwnReading, list[MeanPoint], float], list[OwnStep]]
    mixture: Callable[[AnyPlan], Mixture | None] = _no_mixture
    start_verdict: Callable[[AnyPlan, State, float], Verdict] | None = None
    typed_prompts: Prompts = field(default_factory=dict)
    clocked_reading: Callable[[Sequence[Clocked]], Clocked] = _newest
    table: Callable[[AnyPlan, State], Table] | None = None
    noticed_while_settling: Callable[[AnyPlan, State, float], Noticed] = _nothing
    noticed_in_reading: Callable[[AnyPlan, State, Verdict], Noticed] = _nothing
    hindsight: Callable[
        [AnyPlan, Sequence[Point], float, tuple[float, float] | None, Collection[int], bool], Hindsight
    ] = _no_hindsight


def part_of(code: str, part: str) -> Any:
    """Return a part of the package of the kind of this code: `kind`, `results` or `prediction`."""
    return import_module(f"station.practical.kinds.{code}.{part}")


def kind_named(code: str) -> Kind[Any]:
    """Return the kind of this code (`kinds.KINDS`)."""
    kind: Kind[Any] = part_of(code, "kind").KIND
    return kind


def kind_of(plan: AnyPlan) -> Kind[AnyPlan]:
    """Return the plan's kind."""
    return kind_named(plan.kind)


@cache
def quantities() -> Mapping[str, Quantity]:
    """Return the quantities that results of any kind are of, by their keys."""
    return {each.key: each for code in KINDS for each, _ in kind_named(code).class_quantities}
