"""The steady start of a repeat, or of a dip into the alkali: a temperature that holds still."""

from __future__ import annotations

from collections.abc import Sequence
from math import sqrt

from station.analysis.settle_lags import STEEL_TUBE, ProbeLags
from station.analysis.settle_trace import STEP_C, Sample, fresh
from station.analysis.settle_verdict import Verdict


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
    """Judge the steady start of a repeat (or a dip into the alkali): held `hold_s` within the drift limit.

    A probe that hangs steadily in the air is as steady as one in the acid: nothing here can tell them apart.
    """
    trace = [(t, c) for t, c in fresh(samples, now_s) if t >= since_s]
    if not trace:
        return Verdict(False, None, None, None, None, 0.0, "no reading from the probe")
    held = [(t, c) for t, c in trace if t > now_s - hold_s]
    late = now_s - since_s >= limit_s
    enough = len(held) >= 0.5 * hold_s and now_s - since_s >= hold_s and now_s - held[-1][0] <= 3.0
    if not enough:
        return Verdict(late, trace[-1][1], step_c, None, None, 0.0, "too few fresh readings")
    slope, u_slope = _line(held)
    reading_c = sum(c for _, c in held[-8:]) / len(held[-8:])
    steady = abs(slope) + 2.0 * u_slope <= drift_limit_c_min / 60.0
    left = 0.0 if steady else lags.slow_s
    u_c = sqrt(step_c**2 / 12.0 + (slope * lags.mean_s) ** 2)
    reason = "steady" if steady else "still drifting"
    return Verdict(steady or late, reading_c, u_c, slope, left, 0.95 if steady else 0.3, reason)


def _line(rows: Sequence[tuple[float, float]]) -> tuple[float, float]:
    """Slope of the least squares line in °C/s and its standard uncertainty at one step of noise."""
    mid = sum(t for t, _ in rows) / len(rows)
    spread = sum((t - mid) ** 2 for t, _ in rows)
    return sum((t - mid) * c for t, c in rows) / spread, STEP_C / sqrt(12.0 * spread)
