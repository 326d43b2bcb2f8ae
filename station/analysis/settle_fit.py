"""Least squares with a prior, for the few parameters the settle detector has; no numpy, so that the daemon
stays small."""

from __future__ import annotations

from collections.abc import Iterable, Sequence
from math import sqrt


class Normal:
    """Normal equations of y = sum(b_i * x_i), each b_i with an independent normal prior.

    `prior` is a sequence of (mean, sd) in the units of b_i. `add` takes a row x, the observed y and its sd;
    `solve` gives the posterior mean and the covariance as nested lists.
    """

    def __init__(self, prior: Sequence[tuple[float, float]]) -> None:
        self.size = len(prior)
        self.matrix = [[0.0] * self.size for _ in prior]
        self.right = [0.0] * self.size
        for index, (mean, sd) in enumerate(prior):
            self.matrix[index][index] = 1.0 / (sd * sd)
            self.right[index] = mean / (sd * sd)

    def add(self, row: Sequence[float], observed: float, sd: float) -> None:
        """Take in one observation."""
        weight = 1.0 / (sd * sd)
        for i, x in enumerate(row):
            scaled = weight * x
            line = self.matrix[i]
            for j in range(i + 1):
                line[j] += scaled * row[j]
            self.right[i] += scaled * observed

    def solve(self) -> tuple[list[float], list[list[float]]]:
        """Posterior mean and covariance; the prior keeps the matrix positive definite."""
        lower = _cholesky(self.matrix)
        mean = _substitute(lower, self.right)
        columns = [_substitute(lower, unit) for unit in _units(self.size)]
        return mean, columns


def spread(covariance: Sequence[Sequence[float]], row: Sequence[float]) -> float:
    """Standard deviation of sum(b_i * row_i)."""
    total = sum(row[i] * row[j] * value for i, line in enumerate(covariance) for j, value in enumerate(line))
    return sqrt(max(total, 0.0))


def _units(size: int) -> Iterable[list[float]]:
    for index in range(size):
        unit = [0.0] * size
        unit[index] = 1.0
        yield unit


def _cholesky(matrix: Sequence[Sequence[float]]) -> list[list[float]]:
    size = len(matrix)
    lower = [[0.0] * size for _ in range(size)]
    for i in range(size):
        for j in range(i + 1):
            rest = matrix[i][j] - sum(lower[i][k] * lower[j][k] for k in range(j))
            lower[i][j] = sqrt(rest) if i == j else rest / lower[j][j]
    return lower


def _substitute(lower: Sequence[Sequence[float]], right: Sequence[float]) -> list[float]:
    size = len(lower)
    half = [0.0] * size
    for i in range(size):
        half[i] = (right[i] - sum(lower[i][k] * half[k] for k in range(i))) / lower[i][i]
    out = [0.0] * size
    for i in reversed(range(size)):
        out[i] = (half[i] - sum(lower[k][i] * out[k] for k in range(i + 1, size))) / lower[i][i]
    return out
