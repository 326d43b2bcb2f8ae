"""How a scene is drawn: reagents, cup, probe, and what the class knows. Every spread is an invention of ours."""

from __future__ import annotations

from dataclasses import dataclass, replace

import numpy as np

from tests.benchmarks.scenes_habits import Habits, habits_of
from tests.benchmarks.scenes_physics import Array, Fixed, Parameters


@dataclass(frozen=True)
class Draw:
    """A drawn scene before the probe's noise: parameters (batch of one), their spreads, and what is known.

    ``spread`` is the standard deviation a parameter had before it was drawn: the prior of the generator's
    own bound; one that is missing there is not known to anyone (no prior).
    """

    fixed: Fixed
    habits: Habits
    parameters: Parameters
    spread: dict[str, Array]
    press_s: Array
    measured_alkali_c: float | None
    measured_room_c: float | None
    probe_j_k: float
    told_j_cm3_k: tuple[float, float, float]
    slope_kj_k: float
    noise_c: float
    offset_c: float


def _times(rng: np.random.Generator, h: Habits) -> Array:
    holds = h.hold_s * np.exp(h.hold_spread * rng.standard_normal(h.pours))
    return np.asarray(h.base_s + h.pour_s[1] + np.concatenate([[0.0], np.cumsum(holds[:-1])]))


def draw(rng: np.random.Generator, family: str, u_volume_cm3: float, hold_s: float | None = None) -> Draw:
    """Draw cup, probe, reagents and group; ``hold_s`` in place of the family's time for each portion."""
    h = habits_of(rng, family)
    h = h if hold_s is None else replace(h, hold_s=hold_s)
    u, n = rng.uniform, rng.standard_normal
    total = h.portion_cm3 * h.pours
    room, times = u(17.0, 25.0), _times(rng, h)
    acid_c, alkali_c = room + u(-1.0, 1.0), room + u(*h.alkali_offset_c)
    end_point = total * u(0.35, 0.72)
    if rng.random() < 0.25:  # very common in schools: the end-point meant to be a whole number of portions
        end_point = h.portion_cm3 * np.round(end_point / h.portion_cm3) + 0.1 * n()
    c_product = h.alkali_mol_dm3 * end_point / (end_point + h.acid_cm3)
    c_acid = h.alkali_mol_dm3 * end_point / h.acid_cm3
    # Roughly the volumetric heat capacities of HCl, NaOH and NaCl solutions (Laliberté, J. Chem. Eng. Data 54, 1725
    # (2009)), from memory to 0.5 %.
    told = 4.175 - 0.18 * c_acid, 4.17 - 0.02 * h.alkali_mol_dm3, 4.17 - 0.125 * c_product
    slope_kj_k = u(0.03, 0.15)  # ΔCp of the reaction; the product's heat capacity follows from it
    reacting = told[0] * h.acid_cm3 + told[1] * end_point
    product = (reacting + slope_kj_k * h.alkali_mol_dm3 * end_point) / (h.acid_cm3 + end_point)
    lag1, lag2 = 4.5 * np.exp(0.3 * n()), 18.0 * np.exp(0.25 * n())
    probe = str(rng.choice(h.probes))
    share = {"parallel": 0.55 + 0.12 * n(), "ladder": u(0.1, 0.4), "chain": u(0.0, 0.5)}[probe]
    if probe == "ladder":
        lag1, lag2 = 5.0 * np.exp(0.25 * n()), 9.0 * np.exp(0.25 * n())
    if probe == "chain":
        lag1, lag2 = 4.0 * np.exp(0.25 * n()), 3.0 * np.exp(0.25 * n())
    wall_j_k, wall_s = u(*h.wall_j_k), u(*h.wall_s)
    probe_j_k = u(0.8, 2.5)
    evaporation = u(*h.evaporation) * 6e-4  # g/(s kPa) off some 40 cm²
    pour_s, stir_mixing = u(*h.pour_s, h.pours), u(*h.stir_mixing_s)
    press = times + 0.5 * pour_s + h.press_bias_s + h.press_sd_s * n(h.pours)
    press = np.maximum.accumulate(press + 1e-3 * np.arange(h.pours))
    end_s = float(times[-1] + h.hold_s)
    volume = h.portion_cm3 + u_volume_cm3 * n(h.pours)
    scalars: dict[str, tuple[float, float | None]] = {
        "end_point_cm3": (end_point, None),
        "enthalpy_kj_mol": (u(54.0, 59.0), None),
        "start_c": (acid_c, None),
        "alkali_c": (alkali_c, 0.2),
        "alkali_drift_c_s": ((room - alkali_c) * u(0.0, 6e-4), 2e-4),
        "room_c": (room, 0.5),
        "room_drift_c_s": (h.room_drift_c_min / 60.0, 1.5e-3),
        "room_swing_c": (u(0.0, 0.3), 0.2),
        "room_period_s": (u(120.0, 600.0), 100.0),
        "humidity": (u(0.3, 0.7), 0.1),
        "open_w_k": (u(0.03, 0.12), 0.1),
        "evaporation_g_s_kpa": (evaporation, 2e-4),
        "wall_loss_w_k": (u(0.02, 0.12), 0.1),
        "wall_j_k": (wall_j_k, 3.0),
        "wall_s": (wall_s, 0.6 * wall_s),
        "wall_offset_c": (room - acid_c + 0.3 * n(), 0.5),
        "probe_w_k": (probe_j_k / lag1, 0.2),
        "probe_offset_c": (u(-1.0, 1.0), 1.0),
        "lag1_s": (lag1, 0.4 * lag1),
        "lag2_s": (lag2, 0.4 * lag2),
        "lag3_s": (u(2.0, 5.0), 2.0),
        "lag_share": (share, 0.2),
        "back_share": (u(0.1, 0.6), 0.2),
        "stem_share": (u(0.0, 0.01), 0.005),
        "acid_volume_cm3": (h.acid_cm3 + h.u_acid_cm3 * n(), h.u_acid_cm3),
        "heat_capacity_scale": (1.0 + 0.004 * n(), 0.004),
        "zone_cm3": (h.acid_cm3 * u(*h.zone), 0.05 * h.acid_cm3),
        "low_share": (u(0.0, 0.6), 0.2),
        "idle_mixing_s": (u(15.0, 60.0), 20.0),
        "stir_mixing_s": (stir_mixing, 0.6 * stir_mixing),
        "stir_s": (h.stir_s, 3.0),
    }
    vectors: dict[str, tuple[Array, float]] = {
        "pour_time_s": (times, float(np.hypot(h.press_sd_s, 1.5))),
        "pour_s": (pour_s, 0.3 * (h.pour_s[1] - h.pour_s[0])),
        "volume_cm3": (volume, u_volume_cm3),
        "stir_vigour": (np.exp(0.25 * n(h.pours)), 0.25),
    }
    parameters = {name: np.array([value]) for name, (value, _) in scalars.items()}
    parameters |= {name: value[:, None] for name, (value, _) in vectors.items()}
    spread = {name: np.array(sd) for name, (_, sd) in scalars.items() if sd is not None}
    spread |= {name: np.full(h.pours, sd) for name, (_, sd) in vectors.items()}
    fixed = Fixed(end_s, h.pours, probe, told[0], told[1], float(product), h.alkali_mol_dm3)
    return Draw(
        fixed,
        h,
        parameters,
        spread,
        press,
        alkali_c + 0.15 * n() if rng.random() < 0.7 else None,
        room + 0.4 * n() if rng.random() < 0.7 else None,
        probe_j_k,
        told,
        slope_kj_k,
        float(rng.choice([0.0, 0.01, 0.02, 0.03])),
        u(-0.4, 0.4),
    )
