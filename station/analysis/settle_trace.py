"""From the samples of a portion to the fit of it: what is known beforehand, where the change began."""

from __future__ import annotations

from collections.abc import Sequence
from math import log

from station.analysis.settle_algebra import inverse
from station.analysis.settle_fit import FAST, SHARE, STEPS, Fitted, Prior, fit
from station.analysis.settle_lags import CupHabits, ProbeLags

Sample = tuple[float, float | None]
"""Time in s and temperature in °C; None is a bad sample kept with its time."""

STEP_C = 0.0625
"""One step of a 12-bit DS18B20 (datasheet, temperature/data relationship)."""

NOISE = 0.7
"""Standard deviation of one conversion, in steps: rounding to a step and a flicker of about as much."""


def fresh(samples: Sequence[Sample], now_s: float) -> list[tuple[float, float]]:
    """The good samples up to `now_s`, in order of time, each time once."""
    out: list[tuple[float, float]] = []
    for time_s, temperature_c in samples:
        if temperature_c is None or time_s > now_s or (out and time_s <= out[-1][0]):
            continue
        out.append((time_s, temperature_c))
    return out


def fit_portion(
    trace: Sequence[tuple[float, float]],
    since_s: float,
    before_c: float | None,
    expected_change_c: float | None,
    lags: ProbeLags,
    step_c: float,
    cup: CupHabits,
    steps: int = STEPS,
) -> Fitted:
    """The fit with what is known beforehand of press, probe and drift."""
    base, u_base = (trace[0][1], 0.5) if before_c is None else (trace[0][1], 4.0 * step_c)
    change, u_change = (0.0, 3.0) if expected_change_c is None else (expected_change_c, 1.0 + abs(expected_change_c))
    drift, u_drift = cup.drift(trace[-1][1])
    turn_c_s = cup.loss_min / 60.0 * (base - trace[-1][1])
    mean = (base, change, drift, since_s - 1.0, log(lags.fast_s), log(lags.slow_s), lags.fast_share, log(cup.mix_s))
    sd = (u_base, u_change, u_drift, 4.0, 1.0, 1.0, 1.0, cup.u_mix)
    precision = [[1.0 / sd[i] ** 2 if i == j else 0.0 for j in range(8)] for i in range(8)]
    for i, row in enumerate(inverse([list(row) for row in lags.covariance])):
        precision[FAST + i][FAST : SHARE + 1] = row
    prior = Prior(mean, precision)
    start_s = _onset(trace, since_s, base, step_c)
    shown = 1.0 - lags.left(trace[-1][0] - start_s)
    guess = list(prior.mean)
    guess[1], guess[3] = (trace[-1][1] - base) / max(shown, 0.3), start_s
    return fit(trace, prior, NOISE * step_c, guess, steps, turn_c_s)


def _onset(trace: Sequence[tuple[float, float]], since_s: float, before_c: float, step_c: float) -> float:
    """When the change began: just before the first sample that left the old line; else about the press."""
    for index, (time_s, temperature_c) in enumerate(trace):
        if abs(temperature_c - before_c) > 2.5 * step_c:
            return trace[index - 1][0] if index else time_s - 1.0
    return since_s - 1.0
