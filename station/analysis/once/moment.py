"""The moment of mixing, found where the readings leave their course; the press only says where to look.

From a trace: back from the steepest change in the minutes around the press to where it began. From readings by hand:
the press itself, unless the jump between two readings says that it came too early or too late.
"""

from __future__ import annotations

from typing import Final, NamedTuple

import numpy as np

from station.analysis.heat.inputs import Array

WITHIN_S: Final = 150.0
"""So far from the press is looked: who presses later than that has forgotten to. Engineering judgement, no source."""
BY_HAND_S: Final = 10.0
"""Readings that far apart are by hand."""
RISE_S: Final = 8.0
COURSE_S: Final = 120.0
FULL_S: Final = 45.0
SEEN: Final = (0.1, 0.3)
U_PRESS_S, U_FOUND_S, U_UNSEEN_S = 2.0, 2.0, 8.0
BEGUN: Final = 0.05
EARLY_S: Final = 15.0
"""A thermometer that is slow shows a change so much later."""


class Moment(NamedTuple):
    """Seconds of the trace's own time, standard uncertainty, and whether the readings themselves show it."""

    time_s: float
    u_s: float
    seen: bool


def moment_of_mixing(time_s: Array, temperature_c: Array, press_s: float, step_c: float) -> Moment:
    """Find the moment in readings (shape n, times rising) near the press."""
    if len(time_s) < 4:
        return Moment(press_s, U_UNSEEN_S, False)
    if by_hand(time_s):
        return _between_readings(time_s, temperature_c, press_s, step_c)
    return _in_trace(time_s, temperature_c, press_s, step_c)


def by_hand(time_s: Array) -> bool:
    """Whether these are readings by hand: seconds apart, where a probe gives one a second."""
    return len(time_s) > 1 and float(np.median(np.diff(time_s))) >= BY_HAND_S


def _in_trace(time_s: Array, temperature_c: Array, press_s: float, step_c: float) -> Moment:
    smooth = _medians(temperature_c)
    first = max(press_s - WITHIN_S, time_s[0] + 2.0 * RISE_S)
    grid = np.arange(first, min(press_s + WITHIN_S, time_s[-1] - 2.0 * RISE_S), 1.0)
    if not len(grid):
        return Moment(press_s, U_UNSEEN_S, False)
    rise = np.interp(grid + RISE_S, time_s, smooth) - np.interp(grid, time_s, smooth)
    steepest = float(grid[np.argmax(np.abs(rise - np.median(rise)))])
    before = (time_s < steepest - RISE_S) & (time_s > steepest - COURSE_S)
    if np.count_nonzero(before) < 8:
        return Moment(press_s, U_UNSEEN_S, False)
    since = time_s - steepest
    slope, level = _course(since[before], temperature_c[before])
    off = smooth - (level + slope * since)
    after = (since > RISE_S) & (since < FULL_S)
    change = float(np.median(off[after])) if after.any() else 0.0
    noise = float(np.median(np.abs(off[before])))
    if abs(change) < max(3.0 * step_c, 6.0 * noise):
        return Moment(press_s, U_UNSEEN_S, False)
    crossed = [_crossing(time_s, off / change, share, steepest + FULL_S) for share in SEEN]
    # The first tenth comes a little late through a probe that lags: as much as the way from there to three tenths says.
    begun = crossed[0] - (crossed[1] - crossed[0]) * SEEN[0] / (SEEN[1] - SEEN[0])
    return Moment(float(np.clip(begun, time_s[0], time_s[-1])), U_FOUND_S, True)


def _medians(temperature_c: Array) -> Array:
    """Each reading as the median of itself and its neighbours: a spike is no change."""
    padded = np.concatenate([temperature_c[:1], temperature_c, temperature_c[-1:]])
    return np.asarray(np.median(np.stack([padded[:-2], padded[1:-1], padded[2:]]), axis=0))


def _course(time_s: Array, temperature_c: Array) -> tuple[float, float]:
    slope, level = np.polyfit(time_s, temperature_c, 1)
    return float(slope), float(level)


def _crossing(time_s: Array, share: Array, wanted: float, until_s: float) -> float:
    """When the change last goes through this share on its way up, before `until_s`."""
    inside = np.flatnonzero(time_s <= until_s)
    below = inside[share[inside] < wanted]
    if not len(below):
        return float(time_s[0])
    k = int(below[-1])
    if k + 1 >= len(time_s) or share[k + 1] <= share[k]:
        return float(time_s[k])
    part = (wanted - share[k]) / (share[k + 1] - share[k])
    return float(time_s[k] + part * (time_s[k + 1] - time_s[k]))


def _between_readings(time_s: Array, temperature_c: Array, press_s: float, step_c: float) -> Moment:
    near = (time_s[1:] > press_s - WITHIN_S) & (time_s[:-1] < press_s + WITHIN_S)
    jumps = np.where(near, np.diff(temperature_c) - np.median(np.diff(temperature_c)), 0.0)
    k = int(np.argmax(np.abs(jumps)))
    most = float(jumps[k])
    if abs(most) < 2.5 * step_c:
        return Moment(press_s, U_UNSEEN_S, False)
    # A reading a moment after the mixing has changed a little already.
    while k > 0 and jumps[k - 1] / most >= max(BEGUN, 1.5 * step_c / abs(most)):
        k -= 1
    begin, end = float(time_s[k]), float(time_s[k + 1])
    if begin - EARLY_S <= press_s <= end:
        return Moment(press_s, U_PRESS_S, True)
    return Moment(0.5 * (begin + end), (end - begin) / np.sqrt(12.0), True)
