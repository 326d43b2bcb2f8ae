"""The cup model: temperature at the probe while portions of alkali go into an insulated cup of acid.

Between pours the cup is a linear system: liquid (with the fast part of the cup), a part of the wall that
warms slowly, unmixed heat that dies away (some of it slowly), and a probe with two time constants. Its solution in each
interval is a sum of seven exponentials ("modes"), so the trace and its derivatives are closed forms:

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

    ``start`` has shape (intervals, batch), ``rate`` and ``amplitude`` (intervals, 7, batch); ``liquid_c`` is the
    temperature of the liquid before and after each pour, (pours, 2, batch).
    """

    start: Numbers
    rate: Numbers
    amplitude: Numbers
    liquid_c: Numbers


def _liquid(cup: Cup, theta: Numbers, poured: Numbers) -> tuple[Numbers, Numbers]:
    """Heat capacity of the liquid, J/K, and alkali that has reacted, cm³, with ``poured`` cm³ of alkali in."""
    end_point, acid = theta[..., INDEX["end_point_cm3"]], theta[..., INDEX["acid_volume_cm3"]]
    reacted = np.where(poured.real < end_point.real, poured, end_point)
    used = acid * reacted / end_point
    total = (
        cup.acid_j_cm3_k * (acid - used)
        + cup.product_j_cm3_k * (used + reacted)
        + cup.alkali_j_cm3_k * (poured - reacted)
    )
    return np.asarray(total * theta[..., INDEX["heat_capacity_scale"]]), reacted


def _apart(rate: Numbers, lag: Numbers) -> Numbers:
    """``rate`` moved by a little where it meets the probe's own rate, so that no gain is infinite."""
    near = np.abs(1.0 + rate.real * lag.real) < 1e-3
    return np.where(near, rate * 1.002, rate)


class _Tables:
    """All that does not depend on the state, for every interval at once; arrays (intervals, batch)."""

    def __init__(self, cup: Cup, theta: Numbers) -> None:
        layout, self._theta = cup.layout, theta
        volumes = theta[:, layout.volumes].T
        times = theta[:, layout.times].T - self["press_s"]
        self.start = np.concatenate([np.full_like(times[:1], cup.begin_s), times])
        self.seconds = np.diff(self.start, axis=0)
        poured = np.concatenate([np.zeros_like(volumes[:1]), np.cumsum(volumes, axis=0)])
        liquid, reacted = _liquid(cup, theta, poured)
        self.wall_j_k = self["cup_j_k"] * self["wall_share"]
        self.capacity = liquid + self["cup_j_k"] - self.wall_j_k
        self._pours(cup, volumes, reacted)
        self._rates(cup)
        self._gains(np.exp(self["log_mixing_s"] + theta[:, layout.mixings].T))

    def __getitem__(self, name: str) -> Numbers:
        return np.asarray(self._theta[:, INDEX[name]])

    def _pours(self, cup: Cup, volumes: Numbers, reacted: Numbers) -> None:
        """A pour changes the liquid's temperature T by fixed + share·T."""
        alkali = cup.alkali_j_cm3_k * self["heat_capacity_scale"] * volumes
        middle = (self.capacity[:-1] + self.capacity[1:] + alkali) / 2.0
        cold, heat = alkali / middle, self["heat_j_cm3"] * np.diff(reacted, axis=0) / middle
        slope, alkali_c = self["heat_slope_k"], self["alkali_c"]
        halfway = 0.5 * (cold * alkali_c + heat) - cup.reference_c
        self.share = heat * slope * (1.0 - 0.5 * cold) - cold
        self.fixed = cold * alkali_c + heat * (1.0 + slope * halfway)

    def _rates(self, cup: Cup) -> None:
        """Rates of the slow modes of liquid and wall, and the weights of the first of them in either."""
        warmer = 1.0 + self["loss_curve_k"] * cup.warmth_k[:, None]
        wall_s = np.exp(self["log_wall_s"])
        alpha = np.exp(self["log_loss_w_k"]) * warmer / self.capacity
        beta, gamma = self.wall_j_k / (wall_s * self.capacity), 1.0 / wall_s
        self.room = self["room_c"] + self["room_drift_c_s"] * (cup.middle_s - cup.begin_s)[:, None]
        self.lags = np.exp(np.stack([self["log_lag_fast_s"], self["log_lag_slow_s"]]))
        total = alpha + beta + gamma
        root = np.sqrt(total * total - 4.0 * alpha * gamma)
        self.slow = -2.0 * alpha * gamma / (total + root)
        self.wall = _apart(_apart(-0.5 * (total + root), self.lags[1]), self.lags[0])
        apart = self.slow - self.wall
        self.liquid_first = (-(alpha + beta) - self.wall) / apart, beta / apart
        self.wall_first = gamma / apart, (-gamma - self.wall) / apart

    def _gains(self, mixing_s: Numbers) -> None:
        """Gains of the probe's two lags for each mode, (intervals, 2, batch), and the decay over an interval."""
        mix = _apart(_apart(-1.0 / mixing_s, self.lags[0]), self.lags[1])
        self.mix = np.concatenate([mix[:1], mix])
        stir = _apart(_apart(-np.exp(-self["log_slow_mixing_s"]), self.lags[0]), self.lags[1])
        self.corner = np.broadcast_to(stir, self.mix.shape)
        rates = self.slow, self.wall, self.mix, self.corner
        self.gains = [1.0 / (1.0 + rate[:, None] * self.lags) for rate in rates]
        self.decays = [np.exp(rate[:-1] * self.seconds) for rate in rates]
        self.own_decay = np.exp(-self.seconds[:, None] / self.lags)


def modes(cup: Cup, theta: Numbers) -> Modes:
    """Modes of the probe's temperature for parameter vectors ``theta`` of shape (batch, size)."""
    table = _Tables(cup, theta)
    pours, shape = cup.layout.pours, table.start.shape
    first, second, unmixed, corner = (np.empty(shape, theta.dtype) for _ in range(4))
    own = np.empty((shape[0], 2, shape[1]), theta.dtype)
    liquid_c = np.empty((pours, 2, shape[1]), theta.dtype)
    liquid, slow_share = table["start_c"], table["slow_share"]
    left, far = np.zeros_like(liquid), np.zeros_like(liquid)
    wall = liquid + table["wall_offset_c"]
    probe = np.broadcast_to(liquid + table["probe_offset_c"], own[0].shape)
    slow_gain, wall_gain, mix_gain, far_gain = table.gains
    for k in range(pours + 1):
        room = table.room[k]
        excess, wall_excess = liquid - room, wall - room
        first[k] = a = table.liquid_first[0][k] * excess + table.liquid_first[1][k] * wall_excess
        second[k] = b = excess - a
        unmixed[k], corner[k] = -left, -far
        driven = room + a * slow_gain[k] + b * wall_gain[k] - left * mix_gain[k] - far * far_gain[k]
        own[k] = probe - driven
        if k == pours:
            break
        slow, fade, mix, creep = (decay[k] for decay in table.decays)
        wall_part = table.wall_first[0][k] * excess + table.wall_first[1][k] * wall_excess
        wall = room + wall_part * slow + (wall_excess - wall_part) * fade
        a, b, left, far = a * slow, b * fade, left * mix, far * creep
        driven = room + a * slow_gain[k] + b * wall_gain[k] - left * mix_gain[k] - far * far_gain[k]
        probe = driven + own[k] * table.own_decay[k]
        before = room + a + b
        step = table.fixed[k] + table.share[k] * before
        liquid, left, far = before + step, left + far + (1.0 - slow_share) * step, slow_share * step
        liquid_c[k, 0], liquid_c[k, 1] = before, liquid
    share = np.stack([table["lag_share"], 1.0 - table["lag_share"]])
    inputs = first, second, unmixed, corner
    seen = [part * (gain * share).sum(axis=1) for part, gain in zip(inputs, table.gains, strict=True)]
    own_rate = np.broadcast_to(-1.0 / table.lags, own.shape)
    rate = [np.zeros_like(first), table.slow, table.wall, table.mix, table.corner, own_rate[:, 0], own_rate[:, 1]]
    amplitude = [table.room, *seen, own[:, 0] * share[0], own[:, 1] * share[1]]
    return Modes(table.start, np.stack(rate, axis=1), np.stack(amplitude, axis=1), liquid_c)


def at_pours(cup: Cup, theta: Array) -> Array:
    """Mixed temperature of the liquid before and after each pour, °C, shape (pours, 2)."""
    return np.asarray(modes(cup, theta[None, :]).liquid_c[:, :, 0], dtype=np.float64)


def pour_times(cup: Cup, theta: Array) -> Array:
    """Moments of the pours, s."""
    return np.asarray(theta[cup.layout.times] - theta[INDEX["press_s"]])


def capacity(cup: Cup, theta: Array, poured_cm3: Array) -> Array:
    """Heat capacity of liquid, cup and probe, J/K, with ``poured_cm3`` of alkali in."""
    return np.asarray(_liquid(cup, theta, poured_cm3)[0] + theta[INDEX["cup_j_k"]], dtype=np.float64)


def trace(cup: Cup, theta: Array, time_s: Array) -> tuple[Array, Array]:
    """Temperature at the probe, °C, at ``time_s`` (shape n, rising) and its derivatives (shape n × size)."""
    size, moved = cup.layout.size, cup.layout.moved
    batch = np.repeat(theta[None, :].astype(np.complex128), moved, axis=0)
    batch[np.arange(moved), np.arange(moved)] += 1j * STEP
    found = modes(cup, batch)
    start, rate, amplitude = found.start[:, 0].real, found.rate[..., 0].real, found.amplitude[..., 0].real
    slopes = np.concatenate([found.amplitude.imag, found.rate.imag, found.start.imag[:, None]], axis=1) / STEP
    temperature, jacobian = np.empty_like(time_s), np.zeros((len(time_s), size))
    patches = theta[cup.layout.patches]
    edges = np.searchsorted(time_s, start[1:], side="left")
    bounds = [0, *edges.tolist(), len(time_s)]
    for k in range(len(start)):
        here = slice(bounds[k], bounds[k + 1])
        since = (time_s[here] - start[k])[:, None]
        decay = np.exp(since * rate[k])
        parts = decay * amplitude[k]
        temperature[here] = parts.sum(axis=1) + patches[k]
        speed = (parts @ rate[k])[:, None]
        jacobian[here, :moved] = np.concatenate([decay, parts * since, -speed], axis=1) @ slopes[k]
        jacobian[here, moved + k] = 1.0
    return temperature, jacobian
