"""Enthalpy of neutralisation per mole of water formed: by pair, by temperature, and as schools quote it.

At infinite dilution and 25 °C it follows from the CODATA key values of water and the hydroxide ion (1989), with
the heat capacity of ionisation of Singh, Woolley, McCurdy and Hepler (1976); weak acids and ammonia add their
ionisation (Goldberg, Kishore and Lennen, 2002). Real solutions give 1 to 2 kJ/mol more heat, which
``dilution`` estimates. Negative means heat is given out.
"""

import math
from typing import Final, NamedTuple

from station.chemistry.dilution import relative_enthalpy
from station.chemistry.formula import Ion, molar_mass_g_mol
from station.chemistry.pairs import Neutralisation, neutralisation_steps
from station.chemistry.reagent import Ionisation, Kind, Reagent
from station.chemistry.solutions import solution
from station.chemistry.sources import CODATA_1989, GOLDBERG_2002, SINGH_1976

WATER_FORMATION_KJ_MOL: Final = -285.830
HYDROXIDE_FORMATION_KJ_MOL: Final = -230.015
U_WATER_NEUTRALISATION_KJ_MOL: Final = 0.057
"""CODATA key values; u is that of their difference if they were independent (it is smaller in fact)."""
WATER_NEUTRALISATION_KJ_MOL: Final = WATER_FORMATION_KJ_MOL - HYDROXIDE_FORMATION_KJ_MOL

WATER_IONISATION_CP_J_MOL_K: Final = -215.2
U_WATER_IONISATION_CP_J_MOL_K: Final = 4.0

SOURCES: Final = (CODATA_1989, SINGH_1976, GOLDBERG_2002)
"""What the values at infinite dilution rest on."""

_U_IONISATION_KJ_MOL: Final = 0.1
_U_CP_REAL_SOLUTION_KJ_MOL_K: Final = 0.06
"""A real solution's heat capacity of reaction is closer to zero than at infinite dilution, by about this much."""


class Enthalpy(NamedTuple):
    """An enthalpy and its standard uncertainty in kJ/mol."""

    enthalpy_kj_mol: float
    u_enthalpy_kj_mol: float


class SchoolValue(NamedTuple):
    """A value that school books and mark schemes quote; not what this module computes."""

    acid: str
    alkali: str
    enthalpy_kj_mol: float
    quoted_in: str


SCHOOL_VALUES: Final = (
    SchoolValue("hydrochloric acid", "sodium hydroxide", -57.1, "AQA A-level mark scheme"),
    SchoolValue("hydrochloric acid", "sodium hydroxide", -56.1, "AQA A-level mark scheme"),
    SchoolValue("hydrochloric acid", "sodium hydroxide", -57.3, "textbooks, after Thomsen near 18 °C"),
    SchoolValue("hydrochloric acid", "sodium hydroxide", -58.0, "OpenStax Chemistry 2e, section 5.3"),
    SchoolValue("ethanoic acid", "sodium hydroxide", -55.2, "textbooks, after Thomsen near 18 °C"),
)


def step_enthalpies_kj_mol(acid: Reagent, alkali: Reagent, temperature_c: float = 25.0) -> tuple[Enthalpy, ...]:
    """Enthalpy of each proton in turn meeting the alkali, at infinite dilution, in kJ per mole of protons.

    Per mole of water for a hydroxide, per mole of ammonium for ammonia. Raises ``WrongPairError`` for no pair
    and ``ValueError`` for a carbonate, whose heat depends on how much gas leaves.
    """
    pair = neutralisation_steps(acid, alkali)
    if alkali.gives_gas:
        raise ValueError(pair.refusal)
    if alkali.kind is Kind.WEAK_ALKALI:
        base = _at(alkali.ionisations[0], temperature_c, sign=-1)
    else:
        base = _water(temperature_c)
    strong = (base,) * acid.strong_protons
    weak = tuple(_sum(base, _at(step, temperature_c)) for step in acid.ionisations)
    return strong + weak


def neutralisation_enthalpy(acid: Reagent, alkali: Reagent, temperature_c: float = 25.0) -> Enthalpy:
    """Mean over the protons of ``step_enthalpies_kj_mol``: complete neutralisation at infinite dilution."""
    steps = step_enthalpies_kj_mol(acid, alkali, temperature_c)
    mean = math.fsum(step.enthalpy_kj_mol for step in steps) / len(steps)
    return Enthalpy(mean, max(step.u_enthalpy_kj_mol for step in steps))


def expected_enthalpy(
    acid: Reagent, acid_mol_dm3: float, alkali: Reagent, alkali_mol_dm3: float, temperature_c: float
) -> Enthalpy:
    """What a perfect cup would give at these concentrations, per mole of water formed at the end-point.

    The infinite-dilution value plus the relative apparent molar enthalpy of the salt less those of acid and
    alkali. Molecules (weak acids, ammonia) are taken to have none. Errors as ``step_enthalpies_kj_mol``.
    """
    ideal = neutralisation_enthalpy(acid, alkali, temperature_c)
    pair = neutralisation_steps(acid, alkali)
    change, variance = 0.0, ideal.u_enthalpy_kj_mol**2
    for weight, ions, molality in _stages(pair, acid_mol_dm3, alkali_mol_dm3, temperature_c):
        found = relative_enthalpy(*ions, molality)
        change += weight * found.enthalpy_kj_mol
        variance += (weight * found.u_enthalpy_kj_mol) ** 2
    variance += (_U_CP_REAL_SOLUTION_KJ_MOL_K * (temperature_c - 25.0)) ** 2
    return Enthalpy(ideal.enthalpy_kj_mol + change, math.sqrt(variance))


_Stage = tuple[float, tuple[Ion, Ion], float]


def _stages(pair: Neutralisation, acid_mol_dm3: float, alkali_mol_dm3: float, temperature_c: float) -> list[_Stage]:
    """(moles per mole of water with sign, ions, molality) of each strong electrolyte before and after."""
    acid, alkali = pair.acid, pair.alkali
    if acid.anion is None or alkali.cation is None or acid.cation is None or alkali.anion is None:
        raise ValueError(f"{acid.name} or {alkali.name} has no ions in the table")
    acid_molality, acid_water = _molality(acid.solute, acid_mol_dm3, temperature_c)
    alkali_molality, alkali_water = _molality(alkali.solute, alkali_mol_dm3, temperature_c)
    # Water that comes with one mole of reacting protons, and the mole of water it forms.
    water_kg = acid_water / pair.acid_protons + alkali_water / pair.alkali_hydroxides + 0.018015
    stages: list[_Stage] = [
        (
            1 / pair.equivalents_per_salt,
            (alkali.cation, acid.anion),
            1 / pair.equivalents_per_salt / water_kg,
        )
    ]
    if acid.strong_protons == acid.protons:
        stages.append((-1 / pair.acid_protons, (acid.cation, acid.anion), acid_molality))
    elif acid.strong_protons:
        half = Ion("H" + acid.anion.formula, acid.anion.charge + 1)
        stages.append((-1 / pair.acid_protons, (acid.cation, half), acid_molality))
    if alkali.kind is Kind.HYDROXIDE:
        stages.append((-1 / pair.alkali_hydroxides, (alkali.cation, alkali.anion), alkali_molality))
    return stages


def _molality(solute: str, concentration_mol_dm3: float, temperature_c: float) -> tuple[float, float]:
    """Moles per kilogram of water, and kilograms of water that come with one mole of the solute."""
    if not concentration_mol_dm3 > 0:
        raise ValueError(f"a concentration must be above 0, not {concentration_mol_dm3} mol/dm³")
    density = solution({solute: concentration_mol_dm3}, temperature_c).density_g_cm3
    water_kg_dm3 = density - concentration_mol_dm3 * molar_mass_g_mol(solute) / 1000.0
    return concentration_mol_dm3 / water_kg_dm3, water_kg_dm3 / concentration_mol_dm3


def _water(temperature_c: float) -> Enthalpy:
    kelvins = temperature_c - 25.0
    slope = -WATER_IONISATION_CP_J_MOL_K / 1000.0
    u = math.hypot(U_WATER_NEUTRALISATION_KJ_MOL, U_WATER_IONISATION_CP_J_MOL_K / 1000.0 * kelvins)
    return Enthalpy(WATER_NEUTRALISATION_KJ_MOL + slope * kelvins, u)


def _at(step: Ionisation, temperature_c: float, sign: int = 1) -> Enthalpy:
    change = step.enthalpy_kj_mol + step.heat_capacity_j_mol_k / 1000.0 * (temperature_c - 25.0)
    return Enthalpy(sign * change, _U_IONISATION_KJ_MOL)


def _sum(first: Enthalpy, second: Enthalpy) -> Enthalpy:
    return Enthalpy(
        first.enthalpy_kj_mol + second.enthalpy_kj_mol,
        math.hypot(first.u_enthalpy_kj_mol, second.u_enthalpy_kj_mol),
    )
