"""Results and predictions as answers have them: what those of all kinds have. A kind's own are in its package.

A method that refuses is null, and `refused` says why. `u_…` is one standard uncertainty, `interval_95_…` the 95 %
interval, units in the names.
"""

from typing import NotRequired

from typing_extensions import TypedDict

from station.practical.checks.correction import ProbeShown
from station.practical.safety import Problem, Warned
from station.words import Message


class Refused(TypedDict, total=False):
    """Why a method gives nothing; `curve`: why a prediction has no curve."""

    straight_lines: Message
    heat_balance: Message
    curve: Message


class WorkedStep(TypedDict):
    """One line of a calculation: in words, in symbols, with the numbers put in, and its result."""

    text: Message
    formula: str
    working: str
    value: float
    u: float
    unit: str


class OwnStep(TypedDict):
    """One line of the students' calculation: `written` is its result as a school writes it, with a dot."""

    text: Message
    formula: str
    working: str
    written: str
    unit: str


class Steps(TypedDict):
    """The calculation by each method; empty where it refuses."""

    straight_lines: list[WorkedStep]
    heat_balance: list[WorkedStep]


class Accepted(TypedDict):
    """The value that books give."""

    enthalpy_kj_mol: float
    u: float
    text: Message
    source: str


class Unanswered(TypedDict):
    """A question about a portion (0: the start) that nobody has answered: its reading is left out."""

    portion: int
    code: str


class FoundBy(TypedDict):
    """What is said beside the numbers; `questions` of a repeat alone."""

    refused: Refused
    notes: list[Message]
    steps: NotRequired[Steps]
    accepted: NotRequired[Accepted | None]
    probe: NotRequired[ProbeShown]
    questions: NotRequired[list[Unanswered]]


class JudgedPortion(TypedDict):
    """When (seconds after the press) and what the students read, and when and what the station would have."""

    portion: int
    own_s: float | None
    own_c: float | None
    station_s: float | None
    station_c: float | None


class JudgedRepeat(TypedDict):
    """The portions of one repeat."""

    repeat: int
    portions: list[JudgedPortion]


class Judged(TypedDict):
    """How long it took, and the end-point that straight lines made of it."""

    minutes: float
    end_point_cm3: float | None


class Judgement(TypedDict):
    """Own moments against the station's, and both against the best value: what the difference cost.

    `best_cm3` is by the heat balance of the whole traces; the wait at the start is not among those at portions.
    """

    repeats: list[JudgedRepeat]
    own: Judged
    station: Judged
    best_cm3: float | None
    waited_too_long_s: float
    waited_at_start_s: float
    too_early: int
    words: list[Message]


class ResultOf(FoundBy):
    """Results as of an event of the journal; `judgement` where the students read at moments of their own."""

    seq: int
    judgement: NotRequired[Judgement | None]


# What a plan promises.


class AnyPromise(TypedDict):
    """What a prediction of any kind has; `minutes` of each part and in total, `assumed` what it rests on."""

    practical: Message
    start_c: float | None
    enthalpy_kj_mol: float | None
    minutes: dict[str, float]
    refused: Refused
    warnings: list[Warned]
    assumed: list[Message]


class RefusedPlan(TypedDict):
    """Why a plan cannot be a practical."""

    refused_plan: Problem
