"""Invented cups with a known answer, as varied as real ones: ``make_scene(seed, family)``.

Each scene has the samples a probe would give (quantised, some stale, some missing), the presses, and the
truth: the cup's temperature at every moment, each pour's real time and volume, end-point and enthalpy.
The physics is in scenes_physics.py and differs from the fitted model on purpose. Use it to judge the heat
balance, the straight lines and the settle detector; do not tune to it. ``python -m tests.benchmarks.scenes``
prints one.
"""

from __future__ import annotations

from collections.abc import Mapping
from dataclasses import dataclass, field

import numpy as np
from numpy.typing import NDArray

from tests.benchmarks.scenes_draw import Draw, draw
from tests.benchmarks.scenes_physics import Array, Fixed, Parameters, simulate

FAMILIES = (
    "calm",
    "slow_wall",
    "long_pours",
    "careless_presses",
    "gaps",
    "drifting_room",
    "cold_alkali",
    "poor_stirring",
    "other_probe",
    "hasty",
    "slow",
    "small_portions",
    "large_portions",
    "dilute",
    "strong",
    "evaporating",
    "mixed",
)
"""Families of scenes; "mixed" draws everything at random."""

STEP_C = 0.0625


@dataclass(frozen=True)
class TruePour:
    """One portion: middle of the real pour, real volume, the press "it is in", the volume in the plan."""

    time_s: float
    volume_cm3: float
    press_s: float
    nominal_cm3: float


@dataclass(frozen=True)
class Scene:
    """One simulated repeat. Arrays of samples have shape n; times in s from the beginning of the trace.

    ``temperature_c`` holds the good samples only (missing ones are left out); ``stale`` marks those that
    repeat an earlier conversion. ``true_cup_c`` is the mean temperature of the liquid at ``time_s``;
    ``near_probe_c`` that of the liquid around the probe; ``grid_s`` and ``grid_cup_c`` give the former on a fine
    grid, for moments between samples. Measured values are what the class would know.
    """

    family: str
    seed: int
    time_s: Array
    temperature_c: Array
    stale: NDArray[np.bool_]
    true_cup_c: Array
    near_probe_c: Array
    grid_s: Array
    grid_cup_c: Array
    pours: tuple[TruePour, ...]
    u_volume_cm3: float
    true_end_point_cm3: float
    true_enthalpy_kj_mol: float  # at 25 °C
    enthalpy_slope_kj_k: float
    acid_nominal_cm3: float
    u_acid_cm3: float
    alkali_mol_dm3: float
    measured_alkali_c: float | None
    measured_room_c: float | None
    true_cup_j_k: float
    heat_capacities_j_cm3_k: tuple[float, float, float]
    noise_c: float
    drawn: Draw = field(repr=False)

    @property
    def press_s(self) -> Array:
        """Times of the presses."""
        return np.array([p.press_s for p in self.pours])

    @property
    def nominal_cm3(self) -> Array:
        """Nominal volumes of the portions."""
        return np.array([p.nominal_cm3 for p in self.pours])


def probe_at(fixed: Fixed, p: Parameters, time_s: Array) -> Array:
    """The sensor's temperature without noise at ``time_s``, shape n × batch."""
    grid, _, _, sensor = simulate(fixed, p)
    return np.stack([np.interp(time_s, grid, column) for column in sensor.T], axis=1)


def _samples(
    drawn: Draw, rng: np.random.Generator, grid: Array, sensor: Array
) -> tuple[Array, Array, NDArray[np.bool_]]:
    """Times, readings and a mark for stale ones: irregular, quantised, some missing."""
    h = drawn.habits
    steps = np.maximum(h.period_s + h.jitter_s * rng.standard_normal(int(drawn.fixed.end_s / h.period_s) + 1), 0.3)
    time_s: Array = np.cumsum(steps)
    time_s = time_s[time_s < drawn.fixed.end_s]
    felt = np.interp(time_s - 0.0, grid, sensor) + drawn.offset_c + drawn.noise_c * rng.standard_normal(len(time_s))
    reading = np.round(felt / STEP_C) * STEP_C
    stale = np.zeros(len(time_s), dtype=bool)
    for k in np.flatnonzero(rng.random(len(time_s)) < h.stale_share):
        if k:
            reading[k], stale[k] = reading[k - 1], True
    keep = rng.random(len(time_s)) >= h.missing_share
    if rng.random() < h.gap_chance:
        begin = rng.uniform(0.1, 0.9) * drawn.fixed.end_s
        keep &= (time_s < begin) | (time_s > begin + rng.uniform(4.0, 15.0))
    return time_s[keep], reading[keep], stale[keep]


def make_scene(
    seed: int,
    family: str = "mixed",
    u_volume_cm3: float = 0.0,
    hold_s: float | None = None,
    poured: Mapping[int, float] | None = None,
) -> Scene:
    """Scene number ``seed`` of a family; portions scatter by ``u_volume_cm3`` (1 sd, independent).

    With ``hold_s`` the same cup and group hold each portion about so long instead of the family's time; portions of
    ``poured`` (from 0) truly hold so many times what they would, and nobody knows.
    """
    if family not in FAMILIES:
        raise ValueError(f"no family {family!r}: one of {', '.join(FAMILIES)}")
    rng = np.random.default_rng([seed, FAMILIES.index(family)])
    drawn = draw(rng, family, u_volume_cm3, hold_s)
    for portion, times in (poured or {}).items():
        drawn.parameters["volume_cm3"][portion] *= times
    grid, near, mixed, sensor = simulate(drawn.fixed, drawn.parameters)
    time_s, reading, stale = _samples(drawn, rng, grid, sensor[:, 0])
    p, h = drawn.parameters, drawn.habits
    pours = tuple(
        TruePour(float(t), float(v), float(press), h.portion_cm3)
        for t, v, press in zip(p["pour_time_s"][:, 0], p["volume_cm3"][:, 0], drawn.press_s, strict=True)
    )
    return Scene(
        family=family,
        seed=seed,
        time_s=time_s,
        temperature_c=reading,
        stale=stale,
        true_cup_c=np.interp(time_s, grid, mixed[:, 0]),
        near_probe_c=np.interp(time_s, grid, near[:, 0]),
        grid_s=grid,
        grid_cup_c=mixed[:, 0],
        pours=pours,
        u_volume_cm3=u_volume_cm3,
        true_end_point_cm3=float(p["end_point_cm3"][0]),
        true_enthalpy_kj_mol=-float(p["enthalpy_kj_mol"][0]),
        enthalpy_slope_kj_k=drawn.slope_kj_k,
        acid_nominal_cm3=h.acid_cm3,
        u_acid_cm3=h.u_acid_cm3,
        alkali_mol_dm3=drawn.fixed.alkali_mol_dm3,
        measured_alkali_c=drawn.measured_alkali_c,
        measured_room_c=drawn.measured_room_c,
        true_cup_j_k=float(p["wall_j_k"][0] + drawn.probe_j_k),
        heat_capacities_j_cm3_k=drawn.told_j_cm3_k,
        noise_c=float(np.hypot(drawn.noise_c, STEP_C / np.sqrt(12.0))),
        drawn=drawn,
    )


if __name__ == "__main__":
    scene = make_scene(1)
    for time, reading in zip(scene.time_s, scene.temperature_c, strict=True):
        print(f"{time:.2f},{reading:.4f}")
