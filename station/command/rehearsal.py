"""Who sits at the virtual benches of a rehearsal, and what goes wrong there."""

import random
from typing import Any

Json = dict[str, Any]

ACID_MOL_DM3 = 0.392
"""All cups hold the same acid: a class has one bottle."""

TROUBLES: tuple[Json, ...] = (
    {},
    {"habits": {"stalled": [(1, 4)], "stall_s": 600.0}},
    {"faults": "gone@260+420"},
    {"habits": {"doubled": [(1, 3)]}},
    {},
    {"habits": {"react_s": 8.0}},
    {},
    {"habits": {"hasty": [(1, 3), (1, 7), (2, 4)], "react_s": 1.5, "press_after_s": 0.0}},
    {},
    {"habits": {"spilled": [(1, 5)]}},
    {},
    {"habits": {"skipped": [(2, 4)]}},
    {},
    {"late_s": 150.0},
    {},
)
"""What is out of the ordinary at each bench, over and over again: two of the first three get into trouble."""


def rehearsing(count: int) -> list[Json]:
    """Return `count` benches: user, name, seed, habits, faults, and how late they begin in class seconds."""
    draw = random.Random("class")  # noqa: S311  (a simulation, not a secret)
    found = []
    for number in range(1, count + 1):
        trouble = TROUBLES[(number - 1) % len(TROUBLES)]
        habits = {"react_s": round(draw.uniform(2.0, 5.0), 2), "rinse_s": round(draw.uniform(20.0, 60.0), 1)}
        found.append(
            {
                "user": f"rehearsal-{number}",
                "name": f"Bench {number}",
                "seed": number,
                "habits": {**habits, **trouble.get("habits", {})},
                "faults": trouble.get("faults", ""),
                "late_s": trouble.get("late_s", round(draw.uniform(0.0, 40.0), 1)),
            }
        )
    return found
