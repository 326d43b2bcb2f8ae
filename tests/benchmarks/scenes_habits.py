"""Habits of groups and what is in the plan, by family of scenes. Every spread is an invention of ours."""

from __future__ import annotations

from dataclasses import dataclass, replace
from typing import Any

import numpy as np


@dataclass(frozen=True)
class Habits:
    """What people and the plan do; the defaults are a careful group with common glassware."""

    acid_cm3: float = 25.0
    u_acid_cm3: float = 0.06
    portion_cm3: float = 5.0
    pours: int = 9
    hold_s: float = 50.0
    hold_spread: float = 0.12
    base_s: float = 25.0
    pour_s: tuple[float, float] = (1.5, 3.5)
    press_bias_s: float = 1.5
    press_sd_s: float = 1.2
    stir_s: float = 200.0
    stir_mixing_s: tuple[float, float] = (1.0, 2.5)
    zone: tuple[float, float] = (0.05, 0.15)
    alkali_mol_dm3: float = 1.0
    alkali_offset_c: tuple[float, float] = (-0.5, 0.5)
    room_drift_c_min: float = 0.01
    wall_j_k: tuple[float, float] = (2.0, 6.0)
    wall_s: tuple[float, float] = (15.0, 50.0)
    evaporation: tuple[float, float] = (0.0, 0.3)
    probes: tuple[str, ...] = ("parallel",)
    period_s: float = 1.02
    jitter_s: float = 0.03
    stale_share: float = 0.003
    missing_share: float = 0.01
    gap_chance: float = 0.0


def habits_of(rng: np.random.Generator, family: str) -> Habits:
    """The habits of a family; "mixed" draws several departures at once."""
    calm = Habits()
    u = rng.uniform
    pick: dict[str, dict[str, Any]] = {
        "calm": {},
        "slow_wall": {"wall_j_k": (4.0, 10.0), "wall_s": (70.0, 300.0)},
        "long_pours": {"pour_s": (4.0, 12.0), "hold_s": 60.0},
        "careless_presses": {"press_bias_s": u(-4.0, 5.0), "press_sd_s": 3.0},
        "gaps": {"stale_share": 0.03, "missing_share": 0.08, "gap_chance": 0.8, "jitter_s": 0.15},
        "drifting_room": {"room_drift_c_min": u(-0.15, 0.15)},
        "cold_alkali": {"alkali_offset_c": (-5.0, -1.0)},
        "poor_stirring": {"stir_s": u(4.0, 12.0), "stir_mixing_s": (3.0, 9.0), "zone": (0.1, 0.3)},
        "other_probe": {"probes": ("ladder", "chain")},
        "hasty": {"hold_s": u(16.0, 26.0), "hold_spread": 0.25},
        "slow": {"hold_s": u(80.0, 120.0)},
        "small_portions": {"portion_cm3": 2.5, "pours": 16, "hold_s": 40.0},
        "large_portions": {"acid_cm3": 50.0, "u_acid_cm3": 0.1, "portion_cm3": 10.0, "pours": 9},
        "dilute": {"alkali_mol_dm3": u(0.2, 0.5)},
        "strong": {"alkali_mol_dm3": u(1.2, 2.0)},
        "evaporating": {"evaporation": (0.5, 1.0)},
    }
    if family != "mixed":
        return replace(calm, **pick[family])
    names = [n for n in pick if n not in ("small_portions", "large_portions", "dilute", "strong")]
    merged: dict[str, Any] = {}
    for name in rng.choice(names, size=4, replace=False):
        merged.update(pick[str(name)])
    if "hold_s" not in merged:
        merged["hold_s"] = u(25.0, 80.0)
    merged["alkali_mol_dm3"] = float(np.exp(u(np.log(0.3), np.log(2.0))))
    volume, portion, count = [(25.0, 5.0, 9), (20.0, 4.0, 10), (30.0, 5.0, 10), (50.0, 10.0, 9), (25.0, 2.5, 16)][
        rng.integers(5)
    ]
    merged |= {"acid_cm3": volume, "portion_cm3": portion, "pours": count, "period_s": u(0.8, 1.3)}
    return replace(calm, **merged)
