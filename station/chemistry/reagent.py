"""What the station knows of one reagent: a record with units, and no behaviour beyond reading it."""

import math
import re
from dataclasses import dataclass
from enum import StrEnum
from types import MappingProxyType
from typing import Final, NamedTuple

from station.words import Message

# Chemical formulae as plain text: molar masses, and the formula two ions make.


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


# The published works the figures of this package come from: one name each, so that a page can cite them.


CODATA_1989: Final = (
    "Cox, J. D., Wagman, D. D., Medvedev, V. A., CODATA Key Values for Thermodynamics, Hemisphere (1989)"
)
SINGH_1976: Final = "Singh, P., Woolley, E. M., McCurdy, K. G., Hepler, L. G., Can. J. Chem. 54, 3315 (1976)"
GOLDBERG_2002: Final = "Goldberg, R. N., Kishore, N., Lennen, R. M., J. Phys. Chem. Ref. Data 31, 231 (2002)"
PARKER_1965: Final = "Parker, V. B., Thermal Properties of Aqueous Uni-univalent Electrolytes, NSRDS-NBS 2 (1965)"
NBS_1982: Final = (
    "Wagman, D. D. et al., NBS Tables of Chemical Thermodynamic Properties, "
    "J. Phys. Chem. Ref. Data 11, suppl. 2 (1982)"
)
APELBLAT_1986: Final = "Apelblat, A., J. Chem. Thermodyn. 18, 351 (1986)"
LALIBERTE_2004: Final = "Laliberté, M., Cooper, W. E., J. Chem. Eng. Data 49, 1141 (2004)"
LALIBERTE_2009: Final = "Laliberté, M., J. Chem. Eng. Data 54, 1725 (2009)"
PATEK_2009: Final = (
    "Pátek, J., Hrubý, J., Klomfar, J., Součková, M., Harvey, A. H., J. Phys. Chem. Ref. Data 38, 21 (2009) "
    "(IAPWS SR6-08)"
)
SILVESTER_1978: Final = "Silvester, L. F., Pitzer, K. S., J. Solution Chem. 7, 327 (1978)"
BRADLEY_1979: Final = "Bradley, D. J., Pitzer, K. S., J. Phys. Chem. 83, 1599 (1979)"
KUSTOV_2010: Final = "Kustov, A. V., Smirnova, N. L., J. Chem. Eng. Data 55, 3055 (2010)"


class Kind(StrEnum):
    """What a reagent is in a school practical."""

    STRONG_ACID = "strong acid"
    WEAK_ACID = "weak acid"
    HYDROXIDE = "hydroxide"
    WEAK_ALKALI = "weak alkali"
    CARBONATE = "carbonate"
    HYDROGENCARBONATE = "hydrogencarbonate"
    SALT = "salt"
    NON_ELECTROLYTE = "non-electrolyte"


ACIDS = frozenset({Kind.STRONG_ACID, Kind.WEAK_ACID})
ALKALIS = frozenset({Kind.HYDROXIDE, Kind.WEAK_ALKALI, Kind.CARBONATE, Kind.HYDROGENCARBONATE})


class Ionisation(NamedTuple):
    """One proton leaving in water at 25 °C and no ionic strength.

    ``enthalpy_kj_mol`` and ``heat_capacity_j_mol_k`` are ΔrH° and ΔrCp° of HA ⇌ H⁺ + A⁻.
    """

    pk: float
    enthalpy_kj_mol: float
    heat_capacity_j_mol_k: float


@dataclass(frozen=True, slots=True, kw_only=True)
class Reagent:
    """One reagent.

    ``name``: in English also how plans call it; its ``id`` is what tables are looked up by. ``solid_name``: of what is
    weighed, where a language calls it otherwise than the solution.
    ``formula`` is plain text (``"H2SO4"``; water of crystallisation after a middle dot).
    ``protons`` and ``hydroxides`` are what one formula unit gives or takes (a carbonate takes two).
    ``strong_protons`` leave completely in dilute solution; ``ionisations`` describes the others in order (of
    a weak alkali: its conjugate acid). ``solution_enthalpy_kj_mol`` is for the pure substance into much
    water at 25 °C, positive when the water cools; None where this table has no figure. ``sparingly_soluble``
    marks what cannot be made up to a useful concentration.
    """

    name: Message
    formula: str
    molar_mass_g_mol: float
    kind: Kind
    sources: tuple[str, ...]
    aliases: tuple[str, ...] = ()
    solid_name: Message | None = None
    cation: Ion | None = None
    anion: Ion | None = None
    protons: int = 0
    strong_protons: int = 0
    hydroxides: int = 0
    ionisations: tuple[Ionisation, ...] = ()
    solution_enthalpy_kj_mol: float | None = None
    u_solution_enthalpy_kj_mol: float | None = None
    sparingly_soluble: bool = False

    @property
    def weighed_name(self) -> Message:
        """The name of the solid that is weighed."""
        return self.solid_name or self.name

    @property
    def is_acid(self) -> bool:
        """True when it can be the acid of a plan."""
        return self.kind in ACIDS

    @property
    def is_alkali(self) -> bool:
        """True when it can be the alkali of a plan (a carbonate counts: it neutralises, with gas)."""
        return self.kind in ALKALIS

    @property
    def gives_gas(self) -> bool:
        """True when it fizzes with an acid."""
        return self.kind in {Kind.CARBONATE, Kind.HYDROGENCARBONATE}

    @property
    def dissolves_cold(self) -> bool:
        """True when the pure substance cools the water it dissolves in."""
        return self.solution_enthalpy_kj_mol is not None and self.solution_enthalpy_kj_mol > 0

    @property
    def solute(self) -> str:
        """What it is in solution, named by its ions, the cation first (``"HCl"``, ``"Na2CO3"``, ``"NH3"``)."""
        if self.cation is None or self.anion is None or self.kind is Kind.WEAK_ALKALI:
            return self.formula
        return ions_formula(self.cation, self.anion)
