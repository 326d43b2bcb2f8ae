"""The graph-paper method: two straight lines of best fit through the readings, and where they cross.

It must know nothing of how the readings came about. The rule that splits them is in `lines_split`, the
interval in `lines_cross`. Raw temperatures curve the first arm, so the crossing is low by an amount that
`lines_bias` predicts: the interval here is of the scatter only.
"""

from collections.abc import Sequence

import numpy as np

from station.analysis.lines_cross import LinesRefused
from station.analysis.lines_fit import Numbers
from station.analysis.lines_result import Arm, CrossingResult, draw
from station.analysis.lines_split import LEAST_VOLUMES, RULE, Floats, Split, best_split, turning

__all__ = ["RULE", "Arm", "CrossingResult", "LinesRefused", "fit_arms", "fit_lines"]

CHOSEN = "The readings on each line were chosen by a person."
LARGEST = 1e6


def fit_lines(volume_cm3: Numbers, temperature_c: Numbers) -> CrossingResult:
    """End-point from readings: volume added in cm³ and temperature in °C, each of shape (n,), in any order.

    Leave out readings that are missing or set aside before the call. Raises LinesRefused with a sentence for
    a student when there are fewer than three volumes on an arm, the arms do not bend, they cross outside
    the gap between them, the interval is unbounded, or something given is not a number.
    """
    volumes, temperatures = _checked(volume_cm3, temperature_c)
    order = np.argsort(volumes, kind="stable")
    x, y = volumes[order], temperatures[order]
    _require_turn(x, y)
    split = best_split(x, y)
    if split is None:
        raise LinesRefused("outside_gap", "The two lines of best fit do not cross near the turn.")
    _require_arms(x, split)
    indices = tuple(int(i) for i in order)
    before, after = indices[: split.end_before], indices[split.start_after :]
    return draw(volumes, temperatures, before, after, indices[split.end_before : split.start_after], RULE)


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
        raise LinesRefused(
            "outside_gap",
            f"These lines cross at {result.end_point_cm3:.1f} cm³, which is not between the two groups "
            f"({gap[0]:g} to {gap[1]:g} cm³). Move a reading to the other line.",
        )
    return result


def _checked(volume_cm3: Numbers, temperature_c: Numbers) -> tuple[Floats, Floats]:
    try:
        volumes = np.asarray(volume_cm3, dtype=np.float64)
        temperatures = np.asarray(temperature_c, dtype=np.float64)
    except (TypeError, ValueError):
        raise LinesRefused("not_numbers", "A volume or a temperature is not a number.") from None
    if volumes.ndim != 1 or volumes.shape != temperatures.shape:
        raise LinesRefused("not_numbers", "There must be one temperature for each volume.")
    if not (np.isfinite(volumes).all() and np.isfinite(temperatures).all()):
        raise LinesRefused("not_numbers", "A volume or a temperature is missing or not a number.")
    if volumes.size and max(np.abs(volumes).max(), np.abs(temperatures).max()) > LARGEST:
        raise LinesRefused("not_numbers", "A volume or a temperature is far too large to be a reading.")
    # Sums of portions differ in their last digits where they mean the same volume.
    return volumes.round(9), temperatures


def _require_turn(x: Floats, y: Floats) -> None:
    """Refuse readings that cannot hold two arms, before any line is drawn."""
    different = int(np.unique(x).size)
    if different < 2 * LEAST_VOLUMES:
        raise LinesRefused(
            "too_few",
            f"Two lines need at least {LEAST_VOLUMES} different volumes each; there are {different} in all.",
        )
    facing = turning(y)
    if facing.max() == max(facing[0], facing[-1]):
        raise LinesRefused(
            "no_bend",
            "The temperature does not turn: its highest and lowest readings are the first and the last. "
            "Has enough been added to pass the end-point?",
        )
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
    mend = "Add more portions." if side == "after" else "Begin again with smaller portions."
    return LinesRefused("too_few", f"The line {side} the turn needs {LEAST_VOLUMES} readings; it has {count}. {mend}")
