"""Chemical formulae as plain text: molar masses, and the formula two ions make."""

import math
import re
from types import MappingProxyType
from typing import Final, NamedTuple

ATOMIC_WEIGHTS: Final = MappingProxyType(
    {
        "H": 1.008,
        "Li": 6.94,
        "C": 12.011,
        "N": 14.007,
        "O": 15.999,
        "Na": 22.990,
        "Mg": 24.305,
        "P": 30.974,
        "S": 32.06,
        "Cl": 35.45,
        "K": 39.098,
        "Ca": 40.078,
        "Cu": 63.546,
        "Ba": 137.33,
    }
)
"""Abridged standard atomic weights: Prohaska et al., Pure Appl. Chem. 94, 573 (2022)."""


class Ion(NamedTuple):
    """An ion by its plain formula and its charge number: ``Ion("SO4", -2)``."""

    formula: str
    charge: int


_TOKEN: Final = re.compile(r"([A-Z][a-z]?)(\d*)|(\()|\)(\d*)")


def molar_mass_g_mol(formula: str) -> float:
    """Molar mass of a formula such as ``"Ca(OH)2"`` or ``"C6H8O7·H2O"``.

    Raises ``ValueError`` for an element or a character it does not know.
    """
    total = 0.0
    for part in formula.split("·"):
        match = re.fullmatch(r"(\d*)(.+)", part)
        if match is None:
            raise ValueError(f"{formula!r} is not a chemical formula")
        total += int(match[1] or 1) * _mass(match[2])
    return total


def _mass(formula: str) -> float:
    sums = [0.0]
    position = 0
    while position < len(formula):
        token = _TOKEN.match(formula, position)
        if token is None or (token[1] and token[1] not in ATOMIC_WEIGHTS):
            raise ValueError(f"cannot weigh {formula!r} from {formula[position:]!r} on")
        if token[1]:
            sums[-1] += ATOMIC_WEIGHTS[token[1]] * int(token[2] or 1)
        elif token[3]:
            sums.append(0.0)
        elif len(sums) > 1:
            inner = sums.pop()
            sums[-1] += inner * int(token[4] or 1)
        else:
            raise ValueError(f"{formula!r} closes a bracket it did not open")
        position = token.end()
    if len(sums) > 1:
        raise ValueError(f"{formula!r} opens a bracket it does not close")
    return sums[0]


def ions_formula(cation: Ion, anion: Ion) -> str:
    """The neutral formula of two ions, cation first: Ca²⁺ and OH⁻ give ``"Ca(OH)2"``."""
    common = math.gcd(cation.charge, -anion.charge)
    return _times(cation.formula, -anion.charge // common) + _times(anion.formula, cation.charge // common)


def _times(group: str, count: int) -> str:
    if count == 1:
        return group
    is_one_atom = re.fullmatch(r"[A-Z][a-z]?", group) is not None
    return f"{group}{count}" if is_one_atom else f"({group}){count}"
