"""Heat balance of a cup mixed once: the model of `once_model` fitted to the whole trace, with what is known before.

Least squares on signed roots of the likelihood that `heat_solver` derives for a probe with steps (a plateau on
one step is no proof of its middle; a stale sample pulls no harder than a few good ones). Residuals that hang
together say that the model is not quite the cup: the samples then count for less, and the interval grows.
"""

from __future__ import annotations

from typing import NamedTuple

import numpy as np
from scipy.optimize import least_squares

from station.analysis.heat_inputs import Array, Estimate, Trace
from station.analysis.heat_solver import likely_noise, loss
from station.analysis.once_inputs import OnceHeat, OnceRefused, OnceSetup
from station.analysis.once_lines import effective_count
from station.analysis.once_model import INDEX, NAMES, SIZE, met_c, trace

FEWEST_BEFORE, FEWEST_AFTER = 10, 40
LEAST_AFTER_S = 60.0
ROUGH_C, COARSE_C = 0.3, 0.05
BLOCK_S, MOST_OFF_STEPS = 15.0, 0.6
Z_95 = 1.959964


class Solution(NamedTuple):
    """Parameters, residuals °C, derivatives of the trace, cost, noise °C."""

    theta: Array
    residuals_c: Array
    jacobian: Array
    cost: float
    noise_c: float


def fit_once(samples: Trace, mixed_at_s: float, setup: OnceSetup) -> OnceHeat:
    """Heat given out in a cup mixed once, from its whole trace. Raises OnceRefused with a sentence for a student."""
    time_s = samples.time_s - mixed_at_s
    _require(samples, time_s)
    mean, u = _prior(setup, samples, time_s)
    best = _solve(mean, u, samples, time_s)
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


def _log(estimate: Estimate) -> Estimate:
    return Estimate(float(np.log(estimate.value)), estimate.u / estimate.value)


def _prior(setup: OnceSetup, samples: Trace, time_s: Array) -> tuple[Array, Array]:
    """Mean and u of every parameter; where no figure is published the spread is a wide estimate of ours."""
    first = float(np.median(samples.temperature_c[time_s < 0.0]))
    room = setup.room_c or Estimate(first, 3.0)
    slow_s = max(25.0, 4.0 * setup.completion_s.value)
    known = {
        "heat_j": Estimate(0.0, 30.0 * setup.contents_j_k.value),
        "start_c": Estimate(first, 10.0),
        "added_c": setup.added_c or Estimate(first, 2.0),
        # Evaporation keeps an open cup's resting temperature a little below the room's.
        "room_c": Estimate(room.value, float(np.hypot(room.u, 1.0))),
        "room_drift_c_s": Estimate(0.0, 0.001),
        "log_loss_w_k": Estimate(float(np.log(0.12)), 0.8),
        "log_loss_change": Estimate(0.0, 0.15),
        "log_lag_fast_s": _log(setup.lag_fast_s),
        "log_lag_slow_s": _log(setup.lag_slow_s),
        "lag_share": setup.lag_share,
        "log_quick_s": Estimate(float(np.log(setup.completion_s.value)), 0.7),
        "log_slow_s": Estimate(float(np.log(slow_s)), 0.7),
        "slow_share": Estimate(0.1, 0.3) if setup.completion_s.value > 5.0 else Estimate(0.0, 0.03),
        "mixed_s": Estimate(-setup.press_s.value, setup.press_s.u),
        "cup_j_k": setup.cup_j_k,
        "wall_share": Estimate(0.5, 0.3),
        "log_wall_s": Estimate(float(np.log(60.0)), 0.8),
        "wall_offset_c": Estimate(0.0, 1.0),
        "probe_offset_c": Estimate(0.0, 3.0),
        "contents_j_k": setup.contents_j_k,
        "added_j_k": setup.added_j_k,
    }
    return np.array([known[name].value for name in NAMES]), np.array([known[name].u for name in NAMES])


def _start(mean: Array, samples: Trace, time_s: Array) -> Array:
    """First guess: the change between the ends of the trace, begun where the readings first leave the start."""
    theta, temperature = mean.copy(), samples.temperature_c
    theta[INDEX["start_c"]] = before = float(np.median(temperature[time_s < -3.0][-30:]))
    after = temperature[time_s > 0.0]
    change = float(after[np.argmax(np.abs(after - before))]) - before
    left = np.flatnonzero(
        (time_s > -20.0) & (np.abs(temperature - before) > max(0.1 * abs(change), 2 * samples.step_c))
    )
    if len(left):
        theta[INDEX["mixed_s"]] = float(np.clip(time_s[left[0]] - 1.5, time_s[0] + 1.0, 30.0))
    at, brought = INDEX["contents_j_k"], mean[INDEX["added_j_k"]] * (mean[INDEX["added_c"]] - before)
    theta[INDEX["heat_j"]] = change * (mean[at] + mean[INDEX["cup_j_k"]]) - brought
    return theta


LOW = {"lag_share": 0.0, "wall_share": 0.02, "slow_share": -0.5, "cup_j_k": 0.05}
HIGH = {"lag_share": 1.0, "wall_share": 0.98, "slow_share": 0.95}


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
    """Residuals and derivatives of samples and priors, in units of their spread, for one scale of the noise."""

    def __init__(self, mean: Array, u: Array, samples: Trace, time_s: Array, noise_c: float) -> None:
        self.mean, self.u, self.samples, self.time_s, self.noise_c = mean, u, samples, time_s, noise_c
        self.free = np.flatnonzero(u > 0.0)
        self.low, self.high = np.full(SIZE, -np.inf), np.full(SIZE, np.inf)
        for name, value in LOW.items():
            self.low[INDEX[name]] = value
        for name, value in HIGH.items():
            self.high[INDEX[name]] = value
        self.low[INDEX["mixed_s"]], self.high[INDEX["mixed_s"]] = time_s[0] + 0.5, time_s[-1] - 20.0
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
            model, jacobian = trace(self.theta(scaled), self.time_s)
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


def _solve(mean: Array, u: Array, samples: Trace, time_s: Array) -> Solution:
    theta = _start(mean, samples, time_s)
    noise = ROUGH_C
    for step, tolerance in enumerate((1e-2, 1e-3, 1e-4, 1e-6)):
        problem = _Problem(mean, u, samples, time_s, noise)
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
        theta = problem.theta(found.x)
        residual, jacobian = problem.look(found.x)
        if step < 3:
            noise = COARSE_C if step == 0 else likely_noise(residual, samples.step_c)
    if not np.isfinite(theta).all():
        raise OnceRefused("no_fit", "The heat balance found no course of the cup that resembles these readings.")
    return Solution(theta, residual, jacobian, float(2.0 * found.cost), noise)


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


def _judge(best: Solution, samples: Trace, time_s: Array, kept: np.ndarray) -> tuple[bool, tuple[str, ...], float]:
    """Whether the model describes the trace, notes, and how much wider the interval must be."""
    notes = []
    block = np.floor(time_s / BLOCK_S).astype(int)
    means = [float(best.residuals_c[kept & (block == b)].mean()) for b in np.unique(block[kept])]
    rough = float(np.sqrt(np.mean(np.square(means)))) / samples.step_c
    describes = rough < MOST_OFF_STEPS and np.count_nonzero(~kept) < 0.1 * len(kept)
    if not describes:
        notes.append(
            "The cup did something the heat balance does not know (more added, a spill, the probe out of the liquid?): "
            "its figures are less certain than usual."
        )
    late = float(best.theta[INDEX["mixed_s"]])
    if abs(late) > 10.0:
        word = "after" if late > 0 else "before"
        notes.append(f"The temperature began to change {abs(late):.0f} s {word} the mixing was marked.")
    return describes, tuple(notes), max(1.0, rough / MOST_OFF_STEPS)
