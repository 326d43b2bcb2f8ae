"""The graph-paper method: two straight lines of best fit through the readings, and where they cross.

It must know nothing of how the readings came about. The rule that splits them is in `lines_split`, the
interval in `lines_cross`. Raw temperatures bend the first arm, so the crossing is low by an amount that
`lines_bias` predicts: the interval here is of the scatter only.
"""

from dataclasses import dataclass
from typing import Literal

import numpy as np

from station.analysis.lines_cross import Crossing, LinesRefused, cross
from station.analysis.lines_fit import LineFit, Numbers, fit_line
from station.analysis.lines_split import LEAST_VOLUMES, rank_splits

__all__ = ["Arm", "CrossingResult", "LinesRefused", "fit_lines"]

SCATTER_ONLY: Literal["scatter only"] = "scatter only"


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
    pooled standard deviation of the readings about the lines, with `degrees` = n1 + n2 - 4.
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
    label: str = SCATTER_ONLY

    @property
    def rises_first(self) -> bool:
        """True where heat is given out (up, then down), False where it is taken in."""
        return self.before.slope_c_cm3 > 0


def fit_lines(volume_cm3: Numbers, temperature_c: Numbers) -> CrossingResult:
    """End-point from readings: volume added in cm³ and temperature in °C, each of shape (n,), in any order.

    Leave out readings that are missing or set aside before the call. Raises LinesRefused with a sentence for
    a student when there are fewer than three volumes on an arm, the arms do not bend, they cross outside
    the gap between them, the interval is unbounded, or something given is not a number.
    """
    volumes, temperatures = _checked(volume_cm3, temperature_c)
    order = np.argsort(volumes, kind="stable")
    x, y = volumes[order], temperatures[order]
    if np.unique(x).size < 2 * LEAST_VOLUMES:
        raise LinesRefused(
            "too_few",
            f"Two lines need at least {LEAST_VOLUMES} different volumes on each side of the top; "
            f"there are {np.unique(x).size} in all. Add more portions.",
        )
    ranked = rank_splits(x, y)
    if not ranked:
        raise LinesRefused(
            "outside_gap", "However the readings are split, the two lines do not cross between them."
        )
    best = ranked[0]
    first = fit_line(x[: best.end_before], y[: best.end_before])
    last = fit_line(x[best.start_after :], y[best.start_after :])
    crossing = _accepted(first, last)
    indices = tuple(int(i) for i in order)
    return CrossingResult(
        end_point_cm3=crossing.x,
        u_end_point_cm3=crossing.u_x,
        interval_95_cm3=crossing.interval or (np.nan, np.nan),
        temperature_c=crossing.y,
        u_temperature_c=crossing.u_y,
        before=_arm(first, crossing, indices[: best.end_before]),
        after=_arm(last, crossing, indices[best.start_after :]),
        left_out=indices[best.end_before : best.start_after],
        s_c=crossing.s,
        degrees=crossing.degrees,
        g=crossing.g,
    )


def _checked(volume_cm3: Numbers, temperature_c: Numbers) -> tuple[np.ndarray, np.ndarray]:
    try:
        volumes = np.asarray(volume_cm3, dtype=np.float64)
        temperatures = np.asarray(temperature_c, dtype=np.float64)
    except (TypeError, ValueError):
        raise LinesRefused("not_numbers", "A volume or a temperature is not a number.") from None
    if volumes.ndim != 1 or volumes.shape != temperatures.shape:
        raise LinesRefused("not_numbers", "There must be one temperature for each volume.")
    if not (np.isfinite(volumes).all() and np.isfinite(temperatures).all()):
        raise LinesRefused("not_numbers", "A volume or a temperature is missing or not a number.")
    return volumes, temperatures


def _accepted(first: LineFit, last: LineFit) -> Crossing:
    crossing = cross(first, last)
    if first.slope * last.slope >= 0:
        raise LinesRefused(
            "no_bend",
            "Both lines go the same way: the temperature must turn. Was enough added to pass the end-point?",
        )
    if crossing.interval is None:
        raise LinesRefused(
            "unbounded",
            "The readings scatter too much to say where the lines cross: no interval can be given.",
        )
    return crossing


def _arm(line: LineFit, crossing: Crossing, points: tuple[int, ...]) -> Arm:
    pooled = line.with_s(crossing.s, crossing.degrees)
    return Arm(line.slope, pooled.u_slope, line.intercept, pooled.u_intercept, points)
