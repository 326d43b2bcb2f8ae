"""The end-point's posterior across the edges of portions, where the model bends.

Within one portion the posterior of the end-point is nearly normal; at an edge it passes into that of the
next portion, which has another width and may have its own maximum. So every portion the end-point may lie
in is fitted by itself and the pieces are joined: mean, standard deviation and quantiles come from the whole.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from station.analysis.heat_inputs import Array
from station.analysis.heat_solver import Problem, Solution, covariance_of, edges, portion_of, solve

NEGLIGIBLE, HOPELESS = 12.0, 40.0
"""How much more than the best (−2 ln posterior) the edge of a portion costs when it is not looked at, by the
first guess, and when it is not crossed."""

NEAR = 0.3
"""Within this share of a portion from its edge the next portion is tried in any case."""

POINTS = 201


@dataclass(frozen=True)
class Branch:
    """The fit with the end-point held in one portion (from 0)."""

    portion: int
    solution: Solution
    low_cm3: float
    high_cm3: float
    u_cm3: float

    def cost(self, end_point_cm3: Array) -> Array:
        """−2 ln posterior along the end-point, all else at its best."""
        beyond = end_point_cm3 - self.solution.theta[0]
        return np.asarray(self.solution.cost + self.solution.slope * beyond + (beyond / self.u_cm3) ** 2)


@dataclass(frozen=True)
class EndPoint:
    """Mean, standard deviation and central 95 % of the end-point's posterior, cm³."""

    value: float
    u: float
    low: float
    high: float


def _branch(problem: Problem, solution: Solution, portion: int) -> Branch:
    u = float(np.sqrt(covariance_of(solution)[0, 0]))
    return Branch(portion, solution, *edges(problem, solution.theta, portion), u)


def _neighbour(problem: Problem, branch: Branch, side: int, best: float) -> Branch | None:
    """The branch of the portion before (side −1) or after (+1), entered through the shared edge."""
    start = branch.solution.theta.copy()
    start[0] = branch.low_cm3 if side < 0 else branch.high_cm3
    edge = solve(problem, start, tolerance=0.5, hold=True, portion=branch.portion)
    if edge.cost > best + HOPELESS:
        return None
    portion, start = branch.portion + side, edge.theta.copy()
    low, high = edges(problem, start, portion)
    start[0] = high if side < 0 else low
    return _branch(problem, solve(problem, start, portion=portion), portion)


def branches(problem: Problem, start: Array) -> list[Branch]:
    """Fits for all portions in which the end-point may lie, in order of volume; ``start`` is near the best."""
    portion = portion_of(problem, start)
    first = _branch(problem, solve(problem, start, portion=portion), portion)
    found = [first]
    for side in (-1, 1):
        here = first
        while 0 <= here.portion + side < problem.cup.layout.pours:
            edge = here.low_cm3 if side < 0 else here.high_cm3
            best = best_of(found).solution.cost
            far = abs(here.solution.theta[0] - edge) > NEAR * (here.high_cm3 - here.low_cm3)
            if far and here.cost(np.array([edge]))[0] > best + NEGLIGIBLE:
                break
            there = _neighbour(problem, here, side, best)
            if there is None:
                break
            here = there
            found.append(here)
    return sorted(found, key=lambda branch: branch.portion)


def best_of(found: list[Branch]) -> Branch:
    """The branch with the lowest cost."""
    return min(found, key=lambda branch: branch.solution.cost)


def posterior(found: list[Branch]) -> EndPoint:
    """Join the branches."""
    best = best_of(found).solution.cost
    points, weights = [], []
    for branch in found:
        centre, width = float(branch.solution.theta[0]), 5.0 * branch.u_cm3
        low, high = max(branch.low_cm3, centre - width), min(branch.high_cm3, centre + width)
        grid = np.linspace(low, high, POINTS)
        density = np.exp(-0.5 * (branch.cost(grid) - best))
        points.append((grid[1:] + grid[:-1]) / 2.0)
        weights.append((density[1:] + density[:-1]) / 2.0 * np.diff(grid))
    volume, weight = np.concatenate(points), np.concatenate(weights)
    weight = weight / weight.sum()
    mean = float(weight @ volume)
    total = np.cumsum(weight)
    low, high = np.interp([0.025, 0.975], total, volume)
    return EndPoint(mean, float(np.sqrt(weight @ (volume - mean) ** 2)), float(low), float(high))
