"""Heat capacity of what is in the cup, from the acid alone to well past the end-point.

Masses are kept, volumes are not quite (they change by up to 1 % as acid and alkali react), so everything here
is counted per cubic centimetre **as poured**: the heat capacity of a cup is the sum, over what was poured, of
volume times the figures of ``cup_heat_capacities``.
"""

import math
from dataclasses import dataclass
from typing import Final, NamedTuple

from station.chemistry.pairs import Neutralisation, neutralisation_steps
from station.chemistry.reagent import Reagent, molar_mass_g_mol
from station.chemistry.solutions import Solution, solution, solution_by_mass

_UNKNOWN_FACTOR: Final = 2.0
"""An acid of unknown concentration is taken to be within this factor of the alkali, in equivalents."""


class GasError(ValueError):
    """The pair gives off a gas, so that the mass in the cup is not the mass poured."""


class CupHeatCapacities(NamedTuple):
    """Volumetric heat capacities in J/(cm³ K) of volume as poured, and their common relative uncertainty.

    ``product_j_cm3_k`` is the neutral mixture at the end-point. Between, a cup that holds acid volume A and has
    taken alkali volume V of the V_end it needs has A(1 - V/V_end) acid + (A V/V_end + V) product; beyond it,
    (A + V_end) product + (V - V_end) alkali.
    """

    acid_j_cm3_k: float
    alkali_j_cm3_k: float
    product_j_cm3_k: float
    u_relative: float


@dataclass(frozen=True, slots=True)
class CupContents:
    """What is in the cup after mixing and reacting: mass, heat capacity, volume, and notes of the model."""

    mass_g: float
    heat_capacity_j_k: float
    volume_cm3: float
    u_relative: float
    notes: tuple[str, ...]


def cup_contents(
    acid: Reagent,
    acid_mol_dm3: float,
    acid_cm3: float,
    alkali: Reagent,
    alkali_mol_dm3: float,
    alkali_cm3: float,
    temperature_c: float,
) -> CupContents:
    """Contents of the cup at any stage, volumes and concentrations as at that temperature.

    Raises ``GasError`` for a carbonate, ``WrongPairError`` for no pair, ``ValueError`` for impossible amounts.
    """
    pair = neutralisation_steps(acid, alkali)
    if alkali.gives_gas:
        raise GasError(pair.refusal)
    if not (acid_cm3 >= 0 and alkali_cm3 >= 0 and acid_cm3 + alkali_cm3 > 0):
        raise ValueError(f"cannot fill a cup with {acid_cm3} cm³ of acid and {alkali_cm3} cm³ of alkali")
    acid_solution = solution({acid.solute: acid_mol_dm3}, temperature_c)
    alkali_solution = solution({alkali.solute: alkali_mol_dm3}, temperature_c)
    mass = acid_cm3 * acid_solution.density_g_cm3 + alkali_cm3 * alkali_solution.density_g_cm3
    mixed = _mixed(pair, acid_mol_dm3 * acid_cm3 / 1000, alkali_mol_dm3 * alkali_cm3 / 1000, mass, temperature_c)
    return CupContents(
        mass, mass * mixed.heat_capacity_j_g_k, mass / mixed.density_g_cm3, mixed.u_relative, mixed.notes
    )


def dissolved_contents(solid: Reagent, solid_g: float, water_g: float, temperature_c: float) -> CupContents:
    """Contents of the cup when a weighed solid has dissolved in water; its own crystal water joins the rest.

    Raises ``ValueError`` for masses that are not above 0 or a solid too much for the water.
    """
    if not (solid_g > 0 and water_g > 0):
        raise ValueError(f"masses must be above 0 g: {solid.name} {solid_g}, water {water_g}")
    mass = solid_g + water_g
    fraction = solid_g / solid.molar_mass_g_mol * molar_mass_g_mol(solid.solute) / mass
    mixed = solution_by_mass({solid.solute: fraction}, temperature_c)
    return CupContents(
        mass, mass * mixed.heat_capacity_j_g_k, mass / mixed.density_g_cm3, mixed.u_relative, mixed.notes
    )


def _mixed(pair: Neutralisation, acid_mol: float, alkali_mol: float, mass_g: float, temperature_c: float) -> Solution:
    reacted = min(acid_mol * pair.acid_protons, alkali_mol * pair.alkali_hydroxides)
    moles = {
        pair.acid.solute: acid_mol - reacted / pair.acid_protons,
        pair.alkali.solute: alkali_mol - reacted / pair.alkali_hydroxides,
        pair.salt: reacted / pair.equivalents_per_salt,
    }
    fractions = {key: max(0.0, amount) * molar_mass_g_mol(key) / mass_g for key, amount in moles.items()}
    negligible = 1e-12
    return solution_by_mass(
        {key: fraction for key, fraction in fractions.items() if fraction > negligible}, temperature_c
    )


def cup_heat_capacities(
    acid: Reagent,
    acid_mol_dm3: float | None,
    alkali: Reagent,
    alkali_mol_dm3: float,
    temperature_c: float,
    *,
    acid_estimate_mol_dm3: float | None = None,
) -> CupHeatCapacities:
    """The three volumetric heat capacities the heat balance needs, at one temperature.

    An unknown acid (None) is taken at ``acid_estimate_mol_dm3``; without that, at as many equivalents as the
    alkali, and the uncertainty then covers half to double. Errors as ``cup_contents``.
    """
    known = acid_mol_dm3 if acid_mol_dm3 is not None else acid_estimate_mol_dm3
    if known is not None:
        return _capacities(acid, known, alkali, alkali_mol_dm3, temperature_c)
    middle = alkali_mol_dm3 * neutralisation_steps(acid, alkali).acid_per_alkali
    low, best, high = (
        _capacities(acid, middle * factor, alkali, alkali_mol_dm3, temperature_c)
        for factor in (1 / _UNKNOWN_FACTOR, 1.0, _UNKNOWN_FACTOR)
    )
    half_range = max(abs(high.acid_j_cm3_k - low.acid_j_cm3_k), abs(high.product_j_cm3_k - low.product_j_cm3_k)) / (
        2 * best.product_j_cm3_k
    )
    return best._replace(u_relative=math.hypot(best.u_relative, half_range / math.sqrt(3)))


def _capacities(
    acid: Reagent, acid_mol_dm3: float, alkali: Reagent, alkali_mol_dm3: float, temperature_c: float
) -> CupHeatCapacities:
    pair = neutralisation_steps(acid, alkali)
    if not (acid_mol_dm3 > 0 and alkali_mol_dm3 > 0):
        raise ValueError(f"concentrations must be above 0: acid {acid_mol_dm3}, alkali {alkali_mol_dm3} mol/dm³")
    acid_solution = solution({acid.solute: acid_mol_dm3}, temperature_c)
    alkali_solution = solution({alkali.solute: alkali_mol_dm3}, temperature_c)
    end_cm3 = acid_mol_dm3 / alkali_mol_dm3 / pair.acid_per_alkali
    product = cup_contents(acid, acid_mol_dm3, 1.0, alkali, alkali_mol_dm3, end_cm3, temperature_c)
    return CupHeatCapacities(
        acid_solution.volumetric_j_cm3_k,
        alkali_solution.volumetric_j_cm3_k,
        product.heat_capacity_j_k / (1.0 + end_cm3),
        max(acid_solution.u_relative, alkali_solution.u_relative, product.u_relative),
    )
