"""Density and heat capacity of aqueous solutions, with an uncertainty, and their composition by mass or volume.

The model is ``laliberte``. Uncertainties (one standard deviation) follow what its author found: 1.44 kg/m³ in
density and 0.010 J/(g K) in heat capacity for one solute, 0.029 J/(g K) for several, over solutions that are
mostly concentrated; here they shrink in proportion below 1 mol/dm³, where the water dominates.
"""

import math
from collections.abc import Mapping
from dataclasses import dataclass
from typing import Final

from station.chemistry.liquids import Terms, generic, terms, water_density_g_cm3, water_heat_capacity_j_g_k
from station.chemistry.reagent import LALIBERTE_2004, LALIBERTE_2009, PATEK_2009, Reagent, molar_mass_g_mol
from station.words import say

SOURCES: Final = (LALIBERTE_2004, LALIBERTE_2009, PATEK_2009)

U_DENSITY_G_CM3: Final = 0.00144
U_HEAT_CAPACITY_ONE_J_G_K: Final = 0.010
U_HEAT_CAPACITY_SEVERAL_J_G_K: Final = 0.029
U_PER_KELVIN_OUTSIDE_J_MOL_K2: Final = 3.0
"""How fast an apparent molar heat capacity may change with temperature beyond its range; the table's largest."""


@dataclass(frozen=True, slots=True)
class Solution:
    """Properties of one solution at one temperature; ``u_relative`` belongs to the volumetric heat capacity.

    ``notes`` says in words where the model had to leave its ground.
    """

    density_g_cm3: float
    heat_capacity_j_g_k: float
    u_relative: float
    notes: tuple[str, ...] = ()

    @property
    def volumetric_j_cm3_k(self) -> float:
        """Heat capacity of a cubic centimetre of the solution."""
        return self.density_g_cm3 * self.heat_capacity_j_g_k


def solution_by_mass(mass_fractions: Mapping[str, float], temperature_c: float) -> Solution:
    """Properties of a solution from the mass fraction of each solute (named by its ions).

    Raises ``ValueError`` for a negative fraction or one that leaves no water.
    """
    fractions = {solute: fraction for solute, fraction in mass_fractions.items() if fraction != 0}
    total = math.fsum(fractions.values())
    if any(fraction < 0 for fraction in fractions.values()) or not total < 1:
        raise ValueError(f"mass fractions must be 0 or more and leave some water: {dict(mass_fractions)}")
    parts = {solute: terms(solute, temperature_c, total) for solute in fractions}
    volume = (1 - total) / water_density_g_cm3(temperature_c)
    heat = (1 - total) * water_heat_capacity_j_g_k(temperature_c)
    for solute, fraction in fractions.items():
        volume += fraction * parts[solute].volume_cm3_g
        heat += fraction * parts[solute].heat_capacity_j_g_k
    density = 1 / volume
    return Solution(density, heat, _u_relative(fractions, parts, density, heat), _notes(parts))


def solution(concentrations_mol_dm3: Mapping[str, float], temperature_c: float) -> Solution:
    """Properties of a solution from the concentration of each solute (named by its ions) at that temperature.

    Raises ``ValueError`` when such a solution cannot be: the solutes alone would weigh more than it does.
    """
    masses_g_cm3 = {
        solute: amount * molar_mass_g_mol(solute) / 1000.0 for solute, amount in concentrations_mol_dm3.items()
    }
    if any(not mass >= 0 for mass in masses_g_cm3.values()):
        raise ValueError(f"a concentration must be 0 or more: {dict(concentrations_mol_dm3)}")
    density = water_density_g_cm3(temperature_c)
    for _ in range(_MOST_ROUNDS):
        if not math.fsum(masses_g_cm3.values()) < density:
            amounts = ", ".join(f"{solute} {amount:g} mol/dm³" for solute, amount in concentrations_mol_dm3.items())
            raise ValueError(say("problem-no-solution-of", solutes_text=amounts))
        found = solution_by_mass({key: mass / density for key, mass in masses_g_cm3.items()}, temperature_c)
        if abs(found.density_g_cm3 - density) < _SAME_DENSITY:
            break
        density = found.density_g_cm3
    return found


_MOST_ROUNDS: Final = 200
_SAME_DENSITY: Final = 1e-13


def mass_fraction(reagent: Reagent, concentration_mol_dm3: float, temperature_c: float = 20.0) -> float:
    """Mass of dissolved substance (without water of crystallisation) over mass of solution."""
    found = solution({reagent.solute: concentration_mol_dm3}, temperature_c)
    return concentration_mol_dm3 * molar_mass_g_mol(reagent.solute) / 1000.0 / found.density_g_cm3


def concentration_mol_dm3(reagent: Reagent, fraction: float, temperature_c: float = 20.0) -> float:
    """Concentration of a solution whose mass fraction of dissolved substance is given."""
    found = solution_by_mass({reagent.solute: fraction}, temperature_c)
    return 1000.0 * fraction * found.density_g_cm3 / molar_mass_g_mol(reagent.solute)


def _u_relative(fractions: Mapping[str, float], parts: Mapping[str, Terms], density: float, heat: float) -> float:
    """Model scatter, plus for each solute what the stand-in or the edge of the range leaves open."""
    amounts = {key: 1000 * part * density / molar_mass_g_mol(key) for key, part in fractions.items()}
    share = min(1.0, math.fsum(amounts.values()))
    u_model = U_HEAT_CAPACITY_ONE_J_G_K if len(fractions) == 1 else U_HEAT_CAPACITY_SEVERAL_J_G_K
    terms_of_u = [share * u_model / heat, share * U_DENSITY_G_CM3 / density]
    for solute, fraction in fractions.items():
        part, stand_in = parts[solute], generic(solute)
        if not part.known_volume:
            terms_of_u.append(fraction * stand_in.u_volume_cm3_g * density)
        if not part.known_heat_capacity:
            terms_of_u.append(fraction * stand_in.u_heat_capacity_j_g_k / heat)
        moles_per_g = fraction / molar_mass_g_mol(solute)
        terms_of_u.append(moles_per_g * U_PER_KELVIN_OUTSIDE_J_MOL_K2 * part.outside_c / heat)
        terms_of_u.append(part.outside_mass_fraction)
    return math.hypot(*terms_of_u)


def _notes(parts: Mapping[str, Terms]) -> tuple[str, ...]:
    notes = []
    for solute, part in parts.items():
        if not part.known_volume:
            notes.append(f"no measured density or heat capacity for {solute}: a typical solute stands in")
        elif not part.known_heat_capacity:
            notes.append(f"no measured heat capacity for {solute}: a typical solute stands in")
        elif part.outside_c > 0 or part.outside_mass_fraction > 0:
            notes.append(f"the heat capacity of {solute} is held at the edge of its measured range")
    return tuple(notes)
