"""What a plan that mixes once puts together, as numbers: heat capacities, the amount that reacts, its enthalpy."""

from typing import Final

from station.chemistry.cup import GasError, cup_contents, dissolved_contents
from station.chemistry.liquids import water_density_g_cm3, water_volumetric_heat_capacity_j_cm3_k
from station.chemistry.neutralisation import mixing_enthalpy, solution_enthalpy
from station.chemistry.pairs import Neutralisation, WrongPairError, neutralisation_steps
from station.chemistry.reagent import Reagent
from station.chemistry.reagents import find_reagent
from station.chemistry.solutions import solution
from station.practical.kinds.kind import Mixture
from station.practical.kinds.once.plan import OncePlan
from station.words import Message, plain, say

AT_C: Final = 22.0
SOLID_J_G_K: Final = 0.9  # salts lie between 0.6 and 1.2 J/(g K); an estimate

Poured = tuple[Reagent, float, float]
"""A solution: its reagent, mol/dm³, cm³."""


def mixture_of(plan: OncePlan) -> Mixture:
    """Return what is in the cup once all is in. Raises ValueError for what cannot be mixed."""
    addition, mass_g = find_reagent(plan.addition.name), plan.addition.mass_g
    if mass_g is not None:
        water_g = plan.liquid.volume_cm3 * water_density_g_cm3(AT_C)
        inside = dissolved_contents(addition, mass_g, water_g, AT_C)
        return Mixture(
            inside.heat_capacity_j_k,
            inside.u_relative,
            SOLID_J_G_K * mass_g,
            mass_g / addition.molar_mass_g_mol,
            dissolves=True,
        )
    added_mol_dm3 = plan.addition.concentration_mol_dm3 or 0.0
    added_j_k = solution({addition.solute: added_mol_dm3}, AT_C).volumetric_j_cm3_k * plan.portion_cm3
    if plan.liquid.concentration_mol_dm3 is None:
        water_j_k = water_volumetric_heat_capacity_j_cm3_k(AT_C) * plan.liquid.volume_cm3
        return Mixture(water_j_k + added_j_k, 0.01, added_j_k, None)
    acid, alkali = acid_and_alkali(plan)
    try:
        pair = neutralisation_steps(acid[0], alkali[0])
        inside = cup_contents(*acid, *alkali, AT_C)
    except (WrongPairError, GasError) as error:
        return Mixture(_unreacted_j_k(plan) + added_j_k, 0.02, added_j_k, None, why=say_no_enthalpy(error))
    return Mixture(
        inside.heat_capacity_j_k, max(inside.u_relative, 0.005), added_j_k, _water_mol(pair, acid[1:], alkali[1:])
    )


def say_no_enthalpy(error: ValueError) -> Message:
    """Say why there is no enthalpy per mole."""
    return say("once-no-enthalpy", reason=str(error))


def acid_and_alkali(plan: OncePlan) -> tuple[Poured, Poured]:
    """Return the two solutions, the acid first; where there is none, what is added first."""
    liquid = find_reagent(plan.liquid.name)
    of_cup = liquid, plan.liquid.concentration_mol_dm3 or 0.0, plan.liquid.volume_cm3
    added = find_reagent(plan.addition.name), plan.addition.concentration_mol_dm3 or 0.0, plan.portion_cm3
    return (of_cup, added) if liquid.is_acid else (added, of_cup)


def enthalpy_kj_mol(plan: OncePlan, temperature_c: float) -> tuple[float | None, Message]:
    """Return the enthalpy per mole of what reacts that books give, or None and why not."""
    unknown = say("predict-heat-unknown", added=plan.addition.called, liquid=plan.liquid.name)
    if plan.liquid.is_water:
        if plan.addition.mass_g is None:
            return None, unknown
        water_g = plan.liquid.volume_cm3 * water_density_g_cm3(temperature_c)
        dissolving = solution_enthalpy(find_reagent(plan.addition.name), plan.addition.mass_g, water_g)
        return (None, unknown) if dissolving is None else (dissolving.enthalpy_kj_mol, plain(""))
    if plan.liquid.concentration_mol_dm3 is None or plan.addition.concentration_mol_dm3 is None:
        return None, unknown
    acid, alkali = acid_and_alkali(plan)
    try:
        return mixing_enthalpy(*acid, *alkali, temperature_c).enthalpy_kj_mol, plain("")
    except ValueError as error:
        return None, say("predict-no-change", reason=str(error))


def mixture_with_heat(plan: OncePlan) -> Mixture | None:
    """Return the mixture with its enthalpy, for a virtual cup; None where nobody knows the heat."""
    try:
        mixed = mixture_of(plan)
    except ValueError:
        return None
    enthalpy, _ = enthalpy_kj_mol(plan, AT_C)
    return None if enthalpy is None or mixed.amount_mol is None else mixed.with_enthalpy(enthalpy)


def _unreacted_j_k(plan: OncePlan) -> float:
    liquid = find_reagent(plan.liquid.name)
    strength = plan.liquid.concentration_mol_dm3 or 0.0
    return solution({liquid.solute: strength}, AT_C).volumetric_j_cm3_k * plan.liquid.volume_cm3


def _water_mol(pair: Neutralisation, acid: tuple[float, float], alkali: tuple[float, float]) -> float:
    by_acid, by_alkali = pair.acid_protons * acid[0] * acid[1], pair.alkali_hydroxides * alkali[0] * alkali[1]
    return min(by_acid, by_alkali) / 1000.0
