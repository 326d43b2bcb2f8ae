"""Pooling the results of several benches, each with its own standard uncertainty.

Fixed effect (all benches share one true value) and random effects (their true values spread by tau):
R. DerSimonian and N. Laird, Control. Clin. Trials 7, 177 (1986); interval after J. Hartung and G. Knapp,
Stat. Med. 20, 3875 (2001). For measurement results: R. N. Kacker, Metrologia 41, 132 (2004).
"""

import math
from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray
from scipy.special import chdtrc, ndtri

from station.analysis.lines_fit import Numbers, student_t


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
