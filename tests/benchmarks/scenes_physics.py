"""A cup unlike the fitted one: two liquid zones, a wall in layers, several probes, evaporation, real pours.

Integrated step by step (classical Runge–Kutta) for many parameter vectors at once, so that the generator's
own sensitivities can be had by finite differences. Shares no code with station.analysis.heat.model.
"""

from __future__ import annotations

from dataclasses import dataclass

import numpy as np
from numpy.typing import NDArray

Array = NDArray[np.float64]
DT_S = 0.4
LAYERS = 4
VAPOUR_J_G = 2450.0  # enthalpy of evaporation of water near 25 °C


@dataclass(frozen=True)
class Fixed:
    """What is not a parameter: the portions' nominal count, the probe's build, the sampling span."""

    end_s: float
    pours: int
    probe: str  # "ladder", "parallel" or "chain" (three nodes)
    acid_j_cm3_k: float
    alkali_j_cm3_k: float
    product_j_cm3_k: float
    alkali_mol_dm3: float


Parameters = dict[str, Array]
"""Name → array of shape (batch,) or (pours, batch)."""


def _vapour_kpa(t: Array) -> Array:
    """Saturation pressure of water, Magnus formula."""
    return np.asarray(0.6112 * np.exp(17.62 * t / (243.12 + t)))


def _flow(p: Parameters, t: float) -> Array:
    """Alkali flowing in, cm³/s: a raised cosine for each pour."""
    u = (t - p["pour_time_s"]) / p["pour_s"]
    inside = np.abs(u) < 0.5
    rate = np.where(inside, p["volume_cm3"] * (1.0 + np.cos(2.0 * np.pi * u)) / p["pour_s"], 0.0)
    return np.asarray(rate.sum(axis=0))


def _exchange(p: Parameters, t: float) -> Array:
    """Flow between the zones, cm³/s: stirring while and after each portion is poured, little otherwise."""
    since = t - p["pour_time_s"]
    on = 1.0 / (1.0 + np.exp(-np.clip(since + 1.0, -30, 30)))
    off = 1.0 / (1.0 + np.exp(-np.clip(p["stir_s"] - since, -30, 30)))
    vigour = (p["stir_vigour"] * on * off).max(axis=0)
    return np.asarray(p["zone_cm3"] * (1.0 / p["idle_mixing_s"] + vigour / p["stir_mixing_s"]))


class Tank:
    """The state and its rate of change; every state is an array over the batch.

    The liquid is kept as enthalpy and as a signed amount (acid left above 0, alkali left below), both of which
    mix linearly; temperatures follow from them. So the reaction is exact, and its heat follows Kirchhoff's law
    with the heat capacities given. States: enthalpy of the main zone and of the other, J above 25 °C, total
    volume, signed amounts, three nodes of the probe, layers of the wall.
    """

    def __init__(self, fixed: Fixed, p: Parameters) -> None:
        self.fixed, self.p = fixed, p
        self.acid_mol = p["end_point_cm3"] * fixed.alkali_mol_dm3 / 1000.0
        self.base = fixed.alkali_mol_dm3 / 1000.0

    def begin(self) -> Array:
        """State at time 0, shape (states, batch)."""
        p, f = self.p, self.fixed
        zone = p["zone_cm3"] / p["acid_volume_cm3"]
        wall = [p["start_c"] + p["wall_offset_c"] * (k + 1) / LAYERS for k in range(LAYERS)]
        probe = p["start_c"] + p["probe_offset_c"]
        acid_h = p["heat_capacity_scale"] * f.acid_j_cm3_k * p["acid_volume_cm3"] * (p["start_c"] - 25.0)
        start = [acid_h * (1.0 - zone), acid_h * zone, p["acid_volume_cm3"]]
        start += [self.acid_mol * (1.0 - zone), self.acid_mol * zone, probe, probe, probe, *wall]
        return np.stack(start)

    def _liquid_c(self, h: Array, s: Array, volume: Array) -> Array:
        """Temperature of a zone that holds enthalpy h and signed amount s in a volume."""
        f, p = self.fixed, self.p
        acid = np.maximum(s, 0.0) / self.acid_mol * p["acid_volume_cm3"]
        unused = np.maximum(-s, 0.0)
        alkali = unused / self.base
        product = volume - acid - alkali
        capacity = f.acid_j_cm3_k * acid + f.alkali_j_cm3_k * alkali + f.product_j_cm3_k * product
        heat = h - 1000.0 * p["enthalpy_kj_mol"] * unused
        return np.asarray(25.0 + heat / (p["heat_capacity_scale"] * capacity))

    def temperatures(self, x: Array) -> tuple[Array, Array]:
        """Temperatures of the two zones for states x (..., states, batch)."""
        zone = self.p["zone_cm3"]
        main = self._liquid_c(x[..., 0, :], x[..., 3, :], x[..., 2, :] - zone)
        return main, self._liquid_c(x[..., 1, :], x[..., 4, :], zone)

    def rate(self, t: float, x: Array) -> Array:
        """Time derivative of the state."""
        f, p = self.fixed, self.p
        h1, h2, volume, s1, s2, p1, p2, p3 = x[:8]
        walls, out = x[8:], np.zeros_like(x)
        t1, _ = self.temperatures(x)
        zone = p["zone_cm3"]
        main = volume - zone
        flow, exchange = _flow(p, t), _exchange(p, t)
        low = p["low_share"] * flow
        up = low + exchange
        alkali_c = p["alkali_c"] + p["alkali_drift_c_s"] * t
        room = p["room_c"] + p["room_drift_c_s"] * t + p["room_swing_c"] * np.sin(2 * np.pi * t / p["room_period_s"])
        dry = np.maximum(_vapour_kpa(t1) - p["humidity"] * _vapour_kpa(room), -1.0)
        surface = p["open_w_k"] * (t1 - room) + p["evaporation_g_s_kpa"] * VAPOUR_J_G * dry
        layer = p["wall_j_k"] / LAYERS
        film = layer * LAYERS**2 / p["wall_s"]
        into_wall = 2.0 * film * (t1 - walls[0])
        into_probe = p["probe_w_k"] * (t1 - p1)
        brought = p["heat_capacity_scale"] * f.alkali_j_cm3_k * (alkali_c - 25.0)
        brought = brought + 1000.0 * p["enthalpy_kj_mol"] * self.base
        heat_up = up * h2 / zone - exchange * h1 / main
        amount_up = up * s2 / zone - exchange * s1 / main
        out[0] = (flow - low) * brought + heat_up - surface - into_wall - into_probe
        out[1] = low * brought - heat_up
        out[2] = flow
        out[3] = -(flow - low) * self.base + amount_up
        out[4] = -low * self.base - amount_up
        between = film * (walls[:-1] - walls[1:])
        outside = p["wall_loss_w_k"] * (walls[-1] - room)
        out[8] = (into_wall - between[0]) / layer
        out[9:-1] = (between[:-1] - between[1:]) / layer
        out[-1] = (between[-1] - outside) / layer
        self._probe(out, (p1, p2, p3), t1, room)
        return out

    def _probe(self, out: Array, nodes: tuple[Array, Array, Array], cup: Array, room: Array) -> None:
        p = self.p
        p1, p2, p3 = nodes
        seen = cup + p["stem_share"] * (room - cup)
        out[5] = (seen - p1) / p["lag1_s"]
        if self.fixed.probe == "parallel":
            out[6] = (seen - p2) / p["lag2_s"]
        elif self.fixed.probe == "ladder":
            out[5] -= (p1 - p2) * p["back_share"] / p["lag2_s"]
            out[6] = (p1 - p2) / p["lag2_s"]
        else:
            out[6] = (p1 - p2) / p["lag2_s"]
            out[7] = (p2 - p3) / p["lag3_s"]

    def reading(self, x: Array) -> Array:
        """Temperature of the sensor for states x (..., states, batch)."""
        share = self.p["lag_share"]
        if self.fixed.probe == "parallel":
            return np.asarray(share * x[..., 5, :] + (1 - share) * x[..., 6, :])
        if self.fixed.probe == "ladder":
            return np.asarray(share * x[..., 5, :] + (1 - share) * x[..., 6, :])
        return np.asarray(share * x[..., 6, :] + (1 - share) * x[..., 7, :])


def simulate(fixed: Fixed, p: Parameters) -> tuple[Array, Array, Array, Array]:
    """Grid of times (n), cup's temperature where the probe is, its mixed mean, and the sensor (n × batch)."""
    tank = Tank(fixed, p)
    steps = int(np.ceil(fixed.end_s / DT_S)) + 1
    x = tank.begin()
    kept = np.empty((steps + 1, *x.shape))
    kept[0] = x
    for k in range(steps):
        t = k * DT_S
        a = tank.rate(t, x)
        b = tank.rate(t + DT_S / 2, x + DT_S / 2 * a)
        c = tank.rate(t + DT_S / 2, x + DT_S / 2 * b)
        d = tank.rate(t + DT_S, x + DT_S * c)
        x = x + DT_S / 6 * (a + 2 * b + 2 * c + d)
        kept[k + 1] = x
    time_s: Array = np.arange(steps + 1, dtype=np.float64) * DT_S
    zone = p["zone_cm3"] / kept[:, 2]
    main_c, zone_c = tank.temperatures(kept)
    return time_s, main_c, (1 - zone) * main_c + zone * zone_c, tank.reading(kept)
