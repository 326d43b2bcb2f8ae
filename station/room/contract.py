"""What a room tells its screens, as typed dictionaries: the tiles of the board, and the class result."""

from typing import Literal, NotRequired

from typing_extensions import TypedDict

from station.practical.kinds.contract import Refused
from station.practical.kinds.kind import Method
from station.practical.state import Step
from station.words import Message

# The board. Ages and waits are seconds; `waits_s` and `usual_s` are bench time.

NeedNumber = Literal[0, 1, 2, 3]
"""0: fine, 1: a note, 2: have a look, 3: needs help."""

ReasonCode = Literal[
    "called",
    "trouble",
    "unreadable",
    "silent",
    "probe_lost",
    "bad_readings",
    "not_begun",
    "stuck",
    "slow",
    "paused",
    "behind",
    "question",
    "many_aside",
    "set_aside",
    "odd_curve",
]


class ReasonShown(TypedDict):
    """Why a bench needs help; `seconds`, `text` and `count` where the code has one."""

    need: NeedNumber
    code: ReasonCode
    seconds: NotRequired[float]
    text: NotRequired[str]
    count: NotRequired[int]


class TileQuestion(TypedDict):
    """A question that the bench's students have not answered yet."""

    id: str
    text: Message


class TileRepeat(TypedDict):
    """A repeat, so that it can be set aside or counted again."""

    repeat: int
    status: Literal["running", "ended", "set aside"]
    restorable: bool


class Tile(TypedDict):
    """How a bench stands. `age_s`: how long ago anything was heard, when the room told this; null: never.

    `place` counts from 1, row by row. `waits_s` is how long it has been at its step when the room told this, and grows
    by `speed` bench seconds a second. `held`: paused by staff. `called`: it asks for the teacher. `curve` holds what
    there is of the newest repeat's curve, `curve_to` how far it goes when all is in (null: not known).
    """

    bench: str
    place: int
    name: str
    group: str | None
    plan: Message | None
    state: Step | Literal["unknown"]
    repeat: int
    repeats_planned: int
    portion: int
    portions_planned: int
    progress: float
    temperature_c: float | None
    age_s: float | None
    waits_s: float
    usual_s: int | None
    speed: float
    held: bool
    called: bool
    curve: list[tuple[float, float]]
    curve_to: float | None
    questions: list[TileQuestion]
    probe: Literal["ok", "failing", "lost", "none", "typed"]
    silent: bool
    results_shown: bool
    repeats: list[TileRepeat]
    need: NeedNumber
    reasons: list[ReasonShown]


# The class result. Nothing is left out because it looks odd.


class BenchValue(TypedDict):
    """One bench's result by one method with its 95 % interval; `u_shared` is the part that all benches share."""

    bench: str
    value: float
    u: float
    u_shared: float
    low: float
    high: float


class PooledShown(TypedDict):
    """The class's mean with its 95 % interval: `between` is how far benches differ beyond their own ± (`own_u`)."""

    count: int
    mean: float
    u: float
    low: float
    high: float
    between: float
    sd: float
    own_u: float
    p: float
    i2_percent: float
    u_shared: float


class Quantity(TypedDict):
    """One quantity by one method; `silent` are benches that have none, `without` is the mean without odd ones.

    It is written with `places` decimals at the most, and where it is `signed`, with its sign.
    """

    quantity: str
    name: Message
    method: Method
    unit: str
    places: int
    signed: bool
    values: list[BenchValue]
    pooled: PooledShown | None
    silent: list[str]
    without: NotRequired[PooledShown | None]


class SetAside(TypedDict):
    """A repeat that does not count, and why."""

    repeat: int
    reason: str


class ClassBench(TypedDict):
    """A bench in the class result; benches of another plan than most are not pooled.

    `clash`: its repeats disagree, so that its mean has no usable interval. `open`: questions that nobody answered.
    """

    bench: str
    name: str
    group: str | None
    repeats: int
    pooled: bool
    refused: Refused
    notes: list[Message]
    aside: list[SetAside]
    clash: bool
    open: list[Message]


class ClassPoint(TypedDict):
    """One portion of the class's mean curve: change since the start, its scatter, and of how many benches."""

    portion: int
    volume_cm3: float
    change_c: float
    sd_c: float | None
    count: int


class Odd(TypedDict):
    """A bench that stands off the others, and what in its own record may be behind it."""

    bench: str
    quantity: str
    method: Method
    text: Message
    reasons: list[Message]


class ClassResult(TypedDict):
    """The class result: its `answer` to what the plan `asks`, in `plain` words why and how far, in `words` the rest."""

    asks: str | None
    answer: Message | None
    plain: list[Message]

    benches: list[ClassBench]
    quantities: list[Quantity]
    curve: list[ClassPoint]
    anomalies: list[Odd]
    other_plans: list[str]
    words: list[Message]
