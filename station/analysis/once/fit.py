"""Heat balance of a cup mixed once: the model of `once_model` fitted to the whole trace, with what is known before.

Residuals that hang
together say that the model is not quite the cup: the samples then count for less, and the interval grows.
"""

from __future__ import annotations

import math
from dataclasses import dataclass
from typing import NamedTuple

import numpy as np
from numpy.typing import NDArray
from scipy.optimize import least_squares

from station.analysis.heat.inputs import Array, Trace
from station.analysis.heat.solver import likely_noise, loss
from station.analysis.lines.fit import LineFit, fit_line
from station.analysis.once.inputs import Indices, OnceHeat, OnceRefused, OnceSetup, first_guess, prior_of
from station.analysis.once.model import INDEX, NAMES, SIZE, met_c, trace
from station.analysis.once.moment import by_hand
from station.words import Message, say

# The best parameters of a cup mixed once: least squares on signed roots of the likelihood of a probe with steps.
#
# `heat_solver` derives that likelihood: a plateau on one step is no proof of its middle, and a stale sample pulls no
# harder than a few good ones.


ROUGH_C, COARSE_C, SPIKE_C = 0.3, 0.05, 0.5
BY_HAND_NOISE = 0.3 * math.sqrt(3.0) / math.pi
"""Of a division, the least scale of the logistic noise of readings by eye: a standard deviation of 0.3, ours."""
LOW = {"lag_share": 0.0, "wall_share": 0.02, "cup_j_k": 0.05}
HIGH = {"lag_share": 1.0, "wall_share": 0.98}


class Solution(NamedTuple):
    """Parameters, residuals °C, derivatives of the trace, cost, noise °C."""

    theta: Array
    residuals_c: Array
    jacobian: Array
    cost: float
    noise_c: float


def _root(residual_c: Array, noise_c: float, step_c: float) -> tuple[Array, Array]:
    """Signed root of twice the loss of each residual, and its derivative by the residual."""
    high, low = (residual_c + step_c / 2.0) / (2.0 * noise_c), (residual_c - step_c / 2.0) / (2.0 * noise_c)
    least = 2.0 * np.logaddexp(step_c / 4.0 / noise_c, -step_c / 4.0 / noise_c)
    value = np.logaddexp(high, -high) + np.logaddexp(low, -low) - least
    root = np.sign(residual_c) * np.sqrt(2.0 * np.maximum(value, 0.0))
    slope = (np.tanh(high) + np.tanh(low)) / (2.0 * noise_c)
    at_rest = np.sqrt(loss(np.zeros(1), noise_c, step_c)[2])
    tiny = np.abs(root) < 1e-5
    return np.where(tiny, at_rest * residual_c, root), np.where(tiny, at_rest, slope / np.where(tiny, 1.0, root))


class _Problem:
    """Residuals and derivatives of samples and priors, in units of their spread, for one scale of the noise.

    The times of ``samples`` count from the press.
    """

    def __init__(self, mean: Array, u: Array, samples: Trace, noise_c: float) -> None:
        self.mean, self.u, self.samples, self.noise_c = mean, u, samples, noise_c
        self.free = np.flatnonzero(u > 0.0)
        self.low, self.high = np.full(SIZE, -np.inf), np.full(SIZE, np.inf)
        for name, value in LOW.items():
            self.low[INDEX[name]] = value
        for name, value in HIGH.items():
            self.high[INDEX[name]] = value
        self.low[INDEX["mixed_s"]], self.high[INDEX["mixed_s"]] = samples.time_s[0] + 0.5, samples.time_s[-1] - 20.0
        self._last: tuple[Array, Array, Array] | None = None

    def theta(self, scaled: Array) -> Array:
        """The whole parameter vector for scaled moves of the free ones."""
        theta = self.mean.copy()
        theta[self.free] += scaled * self.u[self.free]
        return np.clip(theta, self.low, self.high)

    def scaled(self, theta: Array) -> Array:
        """The reverse."""
        return np.asarray((theta - self.mean)[self.free] / self.u[self.free])

    def look(self, scaled: Array) -> tuple[Array, Array]:
        """Residuals °C and derivatives of the trace at a place; the last place is remembered."""
        if self._last is None or not np.array_equal(self._last[0], scaled):
            model, jacobian = trace(self.theta(scaled), self.samples.time_s)
            self._last = scaled.copy(), self.samples.temperature_c - model, jacobian
        return self._last[1], self._last[2]

    def residuals(self, scaled: Array) -> Array:
        """Residuals of samples, then of priors."""
        root, _ = _root(self.look(scaled)[0], self.noise_c, self.samples.step_c)
        return np.concatenate([root, scaled])

    def derivatives(self, scaled: Array) -> Array:
        """Their derivatives by the scaled parameters."""
        residual, jacobian = self.look(scaled)
        _, slope = _root(residual, self.noise_c, self.samples.step_c)
        rows = -slope[:, None] * jacobian[:, self.free] * self.u[self.free]
        return np.concatenate([rows, np.eye(len(self.free))])


def solve(mean: Array, u: Array, start: Array, samples: Trace, time_s: Array) -> Solution:
    """The best parameters from ``start``; the noise is taken as large at first, then as the residuals show it.

    From then on samples far off (a spike, not a stale one) have no say; residuals are of all.
    """
    theta, noise, near = start, ROUGH_C, np.ones(len(time_s), dtype=np.bool_)
    # A few readings by hand lie on any course: how well an eye reads is not to be seen in them.
    least_c = BY_HAND_NOISE * samples.step_c if by_hand(time_s) else 0.0
    for stage, tolerance in enumerate((1e-2, 1e-3, 1e-4, 1e-6)):
        part = Trace(time_s[near], samples.temperature_c[near], samples.step_c)
        theta, cost = _least(_Problem(mean, u, part, noise), theta, tolerance)
        model, jacobian = trace(theta, time_s)
        residual = samples.temperature_c - model
        if stage == 0:
            noise = COARSE_C
        elif stage < 3:
            near = np.abs(residual) < SPIKE_C + 10.0 * float(np.median(np.abs(residual)))
            noise = max(likely_noise(residual[near], samples.step_c), least_c)
    return Solution(theta, residual, jacobian, cost, noise)


def _least(problem: _Problem, theta: Array, tolerance: float) -> tuple[Array, float]:
    found = least_squares(
        problem.residuals,
        problem.scaled(theta),
        problem.derivatives,
        method="lm",
        ftol=tolerance,
        xtol=1e-9,
        gtol=1e-12,
        max_nfev=60,
    )
    return problem.theta(found.x), float(2.0 * found.cost)


# Which readings lie on the straight line before or after mixing, and the line through them.
#
# A stated rule, one for both sides. Readings close to the mixing are left out; so is what comes before the line
# is reached: the line begins at the earliest reading from which on the next few agree with the straight line
# through all later ones. It knows nothing of heat.


LEAST_READINGS = 3
LEAST_SPAN_S = 90.0
LEAST_BEFORE_S = 60.0
"""A probe that comes from the air needs half a minute of the time before mixing."""
LONGEST_S, LONGEST_READINGS = 240.0, 8
NEWEST_S = 90.0
CLOSE_BEFORE_S, CLOSE_AFTER_S = 10.0, 10.0
BLOCK_S = 20.0
OFF_STEPS = 2.0
CHANGE_SHARE = 0.01
BEGINNINGS = 60
ROUNDS = 5
NORMAL_MAD = 1.4826  # standard deviation over median absolute deviation, normal distribution

RULE = say(
    "once-rule",
    before_s=f"{CLOSE_BEFORE_S:.0f}",
    after_s=f"{CLOSE_AFTER_S:.0f}",
    from_min=f"{LEAST_BEFORE_S / 60:g}",
    to_min=f"{LONGEST_S / 60:.0f}",
    least=LEAST_READINGS,
    most_by_hand=LONGEST_READINGS,
    steps=f"{OFF_STEPS:.0f}",
)


@dataclass(frozen=True)
class Fitted:
    """A line with the samples it goes through (``used``), those in its window that lie off it, and residuals °C."""

    line: LineFit
    used: Indices
    set_aside: Indices
    residuals_c: Array


def robust_line(time_s: Array, temperature_c: Array, inside: Indices, step_c: float) -> Fitted:
    """Least squares line through ``inside``, without those far off it; starts from the medians of the thirds."""
    used = inside
    off = np.abs(temperature_c[inside] - _median_line(time_s[inside], temperature_c[inside]))
    for _ in range(ROUNDS):
        near = inside[off <= max(OFF_STEPS * step_c, 3.0 * NORMAL_MAD * float(np.median(off)))]
        if len(near) < max(LEAST_READINGS, len(inside) // 2):
            near = inside
        line = fit_line(time_s[near], temperature_c[near])
        off = np.abs(temperature_c[inside] - (line.intercept + line.slope * time_s[inside]))
        if np.array_equal(near, used):
            break
        used = near
    residual = temperature_c[used] - (line.intercept + line.slope * time_s[used])
    return Fitted(line, used, np.setdiff1d(inside, used), residual)


def _median_line(time_s: Array, temperature_c: Array) -> Array:
    """Line through the medians of the first and the last third: hardly moved by a few readings far off."""
    third = max(1, len(time_s) // 3)
    x = np.median(time_s[:third]), np.median(time_s[-third:])
    y = np.median(temperature_c[:third]), np.median(temperature_c[-third:])
    slope = (y[1] - y[0]) / (x[1] - x[0])
    level = np.median(temperature_c - slope * time_s)
    return np.asarray(level + slope * time_s)


def last_minutes(time_s: Array, before: Indices) -> Indices:
    """The readings of the last minutes before mixing: an older course says nothing of it."""
    if not len(before):
        return before
    since = time_s[before] >= time_s[before[-1]] - LONGEST_S
    return before[since] if np.count_nonzero(since) >= LEAST_READINGS else before[-LEAST_READINGS:]


def strays(time_s: Array, temperature_c: Array, fitted: Fitted, step_c: float, change_c: float) -> bool:
    """Whether the readings of a line leave it at either end: a bend is no straight line, whatever it is called."""
    inside = np.sort(np.concatenate([fitted.used, fitted.set_aside]))
    times, off = time_s[inside], temperature_c[inside] - fitted.line.intercept - fitted.line.slope * time_s[inside]
    allowed = max(step_c, 2.0 * CHANGE_SHARE * abs(change_c))
    # One reading by hand alone says less than the many of a trace.
    ends = off[times < times[0] + BLOCK_S], off[times > times[-1] - BLOCK_S]
    return any(abs(float(np.median(each))) > (allowed if len(each) > 2 else 2.0 * allowed) for each in ends)


def find_line(
    time_s: Array,
    temperature_c: Array,
    inside: Indices,
    step_c: float,
    change_c: float,
    least_s: float = LEAST_SPAN_S,
) -> Fitted | None:
    """The line of the rule among ``inside`` (indices in order of time); None when no part is straight.

    ``change_c`` is about the change on mixing, for what is allowed off the line; it goes on for ``least_s`` at least.
    """
    allowed = max(0.5 * step_c, CHANGE_SHARE * abs(change_c))
    last = time_s[inside[-1]]
    latest = int(np.searchsorted(time_s[inside], last - least_s, side="right"))
    latest = min(latest, len(inside) - LEAST_READINGS + 1)
    for first in np.unique(np.linspace(0, latest - 1, min(BEGINNINGS, max(latest, 1))).astype(int)):
        part = inside[first:]
        long = int(np.count_nonzero(time_s[part] <= time_s[part[0]] + LONGEST_S))
        part = part[: max(long, LONGEST_READINGS)]
        if _agrees(time_s, temperature_c, part, step_c, allowed):
            return robust_line(time_s, temperature_c, part, step_c)
    return None


def _agrees(time_s: Array, temperature_c: Array, part: Indices, step_c: float, allowed: float) -> bool:
    """Whether the first readings of ``part`` lie on the line through the rest of it."""
    begun = time_s[part] < time_s[part[0]] + BLOCK_S
    block, rest = part[begun], part[~begun]
    if len(rest) < LEAST_READINGS - 1 or np.ptp(time_s[rest]) == 0.0:
        return False
    if len(rest) == 2:
        line = fit_line(time_s[rest], temperature_c[rest])
        scatter = 0.0
    else:
        fitted = robust_line(time_s, temperature_c, rest, step_c)
        line, scatter = fitted.line, fitted.line.s
    middle = float(np.median(temperature_c[block] - line.slope * (time_s[block] - time_s[block[0]])))
    doubt = 2.0 * scatter * np.sqrt(line.unit_variance_at(float(time_s[block[0]])) + 1.0 / len(block))
    return bool(abs(middle - line.at(float(time_s[block[0]]))) <= max(allowed, min(doubt, 3.0 * allowed)) + 1e-9)


def facts_in(temperature_c: Array) -> int:
    """How many facts readings on a probe's steps can hold: two, and one for each time the value changes.

    A slow drift without flicker repeats one value many times; where it changes is all that is known of the slope.
    """
    return 2 + int(np.count_nonzero(np.diff(temperature_c)))


def effective_count(residuals_c: Array, step_c: float) -> float:
    """How many independent readings these are worth, from the correlation of neighbours; at least 2."""
    count = len(residuals_c)
    power = float(residuals_c @ residuals_c)
    if count < 20:
        return float(count)
    if power < count * (1e-3 * step_c) ** 2:
        return 2.0
    total, most = 1.0, count // 3
    for lag in range(1, most):
        rho = float(residuals_c[:-lag] @ residuals_c[lag:]) / power
        if rho < 0.05:
            break
        total += 2.0 * rho
    return float(np.clip(count / total, 2.0, count))


FEWEST_BEFORE, FEWEST_AFTER = 10, 40
FEWEST_BY_HAND = 4
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
        raise OnceRefused("no_fit", say("once-heat-no-course"))
    return _result(best, u, samples, time_s, mixed_at_s)


def _require(samples: Trace, time_s: Array) -> None:
    if not (len(time_s) and time_s[0] <= 0.0 <= time_s[-1]):
        raise OnceRefused("outside_trace", say("once-mixing-outside"))
    least = (FEWEST_BY_HAND, FEWEST_BY_HAND) if by_hand(time_s) else (FEWEST_BEFORE, FEWEST_AFTER)
    if np.count_nonzero(time_s < 0.0) < least[0]:
        raise OnceRefused("too_few_before", say("once-heat-few-before", least=least[0]))
    if np.count_nonzero(time_s > 0.0) < least[1] or time_s[-1] < LEAST_AFTER_S:
        few = say("once-heat-few-after", least=least[1], seconds=f"{LEAST_AFTER_S:.0f}")
        raise OnceRefused("too_few_after", few)
    if np.ptp(samples.temperature_c) < 3.0 * samples.step_c:
        raise OnceRefused("no_change", say("once-heat-no-change"))


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
) -> tuple[bool, tuple[Message, ...], float]:
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
        notes.append(say("once-heat-unusual"))
    if abs(late) > 10.0:
        side = "after" if late > 0 else "before"
        notes.append(say("once-heat-late", seconds=f"{abs(late):.0f}", side=side))
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
