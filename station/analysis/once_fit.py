"""Heat balance of a cup mixed once: the model of `once_model` fitted to the whole trace, with what is known before.

Residuals that hang
together say that the model is not quite the cup: the samples then count for less, and the interval grows.
"""

from __future__ import annotations

import math

import numpy as np
from numpy.typing import NDArray

from station.analysis.heat_inputs import Array, Trace
from station.analysis.heat_solver import loss
from station.analysis.once_inputs import OnceHeat, OnceRefused, OnceSetup
from station.analysis.once_lines import NORMAL_MAD, effective_count
from station.analysis.once_model import INDEX, NAMES, SIZE, met_c
from station.analysis.once_priors import first_guess, prior_of
from station.analysis.once_solver import Solution, solve

FEWEST_BEFORE, FEWEST_AFTER = 10, 40
LEAST_AFTER_S = 60.0
MOST_RMS_STEPS, MOST_STEPS, LEAST_WIDENING = 0.27, 0.5, 3.0
Z_95 = 1.959964


def fit_once(samples: Trace, mixed_at_s: float, setup: OnceSetup) -> OnceHeat:
    """Heat given out in a cup mixed once, from its whole trace. Raises OnceRefused with a sentence for a student."""
    time_s = samples.time_s - mixed_at_s
    _require(samples, time_s)
    mean, u = prior_of(setup, samples, time_s)
    best = solve(mean, u, first_guess(mean, samples, time_s), samples, time_s)
    if not np.isfinite(best.theta).all():
        raise OnceRefused("no_fit", "The heat balance found no course of the cup that resembles these readings.")
    return _result(best, u, samples, time_s, mixed_at_s)


def _require(samples: Trace, time_s: Array) -> None:
    if not (len(time_s) and time_s[0] <= 0.0 <= time_s[-1]):
        raise OnceRefused("outside_trace", "The moment of mixing is not within the recorded time.")
    if np.count_nonzero(time_s < 0.0) < FEWEST_BEFORE:
        raise OnceRefused(
            "too_few_before",
            f"The heat balance needs at least {FEWEST_BEFORE} samples before mixing. Record for longer before you mix.",
        )
    if np.count_nonzero(time_s > 0.0) < FEWEST_AFTER or time_s[-1] < LEAST_AFTER_S:
        raise OnceRefused(
            "too_few_after",
            f"The heat balance needs at least {FEWEST_AFTER} samples over {LEAST_AFTER_S:.0f} s after mixing. "
            "Go on recording.",
        )
    if np.ptp(samples.temperature_c) < 3.0 * samples.step_c:
        raise OnceRefused("no_change", "The temperature did not change. Was anything added?")


def _result(best: Solution, u: Array, samples: Trace, time_s: Array, mixed_at_s: float) -> OnceHeat:
    free, step = np.flatnonzero(u > 0.0), samples.step_c
    kept = np.abs(best.residuals_c) < 8.0 * best.noise_c + step
    worth = effective_count(best.residuals_c[kept], step) / np.count_nonzero(kept)
    _, _, curvature = loss(best.residuals_c, best.noise_c, step)
    rows = best.jacobian[:, free]
    information = rows.T @ (rows * (worth * curvature)[:, None]) + np.diag(u[free] ** -2.0)
    covariance = np.zeros((SIZE, SIZE))
    covariance[np.ix_(free, free)] = np.linalg.inv(information)
    describes, notes, wider = _judge(best, samples, time_s, kept)
    covariance *= wider**2
    heat, u_heat = float(best.theta[0]), float(np.sqrt(covariance[0, 0]))
    change, slope = _change(best.theta, float(time_s[0]))
    u_change = float(np.sqrt(slope @ covariance @ slope))
    return OnceHeat(
        heat_j=heat,
        u_heat_j=u_heat,
        interval_95_j=(heat - Z_95 * u_heat, heat + Z_95 * u_heat),
        change_c=change,
        u_change_c=u_change,
        interval_95_c=(change - Z_95 * u_change, change + Z_95 * u_change),
        start_c=met_c(best.theta, float(time_s[0]))[0],
        mixed_at_s=float(best.theta[INDEX["mixed_s"]] + mixed_at_s),
        describes_trace=describes,
        notes=notes,
        names=NAMES,
        parameters=best.theta,
        covariance=covariance,
        residuals_c=best.residuals_c,
        kept=kept,
        residual_rms_c=float(np.sqrt(np.mean(best.residuals_c[kept] ** 2))),
    )


def _change(theta: Array, begin_s: float) -> tuple[float, Array]:
    """Change of the whole cup on mixing, without loss, and its derivatives: (heat + what was brought) / capacity."""
    at, slope = INDEX, np.zeros(SIZE)
    met, met_slope = met_c(theta, begin_s)
    added, apart = theta[at["added_j_k"]], theta[at["added_c"]] - met
    capacity = theta[at["contents_j_k"]] + theta[at["cup_j_k"]]
    change = (theta[0] + added * apart) / capacity
    slope[0], slope[at["added_j_k"]], slope[at["added_c"]] = 1.0, apart, added
    slope[at["contents_j_k"]] = slope[at["cup_j_k"]] = -change
    return float(change), np.asarray((slope - added * met_slope) / capacity)


def _judge(
    best: Solution, samples: Trace, time_s: Array, kept: NDArray[np.bool_]
) -> tuple[bool, tuple[str, ...], float]:
    """Whether the model describes the trace, notes, and how much wider the interval must be.

    Of 180 cups of the benchmark, none of them like the model, one in a hundred is above either limit.
    """
    late, notes = float(best.theta[INDEX["mixed_s"]]), []
    unit = max(samples.step_c, 2.0 * _flicker(best.residuals_c[kept]))
    block_s = max(15.0, 8.0 * float(np.median(np.diff(time_s))))
    short, long = (_means(best.residuals_c[kept], time_s[kept] - late, k * block_s) / unit for k in (1.0, 2.0))
    off = max(float(np.sqrt(np.mean(short**2))) / MOST_RMS_STEPS, float(np.abs(long).max()) / MOST_STEPS)
    describes = off < 1.0 and bool(np.count_nonzero(~kept) < 0.1 * len(kept))
    if not describes:
        notes.append(
            "The cup did something the heat balance does not know (more added, a spill, the probe out of the liquid?): "
            "its figures are less certain than usual."
        )
    if abs(late) > 10.0:
        word = "after" if late > 0 else "before"
        notes.append(f"The temperature began to change {abs(late):.0f} s {word} the mixing was marked.")
    return describes, tuple(notes), 1.0 if describes else max(LEAST_WIDENING, off)


def _flicker(residuals_c: Array) -> float:
    """Standard deviation of a single sample, from how neighbours differ, whatever the course."""
    return NORMAL_MAD * float(np.median(np.abs(np.diff(residuals_c)))) / math.sqrt(2.0)


def _means(residuals_c: Array, since_s: Array, block_s: float) -> Array:
    """Mean residual of each block of time that is not nearly empty."""
    _, block = np.unique(np.floor(since_s / block_s), return_inverse=True)
    count = np.bincount(block)
    means = np.bincount(block, residuals_c) / count
    return np.asarray(means[count >= 0.3 * np.median(count)])
