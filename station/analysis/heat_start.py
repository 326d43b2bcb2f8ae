"""Where the fit of a trace begins: the end-point from the last samples before each pour.

The heat taken up, (heat capacity)·(temperature change) summed over the portions, rises in proportion to the
volume up to the end-point and then bends. For a given end-point that is linear regression, so a fine grid
of end-points is searched at once.
"""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from station.analysis.heat_inputs import Array, HeatSetup, Pour, Trace

GRID_CM3 = 0.1


@dataclass(frozen=True)
class Bend:
    """A first guess: end-point, heat per cm³ of alkali, and how much of the scatter it leaves (cm²-free)."""

    end_point_cm3: float
    heat_j_cm3: float
    misfit: float


def plateaus(trace: Trace, pours: Sequence[Pour]) -> Array:
    """Temperature late in each interval, °C, shape pours + 1: the last few samples before the next press."""
    ends = [p.press_s - 1.5 for p in pours] + [float(trace.time_s[-1]) + 1.0]
    begins = [-np.inf] + [p.press_s for p in pours]
    found = np.empty(len(ends))
    for k, (begin, end) in enumerate(zip(begins, ends, strict=True)):
        inside = np.flatnonzero((trace.time_s > begin) & (trace.time_s <= end))
        if len(inside):
            found[k] = np.median(trace.temperature_c[inside[-3:]])
        else:
            found[k] = np.interp(end, trace.time_s, trace.temperature_c)
    return found


def heat_taken_up(temperature_c: Array, volume_cm3: Array, setup: HeatSetup) -> Array:
    """Heat taken up since the start, J, for readings at cumulative ``volume_cm3`` (both shape n)."""
    capacity = (
        setup.acid_volume_cm3.value * setup.acid_j_cm3_k + setup.cup_j_k.value + setup.alkali_j_cm3_k * volume_cm3
    )
    middle = (capacity[1:] + capacity[:-1]) / 2.0
    alkali_c = setup.alkali_c.value if setup.alkali_c else float(temperature_c[0])
    warming = (temperature_c[1:] + temperature_c[:-1]) / 2.0 - alkali_c
    steps = middle * np.diff(temperature_c) + setup.alkali_j_cm3_k * np.diff(volume_cm3) * warming
    return np.concatenate([[0.0], np.cumsum(steps)])


def bends(heat_j: Array, volume_cm3: Array) -> list[Bend]:
    """The best bend within each portion, best first."""
    grid = np.arange(volume_cm3[0] + GRID_CM3, volume_cm3[-1], GRID_CM3)
    base = np.stack([np.ones_like(volume_cm3), volume_cm3], axis=1)
    q, _ = np.linalg.qr(base)
    rest = heat_j - q @ (q.T @ heat_j)
    ramps = np.minimum(volume_cm3[:, None], grid[None, :])
    ramps -= q @ (q.T @ ramps)
    norm = np.maximum((ramps**2).sum(axis=0), 1e-12)
    heat = (ramps * rest[:, None]).sum(axis=0) / norm
    misfit = (rest**2).sum() - heat**2 * norm
    portion = np.searchsorted(volume_cm3, grid, side="left")
    found = []
    for k in np.unique(portion):
        inside = np.flatnonzero(portion == k)
        best = inside[np.argmin(misfit[inside])]
        found.append(Bend(float(grid[best]), float(heat[best]), float(misfit[best])))
    return sorted(found, key=lambda bend: bend.misfit)
