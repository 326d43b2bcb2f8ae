"""The two time constants of a probe from a dip: it hangs in still air, then stands in stirred water.

After a step of 1 a probe in a steel tube shows 1 − share e^(−t/fast) − (1 − share) e^(−t/slow). Five parameters (the
water's temperature, the moment of the dip, the two times, the share) by least squares, Levenberg's way. No numpy.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import exp, hypot, log, sqrt
from typing import Literal

from station.analysis.settle.fit import Matrix, inverse, solve
from station.analysis.settle.lags import STEP_C, ProbeLags, Sample, fresh
from station.words import Message, say

# Has a probe in ice, in boiling water or beside a thermometer come to rest, and where? No clock, no numpy.


HOLD_S = 40.0
"""Seconds over which a check's temperature has to hold still: two of a probe's slow time constants."""

DRIFT_C = 0.045
"""What it may drift in that time: under one step. More, and the end of the probe's slow answer still hangs on."""

MEAN_S = 20.0
"""Seconds over which the temperature is the mean; a drift that is left counts in its u for as long again."""

SPREAD_C = 0.15
"""What it may scatter in that time (one standard deviation), as boiling does."""

FRESH_S = 3.0
FEWEST = 20


@dataclass(frozen=True)
class Steady:
    """The mean over the last MEAN_S in °C, its standard uncertainty as what the probe says, and whether it is at rest.

    `moving_c_min` is the drift in °C/min; `count` how many good samples there are; `reason` is empty at rest.
    """

    steady: bool
    temperature_c: float | None
    u_c: float | None
    moving_c_min: float | None
    count: int
    reason: Literal["", "no_reading", "too_short", "moving", "scattering"] = ""


def steadiness(
    samples: Sequence[Sample], since_s: float, now_s: float, *, hold_s: float = HOLD_S, most_c: float = DRIFT_C
) -> Steady:
    """Judge the samples (time_s, temperature_c or None) from `since_s` to `now_s`; `most_c` is the drift allowed."""
    held = [(t, c) for t, c in fresh(samples, now_s) if t >= since_s and t > now_s - hold_s]
    if not held or now_s - held[-1][0] > FRESH_S:
        return Steady(False, None, None, None, 0, "no_reading")
    newest = [c for t, c in held if t > now_s - MEAN_S] or [held[-1][1]]
    mean_c = sum(newest) / len(newest)
    if len(held) < FEWEST or held[0][0] > now_s - 0.9 * hold_s:
        return Steady(False, mean_c, None, None, len(held), "too_short")
    slope, scatter_c = _line(held)
    drift_c = abs(slope) * hold_s
    # Neighbouring conversions on one step are not independent: at least the step itself stays open.
    u_c = hypot(scatter_c / sqrt(len(newest)), STEP_C / sqrt(12.0), slope * MEAN_S)
    moving = 60.0 * slope
    if drift_c > most_c:
        return Steady(False, mean_c, u_c, moving, len(held), "moving")
    if scatter_c > SPREAD_C:
        return Steady(False, mean_c, u_c, moving, len(held), "scattering")
    return Steady(True, mean_c, u_c, moving, len(held))


def _line(rows: Sequence[tuple[float, float]]) -> tuple[float, float]:
    """Slope of the least squares line in °C/s and the scatter about it in °C."""
    n = len(rows)
    mid_s, mean_c = sum(t for t, _ in rows) / n, sum(c for _, c in rows) / n
    spread = sum((t - mid_s) ** 2 for t, _ in rows)
    slope = sum((t - mid_s) * (c - mean_c) for t, c in rows) / spread
    left = sum((c - mean_c - slope * (t - mid_s)) ** 2 for t, c in rows)
    return slope, sqrt(left / (n - 2))


LEAST_STEP_C = 10.0
"""A smaller step is lost in the probe's own steps of 1/16 °C where the slow part ends."""
LEAST_AFTER_S = 60.0
MOVED_C = 0.5
WORST_C, WORST = 0.15, 0.015
"""Rms in °C, or part of the step, above which the trace is not that of a probe plunged at once and held still."""
SLOPE_S = 0.7
"""A conversion may be off by what the probe moves in so many seconds: its moment is not known better."""
STALE_S = 0.3

WATER, START, FAST, SLOW, SHARE = range(5)
_LOW = (-20.0, -1e9, log(0.3), log(1.5), 0.0)
_HIGH = (120.0, 1e9, log(40.0), log(150.0), 1.0)
_LEAST = (1e-9, 0.01, 0.1, 0.1, 1.0)
"""What is known of each at the least, as 1/u²: the matrix stays sound where one exponential would do."""
ROUNDS = 40


class DipRefused(ValueError):  # noqa: N818 - the analysis declines; nothing has gone wrong
    """No time constants from this trace; `reason` says why."""

    def __init__(self, reason: Message) -> None:
        super().__init__(reason)
        self.reason = reason


UNCHANGED = say("dip-no-change")
TOO_SHORT = say("dip-trace-after-short", seconds=f"{LEAST_AFTER_S:.0f}")
TOO_NEAR = say("dip-too-near", least_c=f"{LEAST_STEP_C:.0f}")
NOT_PLUNGED = say("dip-not-plunged")
"""All the reasons that there are."""


@dataclass(frozen=True)
class Dip:
    """`lags` with the covariance of the fit; u of each; the step in °C; rms of the residuals in °C.

    `t63_s` and `t90_s` are the times to 63 % and 90 % of the step.
    """

    lags: ProbeLags
    u_fast_s: float
    u_slow_s: float
    u_share: float
    air_c: float
    water_c: float
    rms_c: float
    t63_s: float
    t90_s: float


def plunge_s(samples: Sequence[Sample]) -> float | None:
    """Return the time of the last sample before the temperature left its start, None as long as it has not."""
    trace = fresh(samples, float("inf"))
    for k in range(1, len(trace)):
        before = [c for _, c in trace[max(0, k - 8) : k]]
        if abs(trace[k][1] - sum(before) / len(before)) > MOVED_C:
            return trace[k - 1][0]
    return None


def dip_of(samples: Sequence[Sample]) -> Dip:
    """Fit (time_s, temperature_c or None) samples from still air to rest in the water. Raises DipRefused."""
    trace = fresh(samples, float("inf"))
    begun_s = plunge_s(trace)
    if begun_s is None:
        raise DipRefused(UNCHANGED)
    before = [c for t, c in trace if t <= begun_s][-10:]
    after = [(t, c) for t, c in trace if t > begun_s]
    air_c = sum(before) / len(before)
    last_c = sum(c for _, c in after[-5:]) / len(after[-5:])
    if after[-1][0] - begun_s < LEAST_AFTER_S:
        raise DipRefused(TOO_SHORT)
    if abs(last_c - air_c) < LEAST_STEP_C:
        raise DipRefused(TOO_NEAR)
    at, matrix, rms_c = _fitted(after, air_c, [last_c, begun_s + 0.5, log(4.5), log(17.0), 0.6])
    if rms_c > max(WORST_C, WORST * abs(last_c - air_c)):
        raise DipRefused(NOT_PLUNGED)
    # The model is not the probe: what it leaves beyond the noise makes all of it less sure.
    misfit = max(1.0, rms_c / (STEP_C / sqrt(12.0)))
    covariance = [[each * misfit**2 for each in row] for row in inverse(matrix)]
    return _dip(at, covariance, air_c, rms_c)


def _dip(at: Sequence[float], covariance: Matrix, air_c: float, rms_c: float) -> Dip:
    fast, slow, share = exp(at[FAST]), exp(at[SLOW]), at[SHARE]
    places: tuple[int, ...] = (FAST, SLOW, SHARE)
    if fast > slow:
        fast, slow, share, places = slow, fast, 1.0 - share, (SLOW, FAST, SHARE)
    a, b, c = (tuple(covariance[i][j] for j in places) for i in places)
    lags = ProbeLags(fast, slow, share, ((a[0], a[1], a[2]), (b[0], b[1], b[2]), (c[0], c[1], c[2])))
    return Dip(
        lags,
        fast * sqrt(a[0]),
        slow * sqrt(b[1]),
        sqrt(c[2]),
        air_c,
        at[WATER],
        rms_c,
        _time_to(lags, 1.0 - exp(-1.0)),
        _time_to(lags, 0.9),
    )


def _time_to(lags: ProbeLags, part: float) -> float:
    low_s, high_s = 0.0, 20.0 * lags.slow_s
    for _ in range(60):
        middle_s = (low_s + high_s) / 2.0
        low_s, high_s = (middle_s, high_s) if 1.0 - lags.left(middle_s) < part else (low_s, middle_s)
    return low_s


def _fitted(after: Sequence[tuple[float, float]], air_c: float, at: list[float]) -> tuple[list[float], Matrix, float]:
    """Return parameters at the least squares, the normal matrix there and the plain rms."""
    damping = 1e-3
    matrix, right, cost, rms_c = _normal(after, air_c, at)
    for _ in range(ROUNDS):
        damped = [[v * (1.0 + damping) if i == j else v for j, v in enumerate(row)] for i, row in enumerate(matrix)]
        step = solve(damped, right)
        tried = [min(max(v + d, _LOW[k]), _HIGH[k]) for k, (v, d) in enumerate(zip(at, step, strict=True))]
        new = _normal(after, air_c, tried)
        if new[2] > cost:
            damping *= 8.0
            continue
        done = cost - new[2] < 1e-7 * cost
        at, (matrix, right, cost, rms_c), damping = tried, new, damping / 5.0
        if done:
            break
    return at, matrix, rms_c


def _normal(
    after: Sequence[tuple[float, float]], air_c: float, at: Sequence[float]
) -> tuple[Matrix, list[float], float, float]:
    matrix = [[0.0] * 5 for _ in range(5)]
    for k, least in enumerate(_LEAST):
        matrix[k][k] = least
    right, cost, squares = [0.0] * 5, 0.0, 0.0
    for time_s, celsius in after:
        value, row = _model(at, air_c, time_s)
        off = celsius - value
        u = hypot(STEP_C / sqrt(12.0), STALE_S * row[START])
        weight = 1.0 / (u * u)
        cost += weight * off * off
        squares += off * off
        for i in range(5):
            right[i] += weight * row[i] * off
            for j in range(5):
                matrix[i][j] += weight * row[i] * row[j]
    return matrix, right, cost, sqrt(squares / len(after))


def _model(at: Sequence[float], air_c: float, time_s: float) -> tuple[float, list[float]]:
    """The probe in °C and its derivatives."""
    water, share = at[WATER], at[SHARE]
    fast, slow = exp(at[FAST]), exp(at[SLOW])
    ago = max(time_s - at[START], 0.0)
    by_fast, by_slow = exp(-ago / fast), exp(-ago / slow)
    left = share * by_fast + (1.0 - share) * by_slow
    step = air_c - water
    falling = share * by_fast / fast + (1.0 - share) * by_slow / slow if ago > 0.0 else 0.0
    return water + step * left, [
        1.0 - left,
        step * falling,
        step * share * by_fast * ago / fast,
        step * (1.0 - share) * by_slow * ago / slow,
        step * (by_fast - by_slow),
    ]
