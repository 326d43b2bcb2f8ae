"""The least that two readings say of a cup mixed once: their difference, where no lines can be drawn."""

from __future__ import annotations

import math
from typing import Final

import numpy as np

from station.analysis.heat.inputs import Array
from station.analysis.lines.fit import student_t
from station.analysis.once.inputs import Extrapolation, OnceRefused, Stretch
from station.analysis.once.moment import Moment
from station.words import say

U_LOSS: Final = 0.04
"""Of the change: what a cup loses, and a thermometer is behind, in the first minute. Estimate, no source."""
LABEL, RULE = say("once-label-difference"), say("once-rule-difference")


def difference(time_s: Array, temperature_c: Array, moment: Moment, step_c: float) -> Extrapolation:
    """Change from the newest reading before the moment to the furthest one after it. Raises OnceRefused."""
    before = np.flatnonzero(time_s <= moment.time_s)
    after = np.flatnonzero(time_s > moment.time_s)
    if not len(before) or not len(after):
        raise OnceRefused("too_few_before" if not len(before) else "too_few_after", say("once-two-readings"))
    first = int(before[-1])
    last = int(after[np.argmax(np.abs(temperature_c[after] - temperature_c[first]))])
    change = float(temperature_c[last] - temperature_c[first])
    u_reading = step_c / math.sqrt(6.0)
    u = math.hypot(u_reading * math.sqrt(2.0), U_LOSS * change)
    if abs(change) <= max(step_c, 2.0 * u_reading * math.sqrt(2.0)):
        raise OnceRefused("no_change", say("once-no-change", change_c=f"{change:+.2f}"))
    factor = student_t(math.inf)
    before_it, after_it = (_point(time_s, temperature_c, k, u_reading) for k in (first, last))
    interval = change - factor * u, change + factor * u
    return Extrapolation(change, u, interval, before_it, after_it, moment.time_s, u_reading, RULE, LABEL)


def _point(time_s: Array, temperature_c: Array, k: int, u_c: float) -> Stretch:
    at_s, used = float(time_s[k]), np.array([k])
    return Stretch(at_s, at_s, 0.0, 0.0, float(temperature_c[k]), u_c, used, used[:0], 1.0)
