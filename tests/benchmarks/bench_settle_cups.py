"""Cups for the settle benchmark, stepped finely and unlike the fitted model on purpose.

Liquid, wall and a badly mixed part near the probe are separate nodes; the room drifts; the alkali may be
cold; pours take seconds and presses come early or late; the probe is a chain or a pair of lags with noise,
steps of 1/16 °C, stale and missing samples. Nothing here is known to the detector but the samples and the
press.
"""

from __future__ import annotations

import random
from dataclasses import dataclass, field
from math import floor

DT_S = 0.05
ACID_CM3 = 25.0
HEAT_J_MOL = 56500.0
HEAT_CAPACITY_J_CM3_K = 4.05


@dataclass(frozen=True)
class Habits:
    """How one group and one kit behave; ranges are drawn by `draw`."""

    name: str
    acid_mol_dm3: float
    alkali_mol_dm3: float
    portion_cm3: float
    portion_sd_cm3: float
    pour_s: float
    press_s: tuple[float, float]
    mix_s: float
    layer: float
    probe: str
    lags: tuple[float, float, float]
    noise_c: float
    missing: float
    stale: float
    wall_j_k: float
    wall_s: float
    loss_min: float
    room_c: float
    alkali_c: float
    pause_s: tuple[float, float]
    sign: float = 1.0


KINDS = ("usual", "hasty", "poor stirring", "slow probe", "fast probe", "bad line", "dilute", "strong", "falling")


def draw(kind: str, rng: random.Random) -> Habits:
    """One bench of the named kind."""
    u = rng.uniform
    lags = (u(3.0, 6.5), u(9.0, 20.0), u(0.5, 0.8))
    if kind == "slow probe":
        lags = (u(4.0, 9.0), u(16.0, 24.0), u(0.4, 0.65))
    if kind == "fast probe":
        lags = (u(1.5, 3.0), u(3.5, 7.0), u(0.5, 0.9))
    acid = {"dilute": u(0.3, 0.5), "strong": u(1.4, 2.0)}.get(kind, u(0.7, 1.1))
    room = u(18.0, 25.0)
    return Habits(
        name=kind,
        acid_mol_dm3=acid,
        alkali_mol_dm3=acid * u(0.85, 1.2),
        portion_cm3=rng.choice([2.5, 5.0, 5.0]),
        portion_sd_cm3=0.1,
        pour_s=u(1.0, 4.0) if kind == "hasty" else u(2.0, 8.0),
        press_s=(-6.0, 1.0) if kind == "hasty" else (-2.0, 6.0),
        mix_s=u(8.0, 25.0) if kind == "poor stirring" else u(1.0, 4.0),
        layer=u(0.3, 0.8),
        probe=rng.choice(["pair", "pair", "chain"]),
        lags=lags,
        noise_c=u(0.005, 0.03),
        missing=u(0.1, 0.3) if kind == "bad line" else u(0.0, 0.03),
        stale=u(0.05, 0.15) if kind == "bad line" else u(0.0, 0.01),
        wall_j_k=u(2.0, 8.0),
        wall_s=u(5.0, 40.0),
        loss_min=u(0.015, 0.1),
        room_c=room,
        alkali_c=room + u(-2.0, 0.5),
        pause_s=(2.0, 10.0) if kind == "hasty" else (5.0, 25.0),
        sign=-1.0 if kind == "falling" else 1.0,
    )


@dataclass
class Bench:
    """A cup, its probe and its clock, stepped forwards; `trace` holds (time_s, temperature_c or None)."""

    habits: Habits
    rng: random.Random
    time_s: float = 0.0
    trace: list[tuple[float, float | None]] = field(default_factory=list)
    truth: list[tuple[float, float, float]] = field(default_factory=list)

    def __post_init__(self) -> None:
        h = self.habits
        self.cup_c = self.wall_c = h.room_c + self.rng.uniform(-1.5, 0.5)
        start = h.room_c + self.rng.uniform(1.0, 8.0)
        self.fast_c = self.slow_c = start
        self.volume_cm3 = ACID_CM3
        self.poured_cm3 = 0.0
        self.layer_c = 0.0
        self.flow_cm3_s = 0.0
        self.flow_until_s = 0.0
        self.next_sample_s = 0.0
        self.room_slope_c_s = self.rng.uniform(-1.0, 1.0) / 3600.0
        self.stale_left = 0
        self.last_c: float | None = None

    @property
    def probe_c(self) -> float:
        """What the probe's core is at, before noise and steps."""
        if self.habits.probe == "chain":
            return self.slow_c
        share = self.habits.lags[2]
        return share * self.fast_c + (1.0 - share) * self.slow_c

    def pour(self, start_s: float) -> None:
        """Plan a portion that starts at `start_s`."""
        h = self.habits
        volume = max(0.1, self.rng.gauss(h.portion_cm3, h.portion_sd_cm3))
        self.flow_cm3_s = volume / h.pour_s
        self.flow_from_s, self.flow_until_s = start_s, start_s + h.pour_s

    def run(self, until_s: float) -> None:
        """Step until `until_s`."""
        while self.time_s < until_s - 1e-9:
            self._step()

    def _step(self) -> None:
        h = self.habits
        room = h.room_c + self.room_slope_c_s * self.time_s
        capacity = self.volume_cm3 * HEAT_CAPACITY_J_CM3_K
        if self.flow_cm3_s and self.flow_from_s <= self.time_s < self.flow_until_s:
            self._add(self.flow_cm3_s * DT_S, capacity)
            capacity = self.volume_cm3 * HEAT_CAPACITY_J_CM3_K
        to_wall = h.wall_j_k / h.wall_s * (self.cup_c - self.wall_c)
        lost = h.loss_min / 60.0 * capacity * (self.cup_c - room)
        self.cup_c -= DT_S * (to_wall + 0.7 * lost) / capacity
        self.wall_c += DT_S * (to_wall - 0.3 * lost) / h.wall_j_k
        self.layer_c -= DT_S * self.layer_c / h.mix_s
        self._lag(self.cup_c + self.layer_c)
        self.time_s += DT_S
        self.truth.append((self.time_s, self.cup_c, self.probe_c))
        if self.time_s >= self.next_sample_s:
            self._sample()

    def _add(self, volume_cm3: float, capacity: float) -> None:
        h = self.habits
        acid_left = max(0.0, ACID_CM3 * h.acid_mol_dm3 - self.poured_cm3 * h.alkali_mol_dm3)
        reacting = min(volume_cm3 * h.alkali_mol_dm3, acid_left)
        heat = h.sign * reacting * 1e-3 * HEAT_J_MOL
        heat += volume_cm3 * HEAT_CAPACITY_J_CM3_K * (h.alkali_c - self.cup_c)
        rise = heat / (capacity + volume_cm3 * HEAT_CAPACITY_J_CM3_K)
        self.cup_c += rise
        self.layer_c -= rise * h.layer
        self.volume_cm3 += volume_cm3
        self.poured_cm3 += volume_cm3

    def _lag(self, seen_c: float) -> None:
        fast, slow, share = self.habits.lags
        if self.habits.probe == "chain":
            # A tube in front of a tip: the second lag is behind the first.
            self.fast_c += DT_S * (seen_c - self.fast_c) / (slow * (1.0 - share) + 1.0)
            self.slow_c += DT_S * (self.fast_c - self.slow_c) / fast
        else:
            self.fast_c += DT_S * (seen_c - self.fast_c) / fast
            self.slow_c += DT_S * (seen_c - self.slow_c) / slow

    def _sample(self) -> None:
        h = self.habits
        self.next_sample_s += self.rng.uniform(0.95, 1.15)
        if self.rng.random() < h.missing:
            self.trace.append((self.time_s, None))
            return
        if self.stale_left > 0 and self.last_c is not None:
            self.stale_left -= 1
        else:
            self.last_c = floor((self.probe_c + self.rng.gauss(0.0, h.noise_c)) * 16.0 + 0.5) / 16.0
            if self.rng.random() < h.stale:
                self.stale_left = self.rng.randint(1, 5)
        self.trace.append((self.time_s, self.last_c))
