"""Tests for one value that stands off the others. They flag; whether to set a value aside is for a person.

Dixon's Q (r10), two-sided: R. B. Dean and W. J. Dixon, Anal. Chem. 23, 636 (1951), critical values after
D. B. Rorabacher, Anal. Chem. 63, 139 (1991). Grubbs' G, two-sided: F. E. Grubbs, Technometrics 11, 1 (1969).
"""

import math
from dataclasses import dataclass

import numpy as np
from scipy.special import stdtrit

from station.analysis.lines_fit import Numbers

# Rows: number of values. Columns: the levels of significance below.
ALPHAS = (0.10, 0.05, 0.04, 0.02, 0.01)
DIXON_CRITICAL = {
    3: (0.941, 0.970, 0.976, 0.988, 0.994),
    4: (0.765, 0.829, 0.846, 0.889, 0.926),
    5: (0.642, 0.710, 0.729, 0.780, 0.821),
    6: (0.560, 0.625, 0.644, 0.698, 0.740),
    7: (0.507, 0.568, 0.586, 0.637, 0.680),
    8: (0.468, 0.526, 0.543, 0.590, 0.634),
    9: (0.437, 0.493, 0.510, 0.555, 0.598),
    10: (0.412, 0.466, 0.483, 0.527, 0.568),
}


@dataclass(frozen=True, slots=True)
class OutlierTest:
    """Result of a named test on the most distant value: its index, statistic, critical value and verdict."""

    test: str
    alpha: float
    index: int
    value: float
    statistic: float
    critical: float
    flagged: bool


def dixon_q(values: Numbers, alpha: float = 0.05, step: float = 0.0) -> OutlierTest | None:
    """Dixon's Q for 3 to 10 values, shape (n,); None where the test does not apply (other n, no spread).

    A gap within `step`, the resolution of the values, is never flagged: of three readings where two agree,
    Q is 1 whatever the third. Raises ValueError for an alpha that is not in ALPHAS or a value not finite.
    """
    if alpha not in ALPHAS:
        raise ValueError(f"Dixon's table has alpha = {', '.join(map(str, ALPHAS))}")
    data = _finite(values)
    spread = float(np.ptp(data)) if data.size else 0.0
    if data.size not in DIXON_CRITICAL or spread == 0.0:
        return None
    order = np.argsort(data, kind="stable")
    low, high = float(data[order[1]] - data[order[0]]), float(data[order[-1]] - data[order[-2]])
    index, gap = (int(order[0]), low) if low > high else (int(order[-1]), high)
    critical = DIXON_CRITICAL[data.size][ALPHAS.index(alpha)]
    q = gap / spread
    return OutlierTest(
        "Dixon Q (r10, two-sided)", alpha, index, float(data[index]), q, critical, q > critical and gap > step
    )


def grubbs_critical(count: int, alpha: float = 0.05, sides: int = 2) -> float:
    """Critical value of Grubbs' G for `count` >= 3 values, from Student's t, two-sided unless sides is 1."""
    t2 = float(stdtrit(count - 2, 1 - alpha / (sides * count))) ** 2
    return (count - 1) / math.sqrt(count) * math.sqrt(t2 / (count - 2 + t2))


def grubbs(values: Numbers, alpha: float = 0.05, step: float = 0.0) -> OutlierTest | None:
    """Grubbs' test for three or more values, shape (n,); None for fewer or for values without spread.

    As with Dixon's Q, a value within `step` of its neighbour is never flagged.
    """
    data = _finite(values)
    if data.size < 3 or np.ptp(data) == 0.0:
        return None
    distance = np.abs(data - data.mean())
    index = int(np.argmax(distance))
    g = float(distance[index] / data.std(ddof=1))
    critical = grubbs_critical(int(data.size), alpha)
    gap = float(np.min(np.abs(np.delete(data, index) - data[index])))
    return OutlierTest(
        "Grubbs G (two-sided)", alpha, index, float(data[index]), g, critical, g > critical and gap > step
    )


def anomaly(values: Numbers, alpha: float = 0.05, step: float = 0.0) -> OutlierTest | None:
    """The flagged value, if any: by Dixon's Q for 3 to 10 values, by Grubbs' G for more; else None."""
    found = dixon_q(values, alpha, step) if len(values) <= max(DIXON_CRITICAL) else grubbs(values, alpha, step)
    return found if found is not None and found.flagged else None


def _finite(values: Numbers) -> np.ndarray[tuple[int], np.dtype[np.float64]]:
    data = np.array(values, dtype=np.float64).reshape(-1)
    if not np.isfinite(data).all():
        raise ValueError("an outlier test needs plain numbers: leave out what is missing")
    return data
