"""Enthalpy of neutralisation per mole of water formed: by pair, by temperature, and as schools quote it.

At infinite dilution and 25 °C it follows from the CODATA key values of water and the hydroxide ion (1989), with
the heat capacity of ionisation of Singh, Woolley, McCurdy and Hepler (1976); weak acids and ammonia add their
ionisation (Goldberg, Kishore and Lennen, 2002). Real solutions give 1 to 2 kJ/mol more heat, which
``dilution`` estimates; a salt that comes out of solution adds its own. Where acid is left over, ``mixing_enthalpy``
counts which protons have left. Negative means heat is given out.
"""

import math
from itertools import pairwise
from types import MappingProxyType
from typing import Final, NamedTuple

from station.chemistry.pairs import Neutralisation, neutralisation_steps
from station.chemistry.reagent import (
    BRADLEY_1979,
    CODATA_1989,
    GOLDBERG_2002,
    PARKER_1965,
    SILVESTER_1978,
    SINGH_1976,
    Ion,
    Ionisation,
    Kind,
    Reagent,
    molar_mass_g_mol,
)
from station.chemistry.solutions import solution
from station.words import say

# What concentration does to a heat of neutralisation: relative apparent molar enthalpies at 25 °C.
#
# The enthalpy of one mole of solute in a real solution, less that at infinite dilution, follows Pitzer's equation
# with the temperature derivatives of Silvester and Pitzer, J. Solution Chem. 7, 327 (1978), and the Debye–Hückel
# slope of Bradley and Pitzer, J. Phys. Chem. 83, 1599 (1979). The sign of HCl's third parameter is the one that
# reproduces the measured table of Parker, NSRDS-NBS 2 (1965); nitric acid's parameters were fitted to that table
# (1 to 4 mol/kg, within 0.003 kJ/mol). A strong electrolyte without parameters keeps the Debye–Hückel term alone.


DEBYE_HUCKEL_SLOPE_KJ_MOL: Final = 1.986
_B: Final = 1.2
_ALPHA: Final = 2.0
_RT2_KJ_K_MOL: Final = 8.314462618e-3 * 298.15**2

DILUTION_SOURCES: Final = (SILVESTER_1978, BRADLEY_1979, PARKER_1965)

U_MEASURED_KJ_MOL: Final = 0.05
"""Standard uncertainty per mole of solute where parameters exist; HCl's stay within it of Parker's table."""
U_UNMEASURED_SHARE: Final = 0.5
"""The same where only the Debye–Hückel term is known, as a share of that term (at least as above)."""


_MOST_MOL_KG: Final = 4.0
"""Up to here the parameters hold; beyond it the value there is kept."""


class Derivatives(NamedTuple):
    """Temperature derivatives of Pitzer's β0, β1 and Cφ, per kelvin."""

    beta0: float
    beta1: float
    c_phi: float


PARAMETERS: Final = MappingProxyType(
    {
        ("H", "Cl"): Derivatives(-3.081e-4, 1.419e-4, -6.213e-5),
        ("H", "NO3"): Derivatives(3.014e-4, 9.974e-4, -11.69e-5),
        ("Li", "Cl"): Derivatives(-1.685e-4, 5.366e-4, -4.52e-5),
        ("Na", "OH"): Derivatives(7.0e-4, 1.34e-4, -18.94e-5),
        ("Na", "Cl"): Derivatives(7.159e-4, 7.005e-4, -10.54e-5),
        ("Na", "NO3"): Derivatives(12.66e-4, 20.6e-4, -23.16e-5),
        ("K", "Cl"): Derivatives(5.794e-4, 10.71e-4, -5.095e-5),
        ("K", "NO3"): Derivatives(2.06e-4, 64.5e-4, 39.7e-5),
        ("NH4", "Cl"): Derivatives(0.779e-4, 12.58e-4, 2.1e-5),
    }
)


class Relative(NamedTuple):
    """A relative apparent molar enthalpy and its standard uncertainty, kJ/mol."""

    enthalpy_kj_mol: float
    u_enthalpy_kj_mol: float


def relative_enthalpy(cation: Ion, anion: Ion, molality_mol_kg: float) -> Relative:
    """Enthalpy of one mole of a strong electrolyte at that molality, less that at infinite dilution.

    Raises ``ValueError`` for a negative molality. Good to about 4 mol/kg and near 25 °C.
    """
    if not molality_mol_kg >= 0:
        raise ValueError(f"a molality must be 0 or more, not {molality_mol_kg}")
    common = math.gcd(cation.charge, -anion.charge)
    cations, anions = -anion.charge // common, cation.charge // common
    strength = 0.5 * molality_mol_kg * (cations * cation.charge**2 + anions * anion.charge**2)
    root = math.sqrt(strength)
    charges = cation.charge * -anion.charge
    limiting = (cations + anions) * charges * DEBYE_HUCKEL_SLOPE_KJ_MOL / (2 * _B) * math.log1p(_B * root)
    found = PARAMETERS.get((cation.formula, anion.formula))
    if found is None:
        return Relative(limiting, max(U_MEASURED_KJ_MOL, U_UNMEASURED_SHARE * limiting))
    second = found.beta0 + found.beta1 * _decay(_ALPHA * root)
    third = cations * cation.charge * found.c_phi / (2 * math.sqrt(charges))
    pairs = molality_mol_kg * second + molality_mol_kg**2 * third
    return Relative(limiting - 2 * cations * anions * _RT2_KJ_K_MOL * pairs, U_MEASURED_KJ_MOL)


def solution_enthalpy(solid: Reagent, solid_g: float, water_g: float) -> Relative | None:
    """Enthalpy of dissolving one mole in so much water at 25 °C, kJ/mol; None where the table has no figure.

    The value in much water and the heat of dilution of its ions. Ions of one charge each without parameters, weak
    acids and molecules keep the value in much water: there the Debye–Hückel term alone may have the wrong sign.
    """
    much = solid.solution_enthalpy_kj_mol
    if much is None:
        return None
    u = solid.u_solution_enthalpy_kj_mol or U_MEASURED_KJ_MOL
    if solid.cation is None or solid.anion is None or solid.is_acid:
        return Relative(much, u)
    charges = solid.cation.charge * -solid.anion.charge
    if charges == 1 and (solid.cation.formula, solid.anion.formula) not in PARAMETERS:
        return Relative(much, u)
    mol = solid_g / solid.molar_mass_g_mol
    crystal_g = mol * (solid.molar_mass_g_mol - molar_mass_g_mol(solid.solute))
    molality = min(1000.0 * mol / (water_g + crystal_g), _MOST_MOL_KG)
    here = relative_enthalpy(solid.cation, solid.anion, molality)
    return Relative(much + here.enthalpy_kj_mol, math.hypot(u, here.u_enthalpy_kj_mol))


def _decay(x: float) -> float:
    if x < 1e-4:
        return 1.0
    return 2.0 * (1.0 - (1.0 + x) * math.exp(-x)) / x**2


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
    """A value that school books and mark schemes quote; not what this module computes. Reagents by formula."""

    acid: str
    alkali: str
    enthalpy_kj_mol: float
    quoted_in: str


SCHOOL_VALUES: Final = (
    SchoolValue("HCl", "NaOH", -57.1, "AQA A-level mark scheme"),
    SchoolValue("HCl", "NaOH", -56.1, "AQA A-level mark scheme"),
    SchoolValue("HCl", "NaOH", -57.3, "textbooks, after Thomsen near 18 °C"),
    SchoolValue("HCl", "NaOH", -58.0, "OpenStax Chemistry 2e, section 5.3"),
    SchoolValue("CH3COOH", "NaOH", -55.2, "textbooks, after Thomsen near 18 °C"),
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
    """Mean over the protons of ``step_enthalpies_kj_mol``, and the solid it may leave: complete, infinitely dilute."""
    steps = step_enthalpies_kj_mol(acid, alkali, temperature_c)
    mean = math.fsum(step.enthalpy_kj_mol for step in steps) / len(steps)
    solid = neutralisation_steps(acid, alkali).precipitation_kj_mol
    return Enthalpy(mean + solid, max(step.u_enthalpy_kj_mol for step in steps))


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


def mixing_enthalpy(
    acid: Reagent,
    acid_mol_dm3: float,
    acid_cm3: float,
    alkali: Reagent,
    alkali_mol_dm3: float,
    alkali_cm3: float,
    temperature_c: float,
) -> Enthalpy:
    """What a perfect cup would give when all is poured together, per mole of water formed.

    As ``expected_enthalpy``, but an acid of several protons has given up some before, and keeps some where the alkali
    is used up first: each step counts as far as it goes, by the acid's ionisation constants. A salt that leaves the
    solution takes its anion out of that balance, so there the whole steps count while acid is left.
    """
    whole = expected_enthalpy(acid, acid_mol_dm3, alkali, alkali_mol_dm3, temperature_c)
    pair = neutralisation_steps(acid, alkali)
    acid_mmol = acid_mol_dm3 * acid_cm3
    taken = min(alkali_mol_dm3 * alkali_cm3 * pair.alkali_hydroxides / acid_mmol, 1.0 * acid.protons)
    used_up = taken == acid.protons
    if acid.protons == 1 or (pair.leaves_a_solid and not used_up):
        return whole
    before = _left(acid, acid_mol_dm3, 0.0)
    after = (1.0,) * len(before) if used_up else _left(acid, acid_mmol / (acid_cm3 + alkali_cm3), taken)
    steps = [_at(step, temperature_c).enthalpy_kj_mol for step in acid.ionisations]
    gone = math.fsum((now - then) * step for step, now, then in zip(steps, after, before, strict=True)) / taken
    every = math.fsum(steps) / acid.protons
    u = math.hypot(whole.u_enthalpy_kj_mol, _U_SPECIATION_KJ_MOL)
    return Enthalpy(whole.enthalpy_kj_mol - every + gone, u)


_U_SPECIATION_KJ_MOL: Final = 0.5
"""The constants at this ionic strength are an estimate."""
_DAVIES_A: Final = 0.509
_MOST_DAVIES: Final = 0.5
"""Beyond this ionic strength the Davies equation turns round: its value there is kept."""


def _left(acid: Reagent, acid_mol_dm3: float, taken: float) -> tuple[float, ...]:
    """Share of the acid that has gone through each of its ``ionisations``.

    ``taken`` moles of hydroxide went to each mole of acid. Charge balance, with constants at the ionic strength by
    the Davies equation (Davies, Ion Association, 1962).
    """
    strength = acid_mol_dm3 * max(1.0 * acid.strong_protons, taken)
    gone: tuple[float, ...] = ()
    for _ in range(_ROUNDS):
        constants = [_constant(acid, place, strength) for place in range(len(acid.ionisations))]
        low, high = -2.0, 14.0
        for _ in range(_HALVINGS):
            ph = (low + high) / 2
            gone = _gone(constants, 10.0**-ph)
            anions = acid_mol_dm3 * (acid.strong_protons + math.fsum(gone))
            low, high = (ph, high) if 10.0**-ph + acid_mol_dm3 * taken > anions else (low, ph)
        charges = (1.0, *gone, 0.0) if acid.strong_protons else (*gone, 0.0)
        first = acid.strong_protons or 1
        squares = (share - more for share, more in pairwise(charges))
        ions = math.fsum((first + place) ** 2 * share for place, share in enumerate(squares))
        strength = 0.5 * acid_mol_dm3 * (ions + taken) + 0.5 * 10.0**-ph
    return gone


_ROUNDS: Final = 6
_HALVINGS: Final = 50


def _constant(acid: Reagent, place: int, ionic_strength: float) -> float:
    """The ionisation constant of one step in mol/dm³; an anion of charge z becomes one of z + 1."""
    root = math.sqrt(min(ionic_strength, _MOST_DAVIES))
    charge = acid.strong_protons + place
    squares = 1 + (charge + 1) ** 2 - charge**2
    exponent = _DAVIES_A * squares * (root / (1 + root) - 0.3 * root**2)
    return float(10.0 ** (exponent - acid.ionisations[place].pk))


def _gone(constants: list[float], hydrogen: float) -> tuple[float, ...]:
    """Shares that have gone at least so far, from the constants in order and the hydrogen ions."""
    parts = [1.0]
    for constant in constants:
        parts.append(parts[-1] * constant / hydrogen)
    whole = math.fsum(parts)
    return tuple(math.fsum(parts[place:]) / whole for place in range(1, len(parts)))


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
    stages: list[_Stage] = []
    if not pair.leaves_a_solid:
        share = 1 / pair.equivalents_per_salt
        stages.append((share, (alkali.cation, acid.anion), share / water_kg))
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
        raise ValueError(say("problem-concentration-not-above-0", mol_dm3=concentration_mol_dm3))
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
