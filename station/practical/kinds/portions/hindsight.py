"""What all readings of a repeat say together, where it is known what is in the cup."""

from collections.abc import Collection, Sequence

from station.analysis.odd_ones import Contents
from station.chemistry.pairs import WrongPairError
from station.practical.by_hand import SOLUTION_J_CM3_K, seen_in
from station.practical.kinds.kind import Hindsight, Point
from station.practical.kinds.portions.plan import PortionsPlan

WATER_KJ_MOL = 57.0
"""Per mole of water formed, about: enough to tell one portion from two."""


def hindsight(
    plan: PortionsPlan,
    points: Sequence[Point],
    u_c: float,
    alkali: tuple[float, float] | None,
    doubted: Collection[int] = (),
    typed: bool = True,
) -> Hindsight:
    """Return what does not fit (portions, 0: the start, with the code of the question, the worst first) and what does.

    `alkali` is the temperature of what is added and its u, where somebody measured it; the volumes of the portions
    `doubted` are in doubt already. Without `typed` no reading can be a slip: the probe's are read by nobody.
    """
    contents = Contents(
        SOLUTION_J_CM3_K * plan.acid.volume_cm3 + plan.cup.heat_capacity_j_k,
        SOLUTION_J_CM3_K,
        added_c=plan.alkali.temperature_c if alkali is None else alkali[0],
        u_added_c=0.3 if alkali is None else alkali[1],
        room_c=plan.surroundings.room_c,
        u_portion_cm3=plan.portions.u_cm3,
        heat_j_cm3=_heat_j_cm3(plan),
        typed=typed,
    )
    return seen_in(points, contents, u_c, doubted)


def _heat_j_cm3(plan: PortionsPlan) -> float | None:
    """About what a cm³ of the alkali gives out, J; None where that is no simple neutralisation."""
    try:
        pair = plan.pair
    except WrongPairError:
        return None
    return plan.alkali.concentration_mol_dm3 * pair.alkali_hydroxides * WATER_KJ_MOL if pair.single_step else None
