"""The cup model: temperature at the probe while portions of alkali go into an insulated cup of acid.

Between pours the cup is a linear system: liquid (with the fast part of the cup), a part of the wall that
warms slowly, unmixed heat that dies away, and a probe with two time constants. Its solution in each
interval is a sum of six exponentials ("modes"), so the trace and its derivatives are closed forms:

* a pour adds alkali of its own temperature and the heat of the part that still finds acid;
* the liquid's heat capacity follows its composition;
* heat is lost to the room in proportion to the excess temperature, a little more than that when warm.

The derivatives of the modes come from a complex step (Squire & Trapp, SIAM Review 40, 110 (1998)), those
of the trace from the modes by the chain rule; both are exact to rounding.
This module knows no data, priors or fit.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from station.analysis.cup_layout import INDEX, Layout

Array = NDArray[np.float64]
Numbers = NDArray[np.inexact[Any]]

STEP = 1e-30
MODES = 6


@dataclass(frozen=True)
class Cup:
    """What is fixed about a cup while its parameters are fitted.

    Volumetric heat capacities in J/(cm³ K); ``begin_s`` is where the trace begins, ``reference_c`` the
    temperature at which ``heat_j_cm3`` holds; ``warmth_k`` (pours + 1 values) is how much warmer than at the
    beginning the cup was in each interval, ``middle_s`` the middle of each: coefficients that vary slowly are
    held constant within an interval.
    """

    acid_j_cm3_k: float
    alkali_j_cm3_k: float
    product_j_cm3_k: float
    begin_s: float
    reference_c: float
    warmth_k: Array
    middle_s: Array

    @property
    def layout(self) -> Layout:
        """Places of the parameters."""
        return Layout(len(self.warmth_k) - 1)


@dataclass(frozen=True)
class Modes:
    """The trace as exponentials: T(t) = Σ amplitude·exp(rate·(t − start)) in each interval.

    ``start`` has shape (..., intervals), ``rate`` and ``amplitude`` (..., intervals, 6).
    """

    start: Numbers
    rate: Numbers
    amplitude: Numbers


def _liquid(cup: Cup, theta: Numbers, poured: Numbers) -> Numbers:
    """Heat capacity of the liquid, J/K, when ``poured`` cm³ of alkali are in."""
    end_point, acid = theta[..., INDEX["end_point_cm3"]], theta[..., INDEX["acid_volume_cm3"]]
    reacted = np.where(poured.real < end_point.real, poured, end_point)
    used = acid * reacted / end_point
    total = (
        cup.acid_j_cm3_k * (acid - used)
        + cup.product_j_cm3_k * (used + reacted)
        + cup.alkali_j_cm3_k * (poured - reacted)
    )
    return np.asarray(total * theta[..., INDEX["heat_capacity_scale"]])


def _apart(rate: Numbers, lag: Numbers) -> Numbers:
    """``rate`` moved by a thousandth where it meets the probe's own rate, so that no gain is infinite."""
    near = np.abs(1.0 + rate.real * lag.real) < 1e-3
    return np.where(near, rate * 1.002, rate)


class _Walk:
    """Carries the state of the cup from interval to interval and notes the modes of each."""

    def __init__(self, cup: Cup, theta: Numbers) -> None:
        self.cup, self.theta = cup, theta
        layout = cup.layout
        self.times, self.volumes = theta[..., layout.times], theta[..., layout.volumes]
        self.mixing = np.exp(theta[..., INDEX["log_mixing_s"], None] + theta[..., layout.mixings])
        self.loss = np.exp(self["log_loss_w_k"])
        self.lags = np.exp(self["log_lag_fast_s"]), np.exp(self["log_lag_slow_s"])
        self.wall_s = np.exp(self["log_wall_s"])
        self.wall_j_k = self["cup_j_k"] * self["wall_share"]
        self.fast_j_k = self["cup_j_k"] - self.wall_j_k
        self.poured = np.zeros_like(self["start_c"])
        self.capacity = self._capacity()
        self.liquid_c = self["start_c"]
        self.wall_c = self["start_c"] + self["wall_offset_c"]
        self.unmixed_c = np.zeros_like(self.liquid_c)
        self.probe_c = (self["start_c"] + self["probe_offset_c"],) * 2

    def __getitem__(self, name: str) -> Numbers:
        return np.asarray(self.theta[..., INDEX[name]])

    def _capacity(self) -> Numbers:
        return np.asarray(_liquid(self.cup, self.theta, self.poured) + self.fast_j_k)

    def pour(self, k: int) -> None:
        """Let portion ``k`` (from 0) in: alkali at its own temperature, and its heat of reaction."""
        volume, end_point, before = self.volumes[..., k], self["end_point_cm3"], self.capacity
        after = self.poured + volume
        reacted = np.where(after.real < end_point.real, after, end_point)
        reacted = np.where(self.poured.real < end_point.real, reacted - self.poured, 0.0)
        self.poured = after
        self.capacity = self._capacity()
        alkali = self.cup.alkali_j_cm3_k * self["heat_capacity_scale"] * volume
        middle = (before + self.capacity + alkali) / 2.0
        cold = alkali * (self["alkali_c"] - self.liquid_c)
        heat = self["heat_j_cm3"] * reacted
        warm = self.liquid_c + 0.5 * (cold + heat) / middle - self.cup.reference_c
        step = (cold + heat * (1.0 + self["heat_slope_k"] * warm)) / middle
        self.liquid_c = self.liquid_c + step
        self.unmixed_c = self.unmixed_c + step

    def modes(self, k: int) -> tuple[Numbers, Numbers]:
        """Rates and amplitudes of the probe's temperature in interval ``k``; keeps them for :meth:`wait`."""
        warmer = 1.0 + self["loss_curve_k"] * self.cup.warmth_k[k]
        alpha = self.loss * warmer / self.capacity
        beta, gamma = self.wall_j_k / (self.wall_s * self.capacity), 1.0 / self.wall_s
        room = self["room_c"] + self["room_drift_c_s"] * (self.cup.middle_s[k] - self.cup.begin_s)
        total = alpha + beta + gamma
        root = np.sqrt(total * total - 4.0 * alpha * gamma)
        fast_lag, slow_lag = self.lags
        slow = -2.0 * alpha * gamma / (total + root)
        wall = _apart(_apart(-0.5 * (total + root), slow_lag), fast_lag)
        mixing = self.mixing[..., k - 1] if k else self.mixing[..., 0]
        mix = _apart(_apart(-1.0 / mixing, fast_lag), slow_lag)
        excess, wall_excess = self.liquid_c - room, self.wall_c - room
        slope = -(alpha + beta) * excess + beta * wall_excess
        first = (slope - wall * excess) / (slow - wall)
        warm = gamma * excess - gamma * wall_excess
        inputs = (room, first, excess - first, -self.unmixed_c)
        rates = (np.zeros_like(room), slow, wall, mix)
        self._kept = (slow, wall, mix, room, inputs, rates, wall_excess, warm)
        share = self["lag_share"]
        weights = (share, 1.0 - share)
        self._gains = [[1.0 / (1.0 + rate * lag) for rate in rates] for lag in self.lags]
        own = [
            state - sum(a * g for a, g in zip(inputs, gains, strict=True))
            for state, gains in zip(self.probe_c, self._gains, strict=True)
        ]
        self._own = own
        mixed = [a * (weights[0] * g + weights[1] * h) for a, g, h in zip(inputs, *self._gains, strict=True)]
        rate = np.stack([*rates, -1.0 / fast_lag, -1.0 / slow_lag], axis=-1)
        return rate, np.stack([*mixed, weights[0] * own[0], weights[1] * own[1]], axis=-1)

    def wait(self, seconds: Numbers) -> None:
        """Let ``seconds`` of the interval whose modes were taken last pass."""
        slow, wall, mix, room, inputs, rates, wall_excess, warm = self._kept
        ends = [np.exp(rate * seconds) for rate in rates]
        first = (warm - wall * wall_excess) / (slow - wall)
        self.liquid_c = room + inputs[1] * ends[1] + inputs[2] * ends[2]
        self.wall_c = room + first * ends[1] + (wall_excess - first) * ends[2]
        self.unmixed_c = self.unmixed_c * np.exp(mix * seconds)
        driven = [a * e for a, e in zip(inputs, ends, strict=True)]
        self.probe_c = tuple(
            sum(d * g for d, g in zip(driven, gains, strict=True)) + own * np.exp(-seconds / lag)
            for gains, own, lag in zip(self._gains, self._own, self.lags, strict=True)
        )


def modes(cup: Cup, theta: Numbers) -> Modes:
    """Modes of the probe's temperature for parameter vectors ``theta`` of shape (..., size)."""
    walk = _Walk(cup, theta)
    begin = np.full_like(walk.times[..., :1], cup.begin_s)
    start = np.concatenate([begin, walk.times], axis=-1)
    kept = [walk.modes(0)]
    for k in range(cup.layout.pours):
        walk.wait(start[..., k + 1] - start[..., k])
        walk.pour(k)
        kept.append(walk.modes(k + 1))
    return Modes(start, np.stack([r for r, _ in kept], axis=-2), np.stack([a for _, a in kept], axis=-2))


def at_pours(cup: Cup, theta: Array) -> Array:
    """Mixed temperature of the liquid before and after each pour, °C, shape (pours, 2)."""
    walk = _Walk(cup, theta)
    start = np.concatenate([[cup.begin_s], walk.times])
    found = np.empty((cup.layout.pours, 2))
    for k in range(cup.layout.pours):
        walk.modes(k)
        walk.wait(start[k + 1] - start[k])
        found[k, 0] = walk.liquid_c
        walk.pour(k)
        found[k, 1] = walk.liquid_c
    return found


def capacity(cup: Cup, theta: Array, poured_cm3: Array) -> Array:
    """Heat capacity of liquid, cup and probe, J/K, with ``poured_cm3`` of alkali in."""
    return np.asarray(_liquid(cup, theta, poured_cm3) + theta[INDEX["cup_j_k"]], dtype=np.float64)


def trace(cup: Cup, theta: Array, time_s: Array) -> tuple[Array, Array]:
    """Temperature at the probe, °C, at ``time_s`` (shape n, rising) and its derivatives (shape n × size)."""
    size = cup.layout.size
    batch = np.repeat(theta[None, :].astype(np.complex128), size, axis=0)
    batch[np.arange(size), np.arange(size)] += 1j * STEP
    found = modes(cup, batch)
    start, rate, amplitude = found.start[0].real, found.rate[0].real, found.amplitude[0].real
    slopes = np.concatenate([found.amplitude.imag, found.rate.imag, found.start.imag[..., None]], axis=-1).transpose(
        1, 2, 0
    )
    slopes /= STEP
    temperature, jacobian = np.empty_like(time_s), np.empty((len(time_s), size))
    edges = np.searchsorted(time_s, start[1:], side="left")
    bounds = [0, *edges.tolist(), len(time_s)]
    for k in range(len(start)):
        here = slice(bounds[k], bounds[k + 1])
        since = (time_s[here] - start[k])[:, None]
        decay = np.exp(since * rate[k])
        parts = decay * amplitude[k]
        temperature[here] = parts.sum(axis=1)
        speed = (parts @ rate[k])[:, None]
        jacobian[here] = np.concatenate([decay, parts * since, -speed], axis=1) @ slopes[k]
    return temperature, jacobian
