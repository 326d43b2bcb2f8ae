"""What concentration does to a heat of neutralisation: relative apparent molar enthalpies at 25 °C.

The enthalpy of one mole of solute in a real solution, less that at infinite dilution, follows Pitzer's equation
with the temperature derivatives of Silvester and Pitzer, J. Solution Chem. 7, 327 (1978), and the Debye–Hückel
slope of Bradley and Pitzer, J. Phys. Chem. 83, 1599 (1979). The sign of HCl's third parameter is the one that
reproduces the measured table of Parker, NSRDS-NBS 2 (1965); nitric acid's parameters were fitted to that table
(1 to 4 mol/kg, within 0.003 kJ/mol). A strong electrolyte without parameters keeps the Debye–Hückel term alone.
"""

import math
from types import MappingProxyType
from typing import Final, NamedTuple

from station.chemistry.formula import Ion
from station.chemistry.sources import BRADLEY_1979, PARKER_1965, SILVESTER_1978

DEBYE_HUCKEL_SLOPE_KJ_MOL: Final = 1.986
_B: Final = 1.2
_ALPHA: Final = 2.0
_RT2_KJ_K_MOL: Final = 8.314462618e-3 * 298.15**2

SOURCES: Final = (SILVESTER_1978, BRADLEY_1979, PARKER_1965)

U_MEASURED_KJ_MOL: Final = 0.05
"""Standard uncertainty per mole of solute where parameters exist; HCl's stay within it of Parker's table."""
U_UNMEASURED_SHARE: Final = 0.5
"""The same where only the Debye–Hückel term is known, as a share of that term (at least as above)."""


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


def _decay(x: float) -> float:
    if x < 1e-4:
        return 1.0
    return 2.0 * (1.0 - (1.0 + x) * math.exp(-x)) / x**2
