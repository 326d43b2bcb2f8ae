"""Readings that stand off their line: flagged for a person to judge, never dropped.

Test: the externally studentised residual of each reading about its arm, with the scatter pooled over both
arms, against Student's t with Bonferroni's correction for looking at all of them (R. D. Cook and S. Weisberg,
*Residuals and Influence in Regression*, 1982, 2.2.2; from memory).
"""

import math
from collections.abc import Sequence
from dataclasses import dataclass

import numpy as np

from station.analysis.lines_fit import Numbers, fit_line, student_t

TEST = "externally studentised residual, Bonferroni"


@dataclass(frozen=True, slots=True)
class Suspect:
    """A reading further from its line than chance explains: index in the input, distance, test and numbers."""

    point: int
    off_line_c: float
    statistic: float
    critical: float
    test: str = TEST


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
