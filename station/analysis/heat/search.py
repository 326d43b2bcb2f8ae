"""The way from the readings to the best fit: several starts, from a forgiving loss to the probe's own noise."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace

import numpy as np

from station.analysis.heat.inputs import Array, HeatSetup, Pour, Prior, Trace, cup_of, prior_of, start_temperature
from station.analysis.heat.model import INDEX
from station.analysis.heat.solver import Problem, Solution, from_data, likely_noise, place_covariance, solve, strain
from station.analysis.heat.start import Steps, bends, heat_taken_up, plateaus, steps

# The end-point's posterior across the edges of portions, where the model bends.
#
# Within one portion the posterior of the end-point is nearly normal; at an edge it passes into that of the
# next portion, which has another width and may have its own maximum. So every portion the end-point may lie
# in is fitted by itself and the pieces are joined: mean, standard deviation and quantiles come from the whole.
# The other parameters are integrated out (Laplace; Tierney & Kadane, J. Am. Stat. Assoc. 81, 82 (1986)): a portion
# counts for more where they have more room.


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


PATCH = 0.008
"""Standard deviation of a patch over the mean rise per portion: what real cups differ from any such model."""

ROUGH_C, COARSE_C, SUSPECT_C = 0.3, 0.05, 0.03
"""Noise scales, °C, of the first two passes, and the one from which every portion is tried."""

ENOUGH = 250
"""The first passes take about this many samples, evenly thinned."""

STARTS = 2
ALIKE = 0.35
"""Difference of the logarithms of the probe's lags below which they may have run into each other, and of mixing time
and fast lag above which they may have changed places."""

PASSED = 9.0
"""How much worse (−2 ln posterior) an end-point at the last drop must be before it counts as passed."""

STRAINED = 3.5
"""Pull on what was known beforehand (in its u) from which the fit may be caught away from the best."""


def _starts(prior: Prior, setup: HeatSetup, pours: Sequence[Pour], first: Steps) -> list[Array]:
    """One start for each portion the heat may bend in, the likeliest first."""
    volume = np.concatenate([[0.0], np.cumsum([p.volume_cm3 for p in pours])])
    starts = []
    for bend in bends(heat_taken_up(first.level_c, volume, setup), volume):
        theta = prior.mean.copy()
        theta[INDEX["end_point_cm3"]] = bend.end_point_cm3
        theta[INDEX["heat_j_cm3"]] = bend.heat_j_cm3
        theta[INDEX["start_c"]] = first.level_c[0]
        theta[INDEX["log_lag_fast_s"]], theta[INDEX["log_lag_slow_s"]] = np.log([first.lag_fast_s, first.lag_slow_s])
        theta[INDEX["lag_share"]], theta[INDEX["press_s"]] = first.lag_share, first.press_s
        starts.append(theta)
    return starts


def _apart(ways: list[Solution]) -> list[Solution]:
    """The best way and those others that end elsewhere without being much worse."""
    ways = sorted(ways, key=lambda way: way.cost)
    found = ways[:1]
    for way in ways[1:]:
        other = all(abs(way.place[0] - one.place[0]) > 0.1 for one in found)
        if other and way.cost < found[0].cost + 20.0:
            found.append(way)
    return found


def _thinned(trace: Trace) -> Trace:
    every = max(1, len(trace.time_s) // ENOUGH)
    return Trace(trace.time_s[::every], trace.temperature_c[::every], trace.step_c)


def _rough(problem: Problem, start: Array) -> Solution:
    """First the moments and lags with the end-point held, then all of it: else it is caught at a bend."""
    rough = replace(problem, trace=_thinned(problem.trace))
    held = solve(rough, start, tolerance=2.0, max_steps=4, hold=True)
    return solve(rough, held.place, tolerance=0.5, max_steps=8)


def _elsewhere(problem: Problem, place: Array) -> list[Array]:
    """Places to go on from where the fit may sit in a trap that no step leads out of.

    Where the probe's two lags have become alike the share has no effect: a probe that hurries and one that hesitates
    are tried, of the same mean lag. Where mixing seems slower than the probe they may have changed places.
    """
    fast, slow, share, mixing = (INDEX[n] for n in ("log_lag_fast_s", "log_lag_slow_s", "lag_share", "log_mixing_s"))
    found = []
    if abs(place[slow] - place[fast]) < ALIKE:
        mean_s = float(np.exp((place[slow] + place[fast]) / 2.0))
        for its_share, ratio in ((-0.4, 2.2), (1.4, 1.6)):
            away = place.copy()
            fast_s = mean_s / (its_share + (1.0 - its_share) * ratio)
            away[fast], away[slow], away[share] = np.log(fast_s), np.log(ratio * fast_s), its_share
            found.append(away)
    if place[mixing] > place[fast] + ALIKE:
        away = place.copy()
        away[fast], away[mixing] = place[mixing], place[fast]
        away[problem.cup.layout.mixings] = 0.0
        found.append(away)
    return found


def _refined(problem: Problem, ways: list[Solution]) -> tuple[Problem, Solution]:
    coarse = replace(problem, trace=_thinned(problem.trace), noise_c=COARSE_C)
    best = min((solve(coarse, way.place, tolerance=2.0, max_steps=8) for way in ways), key=lambda way: way.cost)
    fine = replace(problem, noise_c=likely_noise(best.residuals_c, problem.trace.step_c))
    best = solve(fine, best.place, tolerance=0.5)
    others = [solve(fine, away, tolerance=0.5) for away in _elsewhere(fine, best.place)]
    return fine, min([best, *others], key=lambda way: way.cost)


def search(setup: HeatSetup, pours: Sequence[Pour], trace: Trace) -> tuple[Problem, list[Branch]]:
    """The problem with the noise found, and the fits for the portions in which the end-point may lie."""
    late = plateaus(trace, pours)
    prior = prior_of(setup, pours, start_temperature(trace, pours), PATCH * float(np.ptp(late)) / len(pours))
    problem = Problem(cup_of(setup, pours, trace), prior, trace, ROUGH_C)
    starts = _starts(prior, setup, pours, steps(trace, pours, setup))
    fine, best = _refined(problem, _apart([_rough(problem, start) for start in starts[:STARTS]]))
    if fine.noise_c > SUSPECT_C or strain(fine, best).max() > STRAINED:
        fine, best = _refined(problem, [best, *(_rough(problem, start) for start in starts)])
    fine = replace(fine, noise_c=_noise(fine, best))
    return fine, branches(fine, best.place)


def _noise(problem: Problem, solution: Solution) -> float:
    """The likeliest noise, °C, when it is counted what the parameters have taken out of the residuals."""
    samples = len(solution.residuals_c)
    left = max(samples - from_data(problem, solution), 0.5 * samples)
    return likely_noise(solution.residuals_c * np.sqrt(samples / left), problem.trace.step_c)


def surely_passed(problem: Problem, best: Solution, setup: HeatSetup, pours: Sequence[Pour]) -> bool:
    """Whether the best fit is much better than any in which every portion has reacted, the end-point at the last drop.

    The finer the noise, the more a misfit costs: what is lost at a forgiving one need not be followed further.
    """
    first = steps(problem.trace, pours, setup)
    start = _starts(problem.prior, setup, pours, first)[0]
    start[0] = problem.scale.edges_cm3[-1]
    heat = heat_taken_up(first.level_c, problem.scale.edges_cm3, setup)
    start[INDEX["heat_j_cm3"]] = heat[-1] / problem.scale.edges_cm3[-1]
    for noise_c in (ROUGH_C, COARSE_C, problem.noise_c):
        at_noise = replace(problem, noise_c=noise_c)
        found = solve(at_noise, start, tolerance=0.5, max_steps=15, hold=True)
        if found.cost > solve(at_noise, best.place, max_steps=0).cost + PASSED:
            return True
        start = found.place
    return False
