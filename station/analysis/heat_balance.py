"""Heat balance: the end-point from the whole trace of one repeat, by fitting the cup model to it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace

import numpy as np
from numpy.typing import NDArray

from station.analysis.cup_layout import INDEX
from station.analysis.heat_branches import Branch, best_of, branches, posterior
from station.analysis.heat_inputs import Array, HeatFit, HeatRefused, HeatSetup, Pour, Trace
from station.analysis.heat_priors import Prior, cup_of, prior_of
from station.analysis.heat_result import (
    acid_concentration,
    end_point_temperature,
    enthalpy,
    heat_corrected,
    reaction_temperature,
)
from station.analysis.heat_solver import Problem, Solution, covariance_of, likely_noise, solve
from station.analysis.heat_start import bends, heat_taken_up, plateaus

FEWEST_PORTIONS = 3
FEWEST_SAMPLES = 20
STARTS = 3
PATCH = 0.008
ROUGH_C, COARSE_C = 0.3, 0.05


def _starts(prior: Prior, setup: HeatSetup, pours: Sequence[Pour], trace: Trace) -> list[Array]:
    volume = np.concatenate([[0.0], np.cumsum([p.volume_cm3 for p in pours])])
    late = plateaus(trace, pours)
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
        other = all(abs(way.theta[0] - one.theta[0]) > 0.1 for one in found)
        if other and way.cost < found[0].cost + 20.0:
            found.append(way)
    return found


def _fit(setup: HeatSetup, pours: Sequence[Pour], trace: Trace) -> tuple[Problem, list[Branch]]:
    prior = prior_of(
        setup, pours, float(trace.temperature_c[0]), PATCH * float(np.ptp(trace.temperature_c)) / len(pours)
    )
    problem = Problem(cup_of(setup, pours, trace), prior, trace, ROUGH_C)
    ways = [solve(problem, start, tolerance=0.5, max_steps=8) for start in _starts(prior, setup, pours, trace)[:STARTS]]
    problem = replace(problem, noise_c=COARSE_C)
    ways = [solve(problem, way.theta, tolerance=2.0, max_steps=8) for way in _apart(ways)]
    best = min(ways, key=lambda way: way.cost)
    problem = replace(problem, noise_c=likely_noise(best.residuals_c, trace.step_c))
    best = solve(problem, best.theta, tolerance=0.5)
    problem = replace(problem, noise_c=likely_noise(best.residuals_c, trace.step_c))
    return problem, branches(problem, best.theta)


def _offsets(problem: Problem, solution: Solution, kept: NDArray[np.bool_]) -> Array:
    """Mean residual late in each interval, °C, shape pours + 1."""
    cup, time_s = problem.cup, problem.trace.time_s
    ends = np.append(solution.theta[cup.layout.times], time_s[-1] + 1.0)
    found = np.zeros(len(ends))
    for k, end in enumerate(ends):
        inside = kept & (time_s > end - 12.0) & (time_s < end)
        found[k] = solution.residuals_c[inside].mean() if inside.any() else 0.0
    return found


def fit_trace(trace: Trace, pours: Sequence[Pour], setup: HeatSetup) -> HeatFit:
    """Fit the cup model to one repeat; raises :class:`HeatRefused` with the reason when no fit is possible."""
    if len(pours) < FEWEST_PORTIONS:
        raise HeatRefused(
            "too_few_portions", f"The heat balance needs at least {FEWEST_PORTIONS} portions; there are {len(pours)}."
        )
    if len(trace.time_s) < FEWEST_SAMPLES:
        raise HeatRefused(
            "too_few_samples", f"The trace has only {len(trace.time_s)} good samples: too few for a heat balance."
        )
    problem, found = _fit(setup, pours, trace)
    solution = best_of(found).solution
    cup, theta = problem.cup, solution.theta.copy()
    covariance = np.zeros((len(theta), len(theta)))
    covariance[np.ix_(problem.prior.free, problem.prior.free)] = covariance_of(solution)
    end_point = posterior(found)
    stretch = np.ones(len(theta))
    stretch[0] = end_point.u / np.sqrt(covariance[0, 0])
    theta[0], covariance = end_point.value, covariance * np.outer(stretch, stretch)
    if end_point.high > float(theta[cup.layout.volumes].sum()) - 1e-3:
        raise HeatRefused("not_passed", "The end-point has not been passed yet: go on adding portions.")
    kept = np.abs(solution.residuals_c) < 8.0 * problem.noise_c + trace.step_c
    concentration = acid_concentration(theta, covariance, setup)
    middle_c = reaction_temperature(cup, theta)
    heat = enthalpy(theta, covariance, setup, cup, middle_c)
    volume, corrected = heat_corrected(cup, theta, _offsets(problem, solution, kept))
    return HeatFit(
        end_point_cm3=end_point.value,
        u_end_point_cm3=end_point.u,
        interval_95_cm3=(end_point.low, end_point.high),
        enthalpy_kj_mol=heat.value if heat else None,
        u_enthalpy_kj_mol=heat.u if heat else None,
        enthalpy_temperature_c=middle_c,
        acid_mol_dm3=concentration.value if concentration else None,
        u_acid_mol_dm3=concentration.u if concentration else None,
        describes_trace=True,
        notes=(),
        start_c=float(theta[INDEX["start_c"]]),
        end_point_temperature_c=end_point_temperature(cup, theta),
        heat_corrected_volume_cm3=volume,
        heat_corrected_c=corrected,
        names=cup.layout.names(),
        parameters=theta,
        covariance=covariance,
        residuals_c=solution.residuals_c,
        kept=kept,
        residual_rms_c=float(np.sqrt(np.mean(solution.residuals_c[kept] ** 2))),
    )
