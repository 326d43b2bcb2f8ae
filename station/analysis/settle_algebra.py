"""Linear algebra for a handful of parameters, in lists: the daemon carries no numpy."""

from __future__ import annotations

from collections.abc import Sequence
from math import sqrt

Matrix = list[list[float]]
"""Square, symmetric and positive definite; only the lower half is read."""


def solve(matrix: Matrix, right: Sequence[float]) -> list[float]:
    """The x of matrix x = right."""
    return substitute(cholesky(matrix), right)


def inverse(matrix: Matrix) -> Matrix:
    """The inverse, both halves."""
    lower = cholesky(matrix)
    size = len(matrix)
    return [substitute(lower, [1.0 if i == j else 0.0 for j in range(size)]) for i in range(size)]


def times(matrix: Matrix, vector: Sequence[float]) -> list[float]:
    """Matrix (both halves given) times vector."""
    return [sum(x * y for x, y in zip(row, vector, strict=True)) for row in matrix]


def cholesky(matrix: Matrix) -> Matrix:
    """The lower triangle L of matrix = L L'."""
    size = len(matrix)
    lower = [[0.0] * size for _ in range(size)]
    for i in range(size):
        row = lower[i]
        for j in range(i + 1):
            other = lower[j]
            rest = matrix[i][j]
            for k in range(j):
                rest -= row[k] * other[k]
            row[j] = sqrt(rest) if i == j else rest / other[j]
    return lower


def substitute(lower: Matrix, right: Sequence[float]) -> list[float]:
    """The x of L L' x = right."""
    size = len(lower)
    half = [0.0] * size
    for i in range(size):
        rest = right[i]
        for k in range(i):
            rest -= lower[i][k] * half[k]
        half[i] = rest / lower[i][i]
    out = [0.0] * size
    for i in range(size - 1, -1, -1):
        rest = half[i]
        for k in range(i + 1, size):
            rest -= lower[k][i] * out[k]
        out[i] = rest / lower[i][i]
    return out
