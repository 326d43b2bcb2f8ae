"""Heat balance: the end-point from the whole trace of one repeat, by fitting the cup model to it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import replace
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from station.analysis.cup import pour_times
from station.analysis.cup import trace as cup_trace
from station.analysis.cup_layout import INDEX
from station.analysis.heat_branches import Branch, best_of, branches, posterior
from station.analysis.heat_checks import check, keep
from station.analysis.heat_inputs import Array, HeatFit, HeatRefused, HeatSetup, Pour, Trace
from station.analysis.heat_result import (
    acid_concentration,
    end_point_temperature,
    enthalpy,
    heat_corrected,
    reaction_temperature,
)
from station.analysis.heat_search import PATCH, search, surely_passed
from station.analysis.heat_solver import Problem, Solution
from station.analysis.heat_spread import covariance_of
from station.analysis.heat_start import plateaus

__all__ = ["PATCH", "fit_trace"]

FEWEST_PORTIONS = 3
FEWEST_SAMPLES = 20
FLATTEST_STEPS = 4.0
FAINTEST = 5.0
"""Heat of reaction over its u below which there is nothing to fit."""

UNEVEN = 0.45
"""How much the part of a portion's heat that mixes slowly differs from portion to portion, over itself: nobody stirs
twice alike, and a corner holds acid back as well as heat. Common practice, no source."""


def fit_trace(trace: Trace, pours: Sequence[Pour], setup: HeatSetup) -> HeatFit:
    """Fit the cup model to one repeat; raises :class:`HeatRefused` with the reason when no fit is possible."""
    _refuse_unfit(trace, pours, setup)
    try:
        problem, found = _without_outliers(*search(setup, pours, trace))
    except np.linalg.LinAlgError:
        raise HeatRefused("no_fit", "No end-point can be made out: the trace leaves it open.") from None
    _refuse_unpassed(problem, found, setup, pours)
    return _result(trace, setup, problem, found)


def _refuse_unfit(trace: Trace, pours: Sequence[Pour], setup: HeatSetup) -> None:
    if setup.unmodelled is not None:
        raise HeatRefused("reagents", f"The heat balance does not know these reagents: {setup.unmodelled}.")
    if len(pours) < FEWEST_PORTIONS:
        raise HeatRefused(
            "too_few_portions", f"The heat balance needs at least {FEWEST_PORTIONS} portions; there are {len(pours)}."
        )
    if any(later.press_s <= earlier.press_s for earlier, later in pairwise(pours)):
        raise ValueError("the portions must be in the order of time")
    inside = np.count_nonzero((trace.time_s > pours[0].press_s - 60.0) & (trace.time_s < pours[-1].press_s + 300.0))
    if inside < max(FEWEST_SAMPLES, 3 * len(pours)):
        raise HeatRefused("too_few_samples", f"The trace has only {inside} good samples: too few for a heat balance.")
    if float(np.ptp(plateaus(trace, pours))) < FLATTEST_STEPS * trace.step_c:
        raise HeatRefused("no_heat", "The temperature hardly changes: no heat of reaction can be made out.")
    if trace.time_s[-1] < pours[-1].press_s + 3.0:
        raise HeatRefused("too_few_samples", "The trace ends before the last portion could be felt.")


def _without_outliers(problem: Problem, found: list[Branch]) -> tuple[Problem, list[Branch]]:
    best, trace = best_of(found).solution, problem.trace
    kept = keep(best.residuals_c, problem.noise_c, trace.step_c)
    if kept.all() or np.mean(kept) < 0.5:
        return problem, found
    problem = replace(problem, trace=Trace(trace.time_s[kept], trace.temperature_c[kept], trace.step_c))
    return problem, branches(problem, best.place)


def _refuse_unpassed(problem: Problem, found: list[Branch], setup: HeatSetup, pours: Sequence[Pour]) -> None:
    best, trace = best_of(found), problem.trace
    after = problem.cup.layout.pours - 1 - best.portion
    if after == 0:
        raise HeatRefused("not_passed", "The end-point is not surely passed yet: add at least one more portion.")
    judged = check(problem, best.solution, trace.time_s, best.solution.residuals_c)
    unsure = after <= 2 or not judged.describes_trace
    if unsure and not surely_passed(problem, best.solution, setup, pours):
        raise HeatRefused("not_passed", "The end-point has not been passed yet: go on adding portions.")
    if best.portion == 0:
        raise HeatRefused("first_portion", "The end-point lies within the first portion: use smaller portions.")
    heat = INDEX["heat_j_cm3"]
    u_heat = float(np.sqrt(covariance_of(problem, best.solution)[heat, heat]))
    if abs(best.solution.place[heat]) < FAINTEST * u_heat:
        raise HeatRefused("no_bend", "No end-point can be made out: the heat of reaction is lost in the scatter.")


def _offsets(problem: Problem, solution: Solution, time_s: Array, residuals_c: Array) -> Array:
    """Mean residual late in each interval, °C, shape pours + 1."""
    ends = np.append(pour_times(problem.cup, solution.theta), time_s[-1] + 1.0)
    kept: NDArray[np.bool_] = keep(residuals_c, problem.noise_c, problem.trace.step_c)
    found = np.zeros(len(ends))
    for k, end in enumerate(ends):
        inside = kept & (time_s > end - 12.0) & (time_s < end)
        found[k] = residuals_c[inside].mean() if inside.any() else 0.0
    return found


def _unstirred_cm3(problem: Problem, solution: Solution) -> float:
    """Uncertainty of the end-point, cm³, from heat and acid held back in a corner unlike the last time.

    The trace does not show it: where the slowly mixing part differs by a share of a portion's heat, the bend
    moves by that share of a portion.
    """
    portion = float(np.mean(np.diff(problem.scale.edges_cm3)))
    return UNEVEN * abs(float(solution.theta[INDEX["slow_share"]])) * portion


def _result(trace: Trace, setup: HeatSetup, problem: Problem, found: list[Branch]) -> HeatFit:
    solution = best_of(found).solution
    end_point = posterior(found).widened(_unstirred_cm3(problem, solution))
    cup, theta = problem.cup, solution.theta.copy()
    residuals_c = trace.temperature_c - cup_trace(cup, theta, trace.time_s)[0]
    judged = check(problem, solution, trace.time_s, residuals_c)
    covariance = covariance_of(problem, solution)
    stretch = np.ones(len(theta))
    widen = max(judged.stretch, judged.least_u_cm3 / end_point.u)
    stretch[0] = end_point.u / np.sqrt(covariance[0, 0]) * widen / judged.stretch
    covariance = covariance * np.outer(stretch, stretch) * judged.stretch**2
    theta[0] = end_point.value
    concentration = acid_concentration(theta, covariance, setup)
    middle_c = reaction_temperature(cup, theta)
    heat = enthalpy(theta, covariance, setup, cup, middle_c)
    volume, corrected = heat_corrected(cup, theta, _offsets(problem, solution, trace.time_s, residuals_c))
    kept = keep(residuals_c, problem.noise_c, trace.step_c)
    return HeatFit(
        end_point_cm3=end_point.value,
        u_end_point_cm3=widen * end_point.u,
        interval_95_cm3=(
            end_point.value - widen * (end_point.value - end_point.low),
            end_point.value + widen * (end_point.high - end_point.value),
        ),
        enthalpy_kj_mol=heat.value if heat else None,
        u_enthalpy_kj_mol=heat.u if heat else None,
        enthalpy_temperature_c=middle_c,
        acid_mol_dm3=concentration.value if concentration else None,
        u_acid_mol_dm3=concentration.u if concentration else None,
        describes_trace=judged.describes_trace,
        notes=judged.notes,
        start_c=float(theta[INDEX["start_c"]]),
        end_point_temperature_c=end_point_temperature(cup, theta),
        heat_corrected_volume_cm3=volume,
        heat_corrected_c=corrected,
        names=cup.layout.names(),
        parameters=theta,
        covariance=covariance,
        residuals_c=residuals_c,
        kept=kept,
        residual_rms_c=float(np.sqrt(np.mean(residuals_c[kept] ** 2))) if kept.any() else float("nan"),
    )
