"""When has the probe settled onto the cup's drift line, and on what temperature.

Pure functions over the samples since the last portion: no clock, no state. A cup that cools never has zero
slope, a quantised signal has zero variance, and a steel-sheathed probe answers with two time constants; so
the trace is fitted with a drift line plus what is left of the two lags, and what is left decides. The
recorded temperature is the mean of actual conversions, never the fitted line.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import erf, exp, log, sqrt
from typing import Literal

from station.analysis.settle_fit import Normal, spread
from station.analysis.settle_lags import STEEL_TUBE, ProbeLags

Sample = tuple[float, float | None]
"""Time in s and temperature in °C; None is a bad sample kept with its time."""

Pace = Literal["graph", "quick"]

LIMIT_S = 120.0
"""Longest wait after the press; then the best fresh value is given, marked as not sure."""

STEP_C = 0.0625
"""One step of a 12-bit DS18B20 (datasheet, temperature/data relationship)."""


@dataclass(frozen=True, slots=True)
class Verdict:
    """What the detector thinks at `now_s`.

    `temperature_c` is the mean of the last fresh conversions (None without any), `u_c` its standard
    uncertainty as the temperature of the cup, `slope_c_s` the slope of the trace, `left_s` the seconds
    still to wait (None when not known), `sure` the probability (0 to 1) that `temperature_c` is within one
    step of the cup, `reason` says why in a few words.
    """

    settled: bool
    temperature_c: float | None
    u_c: float | None
    slope_c_s: float | None
    left_s: float | None
    sure: float
    reason: str


def fresh(samples: Sequence[Sample], now_s: float) -> list[tuple[float, float]]:
    """The good samples up to `now_s`, in order of time, each time once."""
    out: list[tuple[float, float]] = []
    for time_s, temperature_c in samples:
        if temperature_c is None or time_s > now_s or (out and time_s <= out[-1][0]):
            continue
        out.append((time_s, temperature_c))
    return out


def judge(
    samples: Sequence[Sample],
    *,
    since_s: float,
    now_s: float,
    before_c: float | None,
    expected_change_c: float | None = None,
    lags: ProbeLags = STEEL_TUBE,
    step_c: float = STEP_C,
    pace: Pace = "graph",
    drift_c_s: float | None = None,
) -> Verdict:
    """Judge the trace after a portion.

    `samples` are (time_s, temperature_c or None) from some seconds before the press at `since_s` up to
    `now_s`; `before_c` is the last settled temperature, `expected_change_c` what the plan predicts for this
    portion (None when not known), `drift_c_s` the cup's own drift when known. Pace "graph" waits for a
    reading within one `step_c` of the cup; "quick" for a trace that is long enough for the heat balance.
    After LIMIT_S the best fresh value is given with `settled` true and `sure` low.
    """
    trace = fresh(samples, now_s)
    recent = [(t, c) for t, c in trace if t >= since_s]
    waited = now_s - since_s
    if not recent:
        return Verdict(False, None, None, None, None, 0.0, "no reading from the probe")
    late = waited >= LIMIT_S
    tail = [(t, c) for t, c in recent if t > now_s - 6.0]
    if len(tail) < 4 or now_s - tail[-1][0] > 3.0:
        if late:
            return Verdict(True, recent[-1][1], step_c, None, 0.0, 0.0, "time is up, few fresh readings")
        return Verdict(False, recent[-1][1], None, None, None, 0.0, "too few fresh readings")
    onset_s = _onset(trace, since_s, before_c, step_c)
    last = tail[-4:]
    reading_c = sum(c for _, c in last) / len(last)
    drift = (-0.003, 0.004) if drift_c_s is None else (drift_c_s, 0.002)
    mean, covariance = _fit(
        recent, onset_s, now_s, tail[0][1] if before_c is None else before_c, lags, step_c, drift
    )
    row = _row_left(now_s - onset_s, lags)
    left_c = sum(b * x for b, x in zip(mean, row, strict=True))
    u_left = sqrt(spread(covariance, row) ** 2 + step_c**2 / 24.0)
    transient = left_c - mean[1] * lags.mean_s
    slope = mean[1] + transient / lags.slow_s
    transient = abs(transient)
    sure = _within(left_c, u_left, step_c)
    moved = before_c is None or abs(reading_c - before_c) > 2.0 * step_c
    awaited = expected_change_c is not None and abs(expected_change_c) > 4.0 * step_c
    least = 8.0 if moved else (30.0 if awaited else 15.0)
    if pace == "quick":
        ready = waited >= max(20.0, least) and len(recent) >= 12
    else:
        ready = waited >= least and now_s >= onset_s + 8.0 and sure >= 0.9
    left_s = 0.0
    if not ready and not late:
        left_s = max(1.0, least - waited, lags.slow_s * log(max(transient / (0.7 * step_c), 1.0)))
        left_s = min(left_s, LIMIT_S - waited)
    reason = "settled" if ready else ("time is up" if late else "still settling")
    return Verdict(
        ready or late, reading_c, u_left, slope, left_s, sure if ready else min(sure, 0.89), reason
    )


def judge_start(
    samples: Sequence[Sample],
    *,
    since_s: float,
    now_s: float,
    lags: ProbeLags = STEEL_TUBE,
    step_c: float = STEP_C,
    hold_s: float = 30.0,
    drift_limit_c_min: float = 0.3,
    limit_s: float = 300.0,
) -> Verdict:
    """Judge the steady start of a repeat (or a dip into the alkali): held `hold_s` within the drift limit."""
    trace = [(t, c) for t, c in fresh(samples, now_s) if t >= since_s]
    if not trace:
        return Verdict(False, None, None, None, None, 0.0, "no reading from the probe")
    held = [(t, c) for t, c in trace if t > now_s - hold_s]
    late = now_s - since_s >= limit_s
    enough = len(held) >= 0.5 * hold_s and now_s - since_s >= hold_s and now_s - held[-1][0] <= 3.0
    if not enough:
        return Verdict(late, trace[-1][1], step_c, None, None, 0.0, "too few fresh readings")
    normal = Normal([(0.0, 1e3), (0.0, 1.0)])
    for t, c in held:
        normal.add([1.0, t - now_s], c, step_c / sqrt(12.0))
    mean, covariance = normal.solve()
    slope, u_slope = mean[1], spread(covariance, [0.0, 1.0])
    reading_c = sum(c for _, c in held[-8:]) / len(held[-8:])
    steady = abs(slope) + 2.0 * u_slope <= drift_limit_c_min / 60.0
    left = 0.0 if steady else lags.slow_s
    u_c = sqrt(step_c**2 / 12.0 + (slope * lags.mean_s) ** 2)
    return Verdict(
        steady or late,
        reading_c,
        u_c,
        slope,
        left,
        0.95 if steady else 0.3,
        "steady" if steady else "still drifting",
    )


def _onset(
    trace: Sequence[tuple[float, float]], since_s: float, before_c: float | None, step_c: float
) -> float:
    """When the change began: the last sample still on the old line, or the press when nothing moved."""
    if before_c is None:
        return since_s
    onset = since_s
    for time_s, temperature_c in trace:
        if abs(temperature_c - before_c) <= 1.5 * step_c:
            onset = time_s
        elif time_s > since_s:
            break
    return onset if abs(trace[-1][1] - before_c) > 1.5 * step_c else since_s


def _fit(
    recent: Sequence[tuple[float, float]],
    onset_s: float,
    now_s: float,
    before_c: float,
    lags: ProbeLags,
    step_c: float,
    drift: tuple[float, float],
) -> tuple[list[float], list[list[float]]]:
    """Change, drift and what deviates from the shape of both lags; `_row_left` reads what is left."""
    shown = max(1.0 - lags.left(now_s - onset_s), 0.3)
    size = max(abs(recent[-1][1] - before_c) / shown, 2.0 * step_c)
    wide_fast, wide_slow = 0.5 * size * lags.fast_share, 0.3 * size * (1.0 - lags.fast_share)
    normal = Normal([(0.0, 5.0), drift, (0.0, wide_fast), (0.0, wide_slow)])
    for time_s, temperature_c in recent:
        ago = time_s - onset_s
        if ago < 2.0:
            continue
        doubt = 0.1 * size * exp(-ago / (2.0 * lags.fast_s))
        row = [1.0 - lags.left(ago), ago - lags.mean_s, -exp(-ago / lags.fast_s), -exp(-ago / lags.slow_s)]
        normal.add(row, temperature_c - before_c, 0.6 * step_c + doubt)
    return normal.solve()


def _row_left(ago_s: float, lags: ProbeLags) -> list[float]:
    """What the cup is ahead of the probe, as a row of the fit: the drift runs ahead by the mean lag."""
    return [lags.left(ago_s), lags.mean_s, exp(-ago_s / lags.fast_s), exp(-ago_s / lags.slow_s)]


def _within(error_c: float, u_c: float, limit_c: float) -> float:
    """Probability that a normal error lies within ± `limit_c`."""
    scale = u_c * sqrt(2.0)
    return 0.5 * (erf((limit_c - error_c) / scale) + erf((limit_c + error_c) / scale))
