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

# Where each parameter of the cup model stands in its vector: first the cup, then pours, then intervals.
#
# Knows names, units and order only; the physics is in :mod:`station.analysis.heat.model`.


SCALARS = (
    "end_point_cm3",  # true cumulative volume of alkali at neutralisation
    "heat_j_cm3",  # heat given out per cm³ of alkali that reacts, at the reference temperature
    "start_c",  # temperature of the acid when the trace begins
    "alkali_c",
    "room_c",  # what the cup cools towards: the room, less what evaporation takes
    "log_loss_w_k",  # ln of the heat loss per kelvin above the room
    "log_lag_fast_s",  # the probe's two time constants …
    "log_lag_slow_s",
    "lag_share",  # … and the share of the fast one in its step response
    "log_mixing_s",  # ln of the common mixing time
    "slow_share",  # the part of a portion's heat that mixes slowly, in a corner that is not stirred …
    "log_slow_mixing_s",  # … and ln of the time that takes
    "press_s",  # how much later than the pour this group presses, on average
    "cup_j_k",  # heat capacity of cup and probe
    "wall_share",  # the part of it that warms slowly
    "log_wall_s",
    "wall_offset_c",  # how far the slow part begins from the acid's temperature
    "probe_offset_c",  # the same for the probe
    "acid_volume_cm3",
    "heat_capacity_scale",  # common relative factor on the liquids' heat capacities
    "room_drift_c_s",
    "loss_curve_k",  # relative growth of the loss per kelvin the cup is warmer
    "heat_slope_k",  # relative change of the heat of reaction per kelvin
)
"""Names of the scalar parameters, in the order of the vector."""

INDEX = {name: place for place, name in enumerate(SCALARS)}
"""Place of each scalar parameter in the vector."""


@dataclass(frozen=True)
class Layout:
    """Places of the parameters of a cup with ``pours`` portions."""

    pours: int

    @property
    def size(self) -> int:
        """Length of the parameter vector."""
        return self.moved + self.pours + 1

    @property
    def moved(self) -> int:
        """How many of the parameters move heat about; the patches behind them only shift what is read."""
        return len(SCALARS) + 3 * self.pours

    @property
    def times(self) -> slice:
        """Moments of the pours, s, before the common lateness of the press is taken off."""
        return slice(len(SCALARS), len(SCALARS) + self.pours)

    @property
    def volumes(self) -> slice:
        """True volumes of the portions, cm³."""
        return slice(len(SCALARS) + self.pours, len(SCALARS) + 2 * self.pours)

    @property
    def mixings(self) -> slice:
        """Logarithm of each portion's mixing time over the common one."""
        return slice(len(SCALARS) + 2 * self.pours, self.moved)

    @property
    def patches(self) -> slice:
        """How much warmer than the mean the liquid around the probe is in each interval (pours + 1), °C."""
        return slice(self.moved, self.size)

    def names(self) -> tuple[str, ...]:
        """Name of every place: the scalars, then such as ``pour_time_s[1]``, ``volume_cm3[1]``, ``patch_c[0]``."""
        groups = ("pour_time_s", "volume_cm3", "log_mixing")
        moved = tuple(f"{group}[{k + 1}]" for group in groups for k in range(self.pours))
        return SCALARS + moved + tuple(f"patch_c[{k}]" for k in range(self.pours + 1))


Array = NDArray[np.float64]
Numbers = NDArray[np.inexact[Any]]

STEP = 1e-30

MOST = 50.0
"""Largest exponent of a mode."""


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


class _Tables:
    """All that does not depend on the state, for every interval at once; arrays (intervals, …, batch)."""

    def __init__(self, cup: Cup, theta: Numbers) -> None:
        layout, self._theta = cup.layout, theta
        volumes = theta[:, layout.volumes].T
        times = theta[:, layout.times].T - self["press_s"]
        self.start = np.concatenate([np.full_like(times[:1], cup.begin_s), times])
        self.seconds = self.start[1:] - self.start[:-1]
        poured = np.concatenate([np.zeros_like(volumes[:1]), np.cumsum(volumes, axis=0)])
        liquid, reacted = _liquid(cup, theta, poured)
        self.wall_j_k = self["cup_j_k"] * self["wall_share"]
        self.capacity = liquid + self["cup_j_k"] - self.wall_j_k
        self._pours(cup, volumes, reacted)
        slow, wall = self._rates(cup)
        self._gains(slow, wall, np.exp(-self["log_mixing_s"] - theta[:, layout.mixings].T))

    def __getitem__(self, name: str) -> Numbers:
        return np.asarray(self._theta[:, INDEX[name]])

    def _pours(self, cup: Cup, volumes: Numbers, reacted: Numbers) -> None:
        """A pour changes the liquid's temperature T by fixed + share·T."""
        alkali = cup.alkali_j_cm3_k * self["heat_capacity_scale"] * volumes
        middle = (self.capacity[:-1] + self.capacity[1:] + alkali) / 2.0
        cold, heat = alkali / middle, self["heat_j_cm3"] * (reacted[1:] - reacted[:-1]) / middle
        slope, alkali_c = self["heat_slope_k"], self["alkali_c"]
        halfway = 0.5 * (cold * alkali_c + heat) - cup.reference_c
        self.share = heat * slope * (1.0 - 0.5 * cold) - cold
        self.fixed = cold * alkali_c + heat * (1.0 + slope * halfway)

    def _rates(self, cup: Cup) -> tuple[Numbers, Numbers]:
        """Rates of the slow modes of liquid and wall; the weights of the first of them in either."""
        warmer = 1.0 + self["loss_curve_k"] * cup.warmth_k[:, None]
        gamma = np.exp(-self["log_wall_s"])
        alpha = np.exp(self["log_loss_w_k"]) * warmer / self.capacity
        beta = self.wall_j_k * gamma / self.capacity
        self.room = self["room_c"] + self["room_drift_c_s"] * (cup.middle_s - cup.begin_s)[:, None]
        total = alpha + beta + gamma
        root = np.sqrt(total * total - 4.0 * alpha * gamma)
        slow, wall = -2.0 * alpha * gamma / (total + root), -0.5 * (total + root)
        apart = slow - wall
        self.liquid_first = np.stack([-(alpha + beta) - wall, beta], axis=1) / apart[:, None]
        self.wall_first = np.stack([np.broadcast_to(gamma, wall.shape), -gamma - wall], axis=1) / apart[:, None]
        return slow, wall

    def _gains(self, slow: Numbers, wall: Numbers, mixing: Numbers) -> None:
        """Rates of all modes, gains of the probe's two lags for each, (intervals, 4, 2, batch), and their decays."""
        mix = -np.concatenate([mixing[:1], mixing])
        corner = np.broadcast_to(-np.exp(-self["log_slow_mixing_s"]), mix.shape)
        rates = np.stack([slow, wall, mix, corner], axis=1)
        self.lags = np.exp(np.stack([self["log_lag_fast_s"], self["log_lag_slow_s"]]))
        # A rate that meets the probe's own is moved by a little, so that no gain is infinite.
        near = np.abs(1.0 + rates.real[:, :, None] * self.lags.real).min(axis=2) < 1e-3
        self.rates = np.where(near, rates * 1.002, rates) if near.any() else rates
        self.gains = 1.0 / (1.0 + self.rates[:, :, None] * self.lags)
        self.decays = _exp(self.rates[:-1] * self.seconds[:, None])
        self.own_decay = _exp(-self.seconds[:, None] / self.lags)

    def levels(self) -> Numbers:
        """Temperatures of liquid and wall when each interval begins, (intervals, 2, batch)."""
        slow, fade = self.decays[:, :1], self.decays[:, 1:2]
        keep = np.stack([self.liquid_first[:-1], self.wall_first[:-1]], axis=1) * (slow - fade)[:, None]
        keep[:, 0, 0] += fade[:, 0]
        keep[:, 1, 1] += fade[:, 0]
        still = self.room[:-1, None] * (1.0 - keep.sum(axis=2))
        keep[:, 0] *= 1.0 + self.share[:, None]
        still[:, 0] = still[:, 0] * (1.0 + self.share) + self.fixed
        found = np.empty((len(self.room), 2, self.room.shape[1]), keep.dtype)
        found[0, 0] = self["start_c"]
        found[0, 1] = self["start_c"] + self["wall_offset_c"]
        for k in range(len(keep)):
            found[k + 1] = (keep[k] * found[k]).sum(axis=1) + still[k]
        return found


def _exp(exponent: Numbers) -> Numbers:
    """exp, bounded: where a fit tries pours in the wrong order the modes grow instead of dying away."""
    return np.asarray(np.exp(np.where(exponent.real > MOST, MOST, exponent)))


def _carried(first: Numbers, decay: Numbers, added: Numbers) -> Numbers:
    """What dies away in each interval and is added to at each pour, when each interval begins."""
    found = np.empty((len(decay) + 1, *first.shape), decay.dtype)
    found[0] = first
    for k in range(len(decay)):
        found[k + 1] = found[k] * decay[k] + added[k]
    return found


def modes(cup: Cup, theta: Numbers) -> Modes:
    """Modes of the probe's temperature for parameter vectors ``theta`` of shape (batch, size)."""
    table = _Tables(cup, theta)
    levels, room, slow_share = table.levels(), table.room, table["slow_share"]
    excess = levels - room[:, None]
    first = (table.liquid_first * excess).sum(axis=1)
    slow = np.stack([first, excess[:, 0] - first], axis=1)
    before = room[:-1] + (slow[:-1] * table.decays[:, :2]).sum(axis=1)
    step = table.fixed + table.share * before
    # The corner that was not stirred is stirred up by the next pour, and what is left there mixes like the rest.
    none = np.zeros_like(step[:1])
    corner = np.concatenate([none, -slow_share * step])
    added = corner[:-1] * table.decays[:, 3] - (1.0 - slow_share) * step
    unmixed = _carried(none[0], table.decays[:, 2], added)
    inputs = np.concatenate([slow, np.stack([unmixed, corner], axis=1)], axis=1)
    driven = room[:, None] + (inputs[:, :, None] * table.gains).sum(axis=1)
    at_end = room[:-1, None] + ((inputs[:-1] * table.decays)[:, :, None] * table.gains[:-1]).sum(axis=1)
    probe = levels[0, 0] + table["probe_offset_c"]
    own = _carried(probe - driven[0], table.own_decay, at_end - driven[1:])
    share = np.stack([table["lag_share"], 1.0 - table["lag_share"]])
    seen = inputs * (table.gains * share).sum(axis=2)
    own_rate = np.broadcast_to(-1.0 / table.lags, own.shape)
    rate = np.concatenate([np.zeros_like(room[:, None]), table.rates, own_rate], axis=1)
    amplitude = np.concatenate([room[:, None], seen, own * share], axis=1)
    return Modes(table.start, rate, amplitude, np.stack([before, levels[1:, 0]], axis=1))


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
    interval = np.searchsorted(start[1:], time_s, side="right")
    since = (time_s - start[interval])[:, None]
    decay = _exp(since * rate[interval])
    parts = decay * amplitude[interval]
    temperature = parts.sum(axis=1) + theta[cup.layout.patches][interval]
    speed = (parts * rate[interval]).sum(axis=1, keepdims=True)
    basis = np.concatenate([decay, parts * since, -speed], axis=1)
    jacobian = np.zeros((len(time_s), size))
    jacobian[np.arange(len(time_s)), moved + interval] = 1.0
    edges = np.searchsorted(interval, np.arange(len(start) + 1))
    for k in range(len(start)):
        here = slice(edges[k], edges[k + 1])
        jacobian[here, :moved] = basis[here] @ slopes[k]
    return temperature, jacobian
