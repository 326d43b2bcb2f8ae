"""Results of portions of an alkali to an acid as answers have them, and what a plan of them promises."""

from typing import Literal, NotRequired

from pydantic import ConfigDict, with_config
from typing_extensions import TypedDict

from station.practical.kinds.contract import AnyPromise, FoundBy, Refused, ResultOf
from station.practical.kinds.portions.plan import AcidPromised
from station.words import Message


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


class PortionsResult(ResultOf):
    """The mean of the repeats, and each repeat."""

    straight_lines: Crossing | None
    heat_balance: HeatBalance | None
    repeats: list[PortionsRepeat]


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
