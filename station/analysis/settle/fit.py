"""The fit behind the settle detector: a cup that jumps and drifts, seen through a probe with two lags.

Eight parameters with normal priors, a few Gauss-Newton steps, robust weights. No numpy: the daemon runs it
at every sample on a small board. This file knows the shape of the trace, not when a reading counts as
settled.
"""

from __future__ import annotations

from collections.abc import Callable, Sequence
from dataclasses import dataclass
from math import exp, log, sqrt
from operator import mul

# Linear algebra for a handful of parameters, in lists: the daemon carries no numpy.


Matrix = list[list[float]]
"""Square, symmetric and positive definite; only the lower half is read."""


def solve(matrix: Matrix, right: Sequence[float]) -> list[float]:
    """The x of matrix x = right."""
    return substitute(cholesky(matrix), right)


def inverse(matrix: Matrix) -> Matrix:
    """The inverse, both halves."""
    lower = cholesky(matrix)
    size = len(matrix)
    return [substitute(lower, [1.0 if i == j else 0.0 for j in range(size)]) for i in range(size)]


def times(matrix: Matrix, vector: Sequence[float]) -> list[float]:
    """Matrix (both halves given) times vector."""
    return [sum(map(mul, row, vector)) for row in matrix]


def cholesky(matrix: Matrix) -> Matrix:
    """The lower triangle L of matrix = L L'."""
    size = len(matrix)
    lower = [[0.0] * size for _ in range(size)]
    for i in range(size):
        row = lower[i]
        for j in range(i + 1):
            other = lower[j]
            rest = matrix[i][j]
            for k in range(j):
                rest -= row[k] * other[k]
            row[j] = sqrt(rest) if i == j else rest / other[j]
    return lower


def substitute(lower: Matrix, right: Sequence[float]) -> list[float]:
    """The x of L L' x = right."""
    size = len(lower)
    half = [0.0] * size
    for i in range(size):
        rest = right[i]
        for k in range(i):
            rest -= lower[i][k] * half[k]
        half[i] = rest / lower[i][i]
    out = [0.0] * size
    for i in range(size - 1, -1, -1):
        rest = half[i]
        for k in range(i + 1, size):
            rest -= lower[k][i] * out[k]
        out[i] = rest / lower[i][i]
    return out


BASE, CHANGE, DRIFT, START, FAST, SLOW, SHARE, MIX = range(8)
"""Places of the parameters: level before in °C, change in °C, drift in °C/s, moment of the pour in s,
logarithms of the fast and slow lag in s, share of the fast lag, logarithm of the mixing time in s."""

STEPS = 3
"""Gauss-Newton steps; more change the answer by less than the probe's noise."""


WALL, U_WALL, WALL_S = 0.035, 0.015, 28.0
"""Part of a change that goes into the cup's wall, its standard uncertainty, and how fast: an estimate for
thin foam (5 J/K against 35 cm³ of water), no source."""

STEEP = 0.7
"""A conversion may be off by what the trace climbs in so many seconds: a pour is no step, a value may be
stale."""

ROBUST = 0.2
"""How fast a conversion that is far off the trace loses its weight."""


@dataclass(frozen=True, slots=True)
class Prior:
    """Means of the eight parameters in the order of their places, and the inverse of their covariance (8 by 8)."""

    mean: tuple[float, ...]
    precision: Matrix


@dataclass(frozen=True, slots=True)
class Fitted:
    """Parameters at the mode, their covariance (8 by 8), the weighted root mean square of the residuals in
    °C, and by how much the pour turned the drift, in °C/s."""

    at: tuple[float, ...]
    covariance: Matrix
    rms_c: float
    turn_c_s: float = 0.0

    def cup_c(self, time_s: float) -> float:
        """The cup at `time_s`, in °C: its drift line and what has not gone into the wall yet."""
        at = self.at
        ago = max(time_s - at[START], 0.0)
        drifted = at[DRIFT] * ago + (at[DRIFT] - self.turn_c_s) * self._behind_s()
        return at[BASE] + at[CHANGE] * (1.0 + WALL * exp(-ago / WALL_S)) + drifted

    def _behind_s(self) -> float:
        """By how much the probe trails a steady drift."""
        at = self.at
        return at[SHARE] * exp(at[FAST]) + (1.0 - at[SHARE]) * exp(at[SLOW])

    def u_cup_c(self, time_s: float) -> float:
        """Standard uncertainty of `cup_c`."""
        ago = time_s - self.at[START]
        row = [1.0, 1.0, ago + self._behind_s(), -self.at[DRIFT]]
        total = sum(row[i] * row[j] * self.covariance[i][j] for i in range(4) for j in range(4))
        fading = U_WALL * self.at[CHANGE] * exp(-max(ago, 0.0) / WALL_S)
        return sqrt(max(total, 0.0) + fading * fading)

    def probe_c(self, time_s: float) -> float:
        """What the probe shows at `time_s`, in °C."""
        return model(self.at, time_s, self.turn_c_s)[0]


def fit(
    samples: Sequence[tuple[float, float]],
    prior: Prior,
    noise_c: float,
    guess: Sequence[float] | None = None,
    steps: int = STEPS,
    turn_c_s: float = 0.0,
) -> Fitted:
    """Fit (time_s, temperature_c) rows; `noise_c` is the standard deviation of one conversion; the steps
    start at `guess`, or at the prior's means; `turn_c_s` is by how much the pour turned the drift.

    Conversions during a steep part get more room, because a pour is no step and a stale value is wrong by
    the slope; a value far off the trace loses its weight.
    """
    at = list(prior.mean if guess is None else guess)
    matrix: Matrix = []
    rms = 0.0
    for _ in range(steps):
        matrix, right, rms = _normal(samples, at, prior, noise_c, turn_c_s)
        step = solve(matrix, right)
        at = [_bounded(place, value + change) for place, (value, change) in enumerate(zip(at, step, strict=True))]
    return Fitted(tuple(at), inverse(matrix), rms, turn_c_s)


def model(at: Sequence[float], time_s: float, turn_c_s: float = 0.0) -> tuple[float, list[float]]:
    """The probe's temperature in °C and its derivatives by the eight parameters."""
    return model_of(at, turn_c_s)(time_s)


def model_of(at: Sequence[float], turn_c_s: float) -> Callable[[float], tuple[float, list[float]]]:
    """Return `model` as a function of time: what does not change with it is computed once for a whole trace."""
    base, change, drift, start, log_fast, log_slow, share, log_mix = at
    fast, slow, mix = exp(log_fast), exp(log_slow), exp(log_mix)
    (f_gap, f_mixed_s), (s_gap, s_mixed_s) = _apart(fast, mix), _apart(slow, mix)
    f_wall, s_wall = _wall_share(fast), _wall_share(slow)
    rest, before = 1.0 - share, drift - turn_c_s
    f_lag, s_lag, mix_change = share * fast, rest * slow, -mix * change

    def model_at(time_s: float) -> tuple[float, list[float]]:
        ago = time_s - start
        if ago <= 0.0:
            return base + before * ago, [1.0, 0.0, ago, -before, 0.0, 0.0, 0.0, 0.0]
        # What each lag behind the mixing time has left of a step, and its derivatives by lag, mixing time and time.
        by_fast, by_slow, f_by_mix = exp(-ago / fast), exp(-ago / slow), exp(-ago / f_mixed_s)
        s_by_mix = f_by_mix if s_mixed_s == f_mixed_s else exp(-ago / s_mixed_s)
        f_left = (fast * by_fast - f_mixed_s * f_by_mix) / f_gap
        s_left = (slow * by_slow - s_mixed_s * s_by_mix) / s_gap
        f_tau, s_tau = (by_fast * (1.0 + ago / fast) - f_left) / f_gap, (by_slow * (1.0 + ago / slow) - s_left) / s_gap
        f_mix = (f_left - f_by_mix * (1.0 + ago / f_mixed_s)) / f_gap
        s_mix = (s_left - s_by_mix * (1.0 + ago / s_mixed_s)) / s_gap
        f_ago, s_ago = (f_by_mix - by_fast) / f_gap, (s_by_mix - by_slow) / s_gap
        # A probe on a steady drift trails by its mean lag, once the lags have had time to build up; the drift
        # from before the pour it trails already.
        f_ramp, s_ramp = 1.0 - by_fast, 1.0 - by_slow
        trail = f_lag * f_ramp + s_lag * s_ramp
        into_wall = exp(-ago / WALL_S)
        # What each lag shows of a heat that fades into the wall.
        seen = share * (f_wall * (into_wall - 1.0 + f_ramp)) + rest * (s_wall * (into_wall - 1.0 + s_ramp))
        shape = 1.0 - (share * f_left + rest * s_left) + WALL * seen
        return base + change * shape + drift * ago - turn_c_s * trail, [
            1.0,
            shape,
            ago,
            change * (share * f_ago + rest * s_ago) - drift + turn_c_s * (1.0 - share * f_ramp - rest * s_ramp),
            -f_lag * (change * f_tau + turn_c_s * f_ramp),
            -s_lag * (change * s_tau + turn_c_s * s_ramp),
            change * (s_left - f_left) + turn_c_s * (slow * s_ramp - fast * f_ramp),
            mix_change * (share * f_mix + rest * s_mix),
        ]

    return model_at


def _wall_share(tau: float) -> float:
    """How much a lag `tau` shows of a heat that fades into the wall."""
    gap = WALL_S - tau
    if abs(gap) < 0.5:
        gap = 0.5
    return WALL_S / gap


def _apart(tau: float, mix: float) -> tuple[float, float]:
    """How far a lag `tau` and a mixing time are apart, kept from nothing, and the mixing time that goes with it."""
    gap = tau - mix
    if abs(gap) < 0.02 * tau:
        gap = 0.02 * tau
        mix = tau - gap
    return gap, mix


def _normal(
    samples: Sequence[tuple[float, float]], at: Sequence[float], prior: Prior, noise_c: float, turn_c_s: float
) -> tuple[Matrix, list[float], float]:
    """Normal equations of one Gauss-Newton step around `at`, lower half, and the weighted rms."""
    model_at = model_of(at, turn_c_s)
    matrix = [list(row) for row in prior.precision]
    right = times(prior.precision, [mean - now for mean, now in zip(prior.mean, at, strict=True)])
    rows, weights, offs = list[list[float]](), list[float](), list[float]()
    for time_s, temperature_c in samples:
        value, row = model_at(time_s)
        off = temperature_c - value
        steep = row[START] * STEEP
        variance = noise_c * noise_c + steep * steep
        weights.append(1.0 / (variance + off * off * ROBUST))
        rows.append(row)
        offs.append(off)
    if not rows:
        return matrix, right, 0.0
    columns = list(zip(*rows, strict=True))
    for place, line in enumerate(matrix):
        scaled = list(map(mul, weights, columns[place]))
        right[place] = sum(map(mul, scaled, offs), right[place])
        for other in range(place + 1):
            line[other] = sum(map(mul, scaled, columns[other]), line[other])
    squares = (weight * off * off for weight, off in zip(weights, offs, strict=True))
    return matrix, right, sqrt(sum(squares, 0.0) / sum(weights, 0.0))


LOW = (-1e9, -60.0, -0.1, -1e9, log(1.0), log(3.0), 0.0, log(0.3))
HIGH = (1e9, 60.0, 0.1, 1e9, log(25.0), log(60.0), 1.0, log(40.0))


def _bounded(place: int, value: float) -> float:
    return min(max(value, LOW[place]), HIGH[place])
