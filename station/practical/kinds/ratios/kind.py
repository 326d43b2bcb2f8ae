"""Mixtures of one total volume, each mixed once: where two straight lines through the rises cross is the ratio.

What to do at a cup, and how long to record, is the same as where there is one mixing alone.
"""

from collections.abc import Sequence
from dataclasses import replace
from typing import Final

from station.analysis.settle.detector import Verdict
from station.practical.kinds.kind import ENTHALPY, Kind, Method, Quantity
from station.practical.kinds.once.kind import KIND as ONCE
from station.practical.kinds.ratios.mixing import mixture_with_most_heat, once_of
from station.practical.kinds.ratios.own import own_working
from station.practical.kinds.ratios.plan import RatiosPlan
from station.practical.kinds.ratios.promise import promise
from station.practical.kinds.ratios.table import table
from station.practical.state import Clocked, State
from station.words import say

RATIO: Final = Quantity("alkali_per_acid", say("quantity-ratio"), "mol/mol", "interval_95_ratio")
# The heat balance finds rises of mixtures with little acid a little too large: it comes second.
_METHODS: Final[tuple[Method, ...]] = ("straight_lines", "heat_balance")


def _verdict(plan: RatiosPlan, state: State, time_s: float) -> Verdict:
    """It is recorded for as long as the plan says; the highest temperature meanwhile is the reading."""
    judged: Verdict = ONCE.verdict(once_of(plan, state.cup), state, time_s)
    since_s = state.repeats[-1].portions[-1].time_s
    good = [
        each.temperature_c
        for each in state.repeats[-1].samples
        if each.temperature_c is not None and each.time_s > since_s
    ]
    return replace(judged, temperature_c=max(good, default=None))


def _start_verdict(plan: RatiosPlan, state: State, time_s: float) -> Verdict:
    assert ONCE.start_verdict is not None  # noqa: S101 - what mixes once has one
    return ONCE.start_verdict(once_of(plan, state.cup), state, time_s)


def _highest(course: Sequence[Clocked]) -> Clocked:
    return max(course, key=lambda each: each.temperature_c)


def _asks(_: RatiosPlan) -> Quantity:
    return RATIO


KIND: Final = Kind(
    prompts=ONCE.prompts,
    own_prompts=ONCE.own_prompts,
    verdict=_verdict,
    promise=promise,
    class_quantities=((RATIO, _METHODS), (ENTHALPY, _METHODS)),
    class_curve=False,
    asks=_asks,
    own_working=own_working,
    mixture=mixture_with_most_heat,
    start_verdict=_start_verdict,
    typed_prompts=ONCE.typed_prompts,
    clocked_reading=_highest,
    table=table,
)
