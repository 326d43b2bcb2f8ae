"""Does the cup model describe the trace? Tests on the residuals, with words when it does not.

A spill, an open lid, a probe lifted out or a portion that was not poured as planned leave residuals that hang
together for many samples. Limits are set from simulated cups of another build, in which a good cup leaves
blocks of ten samples within some 0.02 °C: common practice, no source.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from station.analysis.cup import pour_times
from station.analysis.heat_inputs import Array
from station.analysis.heat_solver import Problem, Solution, loss
from station.analysis.heat_spread import strain

BLOCK = 10
LARGEST_NOISE_C, LARGEST_BLOCK_RMS_C, LARGEST_BLOCK_C = 0.035, 0.035, 0.15
LARGEST_SHARE_OUT = 0.10
LARGEST_PULL, MOST_UNUSUAL = 3.5, 4.2
LEAST_STRETCH, LEAST_SHARE, UNUSUAL_SHARE = 2.0, 0.3, 0.08
"""When it does not describe the trace: least factor on u, least u over a portion, the same for an unusual cup only."""


@dataclass(frozen=True)
class Check:
    """Verdict: whether the model describes the trace; if not, by how much and to what least to widen u, and why."""

    describes_trace: bool
    stretch: float
    least_u_cm3: float
    notes: tuple[str, ...]


def keep(residuals_c: Array, noise_c: float, step_c: float) -> NDArray[np.bool_]:
    """Marks the samples that are no outliers."""
    return np.asarray(np.abs(residuals_c) < 8.0 * noise_c + step_c)


def _blocks(problem: Problem, solution: Solution, time_s: Array) -> list[NDArray[np.intp]]:
    """Runs of samples within one interval."""
    interval = np.searchsorted(pour_times(problem.cup, solution.theta), time_s)
    found: list[NDArray[np.intp]] = []
    for k in np.unique(interval):
        inside = np.flatnonzero(interval == k)
        found += np.array_split(inside, max(1, len(inside) // BLOCK))
    return found


def _pulls(problem: Problem, solution: Solution) -> list[str]:
    """Portions that had to go far from what was planned and marked."""
    layout, pull = problem.cup.layout, strain(problem, solution)
    notes = [
        f"Portion {k + 1} does not look like its planned volume: was it missed, doubled or short?"
        for k in np.flatnonzero(pull[layout.volumes] > LARGEST_PULL)
    ]
    return notes + [
        f"Portion {k + 1} seems to have been poured far from the moment that was marked."
        for k in np.flatnonzero(pull[layout.times] > LARGEST_PULL)
    ]


def _unusual(problem: Problem, solution: Solution) -> bool:
    """Whether cup or probe had to go far from the usual: alone that hardly moves the end-point."""
    layout, pull = problem.cup.layout, strain(problem, solution)
    pull[layout.volumes] = pull[layout.times] = 0.0
    return bool(pull.max() > MOST_UNUSUAL)


def check(problem: Problem, solution: Solution, time_s: Array, residuals_c: Array) -> Check:
    """Judge the residuals of all samples, those set aside in the fit as well."""
    kept = keep(residuals_c, problem.noise_c, problem.trace.step_c)
    blocks = _blocks(problem, solution, time_s)
    means = np.array([residuals_c[block].mean() for block in blocks])
    _, slope, curvature = loss(residuals_c, problem.noise_c, problem.trace.step_c)
    together = sum(float(slope[block].sum()) ** 2 for block in blocks) / max(float(curvature.sum()), 1e-9)
    notes = _pulls(problem, solution)
    if problem.noise_c > LARGEST_NOISE_C or np.sqrt(np.mean(means**2)) > LARGEST_BLOCK_RMS_C:
        notes.append("The trace strays from the model more than the probe's noise allows.")
    worst = int(np.argmax(np.abs(means)))
    if abs(means[worst]) > LARGEST_BLOCK_C:
        moment = float(time_s[blocks[worst]].mean())
        notes.append(f"Something happened at about {moment:.0f} s: a spill, the lid, or the probe out of the liquid?")
    if np.mean(~kept) > LARGEST_SHARE_OUT:
        notes.append(f"{100.0 * np.mean(~kept):.0f} % of the samples do not fit and were set aside.")
    share = LEAST_SHARE if notes else UNUSUAL_SHARE
    if _unusual(problem, solution):
        notes.append("The cup or the probe would have to be far from the usual to give this trace.")
    stretch = 1.0 if not notes else max(LEAST_STRETCH, float(np.sqrt(together)))
    least = 0.0 if not notes else share * float(np.mean(np.diff(problem.scale.edges_cm3)))
    return Check(not notes, stretch, least, tuple(notes))
