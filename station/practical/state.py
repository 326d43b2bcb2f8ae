"""The state of a bench: a fold over events. Nothing is kept that the events do not say."""

from collections.abc import Sequence
from dataclasses import dataclass, field, replace
from enum import StrEnum
from typing import Literal

from station.analysis.settle.lags import STEEL_TUBE, UNKNOWN_CUP, CupHabits, ProbeLags
from station.practical.checks.register import InUse, Probes
from station.practical.course import MeanPoint, Point, by_volume
from station.practical.events.cup import PlacedLine, SetUpStep
from station.practical.growing import Keys
from station.practical.kinds import DEFAULT, ready_plan
from station.practical.plan import Plan

TYPED = "typed"
"""Why a reading is what it is: somebody typed it."""

SLIP = "slip"
"""The code of the question whether a typed reading is right: its portion's volume is not in doubt."""
STANDS, TYPED_AGAIN, FITS = "yes", "typed again", "readings fit"
"""Answers to it after which the reading counts: it is right, another was typed, or the later ones agree with it."""
DOUBTS_VOLUME = frozenset({"no_change", "double", "volume"})
LEAVES_OUT = DOUBTS_VOLUME | {"sudden_fall", "probe_out", SLIP}
"""Codes of questions that leave a reading out of the lines until they are answered, and of those about what went in."""


class Step(StrEnum):
    """Where the practical stands."""

    READY = "ready"
    ALKALI = "alkali"
    START = "start"
    POUR = "pour"
    SETTLE = "settle"
    RINSE = "rinse"
    PAUSED = "paused"
    DONE = "done"


ProbeStanding = Literal["ok", "failing", "lost", "none"]
"""`none`: an ordinary thermometer is used on this bench."""


@dataclass(frozen=True)
class Sample:
    """One conversion: bench time in s and temperature in °C; None is a bad reading, kept with its time.

    `correction_c` is in the temperature: what was added to what the probe said.
    """

    time_s: float
    temperature_c: float | None
    bad: str | None = None
    correction_c: float = 0.0

    @property
    def said_c(self) -> float | None:
        """What the probe itself said."""
        return None if self.temperature_c is None else self.temperature_c - self.correction_c


@dataclass(frozen=True)
class Portion:
    """A portion that is in the cup; `time_s` is the moment of the press.

    `mass_g` is what a balance said of a solid, `places` with how many decimals the amount was typed.
    """

    portion: int
    time_s: float
    volume_cm3: float
    early: bool = False
    unsure: bool = False
    unsure_reason: str | None = None
    mass_g: float | None = None
    places: int | None = None


@dataclass(frozen=True)
class Clocked:
    """A temperature read off an ordinary thermometer `at_s` seconds into its repeat, when the clock said so."""

    at_s: float
    temperature_c: float
    division_c: float


@dataclass(frozen=True)
class Reading:
    """The temperature put down for a portion (0: the start)."""

    portion: int
    temperature_c: float | None
    u_c: float | None
    settled: bool
    reason: str = ""
    time_s: float = 0.0
    outcome: str = ""

    @property
    def typed(self) -> bool:
        """Whether it was read off an ordinary thermometer and typed."""
        return self.reason == TYPED

    @property
    def broken_off(self) -> bool:
        """Whether it is as it was because nobody waited for it: an act came before the station's wait had ended."""
        return not self.settled and not self.outcome


@dataclass(frozen=True)
class Repeat:
    """One pass from fresh acid: portions, readings and the whole trace.

    `corrected` holds the corrections that were in use, in order (None: none): more than one where the probe changed.
    `confirmed`: portions of which a person said the volume after they were in. `clocked` are temperatures typed by the
    clock, in its order. `cup`: which of the plan's cups it is, where these differ. `asked` are the questions that wait
    for an answer (portion, 0: the start, and code); `misread` the portions whose typed reading nobody stands by.
    """

    repeat: int
    begun_s: float
    status: Literal["running", "ended", "set aside"] = "running"
    reason: str | None = None
    portions: tuple[Portion, ...] = ()
    readings: tuple[Reading, ...] = ()
    samples: Sequence[Sample] = ()
    corrected: tuple[InUse | None, ...] = ()
    confirmed: frozenset[int] = frozenset()
    clocked: tuple[Clocked, ...] = ()
    cup: int = 1
    asked: tuple[tuple[int, str], ...] = ()
    misread: frozenset[int] = frozenset()

    @property
    def total_cm3(self) -> float:
        """Alkali added so far, in cm³."""
        return sum(portion.volume_cm3 for portion in self.portions)

    def added_cm3(self, portion: int) -> float:
        """Alkali added up to and with this portion, in cm³."""
        return sum(each.volume_cm3 for each in self.portions if each.portion <= portion)

    def unsure(self, portion: int) -> bool:
        """Whether the reading after this portion (0: at the start) is to be left out of the lines."""
        asked = any(of == portion and code in LEAVES_OUT for of, code in self.asked)
        return asked or self.unsure_volume(portion) or portion in self.misread

    @property
    def any_unsure(self) -> bool:
        """Whether any of its readings is to be left out."""
        return any(self.unsure(portion) for portion in (0, *(each.portion for each in self.portions)))

    def unsure_volume(self, portion: int) -> bool:
        """Whether nobody knows what went in: somebody said so, or was asked and has not answered."""
        asked = any(of == portion and code in DOUBTS_VOLUME for of, code in self.asked)
        return asked or any(each.unsure for each in self.portions if each.portion == portion)

    @property
    def counts(self) -> bool:
        """Whether the repeat's readings go into mean and result."""
        return self.status != "set aside"

    @property
    def restorable(self) -> bool:
        """Whether it was set aside and has readings that could count again."""
        return not self.counts and any(each.temperature_c is not None for each in self.readings)

    @property
    def points(self) -> tuple[Point, ...]:
        """The readings that go into the lines, by portion number."""
        return tuple(
            Point(each.portion, self.added_cm3(each.portion), each.temperature_c)
            for each in sorted(self.readings, key=lambda each: each.portion)
            if each.temperature_c is not None and not self.unsure(each.portion)
        )

    @property
    def course(self) -> list[tuple[float, float]]:
        """Total added in cm³ and temperature in °C of each of these, by volume."""
        return by_volume(self.points)


@dataclass(frozen=True)
class Asked:
    """A question about a portion, and its answer once there is one."""

    repeat: int
    portion: int
    code: str
    answer: str | None = None

    @property
    def question(self) -> str:
        """The id that an answer names."""
        return f"{self.repeat}-{self.portion}-{self.code}"


@dataclass(frozen=True)
class OwnReading:
    """What the students read off their own lines; all None when they could not read it, for this reason."""

    end_point_cm3: float | None
    change_c: float | None
    before: PlacedLine | None
    after: PlacedLine | None
    time_s: float
    reason: str | None = None


@dataclass(frozen=True)
class Note:
    """What the students noted; `repeat` and `portion` say what about."""

    id: int
    text: str
    repeat: int | None
    portion: int | None
    time_s: float
    withdrawn: bool = False


@dataclass(frozen=True)
class Adopted:
    """Another group's readings, and where the practical stood when they were taken over."""

    label: str
    repeats: tuple[Repeat, ...]
    step_before: Step


@dataclass(frozen=True)
class Gate:
    """What the plausibility gate remembers: the last good sample, and the last that was refused as a jump."""

    good: Sample | None = None
    candidate: Sample | None = None


@dataclass(frozen=True)
class State:
    """All that the next step depends on."""

    plan: Plan = field(default_factory=lambda: ready_plan(DEFAULT).without_prepared())
    chosen: bool = False
    step: Step = Step.READY
    step_since_s: float = 0.0
    resume_to: Step = Step.READY
    paused_by: str | None = None
    repeats: tuple[Repeat, ...] = ()
    prompted: int | None = None
    alkali_c: float | None = None
    alkali_u_c: float | None = None
    alkali_typed: bool = False
    dip_since_s: float = 0.0
    recent: tuple[Sample, ...] = ()
    gate: Gate = Gate()
    bad_in_a_row: int = 0
    probe: ProbeStanding = "ok"
    keys: Keys = field(default_factory=Keys)
    ended_early: bool = False
    asked: tuple[Asked, ...] = ()
    silent: bool | None = None
    name: str | None = None
    lags: ProbeLags = STEEL_TUBE
    habits: CupHabits = UNKNOWN_CUP
    plan_by: str | None = None
    has_probe: bool = True
    thermometer_division_c: float | None = None
    thermometer_digital: bool = False
    own_reading: OwnReading | None = None
    sketch: tuple[tuple[float, float], ...] | None = None
    shown: bool | None = None
    prepared_mol_dm3: float | None = None
    group: str | None = None
    notes: tuple[Note, ...] = ()
    adopted: Adopted | None = None
    probes: Probes = field(default_factory=Probes)
    set_up_asked: bool = False
    set_up_over: frozenset[SetUpStep] = frozenset()
    practice: bool = False
    called_s: float | None = None

    @property
    def held(self) -> bool:
        """Whether staff paused the practical: only they let it go on."""
        return self.step is Step.PAUSED and self.paused_by is not None

    @property
    def current(self) -> Repeat | None:
        """The newest repeat, if one was begun."""
        return self.repeats[-1] if self.repeats else None

    @property
    def running(self) -> Repeat | None:
        """The repeat under way, if one is."""
        repeat = self.current
        return repeat if repeat is not None and repeat.status == "running" else None

    @property
    def in_cup(self) -> tuple[Portion, ...]:
        """The portions of the newest repeat; none where it was set aside, for fresh acid comes next."""
        return self.current.portions if self.current is not None and self.current.counts else ()

    @property
    def poured(self) -> int:
        """How many portions are in the cup."""
        return len(self.in_cup)

    @property
    def set_up_step(self) -> SetUpStep | None:
        """The step of setting the cup up that is next; None where such steps are not asked for, or not now."""
        steps: tuple[SetUpStep, ...] = ()
        if self.set_up_asked and self.step is Step.READY:
            takes_alkali = self.plan.portion_cm3 > 0.0 and self.alkali_c is None
            steps = ("alkali", "probe", "fill") if takes_alkali else ("probe", "fill")
            if self.plan.sketches and self.sketch is None:
                # Before anything is wet.
                steps = ("sketch", *steps)
        elif self.set_up_asked and self.step is Step.RINSE:
            steps = ("empty", "wash", "fill")
        return next((each for each in steps if each not in self.set_up_over), None)

    @property
    def repeat_of_planned(self) -> int:
        """Which of the planned repeats the newest one is; the one to come where the newest was set aside."""
        own = sum(each.counts for each in self.repeats)
        return own if self.current is None or self.current.counts else own + 1

    @property
    def worked_on(self) -> tuple[Repeat, ...]:
        """The repeats that curve and results are of: the own ones, or those taken over from another group."""
        return self.repeats if self.adopted is None else self.adopted.repeats

    @property
    def counted(self) -> tuple[Repeat, ...]:
        """Repeats worked on that were not set aside."""
        return tuple(repeat for repeat in self.worked_on if repeat.counts)

    @property
    def typed(self) -> bool:
        """Whether temperatures are typed from an ordinary thermometer."""
        return not self.has_probe or self.thermometer_division_c is not None

    @property
    def station_reads(self) -> bool:
        """Whether the station puts readings down by itself."""
        return not (self.typed or self.plan.own_judgement)

    @property
    def results_shown(self) -> bool:
        """Whether results may be seen: as the plan rules, unless staff ruled otherwise.

        An own reading counts only while there is what it was read off. It is of the repeats before it: it ends with
        the next repeat's begin, and with another set of readings.
        """
        if self.shown is not None:
            return self.shown
        if self.plan.results == "after own reading":
            return self.own_reading is not None and (
                self.past_turn or (self.own_reading.reason is not None and self.has_curve)
            )
        return self.plan.results == "at once"

    @property
    def cup(self) -> int:
        """Which of the plan's cups is worked on, or comes next."""
        done = [each.cup for each in self.repeats if each.counts]
        return self.plan.next_cup(done) if self.running is None else self.running.cup

    @property
    def cup_plan(self) -> Plan:
        """The plan of that cup."""
        return self.plan.of_cup(self.cup)

    @property
    def complete(self) -> bool:
        """Whether all that is planned has been done, or is under way."""
        return self.plan.is_complete([each.cup for each in self.counted])

    @property
    def mean(self) -> list[MeanPoint]:
        """The mean curve of the repeats that count."""
        return self.plan.mean_curve(self.counted, self.alkali_c)

    @property
    def has_curve(self) -> bool:
        """Whether a repeat that counts has ended with readings to look at."""
        return any(
            each.status == "ended" and sum(reading.temperature_c is not None for reading in each.readings) > 1
            for each in self.counted
        )

    @property
    def turned(self) -> bool:
        """Whether the repeats that count, ended or under way, go past a turning point; True where there is none."""
        return not self.plan.has_turn or self.plan.turned(self.counted, self.alkali_c)

    @property
    def past_turn(self) -> bool:
        """Whether one of these goes past the turning point; what is mixed once has none, and is over once read."""
        if not self.plan.has_turn:
            return self.has_curve
        return self.plan.turned([each for each in self.counted if each.status == "ended"], self.alkali_c)

    def with_repeat(self, changed: Repeat) -> "State":
        """Return the state with this repeat in place of the one of the same number."""
        kept = tuple(changed if each.repeat == changed.repeat else each for each in self.repeats)
        return replace(self, repeats=kept)
