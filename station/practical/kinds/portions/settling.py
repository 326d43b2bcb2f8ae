"""Judges the trace since the newest portion, and notices what looks odd about it: codes of questions to ask."""

from dataclasses import dataclass
from functools import lru_cache
from itertools import takewhile
from statistics import median

from station.analysis.questions import after_reading, not_stirred, sudden_fall
from station.analysis.settle.detector import Pace, Verdict, judge
from station.analysis.settle.lags import CupHabits, ProbeLags
from station.chemistry.pairs import WrongPairError
from station.practical.by_hand import OF_TRACE, SOLUTION_J_CM3_K, U_SETTLED_C
from station.practical.kinds.kind import Noticed
from station.practical.kinds.portions.hindsight import WATER_KJ_MOL
from station.practical.kinds.portions.plan import PortionsPlan
from station.practical.settling import STEP_C, hindsight_of
from station.practical.state import Repeat, State

BEFORE_S = 10.0
"""How much of the trace before the press the detector sees: a pour may come some seconds before its press."""
MOST_KEPT = 40
"""So many verdicts are remembered: a room looks at so many benches."""


def portion_verdict(plan: PortionsPlan, state: State, time_s: float) -> Verdict:
    """Judge the trace since the newest portion."""
    repeat = state.repeats[-1]
    since_s = repeat.portions[-1].time_s
    before = [reading.temperature_c for reading in repeat.readings if reading.portion == state.poured - 1]
    return _judged(
        tuple(_trace(repeat, since_s - BEFORE_S)),
        since_s,
        time_s,
        before[0] if before else None,
        expected_change_c(plan, state),
        state.lags,
        state.habits,
        plan.pace,
    )


def _trace(repeat: Repeat, since_s: float) -> list[tuple[float, float | None]]:
    """Return the samples from then on: found from the newest backwards, since a repeat may be an hour long."""
    newest = takewhile(lambda each: each.time_s >= since_s, reversed(repeat.samples))
    return [(each.time_s, each.temperature_c) for each in newest][::-1]


@lru_cache(maxsize=MOST_KEPT)
def _judged(
    samples: tuple[tuple[float, float | None], ...],
    since_s: float,
    now_s: float,
    before_c: float | None,
    change_c: float | None,
    lags: ProbeLags,
    cup: CupHabits,
    pace: Pace,
) -> Verdict:
    """Fit once whatever the verdict depends on: the procedure asks at a sample, every screen after it."""
    return judge(
        samples,
        since_s=since_s,
        now_s=now_s,
        before_c=before_c,
        expected_change_c=change_c,
        lags=lags,
        cup=cup,
        step_c=STEP_C,
        pace=pace,
    )


REACTING = 0.5
NOTHING = 0.25
LEAST_TOLD_C = 0.25
EVERY_SAMPLES = 5


@dataclass(frozen=True)
class Expected:
    """What a portion does to the temperature, in °C: with the reaction, and past the end-point (idle)."""

    change_c: float
    idle_c: float


def noticed_while_settling(plan: PortionsPlan, state: State, time_s: float) -> Noticed:
    """Return what the trace since the newest press looks like: not stirred, or fallen suddenly."""
    repeat = state.repeats[-1]
    if not repeat.portions:
        return ()
    since_s = repeat.portions[-1].time_s
    before_c = _reading_c(repeat, state.poured - 1)
    samples = _trace(repeat, since_s - 30.0)
    if before_c is None or sum(1 for each in samples if each[0] > since_s) % EVERY_SAMPLES:
        return ()
    expected = _expected(state, plan, before_c)
    seen = (
        not_stirred(samples, since_s=since_s, now_s=time_s, before_c=before_c, lags=state.lags, cup=state.habits),
        sudden_fall(
            samples,
            now_s=time_s,
            expected_change_c=expected.change_c if expected else None,
            idle_change_c=expected.idle_c if expected else None,
        ),
    )
    return tuple((state.poured, each.code) for each in seen if each is not None)


def noticed_in_reading(plan: PortionsPlan, state: State, verdict: Verdict) -> Noticed:
    """Return what the change that has just settled looks like: none at all, twice the usual, half of it.

    A portion without a change can lie past the end-point; when the one after it warms the cup again, it did not.
    """
    repeat = state.repeats[-1]
    before_c = _reading_c(repeat, state.poured - 1)
    if before_c is None or verdict.temperature_c is None:
        return ()
    expected = _expected(state, plan, before_c)
    if expected is None:
        return ()
    change_c = verdict.temperature_c - before_c
    seen = after_reading(
        change_c,
        u_c=verdict.u_c or 0.06,
        expected_change_c=expected.change_c,
        idle_change_c=expected.idle_c,
        usual_ratio=_usual_ratio(state, plan, repeat),
        near_end_point=_near_end_point(plan, repeat),
    )
    now = () if seen is None else ((state.poured, seen.code),)
    known = (*_skipped_before(state, plan, change_c / expected.change_c), *now)
    doubted = [portion for portion, _ in known]
    late = hindsight_of(state, {state.poured: verdict.temperature_c}, U_SETTLED_C, doubted).noticed
    return (*known, *(each for each in late if each[1] in OF_TRACE))


def _skipped_before(state: State, plan: PortionsPlan, ratio: float) -> Noticed:
    """The portion before this one, when it changed nothing although this one reacts."""
    repeat, portion = state.repeats[-1], state.poured - 1
    from_c, to_c = _reading_c(repeat, portion - 1), _reading_c(repeat, portion)
    if portion < 1 or from_c is None or to_c is None or ratio < REACTING:
        return ()
    expected = _expected(state, plan, from_c, portion)
    if expected is None or expected.change_c < LEAST_TOLD_C:
        return ()
    return ((portion, "no_change"),) if abs(to_c - from_c) < NOTHING * expected.change_c else ()


def expected_change_c(plan: PortionsPlan, state: State) -> float | None:
    """Return what the plan predicts for the newest portion; None when the temperature has turned, or is unknown."""
    repeat = state.repeats[-1]
    before_c, before_that_c = _reading_c(repeat, state.poured - 1), _reading_c(repeat, state.poured - 2)
    if before_c is None:
        return None
    expected = _expected(state, plan, before_c)
    turned = before_that_c is not None and before_c < before_that_c
    return None if expected is None or turned else expected.change_c


def _expected(state: State, plan: PortionsPlan, before_c: float, portion: int | None = None) -> Expected | None:
    repeat = state.repeats[-1]
    number = state.poured if portion is None else portion
    try:
        pair = plan.pair
    except WrongPairError:
        return None
    if pair.alkali.gives_gas:
        return None
    added_cm3 = next(each.volume_cm3 for each in repeat.portions if each.portion == number)
    contents_j_k = SOLUTION_J_CM3_K * (plan.acid.volume_cm3 + repeat.added_cm3(number)) + plan.cup.heat_capacity_j_k
    alkali_c = state.alkali_c or plan.alkali.temperature_c or _reading_c(repeat, 0) or before_c
    cooled_j = SOLUTION_J_CM3_K * added_cm3 * (before_c - alkali_c)
    heat_j = plan.alkali.concentration_mol_dm3 * added_cm3 * pair.alkali_hydroxides * WATER_KJ_MOL
    return Expected((heat_j - cooled_j) / contents_j_k, -cooled_j / contents_j_k)


def _usual_ratio(state: State, plan: PortionsPlan, repeat: Repeat) -> float | None:
    """Median of change over expectation for the earlier portions that reacted; None before there is one."""
    ratios = []
    for portion in range(1, state.poured):
        before_c, after_c = _reading_c(repeat, portion - 1), _reading_c(repeat, portion)
        if before_c is None or after_c is None:
            continue
        expected = _expected(state, plan, before_c, portion)
        if expected is not None and expected.change_c and (after_c - before_c) / expected.change_c > REACTING:
            ratios.append((after_c - before_c) / expected.change_c)
    return median(ratios) if ratios else None


def _near_end_point(plan: PortionsPlan, repeat: Repeat) -> bool:
    """Whether the newest portion is within one and a half of the end-point that the plan itself tells."""
    if plan.acid.concentration_mol_dm3 is None:
        return False
    pair = plan.pair
    moles = plan.acid.concentration_mol_dm3 * plan.acid.volume_cm3
    end_point_cm3 = moles / (plan.alkali.concentration_mol_dm3 * pair.acid_per_alkali)
    return abs(repeat.total_cm3 - end_point_cm3) <= 1.5 * plan.portion_cm3


def _reading_c(repeat: Repeat, portion: int) -> float | None:
    return next((each.temperature_c for each in repeat.readings if each.portion == portion), None)
