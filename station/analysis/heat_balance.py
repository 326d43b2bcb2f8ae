"""Heat balance: the end-point from the whole trace of one repeat, by fitting the cup model to it."""

from __future__ import annotations

from collections.abc import Sequence

import numpy as np
from numpy.typing import NDArray

from station.analysis.cup import pour_times
from station.analysis.cup_layout import INDEX
from station.analysis.heat_branches import best_of, posterior
from station.analysis.heat_inputs import Array, HeatFit, HeatRefused, HeatSetup, Pour, Trace
from station.analysis.heat_result import (
    acid_concentration,
    end_point_temperature,
    enthalpy,
    heat_corrected,
    reaction_temperature,
)
from station.analysis.heat_search import PATCH, search
from station.analysis.heat_solver import Problem, Solution, covariance_of

__all__ = ["PATCH", "fit_trace"]

FEWEST_PORTIONS = 3
FEWEST_SAMPLES = 20


def _offsets(problem: Problem, solution: Solution, kept: NDArray[np.bool_]) -> Array:
    """Mean residual late in each interval, °C, shape pours + 1."""
    cup, time_s = problem.cup, problem.trace.time_s
    ends = np.append(pour_times(cup, solution.theta), time_s[-1] + 1.0)
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
    problem, found = search(setup, pours, trace)
    solution = best_of(found).solution
    cup, theta = problem.cup, solution.theta.copy()
    covariance = covariance_of(problem, solution)
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
