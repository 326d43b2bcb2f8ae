"""How sure the fit is: covariance of the parameters, what the samples add to what was known, and pulls on that."""

from __future__ import annotations

import numpy as np

from station.analysis.heat_inputs import Array
from station.analysis.heat_priors import FREE
from station.analysis.heat_solver import Problem, Solution


def place_covariance(problem: Problem, solution: Solution) -> Array:
    """Covariance of all parameters on the plan's scale (size × size), 0 for those held fixed."""
    free, size = problem.prior.free, len(solution.theta)
    scale = 1.0 / np.sqrt(np.diag(solution.information))
    scaled = solution.information * np.outer(scale, scale) + 1e-10 * np.eye(len(free))
    inverse = np.linalg.inv(scaled) * np.outer(scale, scale)
    covariance = np.zeros((size, size))
    covariance[np.ix_(free, free)] = inverse
    return covariance


def from_data(problem: Problem, solution: Solution) -> float:
    """How many parameters the samples determine; one known beforehand counts by how much more they say of it."""
    free = problem.prior.free
    known = np.diag(place_covariance(problem, solution))[free] * problem.prior.u[free] ** -2.0
    return float(len(free) - known.sum())


def covariance_of(problem: Problem, solution: Solution) -> Array:
    """Covariance of the true parameters (size × size), 0 for those held fixed."""
    turned = np.eye(len(solution.theta))
    turned[0] = solution.turn
    return np.asarray(turned @ place_covariance(problem, solution) @ turned.T)


def strain(problem: Problem, solution: Solution) -> Array:
    """How far each parameter (shape size) had to go from what was known beforehand, in its u; 0 without a prior."""
    prior = problem.prior
    known = (prior.u > 0.0) & (prior.u < FREE)
    gone = np.abs(solution.place - prior.mean) / np.where(known, prior.u, 1.0)
    return np.where(known, gone, 0.0)
