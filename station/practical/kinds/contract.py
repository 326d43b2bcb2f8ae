"""Results and predictions as answers have them: what each kind of practical finds, and what a plan of it promises.

A method that refuses is null, and `refused` says why. `u_…` is one standard uncertainty, `interval_95_…` the 95 %
interval, units in the names.
"""

from typing import Literal, NotRequired

from pydantic import ConfigDict, with_config
from typing_extensions import TypedDict

from station.practical.checks.correction import ProbeShown
from station.practical.kinds.portions.plan import AcidPromised
from station.practical.safety import Problem, Warned
from station.words import Message

# What both kinds have.


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


class FoundBy(TypedDict):
    """What is said beside the numbers."""

    refused: Refused
    notes: list[Message]
    steps: NotRequired[Steps]
    accepted: NotRequired[Accepted | None]
    probe: NotRequired[ProbeShown]


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


# Portions of an alkali to an acid.


class Arm(TypedDict):
    """T = intercept_c + slope_c_cm3 · V, fitted to the rows of `mean` that `points` names."""

    slope_c_cm3: float
    intercept_c: float
    points: list[int]


class School(TypedDict):
    """The ± that a school gives a temperature: half a division."""

    convention: Message
    plus_minus_c: float


class EndPoint(TypedDict):
    """A volume of alkali."""

    end_point_cm3: float
    u_end_point_cm3: float
    interval_95_cm3: tuple[float, float]


class Crossing(EndPoint):
    """The graph-paper method on the mean readings; its interval knows their scatter only.

    `predicted_bias_cm3`: how far off lines through raw readings are expected to be; negative: too low.
    """

    temperature_c: float
    u_temperature_c: float | None
    label: Message
    rule: Message
    before: Arm
    after: Arm
    left_out: list[int]
    predicted_bias_cm3: NotRequired[float | None]
    school: School | None


class CorrectedCurve(TypedDict):
    """Readings as they would be if every portion warmed the same heat capacity and nothing were lost."""

    volume_cm3: list[float]
    temperature_c: list[float]


class HeatBalance(EndPoint):
    """The fit of the whole trace, or of readings by hand; of the mean it is the mean of the repeats' fits."""

    enthalpy_kj_mol: float | None
    u_enthalpy_kj_mol: float | None
    acid_mol_dm3: float | None
    u_acid_mol_dm3: float | None
    describes_trace: bool
    enthalpy_temperature_c: NotRequired[float | None]
    temperature_c: NotRequired[float | None]
    start_c: NotRequired[float]
    corrected: NotRequired[CorrectedCurve]
    residual_rms_c: NotRequired[float]
    basis: NotRequired[Message]


@with_config(ConfigDict(extra="allow"))
class PortionsRepeat(FoundBy):
    """One repeat; beside these it has the members of its own straight lines, as older pages and files read them."""

    repeat: int
    straight_lines: Crossing | None
    heat_balance: HeatBalance | None


class ResultOf(FoundBy):
    """Results as of an event of the journal; `judgement` where the students read at moments of their own."""

    seq: int
    judgement: NotRequired[Judgement | None]


class PortionsResult(ResultOf):
    """The mean of the repeats, and each repeat."""

    straight_lines: Crossing | None
    heat_balance: HeatBalance | None
    repeats: list[PortionsRepeat]


# One mixing at one marked moment.


class Change(TypedDict):
    """Change of temperature at the moment of mixing, heat given out (negative: taken in), enthalpy per mole.

    The enthalpy is null where the amount that reacts is not known; `enthalpy_of` says of what a mole is meant.
    """

    change_c: float
    u_change_c: float
    interval_95_c: tuple[float, float]
    heat_j: float
    u_heat_j: float
    enthalpy_kj_mol: float | None
    u_enthalpy_kj_mol: float | None
    enthalpy_of: Message | None


class Stretch(TypedDict):
    """A straight line over time, T = at_mixing_c + slope_c_s · (t - moment of mixing).

    It goes through the samples from `begin_s` to `end_s`; times since the repeat's start.
    """

    begin_s: float
    end_s: float
    slope_c_s: float
    at_mixing_c: float
    u_at_mixing_c: float


class Extended(Change):
    """One repeat's lines, extended to the moment of mixing.

    `predicted_bias_c`: how far off this cup's lines are expected to be, by the heat balance.
    """

    mixed_at_s: float
    label: Message
    rule: Message
    before: Stretch
    after: Stretch
    predicted_bias_c: NotRequired[float | None]


class HeatOnce(Change):
    """The fit of the whole trace."""

    describes_trace: bool
    interval_95_j: tuple[float, float]
    residual_rms_c: float


class ChangeMean(Change):
    """The mean over the repeats; `describes_trace` of the heat balance alone."""

    describes_trace: NotRequired[bool]


@with_config(ConfigDict(extra="allow"))
class OnceRepeat(FoundBy):
    """One repeat; beside these it has the members of its own straight lines, as older pages and files read them."""

    repeat: int
    straight_lines: Extended | None
    heat_balance: HeatOnce | None


class OnceResult(ResultOf):
    """Means over the repeats, and each repeat."""

    straight_lines: ChangeMean | None
    heat_balance: ChangeMean | None
    repeats: list[OnceRepeat]


Result = PortionsResult | OnceResult

# What a plan promises.


class LinesPromised(TypedDict):
    """How far off the end-point will be and how well it will be known, of one repeat and of the mean.

    `refused_share`: in how many of the drawn repeats the lines refuse.
    """

    bias_cm3: float
    u_end_point_cm3: float
    u_mean_cm3: float
    refused_share: NotRequired[float]


class HeatPromised(LinesPromised):
    """Concentration and enthalpy as well."""

    u_acid_mol_dm3: float
    u_enthalpy_kj_mol: float


class MethodsPromised(TypedDict):
    """What both methods give; `step_c` is the smallest step of the thermometer."""

    step_c: NotRequired[float]
    straight_lines: LinesPromised | None
    heat_balance: HeatPromised | None
    refused: Refused


class Compared(MethodsPromised):
    """The same practical with solutions of `factor` times their strength, and with other glassware."""

    factor: float
    acid_mol_dm3: float
    alkali_mol_dm3: float
    glassware: Message
    u_portion_cm3: float
    rise_c: float | None


class Thermometers(TypedDict):
    """The same practical with three thermometers."""

    probe: MethodsPromised
    thermometer_0_1_c: MethodsPromised
    thermometer_1_c: MethodsPromised


class Points(TypedDict):
    """How many readings lie before the end-point, and how many after it."""

    before: int
    after: int


class CurvePoint(TypedDict):
    """One reading that is expected."""

    portion: int
    volume_cm3: float
    temperature_c: float


class AnyPromise(TypedDict):
    """What a prediction of any kind has; `minutes` of each part and in total, `assumed` what it rests on."""

    practical: Message
    start_c: float | None
    enthalpy_kj_mol: float | None
    minutes: dict[str, float]
    refused: Refused
    warnings: list[Warned]
    assumed: list[Message]


class PortionsPromise(AnyPromise):
    """What a plan of portions promises; what needs the heat of the reaction is null where that is not known."""

    kind: Literal["portions"]
    acid: AcidPromised
    end_point_cm3: float
    points: Points
    rise_c: float | None
    curve: list[CurvePoint] | None
    methods: Thermometers | None
    comparison: list[Compared] | None


class OncePromised(TypedDict):
    """How far off the change will be, and how well change and enthalpy will be known."""

    bias_c: float
    u_change_c: float
    u_mean_c: float
    u_enthalpy_kj_mol: float


class OnceMethods(TypedDict):
    """What both methods give with the probe."""

    straight_lines: OncePromised | None
    heat_balance: OncePromised | None
    refused: Refused


class TracePoint(TypedDict):
    """What the probe is expected to show at a time since the repeat's start."""

    time_s: float
    temperature_c: float


class OncePromise(AnyPromise):
    """What a plan that mixes once promises."""

    kind: Literal["once"]
    change_c: float | None
    heat_j: float | None
    amount_mol: NotRequired[float]
    enthalpy_of: NotRequired[Message]
    curve: list[TracePoint] | None
    methods: OnceMethods | None


class RefusedPlan(TypedDict):
    """Why a plan cannot be a practical."""

    refused_plan: Problem
