"""Pooling the results of several benches, each with its own standard uncertainty.

Fixed effect (all benches share one true value) and random effects (their true values spread by tau):
R. DerSimonian and N. Laird, Control. Clin. Trials 7, 177 (1986); interval after J. Hartung and G. Knapp,
Stat. Med. 20, 3875 (2001). For measurement results: R. N. Kacker, Metrologia 41, 132 (2004).
"""

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy.special import chdtrc, ndtri, stdtrit

from station.analysis.lines.fit import Numbers, student_t
from station.words import Message, say

# Tests for one value that stands off the others. They flag; whether to set a value aside is for a person.
#
# Dixon's Q (r10), two-sided: R. B. Dean and W. J. Dixon, Anal. Chem. 23, 636 (1951), critical values after
# D. B. Rorabacher, Anal. Chem. 63, 139 (1991). Grubbs' G, two-sided: F. E. Grubbs, Technometrics 11, 1 (1969).


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

    test: Message
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
    return OutlierTest(say("test-dixon"), alpha, index, float(data[index]), q, critical, q > critical and gap > step)


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
    return OutlierTest(say("test-grubbs"), alpha, index, float(data[index]), g, critical, g > critical and gap > step)


def anomaly(values: Numbers, alpha: float = 0.05, step: float = 0.0) -> OutlierTest | None:
    """The flagged value, if any: by Dixon's Q for 3 to 10 values, by Grubbs' G for more; else None."""
    found = dixon_q(values, alpha, step) if len(values) <= max(DIXON_CRITICAL) else grubbs(values, alpha, step)
    return found if found is not None and found.flagged else None


def _finite(values: Numbers) -> np.ndarray[tuple[int], np.dtype[np.float64]]:
    data = np.array(values, dtype=np.float64).reshape(-1)
    if not np.isfinite(data).all():
        raise ValueError("an outlier test needs plain numbers: leave out what is missing")
    return data


@dataclass(frozen=True, slots=True)
class PooledMean:
    """A mean with its standard uncertainty and 95 % interval, in the unit of the values."""

    mean: float
    u: float
    interval_95: tuple[float, float]


@dataclass(frozen=True, slots=True)
class Pooled:
    """A class result: three means, the spread between benches, and how far they disagree.

    `fixed` is right only if nothing but the stated u separates the benches; `random` adds the between-bench
    spread `tau` (DerSimonian–Laird, normal interval); `hartung_knapp` has the same mean with a t interval
    that holds for few benches, and is the one to show. `q` (degrees k - 1, probability `p`) tests whether
    the benches agree, `i2_percent` is the share of the scatter that their u do not explain.
    """

    count: int
    fixed: PooledMean
    random: PooledMean
    hartung_knapp: PooledMean
    tau: float
    q: float
    degrees: int
    p: float
    i2_percent: float


def pool(values: Numbers, u_values: Numbers) -> Pooled:
    """Pool k >= 2 results with standard uncertainties, shapes (k,). Order does not matter.

    Raises ValueError for fewer than two results, one that is not finite, or a u that is not positive.
    """
    y, u = np.asarray(values, dtype=np.float64), np.asarray(u_values, dtype=np.float64)
    if y.ndim != 1 or y.shape != u.shape or y.size < 2:
        raise ValueError("pooling needs two results at least, each with its standard uncertainty")
    if not (np.isfinite(y).all() and np.isfinite(u).all() and (u > 0).all()):
        raise ValueError("pooling needs numbers, and a positive standard uncertainty for each")
    weights = 1 / u**2
    fixed = _weighted(y, weights)
    degrees = int(y.size) - 1
    q = float(weights @ (y - fixed.mean) ** 2)
    tau2 = max(0.0, (q - degrees) / float(weights.sum() - (weights @ weights) / weights.sum()))
    shared = 1 / (u**2 + tau2)
    random = _weighted(y, shared)
    i2 = 100 * max(0.0, (q - degrees) / q) if q > 0 else 0.0
    return Pooled(
        int(y.size),
        fixed,
        random,
        _hartung_knapp(y, shared, random),
        math.sqrt(tau2),
        q,
        degrees,
        float(chdtrc(degrees, q)),
        i2,
    )


def _weighted(y: NDArray[np.float64], weights: NDArray[np.float64]) -> PooledMean:
    mean = float(weights @ y / weights.sum())
    u = 1 / math.sqrt(float(weights.sum()))
    return _with_factor(mean, u, float(ndtri(0.975)))


def _hartung_knapp(y: NDArray[np.float64], weights: NDArray[np.float64], random: PooledMean) -> PooledMean:
    # Results that agree by chance better than their u would shrink the interval to nothing; never below u.
    scale = max(1.0, float(weights @ (y - random.mean) ** 2) / (y.size - 1))
    return _with_factor(random.mean, random.u * math.sqrt(scale), student_t(int(y.size) - 1))


def _with_factor(mean: float, u: float, factor: float) -> PooledMean:
    return PooledMean(mean, u, (mean - factor * u, mean + factor * u))
