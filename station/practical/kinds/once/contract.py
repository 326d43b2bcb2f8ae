"""Results of one mixing at one marked moment as answers have them, and what a plan of it promises."""

from typing import Literal, NotRequired

from pydantic import ConfigDict, with_config
from typing_extensions import TypedDict

from station.practical.kinds.contract import AnyPromise, FoundBy, Refused, ResultOf
from station.words import Message


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


# What a plan promises.


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
