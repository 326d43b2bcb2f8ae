"""Which readings belong to which arm.

A join of two least-squares lines lies either between two readings or at a reading (D. J. Hudson, J. Am.
Statist. Assoc. 61, 1097, 1966); these are the two kinds of split here. The least sum of squares alone is
misled by the curve of the first arm (it puts rising readings on the falling line), hence `RULE`.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from station.analysis.lines_fit import LineFit, fit_line, student_t

Floats = NDArray[np.float64]

RULE = (
    "The readings are cut, in order of volume, into those before and those after the turn; the reading at the "
    "top (or bottom) may belong to neither. Of the cuts whose two lines of best fit cross between the two "
    "groups, the one nearest to the top counts; of several such, the one whose lines pass closest to all readings "
    "(least sum of squares). A top reading that lies off the lines drawn without it (99 % test) belongs to neither."
)
LEAST_VOLUMES = 3  # on each arm
CONSIDERED_VOLUMES = 2  # so that an arm still too short is seen as such, not hidden by a wrong cut
LEVEL_OFF_THE_LINES = 0.99


@dataclass(frozen=True, slots=True)
class Split:
    """Sorted readings 0 … end_before - 1 are the first arm, start_after … n - 1 the last."""

    end_before: int
    start_after: int
    steps_from_top: int
    sse: float


def turning(temperature_c: Floats) -> Floats:
    """The readings, turned over where they fall first: what is wanted then is always the top.

    Judged by how far the highest (lowest) reading stands beyond both ends.
    """
    ends = temperature_c[0], temperature_c[-1]
    up, down = temperature_c.max() - max(ends), min(ends) - temperature_c.min()
    return temperature_c if up >= down else -temperature_c


def best_split(x: Floats, y: Floats) -> Split | None:
    """The cut that RULE chooses for readings sorted by x, or None where no two lines cross between groups."""
    top = turning(y)
    tops = np.flatnonzero(top == top.max())
    ranked = rank_splits(x, y, tops)
    if not ranked:
        return None
    best = ranked[0]
    return _without_top(x, y, best, tops) or best


def rank_splits(x: Floats, y: Floats, tops: NDArray[np.intp]) -> list[Split]:
    """Cuts whose lines cross between the groups, best first; `tops` are the indices of the highest reading."""
    cuts = _cuts(x, tops)
    if not cuts:
        return []
    ends, starts = np.array(cuts).T
    xc, yc = x - x.mean(), y - y.mean()
    a1, b1, sse1 = _running_lines(xc, yc, ends)
    a2, b2, sse2 = _running_lines(xc[::-1], yc[::-1], x.size - starts)
    with np.errstate(divide="ignore", invalid="ignore"):
        crossing = (a1 - a2) / (b2 - b1)
    x_left, y_left = xc[ends], yc[ends]  # of the reading left out; of the first one after where none is
    miss = y_left - np.where(x_left < crossing, a1 + b1 * x_left, a2 + b2 * x_left)
    sse = sse1 + sse2 + np.where(starts > ends, miss * miss, 0.0)
    found = [
        Split(int(ends[i]), int(starts[i]), _steps(int(ends[i]), int(starts[i]), tops), float(sse[i]))
        for i in np.flatnonzero((crossing >= xc[ends - 1]) & (crossing <= xc[starts]))
    ]
    return sorted(found, key=lambda split: (split.steps_from_top, split.sse))


def _cuts(x: Floats, tops: NDArray[np.intp]) -> list[tuple[int, int]]:
    """Every (end_before, start_after) that leaves enough different volumes; equal volumes stay together."""
    firsts = np.flatnonzero(np.diff(x, prepend=-np.inf) > 0)
    full = [(i, i) for i in firsts[CONSIDERED_VOLUMES : firsts.size - CONSIDERED_VOLUMES + 1].tolist()]
    lone = [
        (int(firsts[k]), int(firsts[k + 1]))
        for k in range(LEAST_VOLUMES, firsts.size - LEAST_VOLUMES)
        if firsts[k] in tops and firsts[k + 1] == firsts[k] + 1
    ]
    return full + lone


def _steps(end_before: int, start_after: int, tops: NDArray[np.intp]) -> int:
    """How many readings the top is away from standing next to the crossing; 0 where it does."""
    beyond = np.maximum(end_before - 1 - tops, tops - start_after)
    return int(np.maximum(beyond, 0).min())


def _running_lines(x: Floats, y: Floats, counts: NDArray[np.int64]) -> tuple[Floats, Floats, Floats]:
    """Intercept, slope and sum of squares of the lines through the first `counts` points."""
    at = counts - 1
    sx, sy = np.cumsum(x)[at], np.cumsum(y)[at]
    sxx = np.cumsum(x * x)[at] - sx * sx / counts
    sxy = np.cumsum(x * y)[at] - sx * sy / counts
    syy = np.cumsum(y * y)[at] - sy * sy / counts
    slope = sxy / sxx
    return (sy - slope * sx) / counts, slope, np.maximum(syy - slope * sxy, 0.0)


def _without_top(x: Floats, y: Floats, best: Split, tops: NDArray[np.intp]) -> Split | None:
    """The cut beside a lone top reading that lies off the lines drawn without it, or None."""
    if tops.size != 1 or best.start_after > best.end_before or best.steps_from_top:
        return None
    top = int(tops[0])
    if x[top] in x[[top - 1, top + 1]]:
        return None
    if min(np.unique(x[:top]).size, np.unique(x[top + 1 :]).size) < LEAST_VOLUMES:
        return None
    first, last = fit_line(x[:top], y[:top]), fit_line(x[top + 1 :], y[top + 1 :])
    if not _cross_within(first, last, x[top - 1], x[top + 1]):
        return None
    near = first if _cross_within(first, last, x[top], x[top + 1]) else last
    degrees = first.degrees + last.degrees
    s2 = (first.sse + last.sse) / degrees
    limit = student_t(degrees, LEVEL_OFF_THE_LINES) ** 2 * s2 * (1 + near.unit_variance_at(x[top]))
    miss2 = (y[top] - near.at(x[top])) ** 2
    return Split(top, top + 1, 0, first.sse + last.sse) if miss2 > limit else None


def _cross_within(first: LineFit, last: LineFit, low: float, high: float) -> bool:
    """Whether two lines swap places between low and high."""
    return bool((first.at(low) - last.at(low)) * (first.at(high) - last.at(high)) < 0)
