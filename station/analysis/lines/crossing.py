"""The graph-paper method: two straight lines of best fit through the readings, and where they cross.

It must know nothing of how the readings came about. The rule that splits them is in `lines_split`, the
interval in `lines_cross`. Raw temperatures curve the first arm, so the crossing is low by an amount that
`lines_bias` predicts: the interval here is of the scatter only.
"""

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from station.analysis.lines.fit import Crossing, LineFit, LinesRefused, Numbers, cross, fit_line
from station.analysis.lines.split import (
    LEAST_VOLUMES,
    RULE,
    Floats,
    Split,
    best_split,
    is_level,
    level_split,
    smallest_step,
    turning,
)
from station.words import Message, say

# What straight lines say: the two arms, where they cross, and the refusals that follow from the lines.


SCATTER_ONLY = say("label-scatter-only")


@dataclass(frozen=True, slots=True)
class Arm:
    """One line of best fit: temperature = intercept_c + slope_c_cm3 · volume; `points` index the input."""

    slope_c_cm3: float
    u_slope_c_cm3: float
    intercept_c: float
    u_intercept_c: float
    points: tuple[int, ...]


@dataclass(frozen=True, slots=True)
class CrossingResult:
    """End-point by straight lines; u_ and the interval (Fieller) are of the scatter about them only.

    `left_out` holds the index of a reading at the top that belongs to neither arm (or nothing); `s_c` is the
    pooled standard deviation of the readings about the lines, with `degrees` = n1 + n2 - 4; `g` is Fieller's
    (below 1, else there is no interval); `rule` says how the readings were split.
    """

    end_point_cm3: float
    u_end_point_cm3: float
    interval_95_cm3: tuple[float, float]
    temperature_c: float
    u_temperature_c: float
    before: Arm
    after: Arm
    left_out: tuple[int, ...]
    s_c: float
    degrees: int
    g: float
    rule: Message
    label: Message = SCATTER_ONLY

    @property
    def rises_first(self) -> bool:
        """True where heat is given out (up, then down; either may be level), False where it is taken in."""
        return self.before.slope_c_cm3 > self.after.slope_c_cm3


def draw(
    volumes: Floats,
    temperatures: Floats,
    before: tuple[int, ...],
    after: tuple[int, ...],
    left_out: tuple[int, ...],
    rule: Message,
) -> CrossingResult:
    """Lines of best fit through the readings (indices) on each arm, crossed. Raises LinesRefused."""
    first = fit_line(volumes[list(before)], temperatures[list(before)])
    last = fit_line(volumes[list(after)], temperatures[list(after)])
    level = [
        is_level(line, volumes[list(arm)], smallest_step(temperatures))
        for line, arm in ((first, before), (last, after))
    ]
    crossing, interval = _accepted(first, last, one_level=level[0] != level[1])
    return CrossingResult(
        end_point_cm3=crossing.x,
        u_end_point_cm3=crossing.u_x,
        interval_95_cm3=interval,
        temperature_c=crossing.y,
        u_temperature_c=crossing.u_y,
        before=_arm(first, crossing, before),
        after=_arm(last, crossing, after),
        left_out=left_out,
        s_c=crossing.s,
        degrees=crossing.degrees,
        g=crossing.g,
        rule=rule,
    )


def _accepted(first: LineFit, last: LineFit, *, one_level: bool) -> tuple[Crossing, tuple[float, float]]:
    crossing = cross(first, last)
    if first.slope * last.slope >= 0 and not one_level:
        raise LinesRefused("no_bend", say("lines-same-way"))
    if crossing.interval is None:
        raise LinesRefused("unbounded", say("lines-scatter"))
    return crossing, crossing.interval


def _arm(line: LineFit, crossing: Crossing, points: tuple[int, ...]) -> Arm:
    pooled = line.with_s(crossing.s, crossing.degrees)
    return Arm(line.slope, pooled.u_slope, line.intercept, pooled.u_intercept, points)


CHOSEN = say("lines-chosen-by-person")
LARGEST = 1e6


def fit_lines(volume_cm3: Numbers, temperature_c: Numbers) -> CrossingResult:
    """End-point from readings: volume added in cm³ and temperature in °C, each of shape (n,), in any order.

    Leave out readings that are missing or set aside before the call. Raises LinesRefused with a sentence for
    a student when there are fewer than three volumes on an arm, the arms do not bend, they cross outside
    the gap between them, the interval is unbounded, or something given is not a number. One arm may be level.
    """
    volumes, temperatures = _checked(volume_cm3, temperature_c)
    order = np.argsort(volumes, kind="stable")
    x, y = volumes[order], temperatures[order]
    indices = tuple(int(i) for i in order)

    def drawn(split: Split) -> CrossingResult:
        before, after = indices[: split.end_before], indices[split.start_after :]
        return draw(volumes, temperatures, before, after, indices[split.end_before : split.start_after], RULE)

    _require_volumes(x)
    try:
        return drawn(_split_at_top(x, y))
    except LinesRefused as refused:
        split = None if refused.kind == "unbounded" else level_split(x, y)
        if split is None:
            raise
    return drawn(split)


def fit_arms(
    volume_cm3: Numbers, temperature_c: Numbers, before: Sequence[int], after: Sequence[int]
) -> CrossingResult:
    """The same for a split that a person chose: indices of the readings on the arm before and after the turn.

    Refuses as `fit_lines` does; the crossing must lie between the arms (a shared reading counts for both).
    """
    volumes, temperatures = _checked(volume_cm3, temperature_c)
    for side, arm in (("before", before), ("after", after)):
        if np.unique(volumes[list(arm)]).size < LEAST_VOLUMES:
            raise _too_few(side, int(np.unique(volumes[list(arm)]).size))
    unused = tuple(i for i in range(volumes.size) if i not in before and i not in after)
    result = draw(volumes, temperatures, tuple(before), tuple(after), unused, CHOSEN)
    gap = sorted((float(volumes[list(before)].max()), float(volumes[list(after)].min())))
    if gap[0] < gap[1] and not gap[0] <= result.end_point_cm3 <= gap[1]:
        crossing = f"{result.end_point_cm3:.1f}"
        outside = say("lines-cross-outside", end_point_cm3=crossing, from_cm3=f"{gap[0]:g}", to_cm3=f"{gap[1]:g}")
        raise LinesRefused("outside_gap", outside)
    return result


def _checked(volume_cm3: Numbers, temperature_c: Numbers) -> tuple[Floats, Floats]:
    try:
        volumes = np.asarray(volume_cm3, dtype=np.float64)
        temperatures = np.asarray(temperature_c, dtype=np.float64)
    except (TypeError, ValueError):
        raise LinesRefused("not_numbers", say("lines-not-a-number")) from None
    if volumes.ndim != 1 or volumes.shape != temperatures.shape:
        raise LinesRefused("not_numbers", say("lines-one-temperature-each"))
    if not (np.isfinite(volumes).all() and np.isfinite(temperatures).all()):
        raise LinesRefused("not_numbers", say("lines-missing-number"))
    if volumes.size and max(np.abs(volumes).max(), np.abs(temperatures).max()) > LARGEST:
        raise LinesRefused("not_numbers", say("lines-too-large"))
    # Sums of portions differ in their last digits where they mean the same volume.
    return volumes.round(9), temperatures


def _require_volumes(x: Floats) -> None:
    different = int(np.unique(x).size)
    if different < 2 * LEAST_VOLUMES:
        raise LinesRefused("too_few", say("lines-few-volumes", least=LEAST_VOLUMES, count=different))


def _split_at_top(x: Floats, y: Floats) -> Split:
    """The cut at the top. Raises LinesRefused where it stands at an end or leaves too few readings on a side."""
    _require_turn(x, y)
    split = best_split(x, y)
    if split is None:
        raise LinesRefused("outside_gap", say("lines-no-crossing"))
    _require_arms(x, split)
    return split


def _require_turn(x: Floats, y: Floats) -> None:
    if not np.ptp(y):
        raise LinesRefused("no_bend", say("lines-all-same"))
    facing = turning(y)
    if facing.max() == max(facing[0], facing[-1]):
        stayed = int(np.unique(x[np.flatnonzero(y != y[-1])[-1] + 1 :]).size)
        if 1 < stayed < LEAST_VOLUMES and y[-1] in (y.min(), y.max()):
            raise _too_few("after", stayed)
        raise LinesRefused("no_bend", say("lines-no-turn"))
    tops = x[facing == facing.max()]
    before, after = int(np.unique(x[x < tops[-1]]).size), int(np.unique(x[x > tops[0]]).size)
    if after < LEAST_VOLUMES - 1:
        raise _too_few("after", after)
    if before < LEAST_VOLUMES - 1:
        raise _too_few("before", before)


def _require_arms(x: Floats, split: Split) -> None:
    after = int(np.unique(x[split.start_after :]).size)
    if after < LEAST_VOLUMES:
        raise _too_few("after", after)
    before = int(np.unique(x[: split.end_before]).size)
    if before < LEAST_VOLUMES:
        raise _too_few("before", before)


def _too_few(side: str, count: int) -> LinesRefused:
    few = say("lines-few-after" if side == "after" else "lines-few-before", least=LEAST_VOLUMES, count=count)
    return LinesRefused("too_few", few)
