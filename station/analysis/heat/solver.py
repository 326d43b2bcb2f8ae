"""Maximum likelihood with priors: Levenberg–Marquardt on the cup model, with the probe's steps in the loss.

A reading is a conversion rounded to the probe's step, so it says that the noisy temperature lay within half
a step of it. With logistic noise of scale s that likelihood is closed: for a residual r and half step h,
−ln L = ln cosh((r+h)/2s) + ln cosh((r−h)/2s) + constant. It is flat within a step when the noise is small
(a plateau on one code is no proof of its middle), nearly normal when the noise is large, and its tails
are linear, so that a stale sample pulls no harder than a few good ones.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from station.analysis.heat.inputs import FREE, Array, Prior, Trace
from station.analysis.heat.model import Cup, Layout, trace

# The end-point on the plan's scale of volumes, where the edges of portions do not move.
#
# The heat curve bends where the end-point passes from one portion into the next. With uncertain volumes that
# edge itself is uncertain; on the scale of the planned volumes it stands still: a third into portion 5 is a
# third into portion 5 whatever the portions hold. The fit works on that scale ("place"), everything else on the
# true one ("theta"); they differ in the first parameter only.


@dataclass(frozen=True)
class PlanScale:
    """The planned cumulative volumes, cm³, shape pours + 1, beginning with 0."""

    edges_cm3: Array

    @staticmethod
    def of(planned_cm3: Array) -> PlanScale:
        """Scale of portions planned as ``planned_cm3``."""
        return PlanScale(np.concatenate([[0.0], np.cumsum(planned_cm3)]))

    @property
    def layout(self) -> Layout:
        """Places of the parameters."""
        return Layout(len(self.edges_cm3) - 1)

    def portion(self, place: Array) -> int:
        """Portion (from 0) in which the end-point lies."""
        last = len(self.edges_cm3) - 2
        return int(np.clip(np.searchsorted(self.edges_cm3, place[0], side="left") - 1, 0, last))

    def edges(self, portion: int) -> tuple[float, float]:
        """Planned volumes before and after a portion; the lower a hair inside it, where the model bends."""
        low, high = float(self.edges_cm3[portion]), float(self.edges_cm3[portion + 1])
        return low + 1e-6 * (high - low), high

    def theta(self, place: Array) -> tuple[Array, Array]:
        """True parameters, and the derivatives of the true end-point by the place (shape size)."""
        k, volumes = self.portion(place), place[self.layout.volumes]
        planned = self.edges_cm3[k + 1] - self.edges_cm3[k]
        share = (place[0] - self.edges_cm3[k]) / planned
        theta, turn = place.copy(), np.zeros(len(place))
        theta[0] = volumes[:k].sum() + share * volumes[k]
        turn[0] = volumes[k] / planned
        turn[self.layout.volumes][:k] = 1.0
        turn[self.layout.volumes][k] = share
        return theta, turn

    def place(self, theta: Array) -> Array:
        """The place of true parameters."""
        volume = np.concatenate([[0.0], np.cumsum(theta[self.layout.volumes])])
        place = theta.copy()
        place[0] = np.interp(theta[0], volume, self.edges_cm3)
        return place


LEAST_NOISE_STEPS, MOST_NOISE_C = 0.12, 0.3


@dataclass(frozen=True)
class Problem:
    """A trace to describe: model, prior, samples, and the scale of the logistic noise, °C."""

    cup: Cup
    prior: Prior
    trace: Trace
    noise_c: float

    @property
    def scale(self) -> PlanScale:
        """The plan's scale of volumes."""
        return PlanScale.of(self.prior.mean[self.cup.layout.volumes])


@dataclass(frozen=True)
class Solution:
    """The minimum: where on the plan's scale (``place``), the true parameters, the cost (−2 ln posterior).

    ``turn`` are the derivatives of the true end-point by the place; ``information`` is the curvature by the place,
    of the free parameters only, priors included; ``gradient`` is −1/2 of the cost's derivative by them, not 0 where the
    end-point was held. Residuals are in °C.
    """

    place: Array
    theta: Array
    turn: Array
    cost: float
    gradient: Array
    residuals_c: Array
    information: Array
    steps: int


def _log_cosh(x: Array) -> Array:
    size = np.abs(x)
    return np.asarray(size + np.log1p(np.exp(-2.0 * size)))


def loss(residual_c: Array, noise_c: float, step_c: float) -> tuple[float, Array, Array]:
    """−2 ln likelihood (up to a constant of the noise), its slope and curvature, halved, for each residual."""
    high, low = (residual_c + step_c / 2.0) / (2.0 * noise_c), (residual_c - step_c / 2.0) / (2.0 * noise_c)
    value = 2.0 * float((_log_cosh(high) + _log_cosh(low)).sum())
    bend_high, bend_low = np.tanh(high), np.tanh(low)
    slope = (bend_high + bend_low) / (2.0 * noise_c)
    curvature = (2.0 - bend_high**2 - bend_low**2) / (4.0 * noise_c**2)
    return value, slope, curvature


def likely_noise(residual_c: Array, step_c: float) -> float:
    """Scale of the logistic noise, °C, under which the residuals are likeliest; never below a floor."""
    scales = np.geomspace(LEAST_NOISE_STEPS * step_c, MOST_NOISE_C, 33)
    half = step_c / 2.0 / scales
    constant = half + np.log1p(-np.exp(-2.0 * half))  # ln 2 sinh, without overflow
    costs = [loss(residual_c, float(s), step_c)[0] for s in scales] - 2.0 * len(residual_c) * constant
    return float(scales[np.argmin(costs)])


@dataclass(frozen=True)
class _Look:
    """The problem seen from one place: residuals, cost, and the scaled normal equations there."""

    place: Array
    theta: Array
    turn: Array
    residuals_c: Array
    rows: Array
    cost: float
    information: Array
    gradient: Array
    scale: Array


def _look(problem: Problem, place: Array) -> _Look:
    free, prior = problem.prior.free, problem.prior
    theta, turn = problem.scale.theta(place)
    model, jacobian = trace(problem.cup, theta, problem.trace.time_s)
    by_volume = problem.cup.layout.volumes
    jacobian[:, by_volume] += jacobian[:, :1] * turn[by_volume]
    jacobian[:, 0] *= turn[0]
    residual = problem.trace.temperature_c - model
    pull = (place[free] - prior.mean[free]) / prior.u[free]
    value, slope, curvature = loss(residual, problem.noise_c, problem.trace.step_c)
    secant = slope / np.where(np.abs(residual) < 1e-9, 1e-9, residual)
    weight = np.maximum(curvature, 0.5 * secant)
    rows = jacobian if len(free) == jacobian.shape[1] else jacobian[:, free]
    information = rows.T @ (rows * weight[:, None])
    information[np.diag_indices(len(free))] += prior.u[free] ** -2.0
    scale = 1.0 / np.sqrt(np.diag(information))
    gradient = (rows.T @ slope - pull / prior.u[free]) * scale
    cost = value + float(pull @ pull)
    return _Look(place, theta, turn, residual, rows, cost, information * np.outer(scale, scale), gradient, scale)


def _move(problem: Problem, here: _Look, damping: float, portion: int | None, hold: bool = False) -> Array:
    """Scaled step. The model bends at the edges of portions, so the end-point goes at most a hair beyond its own.

    It stays in ``portion`` if one is given, and does not move with ``hold``.
    """
    matrix = here.information + damping * np.eye(len(here.gradient))
    move = np.linalg.solve(matrix, here.gradient)
    now = problem.scale.portion(here.place) if portion is None else portion
    low, high = problem.scale.edges(now)
    hair = 2e-3 * (high - low) if portion is None else 0.0
    wanted = here.place[0] + move[0] * here.scale[0]
    allowed = here.place[0] if hold else min(max(wanted, low - hair), high + hair)
    if allowed != wanted:
        move[0] = (allowed - here.place[0]) / here.scale[0]
        move[1:] = np.linalg.solve(matrix[1:, 1:], here.gradient[1:] - matrix[1:, 0] * move[0])
    return np.asarray(move)


def solve(
    problem: Problem,
    start: Array,
    max_steps: int = 30,
    tolerance: float = 1e-2,
    portion: int | None = None,
    hold: bool = False,
) -> Solution:
    """Minimise from the place ``start``; stops when a step promises less than ``tolerance`` in −2 ln posterior.

    With ``portion`` the end-point is held within that portion (from 0); ``start`` must have it there.
    With ``hold`` the end-point is not moved at all.
    """
    free = problem.prior.free
    here, steps, damping = _look(problem, start), 0, 1e-3
    while steps < max_steps and damping < 1e6:
        move = _move(problem, here, damping, portion, hold)
        promised = float(move @ (2.0 * here.gradient - here.information @ move))
        if promised < tolerance:
            break
        trial = here.place.copy()
        trial[free] += move * here.scale
        if portion is not None:
            trial[0] = np.clip(trial[0], *problem.scale.edges(portion))  # no rounding across the edge
        with np.errstate(over="ignore", invalid="ignore"):  # a wild trial has no cost, and is not accepted
            there = _look(problem, trial)
        steps += 1
        kept = (here.cost - there.cost) / promised
        damping = _damping(damping, kept)
        here = there if kept > 0.0 else here
    found = _information(problem, here)
    gradient = here.gradient / here.scale
    return Solution(here.place, here.theta, here.turn, here.cost, gradient, here.residuals_c, found, steps)


def _damping(damping: float, kept: float) -> float:
    """The next damping, by how much of the promised gain a step kept: less after a good step, more after a bad one.

    Halfway between, as it was: a damping just small enough to fail and just large enough to succeed would take turns.
    """
    if not kept > 0.0:
        return damping * 10.0
    return max(damping / 10.0, 1e-6) if kept > 0.75 else damping if kept > 0.25 else damping * 4.0


def _information(problem: Problem, here: _Look) -> Array:
    """Curvature of −ln posterior at the minimum; a sample far off still counts a little, so it has an inverse."""
    _, slope, curvature = loss(here.residuals_c, problem.noise_c, problem.trace.step_c)
    weight = np.maximum(curvature, 0.05 * slope / np.where(here.residuals_c == 0.0, 1.0, here.residuals_c))
    prior = np.diag(problem.prior.u[problem.prior.free] ** -2.0)
    return np.asarray(here.rows.T @ (here.rows * weight[:, None]) + prior)


# How sure the fit is: covariance of the parameters, what the samples add to what was known, and pulls on that.


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
