"""Has a probe in ice, in boiling water or beside a thermometer come to rest, and where? No clock, no numpy."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass
from math import hypot, sqrt

from station.analysis.settle_trace import STEP_C, Sample, fresh

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
    reason: str = ""


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
