"""Portions of an alkali to an acid, each read once the temperature has settled: the end-point, and the enthalpy."""

from typing import Final

from station.practical.kinds.kind import END_POINT, ENTHALPY, Kind, Quantity
from station.practical.kinds.portions.hindsight import hindsight
from station.practical.kinds.portions.own import own_working
from station.practical.kinds.portions.plan import PortionsPlan
from station.practical.kinds.portions.promise import promise
from station.practical.kinds.portions.prompts import OWN_PROMPTS, PROMPTS
from station.practical.kinds.portions.settling import noticed_in_reading, noticed_while_settling, portion_verdict
from station.words import say

ACID: Final = Quantity("acid_mol_dm3", say("quantity-concentration"), "mol/dm³", places=4, asked_only=True)


def _asks(plan: PortionsPlan) -> Quantity:
    """How strong the acid is, or where that is known, how much heat a mole gives off."""
    return ACID if plan.acid.concentration_mol_dm3 is None else ENTHALPY


KIND: Final = Kind(
    prompts=PROMPTS,
    own_prompts=OWN_PROMPTS,
    verdict=portion_verdict,
    promise=promise,
    class_quantities=(
        (END_POINT, ("heat_balance", "straight_lines")),
        (ENTHALPY, ("heat_balance",)),
        (ACID, ("heat_balance",)),
    ),
    class_curve=True,
    asks=_asks,
    own_working=own_working,
    noticed_while_settling=noticed_while_settling,
    noticed_in_reading=noticed_in_reading,
    hindsight=hindsight,
)
