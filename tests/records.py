"""Records of a virtual cup, made without a bench and without waiting: known end-point, exact or inexact portions."""

import random
from collections.abc import Mapping
from dataclasses import dataclass

from station.bench.virtual.cup import SCENARIOS
from station.bench.virtual.world import World

PLAN_TEXT = """\
title = "How strong is the nitric acid?"
repeats = 2

[acid]
name = "nitric acid"
volume_cm3 = 25.0

[alkali]
name = "potassium hydroxide"
concentration_mol_dm3 = 0.400

[portions]
volume_cm3 = 4.0
count = 10
"""
"""A plan as a teacher writes it, with two strong reagents of 1 to 1."""
PLAN = """
[acid]
name = "nitric acid"
volume_cm3 = 25.0
[alkali]
name = "potassium hydroxide"
concentration_mol_dm3 = 0.400
[portions]
volume_cm3 = 4.0
count = 10
u_volume_cm3 = {u_volume_cm3}
"""


@dataclass(frozen=True)
class Recorded:
    """A record CSV, its plan, and what is true of it."""

    csv: str
    plan: str
    end_point_cm3: float
    acid_mol_dm3: float
    enthalpy_kj_mol: float


def record(
    seed: int = 1,
    repeats: int = 2,
    hold_s: int = 40,
    portions: int = 10,
    error_cm3: float = 0.0,
    times: Mapping[int, float] | None = None,
) -> Recorded:
    """Portions of 4 cm³ (error_cm3: one standard deviation), each pressed 1 s after its pour and held hold_s.

    A portion of `times` truly holds so many times that much, 0: pressed and not poured.
    """
    parameters = next(iter(SCENARIOS.values()))(seed)
    draw = random.Random(seed)
    rows = ["repeat,time_s,temperature_c,portion_cm3"]
    world = World(parameters, seed)
    now_s = 0.0
    for repeat in range(1, repeats + 1):
        world.refill(25.0)
        begun_s = now_s
        for portion in range(portions + 1):
            pour_s = now_s
            volume_cm3 = draw.gauss(4.0, error_cm3) * (times or {}).get(portion, 1.0) if portion else 0.0
            if volume_cm3 > 0.0:
                world.pour(volume_cm3, 3.0)
            for second in range(1, (50 if portion == 0 else hold_s) + 1):
                now_s = pour_s + second
                world.advance(now_s)
                rows.append(f"{repeat},{now_s - begun_s:.1f},{world.reading_c():.4f},")
                if portion and second == 4:
                    rows.append(f"{repeat},{now_s - begun_s:.1f},,4.0")
    return Recorded(
        "\n".join(rows) + "\n",
        PLAN.format(u_volume_cm3=max(error_cm3, 0.02)),
        parameters.end_point_cm3,
        parameters.acid_concentration_mol_dm3,
        parameters.enthalpy_kj_mol,
    )
