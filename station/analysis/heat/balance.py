"""Heat balance: the end-point from the whole trace of one repeat, by fitting the cup model to it."""

from __future__ import annotations

from collections.abc import Sequence
from dataclasses import dataclass, replace
from itertools import pairwise

import numpy as np
from numpy.typing import NDArray

from station.analysis.heat.inputs import Array, HeatFit, HeatRefused, HeatSetup, Pour, Trace
from station.analysis.heat.model import INDEX, Cup, at_pours, capacity, pour_times
from station.analysis.heat.model import trace as cup_trace
from station.analysis.heat.search import Branch, best_of, branches, posterior, search, surely_passed
from station.analysis.heat.solver import Problem, Solution, covariance_of, loss, strain
from station.analysis.heat.start import plateaus
from station.words import Message, say

# Does the cup model describe the trace? Tests on the residuals, with words when it does not.
#
# A spill, an open lid, a probe lifted out or a portion that was not poured as planned leave residuals that hang
# together for many samples. Limits are set from simulated cups of another build, in which a good cup leaves
# blocks of ten samples within some 0.02 °C: common practice, no source.


BLOCK = 10
LARGEST_NOISE_C, LARGEST_BLOCK_RMS_C, LARGEST_BLOCK_C = 0.035, 0.035, 0.15
LARGEST_SHARE_OUT = 0.10
LARGEST_PULL, MOST_UNUSUAL = 3.5, 4.2
LEAST_STRETCH, LEAST_SHARE, UNUSUAL_SHARE = 2.0, 0.3, 0.08
"""When it does not describe the trace: least factor on u, least u over a portion, the same for an unusual cup only."""


@dataclass(frozen=True)
class Check:
    """Verdict: whether the model describes the trace; if not, by how much and to what least to widen u, and why."""

    describes_trace: bool
    stretch: float
    least_u_cm3: float
    notes: tuple[Message, ...]


def keep(residuals_c: Array, noise_c: float, step_c: float) -> NDArray[np.bool_]:
    """Marks the samples that are no outliers."""
    return np.asarray(np.abs(residuals_c) < 8.0 * noise_c + step_c)


def _blocks(problem: Problem, solution: Solution, time_s: Array) -> list[NDArray[np.intp]]:
    """Runs of samples within one interval."""
    interval = np.searchsorted(pour_times(problem.cup, solution.theta), time_s)
    found: list[NDArray[np.intp]] = []
    for k in np.unique(interval):
        inside = np.flatnonzero(interval == k)
        found += np.array_split(inside, max(1, len(inside) // BLOCK))
    return found


def _pulls(problem: Problem, solution: Solution) -> list[Message]:
    """Portions that had to go far from what was planned and marked."""
    layout, pull = problem.cup.layout, strain(problem, solution)
    notes = [
        say("heat-note-portion-volume", portion=int(k) + 1) for k in np.flatnonzero(pull[layout.volumes] > LARGEST_PULL)
    ]
    return notes + [
        say("heat-note-portion-moment", portion=int(k) + 1) for k in np.flatnonzero(pull[layout.times] > LARGEST_PULL)
    ]


def _unusual(problem: Problem, solution: Solution) -> bool:
    """Whether cup or probe had to go far from the usual: alone that hardly moves the end-point."""
    layout, pull = problem.cup.layout, strain(problem, solution)
    pull[layout.volumes] = pull[layout.times] = 0.0
    return bool(pull.max() > MOST_UNUSUAL)


def check(problem: Problem, solution: Solution, time_s: Array, residuals_c: Array) -> Check:
    """Judge the residuals of all samples, those set aside in the fit as well."""
    kept = keep(residuals_c, problem.noise_c, problem.trace.step_c)
    blocks = _blocks(problem, solution, time_s)
    means = np.array([residuals_c[block].mean() for block in blocks])
    _, slope, curvature = loss(residuals_c, problem.noise_c, problem.trace.step_c)
    together = sum(float(slope[block].sum()) ** 2 for block in blocks) / max(float(curvature.sum()), 1e-9)
    notes = _pulls(problem, solution)
    if problem.noise_c > LARGEST_NOISE_C or np.sqrt(np.mean(means**2)) > LARGEST_BLOCK_RMS_C:
        notes.append(say("heat-note-strays"))
    worst = int(np.argmax(np.abs(means)))
    if abs(means[worst]) > LARGEST_BLOCK_C:
        moment = float(time_s[blocks[worst]].mean())
        notes.append(say("heat-note-something-happened", seconds=f"{moment:.0f}"))
    if np.mean(~kept) > LARGEST_SHARE_OUT:
        notes.append(say("heat-note-set-aside", percent=f"{100.0 * np.mean(~kept):.0f}"))
    share = LEAST_SHARE if notes else UNUSUAL_SHARE
    if _unusual(problem, solution):
        notes.append(say("heat-note-cup-unusual"))
    stretch = 1.0 if not notes else max(LEAST_STRETCH, float(np.sqrt(together)))
    least = 0.0 if not notes else share * float(np.mean(np.diff(problem.scale.edges_cm3)))
    return Check(not notes, stretch, least, tuple(notes))


# From fitted parameters to the figures of the practical: end-point, concentration, enthalpy, each with u.
#
# Uncertainties follow the law of propagation (JCGM 100:2008, 5.2) with the covariance of the fit, so what is
# shared (volumes, heat capacities) is counted once.


@dataclass(frozen=True)
class Figure:
    """A value with its standard uncertainty."""

    value: float
    u: float


def acid_concentration(theta: Array, covariance: Array, setup: HeatSetup) -> Figure | None:
    """Concentration of the acid, mol/dm³; None without the alkali's."""
    if setup.alkali_mol_dm3 is None:
        return None
    end_point, acid = theta[INDEX["end_point_cm3"]], theta[INDEX["acid_volume_cm3"]]
    value = end_point * setup.alkali_mol_dm3.value * setup.acid_per_alkali / acid
    slope = np.zeros(len(theta))
    slope[INDEX["end_point_cm3"]], slope[INDEX["acid_volume_cm3"]] = 1.0 / end_point, -1.0 / acid
    own = setup.alkali_mol_dm3.u / setup.alkali_mol_dm3.value
    return Figure(float(value), float(value * np.sqrt(slope @ covariance @ slope + own**2)))


def reaction_temperature(cup: Cup, theta: Array) -> float:
    """Mean temperature of the cup over the pours before the end-point, °C."""
    levels = at_pours(cup, theta)
    before = np.concatenate([[0.0], np.cumsum(theta[cup.layout.volumes])])[:-1] < theta[0]
    return float(levels[before].mean()) if before.any() else float(theta[INDEX["start_c"]])


def enthalpy(theta: Array, covariance: Array, setup: HeatSetup, cup: Cup, temperature_c: float) -> Figure | None:
    """Enthalpy per mol of water formed at ``temperature_c``, kJ/mol; None without the alkali's concentration.

    J/cm³ over mol/dm³ is kJ/mol.
    """
    if setup.alkali_mol_dm3 is None:
        return None
    warmer = temperature_c - cup.reference_c
    heat, slope_k = theta[INDEX["heat_j_cm3"]], theta[INDEX["heat_slope_k"]]
    water = setup.alkali_mol_dm3.value * setup.water_per_alkali
    value = -heat * (1.0 + slope_k * warmer) / water
    slope = np.zeros(len(theta))
    slope[INDEX["heat_j_cm3"]] = -(1.0 + slope_k * warmer) / water
    slope[INDEX["heat_slope_k"]] = -heat * warmer / water
    own = value * setup.alkali_mol_dm3.u / setup.alkali_mol_dm3.value
    return Figure(float(value), float(np.sqrt(slope @ covariance @ slope + own**2)))


def end_point_temperature(cup: Cup, theta: Array) -> float:
    """Temperature of the mixed cup at the end-point, °C."""
    levels = at_pours(cup, theta)
    volume = np.concatenate([[0.0], np.cumsum(theta[cup.layout.volumes])])
    portion = int(np.clip(np.searchsorted(volume, theta[0]) - 1, 0, cup.layout.pours - 1))
    share = (theta[0] - volume[portion]) / (volume[portion + 1] - volume[portion])
    return float(levels[portion, 0] + np.clip(share, 0.0, 1.0) * (levels[portion, 1] - levels[portion, 0]))


def heat_corrected(cup: Cup, theta: Array, offsets_c: Array) -> tuple[Array, Array]:
    """The trace as points on two straight lines: true volumes, cm³, and heat-corrected temperatures, °C.

    Both have shape pours + 1. The heat of reaction so far is divided by the heat capacity at the end-point,
    as if nothing were lost and all were warmed alike; ``offsets_c`` (shape pours + 1), what the samples of
    each interval lie above the fit, is carried over as heat, so the scatter stays visible.
    """
    volume = np.concatenate([[0.0], np.cumsum(theta[cup.layout.volumes])])
    whole = capacity(cup, theta, np.atleast_1d(theta[0]))[0]
    heat = theta[INDEX["heat_j_cm3"]] * np.minimum(volume, theta[0])
    return volume, theta[INDEX["start_c"]] + (heat + capacity(cup, theta, volume) * offsets_c) / whole


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
        raise HeatRefused("no_fit", say("heat-open")) from None
    _refuse_unpassed(problem, found, setup, pours)
    return _result(trace, setup, problem, found)


def _refuse_unfit(trace: Trace, pours: Sequence[Pour], setup: HeatSetup) -> None:
    if setup.unmodelled is not None:
        raise HeatRefused("reagents", say("heat-unknown-reagents", reagents=setup.unmodelled))
    if len(pours) < FEWEST_PORTIONS:
        raise HeatRefused("too_few_portions", say("heat-few-portions", least=FEWEST_PORTIONS, count=len(pours)))
    if any(later.press_s <= earlier.press_s for earlier, later in pairwise(pours)):
        raise ValueError("the portions must be in the order of time")
    inside = np.count_nonzero((trace.time_s > pours[0].press_s - 60.0) & (trace.time_s < pours[-1].press_s + 300.0))
    if inside < max(FEWEST_SAMPLES, 3 * len(pours)):
        raise HeatRefused("too_few_samples", say("heat-few-samples", count=int(inside)))
    if float(np.ptp(plateaus(trace, pours))) < FLATTEST_STEPS * trace.step_c:
        raise HeatRefused("no_heat", say("heat-hardly-changes"))
    if trace.time_s[-1] < pours[-1].press_s + 3.0:
        raise HeatRefused("too_few_samples", say("heat-trace-ends"))


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
        raise HeatRefused("not_passed", say("heat-not-surely-passed"))
    judged = check(problem, best.solution, trace.time_s, best.solution.residuals_c)
    unsure = after <= 2 or not judged.describes_trace
    if unsure and not surely_passed(problem, best.solution, setup, pours):
        raise HeatRefused("not_passed", say("heat-not-passed"))
    if best.portion == 0:
        raise HeatRefused("first_portion", say("heat-first-portion"))
    heat = INDEX["heat_j_cm3"]
    u_heat = float(np.sqrt(covariance_of(problem, best.solution)[heat, heat]))
    if abs(best.solution.place[heat]) < FAINTEST * u_heat:
        raise HeatRefused("no_bend", say("heat-lost-in-scatter"))


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
