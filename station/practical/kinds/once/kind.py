"""One mixing, recorded for some minutes before and after: the change of temperature, and the enthalpy."""

from dataclasses import replace
from typing import Final

from station.analysis.settle.detector import Outcome, Verdict, judge_start
from station.practical.kinds.kind import ENTHALPY, Kind, Method, Quantity
from station.practical.kinds.once.mixture import mixture_with_heat
from station.practical.kinds.once.own import own_working
from station.practical.kinds.once.plan import OncePlan
from station.practical.kinds.once.promise import promise
from station.practical.kinds.once.prompts import OWN_PROMPTS, PROMPTS, TYPED_PROMPTS
from station.practical.settling import STEP_C
from station.practical.state import State
from station.words import say


def _verdict(plan: OncePlan, state: State, time_s: float) -> Verdict:
    """After one mixing nothing has to settle: the record goes on for so long, then the newest reading counts."""
    repeat = state.repeats[-1]
    since_s = repeat.portions[-1].time_s
    good = [each.temperature_c for each in repeat.samples if each.temperature_c is not None and each.time_s > since_s]
    left_s = max(since_s + plan.timing.after_s - time_s, 0.0)
    last_c = good[-1] if good else None
    outcome = Outcome.SETTLED if left_s == 0.0 and good else Outcome.WAIT
    return Verdict(outcome, last_c, STEP_C, None, left_s, 1.0 if good else 0.0, say("settle-recorded"))


LINE_S: Final = 90.0
"""A line before mixing needs so much of a steady course: the same as `analysis.once.fit.LEAST_SPAN_S`."""


def _start_verdict(plan: OncePlan, state: State, time_s: float) -> Verdict:
    """Before mixing it is recorded for as long as the plan says, and on while the course is not steady.

    How long that takes is known from the first second.
    """
    repeat = state.repeats[-1]
    since_s = max(repeat.begun_s, state.step_since_s)
    samples = [(each.time_s, each.temperature_c) for each in repeat.samples]
    judged = judge_start(samples, since_s=since_s, now_s=time_s, hold_s=LINE_S)
    left_s = max(since_s + plan.timing.before_s - time_s, 0.0)
    if left_s > 0.0:
        return replace(judged, outcome=Outcome.WAIT, left_s=max(left_s, judged.left_s or 0.0))
    return replace(judged, left_s=judged.left_s or 0.0)


CHANGE: Final = Quantity("change_c", say("quantity-temperature-change"), "°C", "interval_95_c", signed=True)


def _asks(plan: OncePlan) -> Quantity:
    return CHANGE if mixture_with_heat(plan) is None else ENTHALPY


_METHODS: Final[tuple[Method, ...]] = ("heat_balance", "straight_lines")

KIND: Final = Kind(
    prompts=PROMPTS,
    own_prompts=OWN_PROMPTS,
    verdict=_verdict,
    promise=promise,
    class_quantities=((CHANGE, _METHODS), (ENTHALPY, _METHODS)),
    class_curve=False,
    asks=_asks,
    own_working=own_working,
    mixture=mixture_with_heat,
    start_verdict=_start_verdict,
    typed_prompts=TYPED_PROMPTS,
)
