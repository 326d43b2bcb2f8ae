"""The model of a cup mixed once: temperature at the probe before and after one addition, in closed form.

Liquid with the fast part of the cup, a part of the wall that warms slowly, and a room that drifts evenly. The
heat of reaction, and what the added part brings, come out as a mixture of exponentials (rates 1, 2, 3 and 4 over one
time; with weights of either sign that also resembles grains that are gone after a while); the probe answers with two
lags in parallel. In each of the two stretches, before and after, the trace is a constant, a slope and eight
exponentials. The heat capacity is that of the products after mixing, and the heat holds at the temperature the cup
had when the two met.

Derivatives of the modes are by complex step (Squire & Trapp, SIAM Review 40, 110 (1998)), those of the trace
follow from the modes by the chain rule. This module knows no data, priors or fit.
"""

from __future__ import annotations

from dataclasses import dataclass
from typing import Any

import numpy as np
from numpy.typing import NDArray

from station.analysis.heat.inputs import Array

# One stretch of a cup mixed once, before or after: liquid, slow wall, drifting room and a probe with two lags.
#
# The parameters of the model have their names and places here. A stretch is a linear system whose courses are
# exponentials; this module knows their rates and how they split, not when they begin.


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


STEP = 1e-30


@dataclass(frozen=True)
class Modes:
    """T(t) = Σ amplitude·exp(rate·(t − start)) + slope·(t − start), before and after mixing.

    ``rate`` and ``amplitude`` have shape (2, 9, batch), ``slope`` and ``start`` (2, batch); ``met_c`` (batch) is the
    liquid's temperature when the two met.
    """

    start: Numbers
    rate: Numbers
    amplitude: Numbers
    slope: Numbers
    met_c: Numbers


def modes(theta: Numbers, begin_s: float) -> Modes:
    """Modes of the probe's temperature for ``theta`` (batch, SIZE); times are counted from the press."""
    before, after = _stretches(theta)
    drift = before["room_drift_c_s"]
    room, start = before["room_c"], np.full_like(before["room_c"], begin_s)
    nothing = np.zeros_like(start)
    liquid = before["start_c"] - room
    excess = liquid - before.trail[0], liquid + before["wall_offset_c"] - before.trail[1]
    probe = np.stack([before["start_c"] + before["probe_offset_c"]] * 2)
    parts = before.split(*excess)
    idle = [keep_apart(-k * np.exp(-before["log_completion_s"]), -1.0 / before.lags) for k in (1.0, 2.0, 3.0, 4.0)]
    first = seen_by_probe(before, room, parts[:2], idle, [nothing] * 4, probe)

    span = before["mixed_s"] - begin_s
    slow, wall = np.exp(before.slow * span), np.exp(before.wall * span)
    liquid = parts[0] * slow + parts[1] * wall + before.trail[0]
    outer = parts[2] * slow + parts[3] * wall + before.trail[1]
    probe = probe_after(before, room, parts[:2], first[2], span)
    room = room + drift * span
    met_c = liquid + room
    brought = after["added_j_k"] * (after["added_c"] - met_c)
    jump = (after["heat_j"] + brought) / after.capacity
    rates = [keep_apart(rate, np.stack([after.slow, after.wall])) for rate in idle]
    quick = [after[f"{name}_share"] for name in ("half", "third", "quarter")]
    shares = [1.0 - quick[0] - quick[1] - quick[2], *quick]
    pushed = [after.driven(rate, -rate * share * jump) for rate, share in zip(rates, shares, strict=True)]
    own = liquid - after.trail[0] - sum(p[0] for p in pushed), outer - after.trail[1] - sum(p[1] for p in pushed)
    last = seen_by_probe(after, room, after.split(*own)[:2], rates, [p[0] for p in pushed], probe)

    return Modes(
        np.stack([start, before["mixed_s"]]),
        np.stack([first[0], last[0]]),
        np.stack([first[1], last[1]]),
        np.stack([drift, drift]),
        met_c,
    )


def _stretches(theta: Numbers) -> tuple[Stretch, Stretch]:
    def of(name: str) -> Numbers:
        return np.asarray(theta[:, INDEX[name]])

    fast = of("cup_j_k") * (1.0 - of("wall_share"))
    loss = np.exp(of("log_loss_w_k"))
    before = Stretch(theta, of("contents_j_k") - of("added_j_k") + fast, loss)
    return before, Stretch(theta, of("contents_j_k") + fast, loss * np.exp(of("log_loss_change")))


def _nudged(theta: Array) -> Numbers:
    """The parameters SIZE times, in each row one with an imaginary step."""
    return np.asarray(theta.astype(np.complex128) + 1j * STEP * np.eye(SIZE))


def trace(theta: Array, time_s: Array) -> tuple[Array, Array]:
    """Temperature at the probe, °C, at ``time_s`` from the press (shape n, rising), and its derivatives (n, SIZE)."""
    found = modes(_nudged(theta), float(time_s[0]))
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
    found = modes(_nudged(theta), begin_s).met_c
    return float(found[0].real), found.imag / STEP
