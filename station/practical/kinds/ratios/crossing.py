"""What is in a mixture whose volumes are those of the crossing: its heat capacity, and the water that forms."""

from math import hypot
from typing import NamedTuple

from station.chemistry.heat import Measured
from station.practical.kinds.once.contents import contents_of
from station.practical.kinds.ratios.mixing import once_of
from station.practical.kinds.ratios.plan import RatiosPlan


class AtCrossing(NamedTuple):
    """Heat capacities of the contents alone, and with cup and probe (J/K); moles of water that form."""

    contents_j_k: Measured
    all_j_k: Measured
    water_mol: Measured


def at_crossing(plan: RatiosPlan, alkali_cm3: float, u_cm3: float) -> AtCrossing | None:
    """Return what a mixture with so much alkali would hold; None where nobody knows."""
    mixtures = plan.mixtures.model_copy(update={"first_cm3": alkali_cm3, "count": 1})
    try:
        inside = contents_of(once_of(plan.model_copy(update={"mixtures": mixtures}), 1)).all_j_k
        hydroxides = plan.pair.alkali_hydroxides
    except ValueError:
        return None
    cup = plan.cup
    whole = Measured(inside.value + cup.heat_capacity_j_k, hypot(inside.u, cup.u_heat_capacity_j_k))
    # Of the alkali nothing is left over there.
    water_mol = hydroxides * plan.alkali.concentration_mol_dm3 * alkali_cm3 / 1000.0
    return AtCrossing(inside, whole, Measured(water_mol, water_mol * u_cm3 / alkali_cm3))
