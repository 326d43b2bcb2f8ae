"""What screens are told of a bench, as typed dictionaries: the view without what the server adds, and the checks."""

from typing import Any, Literal, NotRequired

from typing_extensions import TypedDict

from station.practical.checks.correction import Corrected, ProbeShown
from station.practical.course import MeanPoint
from station.practical.events.bench import CheckKind
from station.practical.guide import Guide
from station.practical.kinds import PlanValues
from station.practical.kinds.contract import OwnStep
from station.practical.kinds.kind import Instruction
from station.practical.questions import QuestionShown
from station.practical.state import Clocked, Note, OwnReading, Portion, ProbeStanding, Sample, Step

Pair = tuple[float, float | None]
"""A sample: time / s and temperature / °C; None is a bad one."""


class Band(TypedDict):
    """Between which temperatures the trace has to stay, and for how many seconds, to be settled.

    `centre_c` is the middle, `half_c` half the height.
    """

    centre_c: float
    half_c: float
    span_s: float


class Settle(TypedDict):
    """The wait for the temperature: seconds left, as far as that can be told, and how sure the station is, 0 to 1.

    `band` is null while it is not known, and where nothing has to settle.
    """

    left_s: float | None
    sure: float
    band: Band | None


class LastGood(TypedDict):
    """The newest good sample."""

    temperature_c: float
    time_s: float


class ClockShown(TypedDict):
    """When an ordinary thermometer is to be read: every so many seconds; times count from the start of the repeat.

    `next_s` is the mark that the next typed temperature belongs to; it may be a little past.
    """

    every_s: float
    now_s: float
    next_s: float


class Live(TypedDict):
    """What changes with every sample; `clock` where an ordinary thermometer is read by the clock."""

    settle: Settle | None
    live: Sample | None
    last_good: LastGood | None
    clock: ClockShown | None
    probe: ProbeStanding


class ReadingShown(TypedDict):
    """The temperature put down for a portion (0: the start); `volume_cm3` is the total added up to it.

    `typed`: read off an ordinary thermometer. `time_s` counts from the start of its repeat.
    """

    portion: int
    volume_cm3: float
    temperature_c: float | None
    u_c: float | None
    settled: bool
    unsure: bool
    reason: str
    typed: bool
    time_s: float


class RepeatRows(TypedDict):
    """Portions and readings of a repeat; their times count from its start."""

    portions: list[Portion]
    readings: list[ReadingShown]


class RepeatShown(RepeatRows):
    """One pass from fresh acid; `restorable`: it was set aside and can count again.

    `confirmed`: portions of which a person said the volume after they were in. `clocked`: temperatures typed by the
    clock.
    """

    repeat: int
    status: Literal["running", "ended", "set aside"]
    reason: str | None
    restorable: bool
    started_s: float
    cup: int
    confirmed: NotRequired[list[int]]
    clocked: NotRequired[list[Clocked]]


class ResultsRule(TypedDict):
    """Whether results may be seen yet, and what they wait for.

    `prepared_mol_dm3` is what the bottle was made up to, once staff have told it with the results.
    """

    rule: Literal["at once", "after own reading", "when shown"]
    shown: bool
    waits_for: Literal["end", "own reading", "staff"] | None
    prepared_mol_dm3: float | None


class ProbeReads(TypedDict):
    """The station's probe measures."""

    kind: Literal["probe"]


class TypedIn(TypedDict):
    """A thermometer is read and typed; `division_c`, of a digital one its last digit, is null until it is told."""

    kind: Literal["typed"]
    division_c: float | None
    digital: bool


class AdoptedShown(TypedDict):
    """Another group's readings, shown in place of the own ones: what they are called, and how many repeats."""

    label: str
    repeats: int


class RepeatsShown(TypedDict):
    """The repeats that screens show, and their mean curve."""

    repeats: list[RepeatShown]
    mean: list[MeanPoint]


class Reaction(TypedDict):
    """A neutralisation in formulae, and the moles of acid for one of alkali."""

    equation: str
    acid_per_alkali: float


class WithoutRepeats(TypedDict):
    """What the state alone says without the repeats, whatever the time is.

    `repeat_of_planned` is the one to come where the newest was set aside; `cup`: which of the plan's cups is worked on
    or comes next, where these differ. `silent`: whether staff silenced the buzzer;
    null: as in the settings.
    """

    plan: PlanValues
    state: Step
    instruction: Instruction
    other_acts: list[str]
    repeat: int
    repeat_of_planned: int
    repeats_planned: int
    cup: int
    portion: int
    portions_planned: int
    total_added_cm3: float
    alkali_temperature_c: float | None
    ended_early: bool
    turned: NotRequired[bool]
    silent: bool | None
    results: ResultsRule
    own_reading: OwnReading | None
    sketch: tuple[tuple[float, float], ...] | None
    own_working: list[OwnStep]
    group: str | None
    notes: list[Note]
    thermometer: ProbeReads | TypedIn
    adopted: AdoptedShown | None
    questions: list[QuestionShown]
    corrections: list[Corrected]
    guide: Guide
    reaction: Reaction | None


class Still(WithoutRepeats, RepeatsShown):
    """What the state alone says, whatever the time is."""


class View(Still, Live):
    """Everything that a screen needs except the trace and what the server adds."""


class Trace(TypedDict):
    """Samples of a repeat: of the newest since its newest pour, in bench time; else the whole, since its start."""

    repeat: int
    samples: list[Pair]


# Checks of probes and of cups, and the register of probes.


Phase = Literal[
    "prepare",
    "settling",
    "comparing",
    "air",
    "plunge",
    "dipped",
    "added",
    "fill",
    "warm",
    "pour",
    "mixed",
    "weigh",
    "found",
]
"""Where a check stands."""

RestLacks = Literal["", "no_reading", "too_short", "moving", "scattering", "far"]
"""What keeps the temperature from being at rest; `far`: at rest, and too far from where it should be."""


class CheckLive(TypedDict):
    """The newest reading, as the probe says it, without any correction."""

    time_s: float
    temperature_c: float | None


class AtRest(TypedDict):
    """Whether the temperature stands still, and at what."""

    steady: bool
    temperature_c: float | None
    u_c: float | None


class CheckShown(TypedDict):
    """The check under way; temperatures are what the probe says.

    `why`: what the rest waits for. `known_c` is what the temperature is known to be, `points` are a comparison's,
    `missing` says what keeps it from an answer, `found` what it found, by name.
    """

    check: CheckKind
    probe_id: str | None
    values: dict[str, Any]
    phase: Phase
    why: RestLacks
    left_s: float | None
    live: CheckLive | None
    rest: AtRest
    moving_c_min: float | None
    known_c: float | None
    u_known_c: float | None
    points: list[dict[str, float]]
    missing: str | None
    found: dict[str, Any] | None


class Aged(TypedDict):
    """The day of a check, and its age in days where both clocks were set."""

    day: str | None
    clock_set: bool
    age_days: int | None


class CheckedShown(Aged):
    """A saved check; `used`: the correction in use is made of it."""

    number: int
    check: CheckKind
    withdrawn: bool
    used: bool
    values: dict[str, Any]


class RegisteredProbe(TypedDict):
    """A probe of the register; `against` speaks against a genuine chip, null: no good conversion was seen yet."""

    probe_id: str
    at_work: bool
    against: list[str] | None
    samples: int
    bad: dict[str, int]
    checks: list[CheckedShown]


class CupShown(Aged):
    """A cup that was tested."""

    label: str
    values: dict[str, Any]


class ChecksShown(TypedDict):
    """The probe register and the check under way, as their page shows them."""

    probe_id: str | None
    has_probe: bool
    under_way: bool
    check: CheckShown | None
    in_use: ProbeShown | None
    probes: list[RegisteredProbe]
    cups: list[CupShown]
