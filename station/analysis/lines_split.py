"""Which readings belong to which arm.

The rule, in words that can be shown:

    Try every way to cut the readings, in order of volume, into a first and a last group of at least three
    volumes each, also leaving out the one reading between the groups. Keep those whose two best-fit lines
    cross between the groups. Take the one whose bent line passes closest to all readings (least sum of
    squares, the reading left out counted too).

Without a reading left out that is the least-squares solution of two joined lines (D. J. Hudson, J. Am.
Statist. Assoc. 61, 1097, 1966); a reading left out is its case of a join at a reading, which belongs to
neither line.
"""

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Floats = NDArray[np.float64]
LEAST_VOLUMES = 3


@dataclass(frozen=True, slots=True)
class Split:
    """Sorted readings 0 … end_before - 1 are the first arm, start_after … n - 1 the last."""

    end_before: int
    start_after: int
    sse: float
    crossing: float


def splits(x: Floats) -> list[tuple[int, int]]:
    """All cuts (end_before, start_after) of sorted x with enough different volumes on each side."""
    fresh = np.concatenate(([True], np.diff(x) > 0))
    rank = np.cumsum(fresh)  # 1 for the first volume, 2 for the second ...
    starts = np.flatnonzero(fresh)
    last = int(rank[-1]) if rank.size else 0
    cuts = []
    for start in starts:
        before, after = int(rank[start]) - 1, last - int(rank[start]) + 1
        if before >= LEAST_VOLUMES and after >= LEAST_VOLUMES:
            cuts.append((int(start), int(start)))
        nxt = int(np.searchsorted(x, x[start], side="right"))
        if before >= LEAST_VOLUMES and after - 1 >= LEAST_VOLUMES and nxt - start == 1:
            cuts.append((int(start), nxt))
    return cuts


def rank_splits(x: Floats, y: Floats) -> list[Split]:
    """Cuts of sorted x whose lines cross between the arms, the closest bent line first. O(n)."""
    cuts = splits(x)
    if not cuts:
        return []
    ends, starts = np.array(cuts).T
    xc, yc = x - x.mean(), y - y.mean()
    with np.errstate(divide="ignore", invalid="ignore"):
        a1, b1, sse1 = _prefix_lines(xc, yc, ends)
        a2, b2, sse2 = _prefix_lines(xc[::-1], yc[::-1], x.size - starts)
        crossing = (a1 - a2) / (b2 - b1)
    within = (crossing >= xc[ends - 1]) & (crossing <= xc[starts])
    middle = np.minimum(ends, x.size - 1)
    left_out = starts > ends
    on_first = xc[middle] < crossing
    miss = yc[middle] - np.where(on_first, a1 + b1 * xc[middle], a2 + b2 * xc[middle])
    sse = sse1 + sse2 + np.where(left_out, miss * miss, 0.0)
    found = [
        Split(int(ends[i]), int(starts[i]), float(sse[i]), float(crossing[i] + x.mean()))
        for i in np.flatnonzero(within)
    ]
    return sorted(found, key=lambda split: (split.sse, split.start_after - split.end_before))


def _prefix_lines(x: Floats, y: Floats, counts: NDArray[np.int64]) -> tuple[Floats, Floats, Floats]:
    """Intercept, slope and sum of squares of the lines through the first `counts` points."""
    at = counts - 1
    sx, sy = np.cumsum(x)[at], np.cumsum(y)[at]
    sxx = np.cumsum(x * x)[at] - sx * sx / counts
    sxy = np.cumsum(x * y)[at] - sx * sy / counts
    syy = np.cumsum(y * y)[at] - sy * sy / counts
    slope = sxy / sxx
    return (sy - slope * sx) / counts, slope, np.maximum(syy - slope * sxy, 0.0)
