"""The model of a cup mixed once: temperature at the probe before and after one addition, in closed form.

Liquid with the fast part of the cup, a part of the wall that warms slowly, and a room that drifts evenly. The
heat of reaction, and what the added part brings, come out over two times (a quick one, and a slow one for a
share: dissolving, a slow reaction); the probe answers with two lags in parallel. In each of the two stretches,
before and after, the trace is a constant, a slope and six exponentials. The heat capacity is that of the products
after mixing, and the heat holds at the temperature the cup had when the two met.

Derivatives of the modes are by complex step (Squire & Trapp, SIAM Review 40, 110 (1998)), those of the trace
follow from the modes by the chain rule. This module knows no data, priors or fit.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from station.analysis.heat_inputs import Array

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
    "log_quick_s",  # ln of the times in which mixing and reaction come to 63 % …
    "log_slow_s",
    "slow_share",  # … and the share of the slow one
    "mixed_s",  # moment of mixing, from the press
    "cup_j_k",
    "wall_share",  # the part of the cup that warms slowly
    "log_wall_s",
    "wall_offset_c",  # how far that part begins from the liquid's temperature
    "probe_offset_c",  # the same for the probe
    "contents_j_k",
    "added_j_k",
)
INDEX = {name: place for place, name in enumerate(NAMES)}
SIZE = len(NAMES)
STEP = 1e-30


@dataclass(frozen=True)
class Modes:
    """T(t) = Σ amplitude·exp(rate·(t − start)) + slope·(t − start), before and after mixing.

    ``rate`` and ``amplitude`` have shape (2, 7, batch), ``slope`` and ``start`` (2, batch); ``met_c`` (batch) is the
    liquid's temperature when the two met.
    """

    start: Numbers
    rate: Numbers
    amplitude: Numbers
    slope: Numbers
    met_c: Numbers


class _Stretch:
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
        self.wall = _apart(-0.5 * (total + root), -1.0 / self.lags)
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


def _apart(rate: Numbers, others: Numbers) -> Numbers:
    """``rate`` moved by a little where it meets one of ``others`` (k, batch), so that no gain is infinite."""
    for other in others:
        near = np.abs(rate.real - other.real) < 1e-3 * np.abs(other.real)
        rate = np.where(near, rate * 1.002, rate)
    return rate


def modes(theta: Numbers, begin_s: float) -> Modes:
    """Modes of the probe's temperature for ``theta`` (batch, SIZE); times are counted from the press."""
    before, after = _stretches(theta)
    drift = before["room_drift_c_s"]
    room, start = before["room_c"], np.full_like(before["room_c"], begin_s)
    nothing = np.zeros((2, *start.shape), theta.dtype)
    liquid = before["start_c"] - room
    excess = liquid - before.trail[0], liquid + before["wall_offset_c"] - before.trail[1]
    probe = np.stack([before["start_c"] + before["probe_offset_c"]] * 2)
    parts = before.split(*excess)
    idle = _apart(-np.exp(-np.stack([before["log_quick_s"], before["log_slow_s"]])), -1.0 / before.lags)
    first = _seen(before, room, parts[:2], idle, nothing, probe)

    span = before["mixed_s"] - begin_s
    slow, wall = np.exp(before.slow * span), np.exp(before.wall * span)
    liquid = parts[0] * slow + parts[1] * wall + before.trail[0]
    outer = parts[2] * slow + parts[3] * wall + before.trail[1]
    probe = _felt(before, room, parts[:2], first[2], span)
    room = room + drift * span
    met_c = liquid + room
    brought = after["added_j_k"] * (after["added_c"] - met_c)
    jump = (after["heat_j"] + brought) / after.capacity
    rates = np.stack([_apart(_apart(rate, -1.0 / after.lags), np.stack([after.slow, after.wall])) for rate in idle])
    shares = np.stack([1.0 - after["slow_share"], after["slow_share"]])
    pushed = [after.driven(rate, -rate * share * jump) for rate, share in zip(rates, shares, strict=True)]
    own = liquid - after.trail[0] - pushed[0][0] - pushed[1][0], outer - after.trail[1] - pushed[0][1] - pushed[1][1]
    last = _seen(after, room, after.split(*own)[:2], rates, np.stack([pushed[0][0], pushed[1][0]]), probe)

    return Modes(
        np.stack([start, before["mixed_s"]]),
        np.stack([first[0], last[0]]),
        np.stack([first[1], last[1]]),
        np.stack([drift, drift]),
        met_c,
    )


def _stretches(theta: Numbers) -> tuple[_Stretch, _Stretch]:
    def of(name: str) -> Numbers:
        return np.asarray(theta[:, INDEX[name]])

    fast = of("cup_j_k") * (1.0 - of("wall_share"))
    loss = np.exp(of("log_loss_w_k"))
    before = _Stretch(theta, of("contents_j_k") - of("added_j_k") + fast, loss)
    return before, _Stretch(theta, of("contents_j_k") + fast, loss * np.exp(of("log_loss_change")))


def _seen(
    cup: _Stretch, room: Numbers, own: tuple[Numbers, Numbers], rates: Numbers, pushed: Numbers, probe: Numbers
) -> tuple[Numbers, Numbers, Numbers]:
    """Rates and amplitudes of what the probe shows, and what the two lags begin away from their course."""
    rate = [cup.slow, cup.wall, rates[0], rates[1]]
    amplitude = [own[0], own[1], pushed[0], pushed[1]]
    gains = [1.0 / (1.0 + r * cup.lags) for r in rate]
    level = room + cup.trail[0] - cup["room_drift_c_s"] * cup.lags
    off = probe - level - sum(a * g for a, g in zip(amplitude, gains, strict=True))
    shown = [a * (g * cup.shares).sum(axis=0) for a, g in zip(amplitude, gains, strict=True)]
    constant = (level * cup.shares).sum(axis=0)
    every = [constant, *shown, *(off * cup.shares)]
    own_rates = -1.0 / cup.lags
    return np.stack([np.zeros_like(constant), *rate, *own_rates]), np.stack(every), off


def _felt(cup: _Stretch, room: Numbers, own: tuple[Numbers, Numbers], off: Numbers, span: Numbers) -> Numbers:
    """Temperatures of the probe's two parts ``span`` seconds after the trace began."""
    drift = cup["room_drift_c_s"]
    course = room + cup.trail[0] + drift * (span - cup.lags)
    for amplitude, rate in zip(own, (cup.slow, cup.wall), strict=True):
        course = course + amplitude * np.exp(rate * span) / (1.0 + rate * cup.lags)
    return np.asarray(course + off * np.exp(-span / cup.lags))


def trace(theta: Array, time_s: Array) -> tuple[Array, Array]:
    """Temperature at the probe, °C, at ``time_s`` from the press (shape n, rising), and its derivatives (n, SIZE)."""
    batch = np.repeat(theta[None, :].astype(np.complex128), SIZE, axis=0)
    batch[np.arange(SIZE), np.arange(SIZE)] += 1j * STEP
    found = modes(batch, float(time_s[0]))
    temperature, jacobian = np.empty_like(time_s), np.empty((len(time_s), SIZE))
    edge = int(np.searchsorted(time_s, theta[INDEX["mixed_s"]], side="left"))
    for k, here in enumerate((slice(0, edge), slice(edge, len(time_s)))):
        rate, amplitude = found.rate[k, :, 0].real, found.amplitude[k, :, 0].real
        since = (time_s[here] - found.start[k, 0].real)[:, None]
        decay = np.exp(since * rate)
        parts, slope = decay * amplitude, float(found.slope[k, 0].real)
        temperature[here] = parts.sum(axis=1) + slope * since[:, 0]
        pull = np.concatenate([decay, parts * since, since, -(parts @ rate)[:, None] - slope], axis=1)
        moved = np.concatenate([found.amplitude[k], found.rate[k], found.slope[k][None], found.start[k][None]])
        jacobian[here] = pull @ (moved.imag / STEP)
    return temperature, jacobian


def met_c(theta: Array, begin_s: float) -> tuple[float, Array]:
    """Temperature of the cup when the two met, °C, and its derivatives (SIZE)."""
    batch = np.repeat(theta[None, :].astype(np.complex128), SIZE, axis=0)
    batch[np.arange(SIZE), np.arange(SIZE)] += 1j * STEP
    found = modes(batch, begin_s).met_c
    return float(found[0].real), found.imag / STEP
