"""One stretch of a cup mixed once, before or after: liquid, slow wall, drifting room and a probe with two lags.

The parameters of the model have their names and places here. A stretch is a linear system whose courses are
exponentials; this module knows their rates and how they split, not when they begin.
"""

from __future__ import annotations

from typing import Any

import numpy as np
from numpy.typing import NDArray

Numbers = NDArray[np.inexact[Any]]

NAMES = (
    "heat_j",  # heat given out, at the temperature of the cup on mixing
    "start_c",  # the cup when the trace begins
    "added_c",
    "room_c",  # what the cup drifts towards when the trace begins: the room, less what evaporation takes
    "room_drift_c_s",
    "log_loss_w_k",  # ln of the heat loss per kelvin above the room, before mixing
    "log_loss_change",  # ln of how much larger it is afterwards
    "log_lag_fast_s",
    "log_lag_slow_s",
    "lag_share",  # the share of the fast lag
    "log_completion_s",  # ln of the slowest time in which mixing and reaction complete …
    "half_share",  # … and the shares that complete in a half, a third and a quarter of it
    "third_share",
    "quarter_share",
    "mixed_s",  # moment of mixing, from the press
    "cup_j_k",
    "wall_share",  # the part of the cup that warms slowly
    "log_wall_s",
    "wall_offset_c",  # how far that part begins from the liquid's temperature
    "probe_offset_c",  # the same for the probe
    "contents_j_k",
    "added_j_k",
    "stem_share",  # how much of its excess over the room the probe loses along its stem
)
INDEX = {name: place for place, name in enumerate(NAMES)}
SIZE = len(NAMES)


class Stretch:
    """The linear system of liquid and wall in one stretch; arrays (batch)."""

    def __init__(self, theta: Numbers, capacity: Numbers, loss_w_k: Numbers) -> None:
        self.theta, self.capacity = theta, capacity
        wall_s = np.exp(self["log_wall_s"])
        self.gamma = 1.0 / wall_s
        beta = self["cup_j_k"] * self["wall_share"] / (wall_s * capacity)
        alpha = loss_w_k / capacity
        total = alpha + beta + self.gamma
        root = np.sqrt(total * total - 4.0 * alpha * self.gamma)
        self.lags = np.exp(np.stack([self["log_lag_fast_s"], self["log_lag_slow_s"]]))
        self.shares = np.stack([self["lag_share"], 1.0 - self["lag_share"]])
        self.slow = -2.0 * alpha * self.gamma / (total + root)
        self.wall = keep_apart(-0.5 * (total + root), -1.0 / self.lags)
        apart = self.slow - self.wall
        self.liquid_first = (-(alpha + beta) - self.wall) / apart, beta / apart
        self.wall_first = self.gamma / apart, (-self.gamma - self.wall) / apart
        behind = -self["room_drift_c_s"] / (alpha * self.gamma)  # how far both trail behind a drifting room
        self.trail = behind * (self.gamma + beta), behind * (self.gamma + alpha + beta)

    def __getitem__(self, name: str) -> Numbers:
        return np.asarray(self.theta[:, INDEX[name]])

    def split(self, liquid: Numbers, wall: Numbers) -> tuple[Numbers, Numbers, Numbers, Numbers]:
        """Amplitudes of the slow and the wall mode, in the liquid and in the wall, for excesses over the trail."""
        first = self.liquid_first[0] * liquid + self.liquid_first[1] * wall
        other = self.wall_first[0] * liquid + self.wall_first[1] * wall
        return first, liquid - first, other, wall - other

    def driven(self, rate: Numbers, heating_c: Numbers) -> tuple[Numbers, Numbers]:
        """Amplitudes in liquid and wall that heating_c·exp(rate·t), in °C/s, keeps up."""
        over = (rate - self.slow) * (rate - self.wall)
        return heating_c * (rate + self.gamma) / over, heating_c * self.gamma / over


def keep_apart(rate: Numbers, others: Numbers) -> Numbers:
    """``rate`` moved by a little where it meets one of ``others`` (k, batch), so that no gain is infinite."""
    for other in others:
        near = np.abs(rate.real - other.real) < 1e-3 * np.abs(other.real)
        rate = np.where(near, rate * 1.002, rate)
    return rate


def seen_by_probe(
    cup: Stretch,
    room: Numbers,
    own: tuple[Numbers, Numbers],
    rates: list[Numbers],
    pushed: list[Numbers],
    probe: Numbers,
) -> tuple[Numbers, Numbers, Numbers]:
    """Rates and amplitudes of what the probe shows, and what the two lags begin away from their course."""
    seen = 1.0 - cup["stem_share"]
    rate, amplitude = [cup.slow, cup.wall, *rates], [seen * part for part in (*own, *pushed)]
    gains = [1.0 / (1.0 + r * cup.lags) for r in rate]
    level = room + seen * cup.trail[0] - cup["room_drift_c_s"] * cup.lags
    off = probe - level - sum(a * g for a, g in zip(amplitude, gains, strict=True))
    shown = [a * (g * cup.shares).sum(axis=0) for a, g in zip(amplitude, gains, strict=True)]
    constant = (level * cup.shares).sum(axis=0)
    every = [constant, *shown, *(off * cup.shares)]
    own_rates = -1.0 / cup.lags
    return np.stack([np.zeros_like(constant), *rate, *own_rates]), np.stack(every), off


def probe_after(cup: Stretch, room: Numbers, own: tuple[Numbers, Numbers], off: Numbers, span: Numbers) -> Numbers:
    """Temperatures of the probe's two parts ``span`` seconds after the trace began."""
    drift, seen = cup["room_drift_c_s"], 1.0 - cup["stem_share"]
    course = room + seen * cup.trail[0] + drift * (span - cup.lags)
    for amplitude, rate in zip(own, (cup.slow, cup.wall), strict=True):
        course = course + seen * amplitude * np.exp(rate * span) / (1.0 + rate * cup.lags)
    return np.asarray(course + off * np.exp(-span / cup.lags))
