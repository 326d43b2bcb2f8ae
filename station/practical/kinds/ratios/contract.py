"""Results of mixing ratios as answers have them, and what a plan of them promises."""

from typing import Literal, NotRequired

from pydantic import ConfigDict, with_config
from typing_extensions import TypedDict

from station.practical.kinds.contract import AnyPromise, FoundBy, Refused, ResultOf
from station.practical.kinds.once.contract import Extended, HeatOnce
from station.practical.kinds.portions.contract import Arm
from station.words import Message


class Risen(TypedDict):
    """The mean rise of the temperature in one mixture: over what both liquids had together before they reacted."""

    cup: int
    volume_cm3: float
    rise_c: float
    u_rise_c: float


class RatioFound(TypedDict):
    """Two straight lines through the rises of all mixtures, and where they cross; `points` of a line index `rises`.

    `alkali_per_acid`: moles of alkali for one mole of acid there. The intervals know the scatter of the rises only.
    `rise_c` is the temperature rise at the crossing, and the enthalpy is per mole of water that forms in it.
    """

    end_point_cm3: float
    u_end_point_cm3: float
    interval_95_cm3: tuple[float, float]
    alkali_per_acid: float
    u_alkali_per_acid: float
    interval_95_ratio: tuple[float, float]
    rise_c: float
    u_rise_c: float
    enthalpy_kj_mol: float | None
    u_enthalpy_kj_mol: float | None
    enthalpy_of: Message | None
    label: Message
    rule: Message
    before: Arm
    after: Arm
    left_out: list[int]
    rises: list[Risen]
    describes_trace: NotRequired[bool]


class ExtendedRise(Extended):
    """One mixture's lines over time, extended to the moment of mixing, and the rise that follows."""

    rise_c: float
    u_rise_c: float


class HeatRise(HeatOnce):
    """The fit of one mixture's whole trace, and the rise that follows."""

    rise_c: float
    u_rise_c: float


@with_config(ConfigDict(extra="allow"))
class RatiosRepeat(FoundBy):
    """One mixture; beside these it has the members of its own straight lines, as files read them."""

    repeat: int
    cup: int
    volume_cm3: float | None
    straight_lines: ExtendedRise | None
    heat_balance: HeatRise | None


class RatiosResult(ResultOf):
    """The ratio by both methods, and each mixture."""

    straight_lines: RatioFound | None
    heat_balance: RatioFound | None
    repeats: list[RatiosRepeat]


# What a plan promises.


class RisePoint(TypedDict):
    """What is expected of one mixture; `fraction` is the alkali's share of the volume."""

    volume_cm3: float
    fraction: float
    rise_c: float


class RatioPromised(TypedDict):
    """How far off the ratio will be, and how well it will be known."""

    bias_ratio: float
    u_alkali_per_acid: float
    u_end_point_cm3: float


class RatiosMethods(TypedDict):
    """What both methods give with the probe."""

    straight_lines: RatioPromised | None
    heat_balance: RatioPromised | None
    refused: Refused


class RatiosPromise(AnyPromise):
    """What a plan of mixing ratios promises; what needs the heat of the reaction is null where that is not known."""

    kind: Literal["ratios"]
    end_point_cm3: float
    alkali_per_acid: float
    rise_c: float | None
    curve: list[RisePoint] | None
    methods: RatiosMethods | None
