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

import numpy as np

from station.analysis.heat_inputs import Array
from station.analysis.once_stretch import INDEX, NAMES, SIZE, Numbers, Stretch, keep_apart, probe_after, seen_by_probe

__all__ = ["INDEX", "NAMES", "SIZE", "Modes", "met_c", "modes", "trace"]

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
