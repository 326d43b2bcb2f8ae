"""Which readings belong to which arm.

A join of two least-squares lines lies either between two readings or at a reading (D. J. Hudson, J. Am.
Statist. Assoc. 61, 1097, 1966); these are the two kinds of split here. The least sum of squares alone is
misled by the curve of the first arm (it puts rising readings on the falling line), hence `RULE`.
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

from station.analysis.lines.fit import LineFit, Numbers, fit_line, student_t
from station.words import Message, say

# Readings that stand off their line: flagged for a person to judge, never dropped.
#
# Test: the externally studentised residual of each reading about its arm, with the scatter pooled over both
# arms, against Student's t with Bonferroni's correction for looking at all of them (R. D. Cook and S. Weisberg,
# *Residuals and Influence in Regression*, 1982, 2.2.2; from memory).


TEST = say("test-residual")


@dataclass(frozen=True, slots=True)
class Suspect:
    """A reading further from its line than chance explains: index in the input, distance, test and numbers."""

    point: int
    off_line_c: float
    statistic: float
    critical: float
    test: Message = TEST


def suspects(
    volume_cm3: Numbers,
    temperature_c: Numbers,
    arms: Sequence[Sequence[int]],
    level: float = 0.99,
    step_c: float = 0.0,
) -> tuple[Suspect, ...]:
    """Suspected anomalies among readings of shape (n,) on the arms (indices); one within `step_c` never is.

    Returns them furthest first; none where fewer than two degrees of freedom are left. The curve of the first
    arm makes it a little too ready with many small portions (measured in tests/benchmarks).
    """
    x, y = np.asarray(volume_cm3, dtype=np.float64), np.asarray(temperature_c, dtype=np.float64)
    lines = [fit_line(x[list(arm)], y[list(arm)]) for arm in arms]
    degrees, sse = sum(line.degrees for line in lines), sum(line.sse for line in lines)
    if degrees < 2:
        return ()
    critical = student_t(degrees - 1, 1 - (1 - level) / sum(len(arm) for arm in arms))
    found = []
    for arm, line in zip(arms, lines, strict=True):
        for point in arm:
            off = float(y[point]) - line.at(float(x[point]))
            free = 1.0 - line.unit_variance_at(float(x[point]))
            others = sse - off * off / free if free > 1e-9 else math.inf
            if abs(off) <= step_c or not math.isfinite(others):
                continue
            spread = math.sqrt(max(others, 0.0) / (degrees - 1) * free)
            statistic = abs(off) / spread if spread > 0 else math.inf
            if statistic > critical:
                found.append(Suspect(point, off, statistic, critical))
    return tuple(sorted(found, key=lambda suspect: -suspect.statistic))


Floats = NDArray[np.float64]

RULE = say("lines-rule")
LEAST_VOLUMES = 3  # on each arm
CONSIDERED_VOLUMES = 2  # so that an arm still too short is seen as such, not hidden by a wrong cut
LEVEL_OFF_THE_LINES = 0.99
LEVEL_U, LEVEL_STEPS = 2.0, 1.5
"""An arm is level when its slope is at most so many of its own standard uncertainties, or when it rises or falls by at
most so many of the smallest differences between readings: a reading of three may flicker by one division."""


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


def level_split(x: Floats, y: Floats) -> Split | None:
    """The closest cut of sorted readings into a level arm and one that is not, or None where there is none.

    For readings whose highest and lowest stand at the ends, or that turn in the scatter of a level arm alone.
    """
    step = smallest_step(y)
    for split in sorted(rank_splits(x, y, np.arange(x.size)), key=lambda each: each.sse):
        arms = [(x[: split.end_before], y[: split.end_before]), (x[split.start_after :], y[split.start_after :])]
        if min(np.unique(volumes).size for volumes, _ in arms) < LEAST_VOLUMES:
            continue
        if is_level(fit_line(*arms[0]), arms[0][0], step) != is_level(fit_line(*arms[1]), arms[1][0], step):
            return split
    return None


def is_level(line: LineFit, x: Floats, step_c: float) -> bool:
    """Whether the line through readings at x shows no rise or fall; the readings tell steps of `step_c` apart."""
    return abs(line.slope) * float(np.ptp(x)) <= LEVEL_STEPS * step_c or abs(line.slope) <= LEVEL_U * line.u_slope


def smallest_step(y: Floats) -> float:
    """The smallest difference between two different readings: a division or more, or less than the scatter."""
    apart = np.diff(np.unique(y))
    apart = apart[apart > 1e-9 * np.abs(y).max(initial=0.0)]
    return float(apart.min(initial=np.inf)) if apart.size else 0.0


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
