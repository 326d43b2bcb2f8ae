"""Robust least squares with priors: Levenberg–Marquardt on the cup model, Huber's loss on the residuals."""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from station.analysis.cup import Cup, trace
from station.analysis.heat_inputs import Array, Trace
from station.analysis.heat_priors import Prior

HUBER = 2.5


@dataclass(frozen=True)
class Problem:
    """A trace to describe: model, prior, samples, and the standard deviation of each sample (shape n)."""

    cup: Cup
    prior: Prior
    trace: Trace
    sigma_c: Array


@dataclass(frozen=True)
class Solution:
    """Parameters at the minimum, the cost there (−2 ln posterior), residuals °C, derivatives, information.

    ``information`` covers the free parameters only, priors included.
    """

    theta: Array
    cost: float
    residuals_c: Array
    jacobian: Array
    information: Array
    steps: int


def _cost(scaled: Array, pull: Array) -> float:
    size = np.abs(scaled)
    loss = np.where(size <= HUBER, size**2, 2.0 * HUBER * size - HUBER**2)
    return float(loss.sum() + pull @ pull)


def solve(problem: Problem, start: Array, max_steps: int = 25, tolerance: float = 1e-2) -> Solution:
    """Minimise from ``start``; stops when a step promises less than ``tolerance`` in −2 ln posterior."""
    free, prior = problem.prior.free, problem.prior
    weight, u = 1.0 / problem.sigma_c, prior.u[free]
    theta = start.copy()
    steps, damping = 0, 1e-3

    def look(at: Array) -> tuple[Array, Array, Array, float]:
        model, jacobian = trace(problem.cup, at, problem.trace.time_s)
        residual = problem.trace.temperature_c - model
        pull = (at[free] - prior.mean[free]) / u
        return residual, jacobian, pull, _cost(residual * weight, pull)

    residual, jacobian, pull, cost = look(theta)
    while True:
        scaled = residual * weight
        size = np.maximum(np.abs(scaled), 1e-12)
        huber = np.minimum(1.0, HUBER / size)
        rows = jacobian[:, free] * (weight * np.sqrt(huber))[:, None]
        scale = 1.0 / np.sqrt((rows**2).sum(axis=0) + 1.0 / u**2)
        rows = rows * scale
        information = rows.T @ rows + np.diag((scale / u) ** 2)
        gradient = rows.T @ (scaled * np.sqrt(huber)) - pull * scale / u
        if steps >= max_steps:
            break
        accepted = False
        while not accepted and damping < 1e6:
            move = np.linalg.solve(information + damping * np.eye(len(free)), gradient)
            promise = float(move @ (2.0 * gradient - information @ move))
            if promise < tolerance:
                break
            trial = theta.copy()
            trial[free] += move * scale
            found = look(trial)
            steps += 1
            accepted = found[3] < cost
            damping = max(damping / 10.0, 1e-6) if accepted else damping * 10.0
        if not accepted:
            break
        theta, (residual, jacobian, pull, cost) = trial, found
    return Solution(theta, cost, residual, jacobian, information / np.outer(scale, scale), steps)
