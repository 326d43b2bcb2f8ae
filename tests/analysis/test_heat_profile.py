"""The covariance of the fit against the profile of the likelihood (Bates & Watts, Nonlinear Regression, 1988, 6.1).

The profile holds one parameter and fits all others again; a normal posterior rises by z² at z standard
uncertainties from its top.
"""

from __future__ import annotations

import numpy as np
import pytest

from station.analysis.heat.inputs import Array, Prior
from station.analysis.heat.model import INDEX
from station.analysis.heat.search import best_of, search
from station.analysis.heat.solver import Problem, Solution, place_covariance, solve
from tests.benchmarks.scenes_model import model_scene


def _found(seed: int, u_volume_cm3: float) -> tuple[Problem, Solution, int]:
    case = model_scene(seed, u_volume_cm3)
    problem, found = search(case.setup, case.pours, case.trace)
    best = best_of(found)
    return problem, solve(problem, best.solution.place, tolerance=1e-4, portion=best.portion), best.portion


def _held(problem: Problem, name: str, value: float) -> Problem:
    mean, u = problem.prior.mean.copy(), problem.prior.u.copy()
    mean[INDEX[name]], u[INDEX[name]] = value, 0.0
    return Problem(problem.cup, Prior(mean, u), problem.trace, problem.noise_c)


def _rises(problem: Problem, solution: Solution, portion: int, name: str, z: float) -> Array:
    """Rise of the cost on either side, over z²."""
    u = float(np.sqrt(place_covariance(problem, solution)[INDEX[name], INDEX[name]]))
    costs = []
    for side in (-z, z):
        start = solution.place.copy()
        start[INDEX[name]] += side * u
        held = problem if name == "end_point_cm3" else _held(problem, name, start[INDEX[name]])
        end_point = name == "end_point_cm3"
        costs.append(solve(held, start, tolerance=1e-4, portion=portion, hold=end_point).cost)
    return (np.array(costs) - solution.cost) / z**2


@pytest.mark.parametrize(("seed", "u_volume_cm3"), [(8, 0.0), (11, 0.0), (17, 0.0), (14, 0.1), (16, 0.1)])
def test_profile_of_the_end_point_rises_as_its_u_says(seed: int, u_volume_cm3: float) -> None:
    problem, solution, portion = _found(seed, u_volume_cm3)
    low, high = problem.scale.edges(portion)
    u = float(np.sqrt(place_covariance(problem, solution)[0, 0]))
    assert low + 2.0 * u < solution.place[0] < high - 2.0 * u  # within a portion, where there is no bend
    assert _rises(problem, solution, portion, "end_point_cm3", 2.0) == pytest.approx(1.0, abs=0.2)


@pytest.mark.parametrize(("seed", "u_volume_cm3"), [(8, 0.0), (9, 0.0), (14, 0.1)])
def test_profile_of_the_heat_rises_as_its_u_says(seed: int, u_volume_cm3: float) -> None:
    problem, solution, portion = _found(seed, u_volume_cm3)
    assert _rises(problem, solution, portion, "heat_j_cm3", 1.5) == pytest.approx(1.0, abs=0.2)
