"""Which readings lie on the straight line before or after mixing, and the line through them.

A stated rule, one for both sides. Readings close to the mixing are left out; so is what comes before the line
is reached: the line begins at the earliest reading from which on the next few agree with the straight line
through all later ones. It knows nothing of heat.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from station.analysis.heat_inputs import Array
from station.analysis.lines_fit import LineFit, fit_line
from station.analysis.once_inputs import Indices

LEAST_READINGS = 3
LEAST_SPAN_S = 90.0
LONGEST_S, LONGEST_READINGS = 240.0, 8
CLOSE_BEFORE_S, CLOSE_AFTER_S = 10.0, 10.0
BLOCK_S = 20.0
OFF_STEPS = 2.0
CHANGE_SHARE = 0.01
BEGINNINGS = 60
ROUNDS = 5
NORMAL_MAD = 1.4826  # standard deviation over median absolute deviation, normal distribution

RULE = (
    f"Readings from {CLOSE_BEFORE_S:.0f} s before to {CLOSE_AFTER_S:.0f} s after mixing are left out. Each line begins "
    "at the earliest reading from which on the next ones agree, within half a step of the probe or one hundredth of "
    "the change, with the straight line through all later readings. It goes on for "
    f"{LEAST_SPAN_S / 60:g} to {LONGEST_S / 60:.0f} minutes and at least {LEAST_READINGS} readings (readings by hand: "
    f"up to {LONGEST_READINGS}, however long). Readings more than {OFF_STEPS:.0f} steps off their line, and more than "
    "three times as far as is usual, are set aside."
)


@dataclass(frozen=True)
class Fitted:
    """A line with the samples it goes through (``used``), those in its window that lie off it, and residuals °C."""

    line: LineFit
    used: Indices
    set_aside: Indices
    residuals_c: Array


def robust_line(time_s: Array, temperature_c: Array, inside: Indices, step_c: float) -> Fitted:
    """Least squares line through ``inside``, without those far off it; starts from the medians of the thirds."""
    used = inside
    off = np.abs(temperature_c[inside] - _median_line(time_s[inside], temperature_c[inside]))
    for _ in range(ROUNDS):
        near = inside[off <= max(OFF_STEPS * step_c, 3.0 * NORMAL_MAD * float(np.median(off)))]
        if len(near) < max(LEAST_READINGS, len(inside) // 2):
            near = inside
        line = fit_line(time_s[near], temperature_c[near])
        off = np.abs(temperature_c[inside] - (line.intercept + line.slope * time_s[inside]))
        if np.array_equal(near, used):
            break
        used = near
    residual = temperature_c[used] - (line.intercept + line.slope * time_s[used])
    return Fitted(line, used, np.setdiff1d(inside, used), residual)


def _median_line(time_s: Array, temperature_c: Array) -> Array:
    """Line through the medians of the first and the last third: hardly moved by a few readings far off."""
    third = max(1, len(time_s) // 3)
    x = np.median(time_s[:third]), np.median(time_s[-third:])
    y = np.median(temperature_c[:third]), np.median(temperature_c[-third:])
    slope = (y[1] - y[0]) / (x[1] - x[0])
    level = np.median(temperature_c - slope * time_s)
    return np.asarray(level + slope * time_s)


def find_line(time_s: Array, temperature_c: Array, inside: Indices, step_c: float, change_c: float) -> Fitted | None:
    """The line of the rule among ``inside`` (indices in order of time); None when no part is straight.

    ``change_c`` is about the change on mixing, for what is allowed off the line.
    """
    allowed = max(0.5 * step_c, CHANGE_SHARE * abs(change_c))
    last = time_s[inside[-1]]
    latest = int(np.searchsorted(time_s[inside], last - LEAST_SPAN_S, side="right"))
    latest = min(latest, len(inside) - LEAST_READINGS + 1)
    for first in np.unique(np.linspace(0, latest - 1, min(BEGINNINGS, max(latest, 1))).astype(int)):
        part = inside[first:]
        long = int(np.count_nonzero(time_s[part] <= time_s[part[0]] + LONGEST_S))
        part = part[: max(long, LONGEST_READINGS)]
        if _agrees(time_s, temperature_c, part, step_c, allowed):
            return robust_line(time_s, temperature_c, part, step_c)
    return None


def _agrees(time_s: Array, temperature_c: Array, part: Indices, step_c: float, allowed: float) -> bool:
    """Whether the first readings of ``part`` lie on the line through the rest of it."""
    begun = time_s[part] < time_s[part[0]] + BLOCK_S
    block, rest = part[begun], part[~begun]
    if len(rest) < LEAST_READINGS - 1 or np.ptp(time_s[rest]) == 0.0:
        return False
    if len(rest) == 2:
        line = fit_line(time_s[rest], temperature_c[rest])
        scatter = 0.0
    else:
        fitted = robust_line(time_s, temperature_c, rest, step_c)
        line, scatter = fitted.line, fitted.line.s
    middle = float(np.median(temperature_c[block] - line.slope * (time_s[block] - time_s[block[0]])))
    doubt = 2.0 * scatter * np.sqrt(line.unit_variance_at(float(time_s[block[0]])) + 1.0 / len(block))
    return bool(abs(middle - line.at(float(time_s[block[0]]))) <= max(allowed, min(doubt, 3.0 * allowed)) + 1e-9)


def facts_in(temperature_c: Array) -> int:
    """How many facts readings on a probe's steps can hold: two, and one for each time the value changes.

    A slow drift without flicker repeats one value many times; where it changes is all that is known of the slope.
    """
    return 2 + int(np.count_nonzero(np.diff(temperature_c)))


def effective_count(residuals_c: Array, step_c: float) -> float:
    """How many independent readings these are worth, from the correlation of neighbours; at least 2."""
    count = len(residuals_c)
    power = float(residuals_c @ residuals_c)
    if count < 20:
        return float(count)
    if power < count * (1e-3 * step_c) ** 2:
        return 2.0
    total, most = 1.0, count // 3
    for lag in range(1, most):
        rho = float(residuals_c[:-lag] @ residuals_c[lag:]) / power
        if rho < 0.05:
            break
        total += 2.0 * rho
    return float(np.clip(count / total, 2.0, count))
