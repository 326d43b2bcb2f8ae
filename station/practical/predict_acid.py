"""What a plan of portions says of its acid: the pair, the concentration and where it is from, what can be resolved."""

from typing import Any

from station.chemistry.pairs import Neutralisation, WrongPairError, neutralisation_steps
from station.chemistry.reagents import find_reagent
from station.practical.plan import PlanError, PortionsPlan

Json = dict[str, Any]

MIDDLE, KNOWN, PREPARED = "middle of the range this plan can resolve", "known to the class", "prepared by staff"
LEAST_POINTS = 3


def pair_of(plan: PortionsPlan) -> Neutralisation:
    """Return the plan's neutralisation. Raises PlanError for two reagents that are none."""
    try:
        return neutralisation_steps(find_reagent(plan.acid.name), find_reagent(plan.alkali.name))
    except WrongPairError as error:
        raise PlanError(f"{error}; change [acid] or [alkali]", ("alkali", "name")) from None


def acid_of(plan: PortionsPlan, pair: Neutralisation) -> Json:
    """Return the acid's concentration, where it comes from, and the range that the plan can resolve.

    An end-point can be resolved when at least three readings lie on each arm.
    """
    per_cm3 = plan.alkali.concentration_mol_dm3 * pair.acid_per_alkali / plan.acid.volume_cm3
    low, high = (LEAST_POINTS - 1) * plan.portion_cm3, (plan.count - LEAST_POINTS + 1) * plan.portion_cm3
    known = plan.acid.concentration_mol_dm3 or plan.acid.prepared_mol_dm3
    if known is None and high < low:
        raise PlanError(
            f"[portions] count = {plan.count} leaves no end-point with {LEAST_POINTS} readings on each side: "
            f"plan at least {2 * (LEAST_POINTS - 1)} portions",
            ("portions", "count"),
        )
    concentration = known if known is not None else (low + high) / 2 * per_cm3
    basis = MIDDLE if known is None else KNOWN if plan.acid.concentration_mol_dm3 is not None else PREPARED
    return {
        "concentration_mol_dm3": concentration,
        "basis": basis,
        "range_mol_dm3": [low * per_cm3, high * per_cm3] if high >= low else None,
        "end_point_cm3": concentration / per_cm3,
    }
