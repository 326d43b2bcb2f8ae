"""What a person measures portions with at a practice cup: a syringe, or a measuring cylinder that the plan names."""

import math
from dataclasses import dataclass
from typing import Final, Literal

from station.chemistry.preparation import CYLINDER
from station.practical.plan import Plan

WareName = Literal["syringe", "cylinder"]
ROOM_TO_SPARE: Final = 1.25
"""The smallest that holds so many portions is taken."""
EMPTIES_CM3_S: Final[dict[WareName, float]] = {"syringe": 4.0, "cylinder": 10.0}
"""As fast as it empties into a cup: engineering judgement, no source."""
SIZES_CM3: Final[dict[WareName, dict[float, float]]] = {
    # common practice, no source
    "syringe": {2.0: 0.1, 5.0: 0.1, 10.0: 0.1, 20.0: 0.2, 50.0: 0.5, 100.0: 1.0, 1000.0: 10.0},
    # ISO 4788, from memory
    "cylinder": {10.0: 0.2, 25.0: 0.5, 50.0: 1.0, 100.0: 1.0, 250.0: 2.0, 500.0: 5.0, 1000.0: 10.0},
}
"""What it holds, and how far its lines are apart."""


@dataclass(frozen=True)
class Ware:
    """One syringe or measuring cylinder."""

    ware: WareName
    capacity_cm3: float
    division_cm3: float

    @property
    def u_reading_cm3(self) -> float:
        """One standard deviation of a reading: half a division either way, rectangular (GUM 4.3.7)."""
        return 0.5 * self.division_cm3 / math.sqrt(3.0)

    @property
    def empties_cm3_s(self) -> float:
        """How fast it empties into a cup."""
        return EMPTIES_CM3_S[self.ware]


def ware_of(plan: Plan) -> Ware:
    """Return what one portion of the plan is measured with: a syringe where the plan names no measuring cylinder."""
    ware: WareName = "cylinder" if plan.measured_in is CYLINDER else "syringe"
    sizes, wanted_cm3 = SIZES_CM3[ware], plan.portion_cm3 * ROOM_TO_SPARE
    capacity_cm3 = next((each for each in sizes if each >= wanted_cm3), max(sizes))
    return Ware(ware, capacity_cm3, sizes[capacity_cm3])
