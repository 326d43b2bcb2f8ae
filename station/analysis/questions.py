"""What looks wrong on a bench: the student knows, the station only suspects, and asks.

Pure functions over samples and readings. Each gives a `Suspicion` or None, and is set to stay silent on
honest cups: a wrong question costs trust, a missed one only a point that the class can still flag.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from math import erf, exp, hypot, log, sqrt

from station.analysis.settle.fit import CHANGE, MIX, START
from station.analysis.settle.lags import (
    STEEL_TUBE,
    STEP_C,
    UNKNOWN_CUP,
    CupHabits,
    ProbeLags,
    Sample,
    fit_portion,
    fresh,
)


@dataclass(frozen=True, slots=True)
class Suspicion:
    """The code of what to ask about ("no_change", "double", "probe_out", "not_stirred", "sudden_fall") and the
    evidence for it from 0 to 1."""

    code: str
    evidence: float


def after_reading(
    change_c: float,
    *,
    u_c: float,
    expected_change_c: float | None,
    idle_change_c: float | None = None,
    usual_ratio: float | None = None,
    near_end_point: bool = False,
    step_c: float = STEP_C,
) -> Suspicion | None:
    """Ask about a settled portion that changed the temperature by `change_c` (after less before, °C).

    `u_c` is its standard uncertainty, `expected_change_c` what the plan predicts, `idle_change_c` what the
    portion would do without any reaction (cold alkali into a warm cup), `usual_ratio` the median of change
    over prediction of the earlier portions of this repeat (None for the first). Nothing can be asked when
    too little is expected.
    """
    if expected_change_c is None or abs(expected_change_c) < 6.0 * step_c:
        return None
    ratio = change_c / (expected_change_c * (usual_ratio or 1.0))
    u_ratio = hypot(u_c / abs(expected_change_c), 0.15 if usual_ratio else 0.25)
    return (
        (None if near_end_point else _no_change(change_c, expected_change_c, idle_change_c, step_c))
        or _double(ratio, u_ratio)
        or (_half(ratio, u_ratio) if usual_ratio is None else None)
    )


def _no_change(change_c: float, expected_c: float, idle_c: float | None, step_c: float) -> Suspicion | None:
    # After the end-point a portion only cools the cup: where that is as small as nothing, nothing can be told.
    least = min(abs(expected_c), abs(idle_c) if idle_c is not None else abs(expected_c))
    if least < 4.0 * step_c or abs(change_c) > min(2.0 * step_c, 0.4 * least):
        return None
    return Suspicion("no_change", 1.0 - abs(change_c) / least)


def _double(ratio: float, u_ratio: float) -> Suspicion | None:
    evidence = _between(ratio, 2.0, 1.0, u_ratio)
    if not 1.7 <= ratio <= 2.6 or evidence < 0.9:
        return None
    return Suspicion("double", evidence)


def _half(ratio: float, u_ratio: float) -> Suspicion | None:
    evidence = _between(ratio, 0.3, 1.0, u_ratio)
    if not 0.0 < ratio <= 0.45 or evidence < 0.9:
        return None
    return Suspicion("probe_out", evidence)


def not_stirred(
    samples: Sequence[Sample],
    *,
    since_s: float,
    now_s: float,
    before_c: float,
    lags: ProbeLags = STEEL_TUBE,
    cup: CupHabits = UNKNOWN_CUP,
    step_c: float = STEP_C,
) -> Suspicion | None:
    """Ask when a portion mixes more slowly than a stirred one, at least 20 s after its press at `since_s`.

    The arguments are those of `judge`; the fit tells slow mixing from the probe's own lags as far as these
    are known.
    """
    trace = [row for row in fresh(samples, now_s) if row[0] >= since_s - 10.0]
    if now_s - since_s < 20.0 or len(trace) < 15:
        return None
    stirred = replace(cup, mix_s=UNKNOWN_CUP.mix_s, u_mix=1.2)
    fitted = fit_portion(trace, since_s, before_c, None, lags, step_c, stirred, steps=6)
    if abs(fitted.at[CHANGE]) < 6.0 * step_c:
        return None
    if fitted.at[CHANGE] < 0.0 and -_slope(trace[-15:]) < DRIFT_C_S:
        return None  # No steeper than a cup that cools.
    above = (fitted.at[MIX] - log(SLOW_MIX_S)) / sqrt(fitted.covariance[MIX][MIX])
    evidence = max(0.5 * (1.0 + erf(above / sqrt(2.0))), _overdue(trace, fitted.at[START], fitted.at[CHANGE], lags))
    if evidence < 0.9:
        return None
    return Suspicion("not_stirred", evidence)


def _overdue(trace: Sequence[tuple[float, float]], start_s: float, change_c: float, lags: ProbeLags) -> float:
    """Evidence that the trace still climbs or sinks with the change when the probe's own lags have run out."""
    now_s = trace[-1][0]
    late = [row for row in trace if row[0] > now_s - 15.0]
    if len(late) < 8 or abs(change_c) * lags.left(now_s - 7.0 - start_s) > 0.7 * STEP_C:
        return 0.0
    mid_s = sum(t for t, _ in late) / len(late)
    u_slope = 0.7 * STEP_C / sqrt(sum((t - mid_s) ** 2 for t, _ in late))
    own = change_c * (lags.left(now_s - 15.0 - start_s) - lags.left(now_s - start_s)) / 15.0
    creep = (_slope(late) - own) * (1.0 if change_c > 0.0 else -1.0)
    # A cup loses what it gained, so with a rise a further rise is suspect; a falling trace may be a cooling cup.
    allowed = CREEP_C_S if change_c > 0.0 else DRIFT_C_S
    return 0.5 * (1.0 + erf((creep - allowed) / u_slope / sqrt(2.0)))


DRIFT_C_S = 0.012
"""A warm open cup cools by up to this (0.7 °C/min at 6.5 °C above the room)."""

CREEP_C_S = 0.003
"""Less than a step in 20 s is not seen."""

SLOW_MIX_S = 6.0
"""A gently stirred cup mixes within 1 to 4 s (common practice, no source)."""


def sudden_fall(
    samples: Sequence[Sample],
    *,
    now_s: float,
    expected_change_c: float | None = None,
    idle_change_c: float | None = None,
) -> Suspicion | None:
    """Ask about a fall over the last 15 s that no portion explains: a spill, the lid, the probe out of the
    liquid.

    A portion may have been poured before its press, so a fall that one or two of them could cause stays
    unasked; for reagents that cool the cup `expected_change_c` is negative and counts too. A fall that ends
    is a spill or a lid, one that goes on steadily is a probe in the air.
    """
    rows = [row for row in fresh(samples, now_s) if row[0] > now_s - 25.0]
    before = [c for t, c in rows if t <= now_s - 15.0]
    after = [row for row in rows if row[0] > now_s - 15.0]
    if len(before) < 4 or len(after) < 7:
        return None
    level_c = sum(before) / len(before)
    if max(before) - min(before) > 3.0 * STEP_C:
        return None
    fall_c = level_c - max(c for _, c in after[-3:])
    usual_c = max(-(idle_change_c or 0.0), -(expected_change_c or 0.0), 0.0)
    limit_c = 0.4 + 2.2 * usual_c
    if fall_c <= limit_c:
        return None
    evidence = 1.0 - limit_c / fall_c / 2.0
    if -_slope(after[-7:]) > 0.03:
        return Suspicion("probe_out", evidence)
    return Suspicion("sudden_fall", evidence)


def _between(value: float, wrong: float, right: float, u: float) -> float:
    """How much more likely `value` is around `wrong` than around `right`, from 0 to 1."""
    odds = ((value - wrong) ** 2 - (value - right) ** 2) / (2.0 * u * u)
    return 1.0 / (1.0 + exp(min(odds, 60.0)))


def _slope(rows: Sequence[tuple[float, float]]) -> float:
    mid = sum(t for t, _ in rows) / len(rows)
    return sum((t - mid) * c for t, c in rows) / sum((t - mid) ** 2 for t, _ in rows)
