"""The way from the readings to the best fit: several starts, from a forgiving loss to the probe's own noise."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from station.analysis.cup_layout import INDEX
from station.analysis.heat_branches import Branch, branches
from station.analysis.heat_inputs import Array, HeatSetup, Pour, Trace
from station.analysis.heat_priors import Prior, cup_of, prior_of, start_temperature
from station.analysis.heat_solver import Problem, Solution, likely_noise, solve
from station.analysis.heat_spread import from_data, strain
from station.analysis.heat_start import bends, heat_taken_up, plateaus
from station.analysis.heat_steps import Steps, steps

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
