"""The way from the readings to the best fit: several starts, from a forgiving loss to the probe's own noise."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np

from station.analysis.cup_layout import INDEX
from station.analysis.heat_branches import Branch, branches
from station.analysis.heat_inputs import Array, HeatSetup, Pour, Trace
from station.analysis.heat_priors import Prior, cup_of, prior_of, start_temperature
from station.analysis.heat_solver import Problem, Solution, likely_noise, solve, strain
from station.analysis.heat_start import bends, heat_taken_up, plateaus

PATCH = 0.008
"""Standard deviation of a patch over the mean rise per portion: what real cups differ from any such model."""

ROUGH_C, COARSE_C, SUSPECT_C = 0.3, 0.05, 0.03
"""Noise scales, °C, of the first two passes, and the one from which every portion is tried."""

STARTS = 2
STRAINED = 3.5
"""Pull on what was known beforehand (in its u) from which the fit may be caught away from the best."""

PRESSES_S = (1.0, -4.0, 5.0, 9.0)


def _starts(prior: Prior, setup: HeatSetup, pours: Sequence[Pour], late: Array) -> list[Array]:
    volume = np.concatenate([[0.0], np.cumsum([p.volume_cm3 for p in pours])])
    starts = []
    for bend in bends(heat_taken_up(late, volume, setup), volume):
        theta = prior.mean.copy()
        theta[INDEX["end_point_cm3"]] = bend.end_point_cm3
        theta[INDEX["heat_j_cm3"]] = bend.heat_j_cm3
        theta[INDEX["start_c"]] = late[0]
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


def _rough(problem: Problem, start: Array) -> Solution:
    """First the moments and lags with the end-point held, then all of it: else it is caught at a bend."""
    held = solve(problem, start, tolerance=2.0, max_steps=4, hold=True)
    return solve(problem, held.place, tolerance=0.5, max_steps=8)


def _in_time(problem: Problem, starts: list[Array]) -> list[Array]:
    """The starts with the lateness of the presses that suits the trace best, of a few."""

    def cost(press_s: float) -> float:
        start = starts[0].copy()
        start[INDEX["press_s"]] = press_s
        return solve(problem, start, max_steps=0).cost

    best = min(PRESSES_S, key=cost)
    for start in starts:
        start[INDEX["press_s"]] = best
    return starts


def _refined(problem: Problem, ways: list[Solution]) -> tuple[Problem, Solution]:
    coarse = replace(problem, noise_c=COARSE_C)
    best = min((solve(coarse, way.place, tolerance=2.0, max_steps=8) for way in ways), key=lambda way: way.cost)
    fine = replace(problem, noise_c=likely_noise(best.residuals_c, problem.trace.step_c))
    return fine, solve(fine, best.place, tolerance=0.5)


def search(setup: HeatSetup, pours: Sequence[Pour], trace: Trace) -> tuple[Problem, list[Branch]]:
    """The problem with the noise found, and the fits for the portions in which the end-point may lie."""
    late = plateaus(trace, pours)
    prior = prior_of(setup, pours, start_temperature(trace, pours), PATCH * float(np.ptp(late)) / len(pours))
    problem = Problem(cup_of(setup, pours, trace), prior, trace, ROUGH_C)
    starts = _in_time(problem, _starts(prior, setup, pours, late))
    fine, best = _refined(problem, _apart([_rough(problem, start) for start in starts[:STARTS]]))
    if fine.noise_c > SUSPECT_C or strain(fine, best).max() > STRAINED:
        fine, best = _refined(problem, [best, *(_rough(problem, start) for start in starts)])
    fine = replace(fine, noise_c=likely_noise(best.residuals_c, trace.step_c))
    return fine, branches(fine, best.place)


def unpassed(problem: Problem, setup: HeatSetup, pours: Sequence[Pour]) -> Solution:
    """The best fit in which every portion so far has reacted: the end-point stands at the last drop."""
    late = plateaus(problem.trace, pours)
    start = _starts(problem.prior, setup, pours, late)[0]
    start[0] = problem.scale.edges_cm3[-1]
    heat = heat_taken_up(late, problem.scale.edges_cm3, setup)
    start[INDEX["heat_j_cm3"]] = heat[-1] / problem.scale.edges_cm3[-1]
    for noise_c in (ROUGH_C, COARSE_C, problem.noise_c):
        found = solve(replace(problem, noise_c=noise_c), start, tolerance=0.5, max_steps=15, hold=True)
        start = found.place
    return found
