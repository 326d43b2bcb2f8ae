"""The best parameters of a cup mixed once: least squares on signed roots of the likelihood of a probe with steps.

`heat_solver` derives that likelihood: a plateau on one step is no proof of its middle, and a stale sample pulls no
harder than a few good ones.
"""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
from scipy.optimize import least_squares

from station.analysis.heat_inputs import Array, Trace
from station.analysis.heat_solver import likely_noise, loss
from station.analysis.once_model import INDEX, SIZE, trace

ROUGH_C, COARSE_C, SPIKE_C = 0.3, 0.05, 0.5
LOW = {"lag_share": 0.0, "wall_share": 0.02, "cup_j_k": 0.05}
HIGH = {"lag_share": 1.0, "wall_share": 0.98}


class Solution(NamedTuple):
    """Parameters, residuals °C, derivatives of the trace, cost, noise °C."""

    theta: Array
    residuals_c: Array
    jacobian: Array
    cost: float
    noise_c: float


def _root(residual_c: Array, noise_c: float, step_c: float) -> tuple[Array, Array]:
    """Signed root of twice the loss of each residual, and its derivative by the residual."""
    high, low = (residual_c + step_c / 2.0) / (2.0 * noise_c), (residual_c - step_c / 2.0) / (2.0 * noise_c)
    least = 2.0 * np.logaddexp(step_c / 4.0 / noise_c, -step_c / 4.0 / noise_c)
    value = np.logaddexp(high, -high) + np.logaddexp(low, -low) - least
    root = np.sign(residual_c) * np.sqrt(2.0 * np.maximum(value, 0.0))
    slope = (np.tanh(high) + np.tanh(low)) / (2.0 * noise_c)
    at_rest = np.sqrt(loss(np.zeros(1), noise_c, step_c)[2])
    tiny = np.abs(root) < 1e-5
    return np.where(tiny, at_rest * residual_c, root), np.where(tiny, at_rest, slope / np.where(tiny, 1.0, root))


class _Problem:
    """Residuals and derivatives of samples and priors, in units of their spread, for one scale of the noise.

    The times of ``samples`` count from the press.
    """

    def __init__(self, mean: Array, u: Array, samples: Trace, noise_c: float) -> None:
        self.mean, self.u, self.samples, self.noise_c = mean, u, samples, noise_c
        self.free = np.flatnonzero(u > 0.0)
        self.low, self.high = np.full(SIZE, -np.inf), np.full(SIZE, np.inf)
        for name, value in LOW.items():
            self.low[INDEX[name]] = value
        for name, value in HIGH.items():
            self.high[INDEX[name]] = value
        self.low[INDEX["mixed_s"]], self.high[INDEX["mixed_s"]] = samples.time_s[0] + 0.5, samples.time_s[-1] - 20.0
        self._last: tuple[Array, Array, Array] | None = None

    def theta(self, scaled: Array) -> Array:
        """The whole parameter vector for scaled moves of the free ones."""
        theta = self.mean.copy()
        theta[self.free] += scaled * self.u[self.free]
        return np.clip(theta, self.low, self.high)

    def scaled(self, theta: Array) -> Array:
        """The reverse."""
        return np.asarray((theta - self.mean)[self.free] / self.u[self.free])

    def look(self, scaled: Array) -> tuple[Array, Array]:
        """Residuals °C and derivatives of the trace at a place; the last place is remembered."""
        if self._last is None or not np.array_equal(self._last[0], scaled):
            model, jacobian = trace(self.theta(scaled), self.samples.time_s)
            self._last = scaled.copy(), self.samples.temperature_c - model, jacobian
        return self._last[1], self._last[2]

    def residuals(self, scaled: Array) -> Array:
        """Residuals of samples, then of priors."""
        root, _ = _root(self.look(scaled)[0], self.noise_c, self.samples.step_c)
        return np.concatenate([root, scaled])

    def derivatives(self, scaled: Array) -> Array:
        """Their derivatives by the scaled parameters."""
        residual, jacobian = self.look(scaled)
        _, slope = _root(residual, self.noise_c, self.samples.step_c)
        rows = -slope[:, None] * jacobian[:, self.free] * self.u[self.free]
        return np.concatenate([rows, np.eye(len(self.free))])


def solve(mean: Array, u: Array, start: Array, samples: Trace, time_s: Array) -> Solution:
    """The best parameters from ``start``; the noise is taken as large at first, then as the residuals show it.

    From then on samples far off (a spike, not a stale one) have no say; residuals are of all.
    """
    theta, noise, near = start, ROUGH_C, np.ones(len(time_s), dtype=np.bool_)
    for stage, tolerance in enumerate((1e-2, 1e-3, 1e-4, 1e-6)):
        part = Trace(time_s[near], samples.temperature_c[near], samples.step_c)
        theta, cost = _least(_Problem(mean, u, part, noise), theta, tolerance)
        model, jacobian = trace(theta, time_s)
        residual = samples.temperature_c - model
        if stage == 0:
            noise = COARSE_C
        elif stage < 3:
            near = np.abs(residual) < SPIKE_C + 10.0 * float(np.median(np.abs(residual)))
            noise = likely_noise(residual[near], samples.step_c)
    return Solution(theta, residual, jacobian, cost, noise)


def _least(problem: _Problem, theta: Array, tolerance: float) -> tuple[Array, float]:
    found = least_squares(
        problem.residuals,
        problem.scaled(theta),
        problem.derivatives,
        method="lm",
        ftol=tolerance,
        xtol=1e-9,
        gtol=1e-12,
        max_nfev=60,
    )
    return problem.theta(found.x), float(2.0 * found.cost)
