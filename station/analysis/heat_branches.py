"""The end-point's posterior across the edges of portions, where the model bends.

Within one portion the posterior of the end-point is nearly normal; at an edge it passes into that of the
next portion, which has another width and may have its own maximum. So every portion the end-point may lie
in is fitted by itself and the pieces are joined: mean, standard deviation and quantiles come from the whole.
The other parameters are integrated out (Laplace; Tierney & Kadane, J. Am. Stat. Assoc. 81, 82 (1986)): a portion
counts for more where they have more room.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np

from station.analysis.heat_inputs import Array
from station.analysis.heat_solver import Problem, Solution, solve
from station.analysis.heat_spread import place_covariance

NEGLIGIBLE, FAR, HOPELESS = 12.0, 100.0, 40.0
"""How much more than the best (−2 ln posterior) the edge of a portion costs when it is not looked at: by the first
guess, by that guess even near the edge; and when it is not crossed."""

NEAR = 0.3
"""Within this share of a portion from its edge the first guess is not trusted so soon."""

POINTS = 101


@dataclass(frozen=True)
class Branch:
    """The fit with the end-point held in one portion (from 0), as a normal posterior cut off at the edges.

    Places are on the plan's scale, where the edges ``low`` and ``high`` stand still. ``top`` is where the normal has
    its top, beyond an edge when the fit was held there, and ``top_cost`` its height; ``u_place`` its width. The true
    end-point changes by ``lean`` with the place and scatters about it by ``blur_cm3``, which the volumes leave open.
    ``narrow`` is −2 ln of the room that the other parameters have.
    """

    portion: int
    solution: Solution
    low: float
    high: float
    top: float
    top_cost: float
    u_place: float
    lean: float
    blur_cm3: float
    narrow: float

    def cost(self, place: Array) -> Array:
        """−2 ln posterior at places of the end-point, all else at its best."""
        return np.asarray(self.top_cost + ((place - self.top) / self.u_place) ** 2)

    def weight(self, place: Array, best: Branch) -> Array:
        """Posterior density at places of the end-point, all else integrated out, over that of the best branch."""
        least = best.solution.cost + best.narrow
        return np.asarray(np.exp(-0.5 * (self.cost(place) + self.narrow - least)))

    def end_point_cm3(self, place: Array) -> Array:
        """Mean of the true end-point for places."""
        return np.asarray(self.solution.theta[0] + self.lean * (place - self.solution.place[0]))

    def places(self) -> Array:
        """Grid of places within the portion where the posterior is not negligible."""
        low, high = np.clip(self.top + np.array([-5.0, 5.0]) * self.u_place, self.low, self.high)
        reach = min(self.u_place, self.high - self.low)
        return np.linspace(min(low, self.high - reach), max(high, self.low + reach), POINTS)


@dataclass(frozen=True)
class EndPoint:
    """Mean, standard deviation and central 95 % of the end-point's posterior, cm³."""

    value: float
    u: float
    low: float
    high: float

    def widened(self, u_more_cm3: float) -> EndPoint:
        """With an independent uncertainty beside it; the interval keeps its shape."""
        wider = float(np.hypot(self.u, u_more_cm3))
        low, high = (self.value + (edge - self.value) * wider / self.u for edge in (self.low, self.high))
        return EndPoint(self.value, wider, low, high)


def _branch(problem: Problem, solution: Solution, portion: int) -> Branch:
    covariance = place_covariance(problem, solution)
    low, high = problem.scale.edges(portion)
    variance, along = float(covariance[0, 0]), covariance @ solution.turn
    lean = float(along[0]) / variance
    blur = float(solution.turn @ along) - lean**2 * variance
    # Held at an edge the cost has a slope left; the top of the parabola is one whole step further.
    free = problem.prior.free
    ahead = covariance[np.ix_(free, free)] @ solution.gradient
    narrow = float(np.linalg.slogdet(solution.information)[1] + np.log(variance))
    return Branch(
        portion,
        solution,
        low,
        high,
        top=float(solution.place[0] + ahead[0]),
        top_cost=solution.cost - float(solution.gradient @ ahead),
        u_place=float(np.sqrt(variance)),
        lean=lean,
        blur_cm3=float(np.sqrt(max(blur, 1e-6))),
        narrow=narrow,
    )


def _neighbour(problem: Problem, branch: Branch, side: int, best: float) -> Branch | None:
    """The branch of the portion before (side −1) or after (+1), entered through the shared edge."""
    start = branch.solution.place.copy()
    start[0] = branch.low if side < 0 else branch.high
    edge = solve(problem, start, max_steps=10, tolerance=0.5, hold=True, portion=branch.portion)
    if edge.cost > best + HOPELESS:
        return None
    portion, start = branch.portion + side, edge.place.copy()
    low, high = problem.scale.edges(portion)
    start[0] = high if side < 0 else low
    return _branch(problem, solve(problem, start, max_steps=20, portion=portion), portion)


def branches(problem: Problem, start: Array) -> list[Branch]:
    """Fits for all portions in which the end-point may lie, in order; the place ``start`` is near the best."""
    portion = problem.scale.portion(start)
    first = _branch(problem, solve(problem, start, portion=portion), portion)
    found = [first]
    for side in (-1, 1):
        here = first
        while 0 <= here.portion + side < problem.cup.layout.pours:
            edge = here.low if side < 0 else here.high
            best = best_of(found).solution.cost
            near = abs(here.solution.place[0] - edge) < NEAR * (here.high - here.low)
            if here.cost(np.array([edge]))[0] > best + (FAR if near else NEGLIGIBLE):
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
    best = best_of(found)
    means, weights, blurs = [], [], []
    for branch in found:
        if branch.solution.cost > best.solution.cost + HOPELESS:
            continue
        grid = branch.places()
        middle = (grid[1:] + grid[:-1]) / 2.0
        weights.append(branch.weight(middle, best) * np.diff(grid))
        means.append(branch.end_point_cm3(middle))
        blurs.append(np.full(len(middle), branch.blur_cm3))
    volume, weight, blur = np.concatenate(means), np.concatenate(weights), np.concatenate(blurs)
    weight = weight / weight.sum()
    mean = float(weight @ volume)
    u = float(np.sqrt(weight @ ((volume - mean) ** 2 + blur**2)))
    points = np.linspace((volume - 4.0 * blur).min(), (volume + 4.0 * blur).max(), 4 * POINTS)
    density = (weight / blur * np.exp(-0.5 * ((points[:, None] - volume) / blur) ** 2)).sum(axis=1)
    total = np.cumsum(density)
    low, high = np.interp([0.025, 0.975], total / total[-1], points)
    return EndPoint(mean, u, float(low), float(high))
